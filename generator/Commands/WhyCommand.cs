using System.ComponentModel;
using Spectre.Console.Cli;
using Swapwright.Reports;
using Swapwright.Sheets;

namespace Swapwright.Commands;

/// <summary><c>swapwright why</c>: the rules behind one answer, or how a number was got.</summary>
internal sealed class WhyCommand : Command<WhyCommand.Settings>
{
    internal sealed class Settings : CombinationSettings
    {
        [CommandArgument(2, "<POSITION>")]
        [Description("What you decided (choice=option ...), then what you ask about: a position, a signal, a worksheet (belt, wiring, hoses, gearing, load, fuel, torques or effort), or one number of it such as gearing.top-speed.")]
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
            throw new ArgumentProblemException("name the position, the signal or the worksheet last, as in `swapwright why CHASSIS DONOR gearbox=keep radiator`");
        }

        var asked = settings.Rest[^1];
        var isLedger = !proof.Base.Positions.Has(asked) && Workings.Ids.Contains(Workings.IdOf(asked.Split('.')[0]));
        var isSignal = !isLedger && SignalReport.Covers(proof.Base, asked);
        if (!isLedger && !isSignal)
        {
            CombinationArguments.Know(proof.Base.Positions.Ids.Concat(Workings.Ids), asked, "position, signal or worksheet");
        }

        var sheet = new SheetBuilder(resolution, many: false).Build(CombinationArguments.Read(resolution, settings.Chassis, settings.Donor, settings.Rest[..^1]));
        var forced = Forced.By(resolution, settings.Chassis, settings.Donor, CombinationArguments.Decided(settings.Rest[..^1]));
        var isJson = settings.As == "json";
        if (isLedger)
        {
            var report = new WhyLedgerReport(sheet, resolution, asked, forced);
            if (report.Figure is { } figure)
            {
                CombinationArguments.Know(report.Known, figure, $"number of `{report.LedgerId}` in this combination");
            }

            Terminal.Deliver(isJson ? report.Json() : report.Text(), null);
        }
        else if (isSignal)
        {
            var way = new SignalReport(sheet, resolution, asked, forced);
            Terminal.Deliver(isJson ? way.Json() : way.Text(), null);
        }
        else
        {
            var report = new WhyReport(sheet, resolution, proof.Words!, asked, forced);
            Terminal.Deliver(isJson ? report.Json() : report.Text(), null);
        }

        return sheet.Buildable ? Exit.Sound : Exit.ErrorsFound;
    }
}
