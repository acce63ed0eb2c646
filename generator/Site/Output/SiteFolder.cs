using System.Buffers;
using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using System.Text;

namespace Swapwright.Site.Output;

/// <summary>
/// Writes a site into a folder beside its target and puts it in the target's place at the end, so that readers see
/// the previous site whole or the new one whole. Only a folder that carries this program's mark, or an empty one, is
/// ever replaced. A file that did not change stays the same file, with its time. Files may be written by several workers.
/// </summary>
public sealed class SiteFolder : IDisposable
{
    /// <summary>Name of the file by which the program knows a folder for one of its own.</summary>
    public const string Mark = ".swapwright-site";

    private const string MarkText = "Made by swapwright. The next run replaces this whole folder; keep nothing of your own in it.\n";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly string _target;
    private readonly string _fresh;
    private readonly string _previous;
    private readonly FileStream _lock;

    // Where there is no earlier site, nobody needs to look for its files one by one.
    private readonly bool _isThere;
    private readonly ConcurrentDictionary<string, string> _written = new(StringComparer.OrdinalIgnoreCase);
    private readonly ConcurrentDictionary<string, bool> _folders = new(StringComparer.Ordinal);
    private bool _finished;

    private SiteFolder(string target, string fresh, string previous, FileStream held)
    {
        _target = target;
        _fresh = fresh;
        _previous = previous;
        _lock = held;
        _isThere = Directory.Exists(target);
    }

    /// <summary>Opens a folder for a new site without touching what is there.</summary>
    /// <exception cref="SiteFolderException">
    /// The target is a file, holds something this program did not make, or is being written by another run.
    /// </exception>
    public static SiteFolder Open(string target)
    {
        var place = RealPlace(target);
        var parent = Path.GetDirectoryName(place) ?? throw new SiteFolderException($"`{target}` has no folder above it to work in");
        var name = Path.GetFileName(place);
        var fresh = Path.Combine(parent, $".{name}.swapwright-new");
        var previous = Path.Combine(parent, $".{name}.swapwright-old");
        try
        {
            Directory.CreateDirectory(parent);
            RequireOwnOrEmpty(place);
            RequireOwnOrEmpty(fresh);
            RequireOwnOrEmpty(previous);
            Directory.CreateDirectory(fresh);
            var held = Hold(Path.Combine(fresh, Mark), target);
            PutBackAfterCrash(place, previous);
            Empty(fresh);
            return new SiteFolder(place, fresh, previous, held);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SiteFolderException($"`{target}` cannot be written: {fault.Message}", fault);
        }
    }

    /// <summary>Writes a text as UTF-8 without a byte-order mark and with line feeds.</summary>
    public void Write(string path, string text) => Write(path, Utf8.GetBytes(LineFeeds(text)));

    /// <summary>Writes a file below the site's root. Each path is written once.</summary>
    /// <returns>By what the file is known again.</returns>
    /// <exception cref="SiteFolderException">The path leaves the site, names the mark, or was written before.</exception>
    public FileStamp Write(string path, ReadOnlySpan<byte> bytes)
    {
        var full = Begin(path);
        try
        {
            var before = Path.Combine(_target, path);
            if (!_isThere || !Holds(before, bytes) || !HardLink.TryMake(before, full))
            {
                using var file = File.OpenHandle(full, FileMode.CreateNew, FileAccess.Write, FileShare.None);
                RandomAccess.Write(file, bytes, 0);
                return new FileStamp(bytes.Length, File.GetLastWriteTimeUtc(file).Ticks);
            }

            return new FileStamp(bytes.Length, File.GetLastWriteTimeUtc(full).Ticks);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            // The last is what the runtime makes of a disk that takes no file of this length.
            throw new SiteFolderException($"`{path}` of the site cannot be written: {fault.Message}", fault);
        }
    }

    /// <summary>
    /// Takes files of the previous site over as they are, all or none: nothing is taken where one of them is not as its stamp says, or
    /// where the disk gives no file a second name.
    /// </summary>
    public bool TryKeep(IReadOnlyList<string> paths, ReadOnlySpan<FileStamp> stamps)
    {
        if (paths.Count != stamps.Length)
        {
            return false;
        }

        for (var at = 0; at < stamps.Length; at++)
        {
            if (!SitePath.IsPlain(paths[at]) || FileStamp.Of(Path.Combine(_target, paths[at])) != stamps[at])
            {
                return false;
            }
        }

        for (var at = 0; at < stamps.Length; at++)
        {
            var full = Begin(paths[at]);
            if (!HardLink.TryMake(Path.Combine(_target, paths[at]), full))
            {
                GiveUp(paths.Take(at + 1));
                return false;
            }
        }

        return true;
    }

    // So that they can be written after all.
    private void GiveUp(IEnumerable<string> paths)
    {
        foreach (var path in paths)
        {
            _written.TryRemove(path, out _);
            try
            {
                File.Delete(Path.Combine(_fresh, path));
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw new SiteFolderException($"`{path}` of the site cannot be written: {fault.Message}", fault);
            }
        }
    }

    // The place of a new file, whose folder is there.
    private string Begin(string path)
    {
        if (!SitePath.IsPlain(path))
        {
            throw new SiteFolderException($"`{path}` is not a path inside the site");
        }

        if (!_written.TryAdd(path, path))
        {
            throw new SiteFolderException($"`{path}` is written twice (paths that differ only in case count as one)");
        }

        var full = Path.Combine(_fresh, path);
        try
        {
            _ = _folders.GetOrAdd(Path.GetDirectoryName(full)!, static folder => Directory.CreateDirectory(folder).Exists);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SiteFolderException($"`{path}` of the site cannot be written: {fault.Message}", fault);
        }

        return full;
    }

    /// <summary>Whether a file of the previous site has these bytes. It is read, not believed: somebody may have changed it.</summary>
    private static bool Holds(string path, ReadOnlySpan<byte> bytes)
    {
        var info = new FileInfo(path);
        if (!info.Exists || info.Length != bytes.Length || info.LinkTarget is not null)
        {
            return false;
        }

        using var file = File.OpenHandle(path);
        var piece = ArrayPool<byte>.Shared.Rent(64 * 1024);
        try
        {
            for (var at = 0; at < bytes.Length;)
            {
                var read = RandomAccess.Read(file, piece, at);
                if (read == 0 || at + read > bytes.Length || !bytes.Slice(at, read).SequenceEqual(piece.AsSpan(0, read)))
                {
                    return false;
                }

                at += read;
            }

            return true;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(piece);
        }
    }

    /// <summary>Puts the finished site in the target's place.</summary>
    public void Finish()
    {
        try
        {
            if (Directory.Exists(_target) && FolderSwap.Try(_fresh, _target))
            {
                // In one step: there is no moment without a site. The previous one now has the name of the fresh one.
                _finished = true;
                _lock.Dispose();
                RemoveUnlessTaken(_fresh);
                return;
            }

            if (OperatingSystem.IsWindows())
            {
                // There a folder with an open file in it cannot be renamed.
                _lock.Dispose();
            }

            PutInPlace();
            _finished = true;
            _lock.Dispose();
            RemoveUnlessTaken(_previous);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SiteFolderException($"`{_target}` cannot be replaced: {fault.Message}", fault);
        }
    }

    /// <summary>Without <see cref="Finish"/> before it, throws the unfinished site away.</summary>
    public void Dispose()
    {
        if (!_finished)
        {
            Remove(_fresh, _lock);
        }

        _lock.Dispose();
    }

    private void PutInPlace()
    {
        if (Directory.Exists(_target))
        {
            Directory.Move(_target, _previous);
        }

        try
        {
            Directory.Move(_fresh, _target);
        }
        catch
        {
            PutBackAfterCrash(_target, _previous);
            throw;
        }
    }

    /// <summary>A link is followed, so that the folder it names is replaced and the link stays.</summary>
    internal static string RealPlace(string target)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        var folder = new DirectoryInfo(full);
        return folder.Exists ? folder.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? full : full;
    }

    private static void RequireOwnOrEmpty(string folder)
    {
        if (File.Exists(folder))
        {
            throw new SiteFolderException($"`{folder}` is a file");
        }

        if (Directory.Exists(folder)
            && !File.Exists(Path.Combine(folder, Mark))
            && Directory.EnumerateFileSystemEntries(folder).Any())
        {
            throw new SiteFolderException($"`{folder}` holds files that swapwright did not make; name an empty or new folder");
        }
    }

    /// <summary>Holds the mark open for as long as the run lasts: a second run cannot open it.</summary>
    private static FileStream Hold(string mark, string target)
    {
        try
        {
            var stream = new FileStream(mark, FileMode.Create, FileAccess.Write, FileShare.None);
            stream.Write(Utf8.GetBytes(MarkText));
            stream.Flush();
            return stream;
        }
        catch (IOException fault)
        {
            throw new SiteFolderException($"`{target}` is being written by another run", fault);
        }
    }

    /// <summary>A run that ended between its two renames left the previous site under its other name.</summary>
    private static void PutBackAfterCrash(string target, string previous)
    {
        if (!Directory.Exists(previous))
        {
            return;
        }

        if (Directory.Exists(target))
        {
            RemoveUnlessTaken(previous);
        }
        else
        {
            Directory.Move(previous, target);
        }
    }

    private static void Empty(string folder)
    {
        // The guides of a chassis lie in a folder two levels down; to take those away is most of the work, and goes beside each other.
        var inner = new DirectoryInfo(folder).GetDirectories().Where(entry => entry.LinkTarget is null).SelectMany(entry => entry.GetDirectories()).Where(entry => entry.LinkTarget is null);
        try
        {
            Parallel.ForEach(inner, entry => entry.Delete(recursive: true));
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }

        foreach (var entry in new DirectoryInfo(folder).EnumerateFileSystemInfos())
        {
            if (entry is DirectoryInfo { LinkTarget: null } rest)
            {
                rest.Delete(recursive: true);
            }
            else if (entry.Name != Mark)
            {
                entry.Delete();
            }
        }
    }

    /// <summary>Removes a folder of the program's own, unless another run holds it; that run then empties it.</summary>
    private static void RemoveUnlessTaken(string folder)
    {
        if (!Directory.Exists(folder))
        {
            return;
        }

        try
        {
            using var held = new FileStream(Path.Combine(folder, Mark), FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
            Remove(folder, held);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // What is left carries the mark, so that the next run may take it away.
        }
    }

    /// <summary>
    /// Removes a folder by its held mark, which goes last: whoever dies over it leaves a folder that is still known for the program's own.
    /// </summary>
    private static void Remove(string folder, FileStream held)
    {
        try
        {
            Empty(folder);
            if (OperatingSystem.IsWindows())
            {
                held.Dispose();
            }

            File.Delete(Path.Combine(folder, Mark));
            held.Dispose();
            Directory.Delete(folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Not worth a failed run: the next one empties it.
        }
    }

    internal static string LineFeeds(string text) =>
        text.Contains('\r', StringComparison.Ordinal)
            ? text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n')
            : text;
}
