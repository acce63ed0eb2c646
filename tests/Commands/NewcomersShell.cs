using System.Diagnostics;

namespace Swapwright.Tests.Commands;

/// <summary>A shell in which a newcomer types what a text tells: nothing of the test run's own settings reaches it.</summary>
internal static class NewcomersShell
{
    /// <param name="settings">Variables that the newcomer has not either, but that change no outcome.</param>
    public static (int Exit, string Output) Run(string folder, string script, params (string Name, string Value)[] settings)
    {
        var start = new ProcessStartInfo("bash", ["-c", script]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true };

        // The test host's own settings would steer a build that is started from it.
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList())
        {
            start.Environment.Remove(name);
        }

        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(5)), script);
        return (process.ExitCode, output + error.GetAwaiter().GetResult());
    }
}
