using System.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Site;
using Swapwright.Site.Reuse;
using Swapwright.Tests.Site;

namespace Swapwright.Tests.Hostile;

/// <summary>Runs of the program over a small base, for tests that disturb them.</summary>
internal static class SmallRuns
{
    public static string Program { get; } = Path.ChangeExtension(typeof(Product).Assembly.Location, ".dll");

    /// <summary>A folder with the base <c>kb</c>, and beside it what it says after one edit, <c>kb-later</c>.</summary>
    public static TemporaryFolder Bases()
    {
        var folder = new TemporaryFolder();
        foreach (var (path, bytes) in SpoiltBase.Read(SmallBaseFolder))
        {
            var text = System.Text.Encoding.UTF8.GetString(bytes);
            folder.Write(Path.Combine("kb", path), text);
            // Every page carries the title, so that no file of pages is the same in both.
            folder.Write(Path.Combine("kb-later", path), path == "kb.yaml" ? text.Replace("title: ", "title: Later ", StringComparison.Ordinal) : text);
        }

        return folder;
    }

    /// <summary>What the site of a base is, rendered beside everything else.</summary>
    public static string HashOfSite(string kb)
    {
        using var beside = new TemporaryFolder();
        Render(kb, Path.Combine(beside.Path, "site"));
        return FolderHash.Of(Path.Combine(beside.Path, "site"));
    }

    /// <summary>What lies where a site was written. The record of its pages, which lies beside the folder and has its name, is expected there.</summary>
    public static IEnumerable<string> Beside(string target) =>
        Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(target)!).Where(path => path != SiteRecord.PathOf(target)).Select(path => Path.GetFileName(path));

    public static void Render(string kb, string target) => SiteBuilder.Render(Proof.Of(kb), target, BuiltIn.Templates);

    public static Process Start(string folder, params string[] arguments) => Process.Start(new ProcessStartInfo("dotnet", [Program, .. arguments])
    {
        WorkingDirectory = folder,
        UseShellExecute = false,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;

    /// <summary>A line of a shell, such as one that bounds what the program may do.</summary>
    public static (int Exit, string Text) Shell(string folder, string line)
    {
        using var process = Process.Start(new ProcessStartInfo("bash", ["-c", line]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(2)), line);
        return (process.ExitCode, text + error.GetAwaiter().GetResult());
    }

    private static string SmallBaseFolder => Reports.SmallBase.Folder;
}
