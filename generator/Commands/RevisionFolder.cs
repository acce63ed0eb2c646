using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using Swapwright.Source;

namespace Swapwright.Commands;

/// <summary>
/// The knowledge base of a git revision, written into a folder of its own that only this user can open and that goes when it has
/// been read, also where the run is broken off. The same bounds hold as for a folder, before anything is written.
/// </summary>
internal sealed class RevisionFolder : IDisposable
{
    private readonly ImmutableArray<PosixSignalRegistration> _signals;

    private RevisionFolder(string commit)
    {
        Commit = commit;
        Folder = Directory.CreateTempSubdirectory("swapwright-").FullName;
        _signals = [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP }.Select(signal => PosixSignalRegistration.Create(signal, _ => Remove()))];
    }

    public string Folder { get; }

    public string Commit { get; }

    /// <param name="path">Of the base inside the repository.</param>
    /// <exception cref="ArgumentProblemException">There is no git, no repository, no such revision, or no base in it.</exception>
    public static RevisionFolder Of(string revision, string path, CancellationToken cancellation)
    {
        var inside = Inside(path);
        var git = Git.Of(Environment.CurrentDirectory);
        var commit = git.Commit(revision)
            ?? throw new ArgumentProblemException($"`{revision}` is neither a folder nor a revision of the repository here");
        var files = git.Files(commit, inside) is { IsEmpty: false } found
            ? found
            : throw new ArgumentProblemException($"the revision `{revision}` has no folder `{path}`; say with `--base` where the knowledge base is inside the repository");
        if (!files.Any(file => file.Path == "kb.yaml"))
        {
            throw new ArgumentProblemException($"`{path}` of the revision `{revision}` is no knowledge base: it has no kb.yaml");
        }

        var folder = new RevisionFolder(commit);
        try
        {
            folder.Write(git, Bounded(files, revision), cancellation);
            return folder;
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        Remove();
        foreach (var signal in _signals)
        {
            signal.Dispose();
        }
    }

    private void Write(Git git, ImmutableArray<GitFile> files, CancellationToken cancellation)
    {
        git.Contents(files, (file, content) =>
        {
            cancellation.ThrowIfCancellationRequested();
            var target = Path.GetFullPath(Path.Combine(Folder, file.Path));
            if (!IsPlain(file.Path) || !target.StartsWith(Folder + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            {
                throw new ArgumentProblemException($"the revision has a file `{file.Path}`, which would lie outside its folder");
            }

            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            // Never over anything: two paths that the file system takes for one are a mistake.
            using var stream = new FileStream(target, FileMode.CreateNew, FileAccess.Write);
            stream.Write(content);
        });
    }

    /// <summary>Links are left out, as a folder's are: only what lies in the base is read.</summary>
    private static ImmutableArray<GitFile> Bounded(ImmutableArray<GitFile> files, string revision)
    {
        var limits = SourceLimits.Default;
        ImmutableArray<GitFile> taken = [.. files.Where(file => !file.IsLink)];
        if (taken.Length > limits.MaxFiles)
        {
            throw new ArgumentProblemException(string.Create(CultureInfo.InvariantCulture, $"the knowledge base of `{revision}` has more than {limits.MaxFiles} files"));
        }

        // One file is checked by itself first: the sum of sizes that a stranger chose may run over.
        if (taken.Any(file => file.Size > limits.MaxTotalBytes) || taken.Sum(file => file.Size) > limits.MaxTotalBytes)
        {
            throw new ArgumentProblemException(string.Create(CultureInfo.InvariantCulture, $"the knowledge base of `{revision}` is larger than {limits.MaxTotalBytes} bytes"));
        }

        return taken;
    }

    private static bool IsPlain(string path) => path.Split('/').All(part => part is not ("" or "." or ".."))
        && path.All(sign => sign is not ('\\' or '\0') && (sign != ':' || !OperatingSystem.IsWindows()));

    private static string Inside(string path)
    {
        var parts = path.Replace('\\', '/').Split('/', StringSplitOptions.RemoveEmptyEntries).Where(part => part != ".").ToList();
        return Path.IsPathRooted(path) || parts.Contains("..")
            ? throw new ArgumentProblemException($"`--base {path}` leads out of the repository: name the folder from the repository's root, as in `--base swap-kb`")
            : string.Join('/', parts);
    }

    private void Remove()
    {
        try
        {
            Directory.Delete(Folder, recursive: true);
        }
        catch (DirectoryNotFoundException)
        {
            // Gone already: a signal and the end of the run may both come here.
        }
    }
}
