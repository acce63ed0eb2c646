using Spectre.Console;
using Spectre.Console.Cli;
using Spectre.Console.Cli.Help;
using Spectre.Console.Rendering;

namespace Swapwright.Commands;

/// <summary>The usual help, and below it what the exit code says: whoever writes a script asks for nothing else.</summary>
internal sealed class HelpWithExits(ICommandAppSettings settings) : HelpProvider(settings)
{
    public override IEnumerable<IRenderable> GetFooter(ICommandModel model, ICommandInfo? command) =>
    [
        .. base.GetFooter(model, command),
        new Text($"\nEXIT CODES:\n{string.Join('\n', Codes(command?.Name).Select((means, code) => FormattableString.Invariant($"    {code}    {means}")))}\n"),
    ];

    private static IEnumerable<string> Codes(string? command) => command switch
    {
        "check" => ["No error; there may be warnings and notes", "Errors were found", CouldNotRun],
        "site" => ["The site was rendered", "The base or a template has errors; an earlier site is left as it was", CouldNotRun],
        "sheet" or "why" => ["It was told; `check` says whether the base agrees with itself", "The combination cannot be built, or the base has errors that leave no space to look into", CouldNotRun],
        "impact" => ["Nothing changes for readers", "Something changes", "One of the two bases has errors, or it could not run: a wrong argument, a folder or file that cannot be read or written"],
        "draft" => ["It was written or printed", "Nothing was written: what was asked for would not fit the base", CouldNotRun],
        "register" => ["The register names everything", "The register cannot be read; it is left as it was", CouldNotRun],
        "preview" or "schema" => ["It ended as asked", "Not used", CouldNotRun],
        _ => ["All is well", "Errors were found, or the combination cannot be built; impact: something changes", CouldNotRun],
    };

    private const string CouldNotRun = "Could not run: a wrong argument, a folder or file that cannot be read or written";
}
