using System.ComponentModel;
using System.Globalization;
using Spectre.Console;
using Spectre.Console.Cli;
using Swapwright.Drafting;
using Swapwright.Reports;

namespace Swapwright.Commands;

/// <summary><c>swapwright schema</c>: the schemas for the editor, with the ids that the base has now.</summary>
internal sealed class SchemaCommand : Command<SchemaCommand.Settings>
{
    internal sealed class Settings : KnowledgeSettings
    {
        [CommandOption("--to <FOLDER>")]
        [Description("Folder of the schemas: new, empty, or made by an earlier run. Left out: `schema` beside the base.")]
        public string? To { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var kb = Loading.Load(settings.Folder, examine: false, cancellationToken).Base;
        var target = settings.To ?? Path.Combine(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(settings.Folder)))!, "schema");
        try
        {
            var count = EditorSchemas.Write(kb, target);
            Terminal.Out.MarkupLine(PlainText.Markup(string.Create(CultureInfo.InvariantCulture, $"{count} schemas in {settings.To ?? target}")));
            return Exit.Sound;
        }
        catch (DraftProblemException problem)
        {
            throw new ArgumentProblemException(problem.Message);
        }
    }
}
