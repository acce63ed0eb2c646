using System.ComponentModel;
using Spectre.Console.Cli;
using Swapwright.Reports;
using Swapwright.Sheets;

namespace Swapwright.Commands;

/// <summary><c>swapwright sheet</c>: everything for one combination.</summary>
internal sealed class SheetCommand : Command<SheetCommand.Settings>
{
    internal sealed class Settings : CombinationSettings
    {
        [CommandArgument(2, "[choice=option]")]
        [Description("What you decided; the rest follows the recommendations.")]
        public string[] Choices { get; init; } = [];

        [CommandOption("--as <FORM>")]
        [Description("text, markdown, json or csv.")]
        [DefaultValue("text")]
        public string As { get; init; } = "text";

        [CommandOption("--part <PART>")]
        [Description("One part of the JSON form, such as answers, belts, wiring, hoses, gearing, effort or cautions; with --as csv belts, wiring (the cutting list), hoses, effort (hours and money line by line) or one of the worksheets that end in numbers.")]
        public string? Part { get; init; }

        [CommandOption("--to <FILE>")]
        [Description("Write the sheet there in place of the terminal.")]
        public string? To { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        CombinationArguments.Know(["text", "markdown", "json", "csv"], settings.As, "form of sheet");
        if (settings.Part is { } part)
        {
            CombinationArguments.Know(SheetJson.PartNames, part, "part of the sheet");
            if (settings.As != "json" && !(settings.As == "csv" && SheetTables.Names.Contains(part)))
            {
                throw new ArgumentProblemException($"`--part {part}` goes with `--as json`{(SheetTables.Names.Contains(part) ? " or `--as csv`" : "")}");
            }
        }

        var proof = Loading.Load(settings.Folder, examine: false, cancellationToken);
        if (proof.Resolution is not { } resolution)
        {
            new CheckText(Terminal.Error, proof, settings.Folder).Write();
            return Exit.ErrorsFound;
        }

        var sheet = new SheetBuilder(resolution, many: false).Build(CombinationArguments.Read(resolution, settings.Chassis, settings.Donor, settings.Choices));
        var forced = Forced.By(resolution, settings.Chassis, settings.Donor, CombinationArguments.Decided(settings.Choices));
        var lines = new SheetLines(sheet, resolution, forced);
        Terminal.Deliver(settings.As switch
        {
            "json" => new SheetJson(sheet, resolution, forced).Write(settings.Part),
            "csv" => settings.Part is { } table ? SheetTables.Csv(sheet, table, resolution.Space.Base.Settings.Currency) : lines.Csv(),
            "markdown" => lines.Markdown(),
            _ => lines.Text(),
        }, settings.To);
        return sheet.Buildable ? Exit.Sound : Exit.ErrorsFound;
    }
}
