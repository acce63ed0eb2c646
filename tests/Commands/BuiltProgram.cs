using System.Diagnostics;
using Swapwright.Reports;

namespace Swapwright.Tests.Commands;

/// <summary>What a run of the program left behind.</summary>
internal sealed record Run(int Exit, string Output, string Error);

/// <summary>The built program, run as a reader runs it.</summary>
internal static class BuiltProgram
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    public static Run Run(string folder, params string[] arguments) => Run(folder, new Dictionary<string, string>(StringComparer.Ordinal), arguments);

    /// <param name="environment">Variables that are other than this process has them.</param>
    public static Run Run(string folder, IReadOnlyDictionary<string, string> environment, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.ChangeExtension(typeof(Product).Assembly.Location, ".dll"), .. arguments])
        {
            WorkingDirectory = folder,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };

        // A terminal that could show colours: they must stay away because the output is no terminal.
        start.Environment["TERM"] = "xterm-256color";
        start.Environment["COLORTERM"] = "truecolor";
        start.Environment.Remove("NO_COLOR");
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill();
            Assert.Fail("the program does not end");
        }

        var run = new Run(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
        Assert.DoesNotContain('\u001B', run.Output + run.Error);
        Assert.DoesNotContain("   at Swapwright.", run.Output + run.Error, StringComparison.Ordinal);
        return run;
    }
}
