using System.Diagnostics;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Commands;

/// <summary>The package as somebody installs it. Slow: it packs, installs and runs; <c>--filter Speed!=Slow</c> leaves it out.</summary>
[Trait("Speed", "Slow")]
public sealed class PackageTests
{
    [Fact]
    public void Tool_InstalledFromAFolder_DraftsChecksAndRenders()
    {
        using var work = new TemporaryFolder();
        var packages = Path.Combine(work.Path, "packages");
        // What the build made is packed as it is; a build here would fight with the one that runs the tests.
        Run(Reading.Repository(), "dotnet", "pack", "generator", "-c", "Release", "--no-build", "-o", packages);
        var tools = Path.Combine(work.Path, "tools");
        Run(work.Path, "dotnet", "tool", "install", "Swapwright", "--tool-path", tools, "--source", packages, "--no-cache");

        var tool = Path.Combine(tools, "swapwright");
        var folder = Path.Combine(work.Path, "empty");
        Directory.CreateDirectory(folder);
        Run(folder, tool, "draft", "base", "ours", "--title", "Our swaps");
        Assert.Contains("0 errors, 0 warnings, 0 notes.", Run(Path.Combine(folder, "ours"), tool, "check"), StringComparison.Ordinal);
        Run(Path.Combine(folder, "ours"), tool, "site");
        Assert.Contains("Our swaps", File.ReadAllText(Path.Combine(folder, "ours/out/site/index.html")), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder, "ours/out/site/assets/site.css")));
    }

    private static string Run(string folder, string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        // The test host's own settings would steer a build that is started from it.
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList())
        {
            start.Environment.Remove(name);
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(5)), "it does not end");
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)}\n{output}{error.GetAwaiter().GetResult()}");
        return output;
    }
}
