using System.Text;
using Spectre.Console;

namespace Swapwright.Commands;

/// <summary>Where commands write: colour only on a terminal that wants it (NO_COLOR), lines unbroken in a file or pipe.</summary>
internal static class Terminal
{
    public static IAnsiConsole Out { get; } = Console(System.Console.Out, System.Console.IsOutputRedirected);

    public static IAnsiConsole Error { get; } = Console(System.Console.Error, System.Console.IsErrorRedirected);

    /// <summary>A console that writes plain text, for reports sent to a file.</summary>
    public static IAnsiConsole Plain(TextWriter writer) => Console(writer, redirected: true);

    private static IAnsiConsole Console(TextWriter writer, bool redirected)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = redirected ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = redirected || Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 } ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
        });
        if (redirected)
        {
            console.Profile.Width = int.MaxValue / 4;
        }

        return console;
    }

    /// <summary>Writes a report to a file as UTF-8 with LF, or to standard output.</summary>
    /// <exception cref="ArgumentProblemException">The file cannot be written.</exception>
    public static void Deliver(string text, string? file)
    {
        if (file is null)
        {
            System.Console.Out.Write(text);
            return;
        }

        try
        {
            File.WriteAllText(file, text, new UTF8Encoding(false));
        }
        catch (Exception problem) when (problem is UnauthorizedAccessException or IOException)
        {
            throw new ArgumentProblemException($"`{file}` cannot be written: {problem.Message}");
        }
    }
}
