using System.ComponentModel;
using System.Globalization;
using Spectre.Console.Cli;
using Swapwright.Reports;
using Swapwright.Site;

namespace Swapwright.Commands;

/// <summary><c>swapwright check</c>: loads, validates, proves; prints findings.</summary>
internal sealed class CheckCommand : Command<CheckCommand.Settings>
{
    internal sealed class Settings : KnowledgeSettings
    {
        [CommandOption("--report <FORM>")]
        [Description("text, markdown, json or sarif.")]
        [DefaultValue("text")]
        public string Report { get; init; } = "text";

        [CommandOption("--to <FILE>")]
        [Description("Write the report there in place of the terminal.")]
        public string? To { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        CombinationArguments.Know(["text", "markdown", "json", "sarif"], settings.Report, "form of report");
        var proof = Loading.Load(settings.Folder, examine: true, cancellationToken);

        // Reports for others name files from the root of their repository: a path of this machine is none of their business.
        var shared = Path.IsPathRooted(settings.Folder) ? "" : settings.Folder;
        switch (settings.Report)
        {
            case "json":
                Terminal.Deliver(CheckJson.Write(proof), settings.To);
                break;
            case "sarif":
                Terminal.Deliver(CheckSarif.Write(proof, shared, kind => SitePaths.Address(proof.Base.Settings.BaseAddress, SitePaths.Finding(kind.Id))), settings.To);
                break;
            case "markdown":
                Terminal.Deliver(new CheckMarkdown(proof, shared).Write(), settings.To);
                break;
            default:
                if (settings.To is null)
                {
                    new CheckText(Terminal.Out, proof, settings.Folder).Write();
                }
                else
                {
                    using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
                    new CheckText(Terminal.Plain(text), proof, settings.Folder).Write();
                    Terminal.Deliver(text.ToString(), settings.To);
                }

                break;
        }

        return proof.HasErrors ? Exit.ErrorsFound : Exit.Sound;
    }
}
