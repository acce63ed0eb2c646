using System.ComponentModel;
using Spectre.Console.Cli;
using Swapwright.Reports;
using Swapwright.Sheets;

namespace Swapwright.Commands;

/// <summary><c>swapwright why</c>: the rules behind one answer.</summary>
internal sealed class WhyCommand : Command<WhyCommand.Settings>
{
    internal sealed class Settings : CombinationSettings
    {
        [CommandArgument(2, "<POSITION>")]
        [Description("What you decided (choice=option ...), then the position or the signal you ask about.")]
        public string[] Rest { get; init; } = [];

        [CommandOption("--as <FORM>")]
        [Description("text or json.")]
        [DefaultValue("text")]
        public string As { get; init; } = "text";
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        CombinationArguments.Know(["text", "json"], settings.As, "form of report");
        var proof = Loading.Load(settings.Folder, examine: false, cancellationToken);
        if (proof.Resolution is not { } resolution)
        {
            new CheckText(Terminal.Error, proof, settings.Folder).Write();
            return Exit.ErrorsFound;
        }

        if (settings.Rest.Length == 0 || settings.Rest[^1].Contains('=', StringComparison.Ordinal))
        {
            throw new ArgumentProblemException("name the position last, as in `swapwright why CHASSIS DONOR gearbox=keep radiator`");
        }

        var position = settings.Rest[^1];
        var isSignal = SignalReport.Covers(proof.Base, position);
        CombinationArguments.Know(isSignal ? [position] : proof.Base.Positions.Ids, position, "position");
        var sheet = new SheetBuilder(resolution, many: false).Build(CombinationArguments.Read(resolution, settings.Chassis, settings.Donor, settings.Rest[..^1]));
        if (isSignal)
        {
            var way = new SignalReport(sheet, resolution, position, Forced.By(resolution, settings.Chassis, settings.Donor, CombinationArguments.Decided(settings.Rest[..^1])));
            Terminal.Deliver(settings.As == "json" ? way.Json() : way.Text(), null);
            return sheet.Buildable ? Exit.Sound : Exit.ErrorsFound;
        }

        var report = new WhyReport(sheet, resolution, proof.Words!, position, Forced.By(resolution, settings.Chassis, settings.Donor, CombinationArguments.Decided(settings.Rest[..^1])));
        Terminal.Deliver(settings.As == "json" ? report.Json() : report.Text(), null);
        return sheet.Buildable ? Exit.Sound : Exit.ErrorsFound;
    }
}
