using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;

namespace Swapwright.Commands;

/// <summary>
/// The git executable, asked for stored objects only: no working tree is touched, no hook, filter, pager or alias runs, and
/// nothing is fetched. Arguments go as a list, never through a shell.
/// </summary>
internal sealed class Git
{
    private const int MostOfAMessage = 300;
    private readonly string _program;
    private readonly string _folder;

    private Git(string program, string folder)
    {
        _program = program;
        _folder = folder;
    }

    /// <summary>The repository that holds a folder.</summary>
    /// <exception cref="ArgumentProblemException">There is no git, or no repository.</exception>
    public static Git Of(string folder)
    {
        var program = Find() ?? throw new ArgumentProblemException("git is not installed, or not on the PATH; a revision cannot be read without it (name two folders instead)");
        var git = new Git(program, folder);
        return git.TryText(["rev-parse", "--git-dir"], out _, out var problem)
            ? git
            : throw new ArgumentProblemException(problem.Contains("dubious ownership", StringComparison.Ordinal)
                ? "git does not trust the repository here, because another user owns it"
                : "no git repository holds the working directory; name two folders instead");
    }

    /// <summary>The id of the commit that a revision names; null where none does.</summary>
    public string? Commit(string revision) =>
        revision.Length > 0 && revision[0] != '-' && TryText(["rev-parse", "--verify", "--quiet", $"{revision}^{{commit}}"], out var id, out _)
            && id.TrimEnd('\n') is { Length: 40 or 64 } commit && commit.All(char.IsAsciiHexDigitLower)
            ? commit
            : null;

    /// <summary>The files below a folder of a commit, whatever attributes say about exporting them; null where it has no such folder.</summary>
    /// <param name="path">From the root of the repository, with forward slashes; empty for the root.</param>
    public ImmutableArray<GitFile>? Files(string commit, string path)
    {
        if (!TryText(["ls-tree", "-r", "-z", "-l", "--full-tree", $"{commit}:{path}"], out var listing, out _))
        {
            return null;
        }

        return [.. listing.Split('\0', StringSplitOptions.RemoveEmptyEntries).Select(GitFile.Parse).OfType<GitFile>()];
    }

    /// <summary>Hands the content of each file to <paramref name="take"/>, in order.</summary>
    public void Contents(ImmutableArray<GitFile> files, Action<GitFile, byte[]> take)
    {
        using var process = Start(["cat-file", "--batch"]);
        var errors = process.StandardError.ReadToEndAsync();
        // Asked one by one: so neither side waits for the other with a full pipe.
        foreach (var file in files)
        {
            process.StandardInput.Write(file.Object + "\n");
            process.StandardInput.Flush();
            take(file, Content(process.StandardOutput.BaseStream, file));
        }

        process.StandardInput.Close();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new ArgumentProblemException($"git cannot read the revision: {Shortened(errors.GetAwaiter().GetResult())}");
        }
    }

    private static byte[] Content(Stream output, GitFile file)
    {
        var head = new StringBuilder();
        for (var sign = output.ReadByte(); sign is not ('\n' or -1); sign = output.ReadByte())
        {
            head.Append((char)sign);
        }

        if (head.ToString() != FormattableString.Invariant($"{file.Object} blob {file.Size}"))
        {
            throw new ArgumentProblemException($"git cannot read `{file.Path}` of the revision");
        }

        var content = new byte[file.Size];
        output.ReadExactly(content);
        output.ReadByte();
        return content;
    }

    private bool TryText(IEnumerable<string> arguments, out string output, out string problem)
    {
        using var process = Start(arguments);
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        problem = errors.GetAwaiter().GetResult();
        return process.ExitCode == 0;
    }

    private Process Start(IEnumerable<string> arguments)
    {
        var utf8 = new UTF8Encoding(false);
        var start = new ProcessStartInfo(_program)
        {
            WorkingDirectory = _folder,
            UseShellExecute = false,
            CreateNoWindow = true,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = utf8,
            StandardOutputEncoding = utf8,
            StandardErrorEncoding = utf8,
        };
        foreach (var argument in arguments.Prepend("--no-replace-objects").Prepend("--no-pager"))
        {
            start.ArgumentList.Add(argument);
        }

        // Messages are matched in English; what is missing is never fetched; nobody is asked for a password; no lock is taken.
        start.Environment["LC_ALL"] = "C";
        start.Environment["GIT_NO_LAZY_FETCH"] = "1";
        start.Environment["GIT_ALLOW_PROTOCOL"] = "none";
        start.Environment["GIT_TERMINAL_PROMPT"] = "0";
        start.Environment["GIT_OPTIONAL_LOCKS"] = "0";
        return Process.Start(start) ?? throw new ArgumentProblemException("git does not start");
    }

    /// <summary>Looked for on the PATH alone: a program of that name in the working directory is none that anybody chose.</summary>
    private static string? Find()
    {
        var name = OperatingSystem.IsWindows() ? "git.exe" : "git";
        return (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Where(Path.IsPathFullyQualified).Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);
    }

    private static string Shortened(string text) => text.Trim() is { Length: > MostOfAMessage } trimmed ? trimmed[..MostOfAMessage] + "…" : text.Trim();
}
