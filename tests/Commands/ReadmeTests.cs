using System.Text.RegularExpressions;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Commands;

/// <summary>README's five commands as they are written there, typed in a fresh copy of the repository. Slow: it builds and installs.</summary>
[Trait("Speed", "Slow")]
public sealed partial class ReadmeTests
{
    // What the package is made of. Nothing that a build left behind is among it.
    private static readonly string[] s_parts =
        ["generator", "schema", "site-template", "base-template", "README.md", "LICENSE", "Directory.Build.props", "Directory.Packages.props", "global.json", ".editorconfig"];

    [Fact]
    public void FiveCommands_AsWritten_LeadToTheSiteOfANewBase()
    {
        var commands = Block().Match(File.ReadAllText(Path.Combine(Reading.Repository(), "README.md"))).Groups["body"].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(5, commands.Length);
        using var clone = Clone();
        foreach (var command in commands)
        {
            // Analysers have their say in the build of the tests; a build server that stays would outlive the folder.
            var (exit, output) = NewcomersShell.Run(clone.Path, command, ("RunAnalyzers", "false"), ("MSBUILDDISABLENODEREUSE", "1"), ("UseSharedCompilation", "false"), ("DOTNET_CLI_TELEMETRY_OPTOUT", "1"));
            Assert.True(exit == 0, $"{command}\n{output}");
        }

        var ours = Path.Combine(clone.Path, "out", "ours");
        var site = Path.Combine(ours, "out", "site");
        Assert.Contains("Our swaps", File.ReadAllText(Path.Combine(site, "index.html")), StringComparison.Ordinal);
        Assert.Single(Directory.EnumerateFiles(Path.Combine(site, "chassis")));
        Assert.Single(Directory.EnumerateFiles(Path.Combine(site, "donor")));
        Assert.Contains("href=\"", File.ReadAllText(Path.Combine(site, "guide", "first-car", "first-engine.html")), StringComparison.Ordinal);

        // Installed once, the tool needs nothing of the repository: it goes on working in an empty folder when that is gone.
        using var elsewhere = new TemporaryFolder();
        Directory.Move(Path.Combine(clone.Path, "out", "tools"), Path.Combine(elsewhere.Path, "tools"));
        Array.ForEach(["generator", "schema", "site-template", "base-template"], part => Directory.Delete(Path.Combine(clone.Path, part), recursive: true));
        var (again, text) = NewcomersShell.Run(elsewhere.Path, "tools/swapwright draft base kb --title 'Elsewhere' && cd kb && ../tools/swapwright check && ../tools/swapwright site");
        Assert.True(again == 0, text);
        Assert.Contains("0 errors, 0 warnings, 0 notes.", text, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(elsewhere.Path, "kb", "out", "site", "assets", "site.css")));
    }

    private static TemporaryFolder Clone()
    {
        var clone = new TemporaryFolder();
        var root = Reading.Repository();
        foreach (var part in s_parts)
        {
            var path = Path.Combine(root, part);
            var files = File.Exists(path) ? [path] : Directory.EnumerateFiles(path, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None });
            foreach (var file in files.Select(file => Path.GetRelativePath(root, file)).Where(file => !Made().IsMatch(file)))
            {
                var target = Path.Combine(clone.Path, file);
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.Copy(Path.Combine(root, file), target);
            }
        }

        return clone;
    }

    [GeneratedRegex("^## Your own base in five commands\n\n```sh\n(?<body>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Block();

    [GeneratedRegex("^generator/(bin|obj)/", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Made();
}
