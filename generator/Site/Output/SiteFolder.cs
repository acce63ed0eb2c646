using System.Buffers;
using System.Collections.Concurrent;
using System.Text;

namespace Swapwright.Site.Output;

/// <summary>
/// Writes a site into a folder beside its target and puts it in the target's place at the end, so that readers see
/// the previous site whole or the new one whole. Only a folder that carries this program's mark, or an empty one, is
/// ever replaced. A file that did not change stays the same file, with its time. Files may be written by several workers.
/// </summary>
public sealed class SiteFolder : IDisposable
{
    /// <inheritdoc cref="OwnFolder.Mark"/>
    public const string Mark = OwnFolder.Mark;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private const int MostOnTheStack = 64;

    private readonly string _target;
    private readonly string _fresh;
    private readonly string _previous;
    private readonly FileStream _lock;

    // Where there is no earlier site, nobody needs to look for its files one by one.
    private readonly bool _isThere;
    private readonly ConcurrentDictionary<string, string> _written = new(StringComparer.OrdinalIgnoreCase);
    private readonly ConcurrentDictionary<string, bool> _folders = new(StringComparer.Ordinal);
    private readonly ReusedTree? _reused;
    private bool _finished;

    private SiteFolder(string target, string fresh, string previous, FileStream held, ReusedTree? reused)
    {
        _reused = reused;
        _target = target;
        _fresh = fresh;
        _previous = previous;
        _lock = held;
        _isThere = Directory.Exists(target);
    }

    /// <summary>Opens a folder for a new site without touching what is there.</summary>
    /// <param name="reuse">Begin with the tree that an earlier run left for this one, see <see cref="Finish"/>, in place of an empty one.</param>
    /// <exception cref="SiteFolderException">
    /// The target is a file, holds something this program did not make, or is being written by another run.
    /// </exception>
    public static SiteFolder Open(string target, bool reuse = false)
    {
        var place = RealPlace(target);
        var parent = Path.GetDirectoryName(place) ?? throw new SiteFolderException($"`{target}` has no folder above it to work in");
        var name = Path.GetFileName(place);
        var fresh = Path.Combine(parent, $".{name}.swapwright-new");
        var previous = Path.Combine(parent, $".{name}.swapwright-old");
        try
        {
            Directory.CreateDirectory(parent);
            OwnFolder.RequireOwnOrEmpty(place);
            OwnFolder.RequireOwnOrEmpty(fresh);
            OwnFolder.RequireOwnOrEmpty(previous);
            Directory.CreateDirectory(fresh);
            var held = OwnFolder.Hold(Path.Combine(fresh, Mark), target);
            PutBackAfterCrash(place, previous);
            if (!reuse)
            {
                OwnFolder.Empty(fresh);
            }

            return new SiteFolder(place, fresh, previous, held, reuse ? new ReusedTree(fresh) : null);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SiteFolderException($"`{target}` cannot be written: {fault.Message}", fault);
        }
    }

    /// <summary>Files that were written or kept.</summary>
    public int Count => _written.Count;

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
            if (_reused is not null)
            {
                ReusedTree.MakeRoom(full);
            }

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

        Span<bool> lies = stackalloc bool[stamps.Length <= MostOnTheStack ? stamps.Length : 0];
        if (lies.Length < stamps.Length)
        {
            lies = new bool[stamps.Length];
        }

        for (var at = 0; at < stamps.Length; at++)
        {
            if (!SitePath.IsPlain(paths[at]))
            {
                return false;
            }

            lies[at] = _reused is not null && ReusedTree.Has(Path.Combine(_fresh, paths[at]), stamps[at]);
            if (!lies[at] && FileStamp.Of(Path.Combine(_target, paths[at])) != stamps[at])
            {
                return false;
            }
        }

        for (var at = 0; at < stamps.Length; at++)
        {
            var full = Begin(paths[at]);
            if (!lies[at] && !TryLink(paths[at], full))
            {
                GiveUp(paths.Take(at + 1));
                return false;
            }
        }

        return true;
    }

    private bool TryLink(string path, string full)
    {
        try
        {
            if (_reused is not null)
            {
                ReusedTree.MakeRoom(full);
            }

            return HardLink.TryMake(Path.Combine(_target, path), full);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SiteFolderException($"`{path}` of the site cannot be written: {fault.Message}", fault);
        }
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
            MakeFolder(Path.GetDirectoryName(full.AsSpan()));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SiteFolderException($"`{path}` of the site cannot be written: {fault.Message}", fault);
        }

        return full;
    }

    private void MakeFolder(ReadOnlySpan<char> folder)
    {
        if (_folders.GetAlternateLookup<ReadOnlySpan<char>>().ContainsKey(folder))
        {
            return;
        }

        var made = folder.ToString();
        if (_reused is not null)
        {
            _reused.MakeFolder(made);
        }
        else
        {
            Directory.CreateDirectory(made);
        }

        _folders.TryAdd(made, true);
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
    /// <param name="keep">
    /// Leave the previous tree, under its hidden name, to the next run, which then has to link and to remove little. Not done where two
    /// folders cannot change names in one step.
    /// </param>
    public void Finish(bool keep = false)
    {
        try
        {
            _reused?.RemoveOthers(_written);
            if (Directory.Exists(_target) && FolderSwap.Try(_fresh, _target))
            {
                // In one step: there is no moment without a site. The previous one now has the name of the fresh one.
                _finished = true;
                _lock.Dispose();
                if (!keep)
                {
                    OwnFolder.RemoveUnlessTaken(_fresh);
                }

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
            OwnFolder.RemoveUnlessTaken(_previous);
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
            OwnFolder.Remove(_fresh, _lock);
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

    /// <summary>A run that ended between its two renames left the previous site under its other name.</summary>
    private static void PutBackAfterCrash(string target, string previous)
    {
        if (!Directory.Exists(previous))
        {
            return;
        }

        if (Directory.Exists(target))
        {
            OwnFolder.RemoveUnlessTaken(previous);
        }
        else
        {
            Directory.Move(previous, target);
        }
    }

    internal static string LineFeeds(string text) =>
        text.Contains('\r', StringComparison.Ordinal)
            ? text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n')
            : text;
}
