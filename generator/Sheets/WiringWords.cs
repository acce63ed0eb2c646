using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Sheets;

/// <summary>The words of the wiring worksheet, as data and pages give them.</summary>
public static class WiringWords
{
    public static string Outcome(PlugOutcome outcome) => outcome switch
    {
        PlugOutcome.StraightIn => "straight-in",
        PlugOutcome.Extended => "extended",
        PlugOutcome.RePinned => "re-pinned",
        PlugOutcome.Changed => "changed",
        PlugOutcome.Lead => "lead",
        PlugOutcome.Added => "added",
        _ => "capped",
    };

    public static string Action(WireAction action) => action switch
    {
        WireAction.Stays => "stays",
        WireAction.Moves => "moves",
        WireAction.Runs => "runs",
        WireAction.Joins => "joins",
        WireAction.TakesOver => "takes-over",
        WireAction.Screen => "screen",
        WireAction.Empty => "empty",
        _ => "unreached",
    };

    public static string Purpose(WirePurpose purpose) => purpose switch
    {
        WirePurpose.Extension => "lengthens",
        WirePurpose.Renewal => "renews",
        WirePurpose.EcuAdapter => "ecu-adapter",
        WirePurpose.BodyAdapter => "bulkhead-adapter",
        _ => "new",
    };

    /// <summary>What a piece is for, as on a cut list; one that goes on where a wire was cut out of a plug lengthens that.</summary>
    public static string Purpose(WiringSheet sheet, WireRun run) => Joints.Lengthens(sheet, run) ? "lengthens" : Purpose(run.Purpose);

    public static string Reason(ConductorReason reason) => reason switch
    {
        ConductorReason.Current => "current",
        ConductorReason.Fuse => "fuse",
        ConductorReason.Drop => "drop",
        _ => "mechanical",
    };

    /// <summary>Why a wire has its size, in a few words.</summary>
    public static string Why(ConductorChoice choice)
    {
        var reason = choice.Reason switch
        {
            ConductorReason.Current => string.Create(CultureInfo.InvariantCulture, $"its current asks for {choice.NeededMm2:0.##} mm²"),
            ConductorReason.Fuse => string.Create(CultureInfo.InvariantCulture, $"its {choice.For.FuseA:0.#} A fuse asks for {choice.NeededMm2:0.##} mm²"),
            ConductorReason.Drop => string.Create(CultureInfo.InvariantCulture, $"voltage drop asks for {choice.NeededMm2:0.##} mm²"),
            _ => string.Create(CultureInfo.InvariantCulture, $"mechanical minimum {choice.NeededMm2:0.##} mm²"),
        };
        return choice.SizeMm2 > Math.Max(choice.NeededMm2, choice.For.AskedMm2) ? string.Create(CultureInfo.InvariantCulture, $"{reason}; screened wire is sold in {choice.SizeMm2:0.##} mm²")
            : choice.SizeMm2 > choice.NeededMm2 ? $"{reason}; the wire that it belongs to is thicker" : reason;
    }

    public static string Good(WiringGood good) => good switch
    {
        WiringGood.ScreenedWire => "screened-wire",
        WiringGood.TwistedPair => "twisted-pair",
        WiringGood.ScreenedPair => "screened-pair",
        WiringGood.Terminal => "terminal",
        WiringGood.Seal => "seal",
        WiringGood.BlankingPlug => "blanking-plug",
        WiringGood.Splice => "splice",
        WiringGood.HeatShrink => "heat-shrink",
        WiringGood.Housing => "housing",
        WiringGood.Relay => "relay",
        WiringGood.RelayBase => "relay-base",
        WiringGood.FuseHolder => "fuse-holder",
        WiringGood.WireCap => "wire-cap",
        _ => "wire",
    };

    /// <summary>A terminal's id as it is spoken: <c>blade-2-8</c> is "blade 2.8", after its family and width.</summary>
    public static string Terminal(string id)
    {
        var words = id.Split('-');
        return words is [.., var whole, var tenth] && whole.All(char.IsAsciiDigit) && tenth.All(char.IsAsciiDigit) ? $"{string.Join(' ', words[..^2])} {whole}.{tenth}" : id.Replace('-', ' ');
    }

    public static string Joint(JointKind kind) => kind == JointKind.InLine ? "in-line" : "branch";

    public static string Loose(LooseAction action) => action switch
    {
        LooseAction.Cap => "cap",
        LooseAction.CutOut => "cut-out",
        LooseAction.RunNew => "run-new",
        LooseAction.FeedFrom => "feed-from",
        LooseAction.LeaveOff => "leave-off",
        _ => "missing",
    };

    public static string Kind(SignalKind kind) => kind switch
    {
        SignalKind.SensorSupply => "sensor-supply",
        SignalKind.SensorGround => "sensor-ground",
        SignalKind.LowSide => "low-side",
        _ => kind.ToString().ToLowerInvariant(),
    };

    /// <summary>What is to be known of a screened wire.</summary>
    public const string Screen = "screened: carry the screen on, ground it at the ECU's end only";

    /// <summary>What is to be known of a wire of a twisted pair.</summary>
    /// <param name="number">The other wire's number on the cut list.</param>
    public static string Twisted(int number) => string.Create(CultureInfo.InvariantCulture, $"twisted with No. {number} over the whole length");

    /// <summary>What is to be known of one of two wires under one screen.</summary>
    public static string ScreenedWith(int number) => string.Create(CultureInfo.InvariantCulture, $"under one screen with No. {number}: carry the screen on, ground it at the ECU's end only");

    /// <summary>Ends whose terminals are not made for the piece; empty where all are.</summary>
    public static string Beyond(WiringSheet sheet, WireRun run) => string.Join("; ", TerminalRange.Beyond(sheet, run).GroupBy(one => (one.FromMm2, one.ToMm2)).Select(alike => string.Create(
        CultureInfo.InvariantCulture,
        $"terminals at {string.Join(" and ", alike.Select(one => $"{sheet.Data?.TitleOf(one.End.Place) ?? one.End.Place}, {one.End.Cavity}"))} take {alike.Key.FromMm2:0.##} to {alike.Key.ToMm2:0.##} mm²: look for one of the family that takes this wire, or join on a short tail that goes in and fuse by the tail")));

    /// <summary>Where a piece comes from that is not cut.</summary>
    public static string Uncut(WiringSheet sheet, WireRun run) => run switch
    {
        { Lead: { } lead } => string.Create(CultureInfo.InvariantCulture, $"comes with: {lead.Title}; wants {run.LengthMm:#,0} mm of it"),
        { ScreenOf: { } wire } => string.Create(CultureInfo.InvariantCulture, $"the screen of No. {Number(sheet, wire)}, not a wire of its own"),
        _ => "",
    };

    /// <summary>A piece's number on the cutting list, from 1; 0 for what is not on it.</summary>
    public static int Number(WiringSheet sheet, string label) => sheet.Bill.Listed.Select((cut, at) => (cut.Label, Number: at + 1)).FirstOrDefault(cut => cut.Label == label).Number;

    /// <summary>A fuse in words.</summary>
    public static string Fuse(FuseAdvice fuse) => fuse.FuseA is not { } amps
        ? string.Create(CultureInfo.InvariantCulture, $"{fuse.Title}: {fuse.CurrentA:0.##} A is more than a blade fuse stands; use a bolted one and a cable to match.")
        : fuse.SizeStandsA < amps
            ? string.Create(CultureInfo.InvariantCulture, $"{fuse.Title}: {fuse.CurrentA:0.##} A asks for a {amps:0.#} A blade fuse, and a wire of {fuse.SizeMm2:0.##} mm² stands behind {fuse.SizeStandsA:0.#} A only: take a thicker wire.")
            : string.Create(CultureInfo.InvariantCulture, $"{fuse.Title}: a {amps:0.#} A blade fuse in its new feed, close to where that leaves its source. {fuse.CurrentA:0.##} A flow{(fuse.ColdA is null ? "" : string.Create(CultureInfo.InvariantCulture, $", {fuse.ColdA:0.##} A while it is cold"))}, and the wire of {fuse.SizeMm2:0.##} mm² stands behind up to {fuse.SizeStandsA:0.#} A.");

    /// <summary>A relay in words.</summary>
    public static string Relay(RelayAdvice relay) => string.Create(
        CultureInfo.InvariantCulture,
        $"{relay.Title}: a relay, its coil on the ECU's output. The load draws {relay.CurrentA:0.##} A, and an output of {relay.Ecu} switches {relay.LimitA:0.##} A{(relay.ByRule ? " by the rule of this base, since nobody has said better" : "")}.");

    /// <summary>What to do where new feeds ask more of a wire than it carries.</summary>
    /// <param name="number">Number of the relay on the cutting list.</param>
    internal static string Shared(SharedFeed feed, WiringData data, int number)
    {
        var sum = string.Create(CultureInfo.InvariantCulture, $"{feed.Title}: {string.Join(", ", feed.Members)} would hang on the wire of {feed.SizeMm2:0.##} mm² at {data.TitleOf(feed.Place)}, {feed.Cavity} with {feed.CurrentA:0.#} A, and it carries {feed.CarriesA:0.#} A.");
        return feed is { FuseA: { } fuse, FeedMm2: { } size }
            ? string.Create(CultureInfo.InvariantCulture, $"{sum} Give them a relay with its coil on that wire, added relay {number} of the cutting list, and feed its contact 30 from {data.BatteryTitle} with {size:0.##} mm² over a {fuse:0.#} A fuse as close to its terminal as it goes{(data.Battery is null ? "; measure that wire on the car" : "")}.")
            : $"{sum} Share them out between relays of their own, each fed from {data.BatteryTitle} over a fuse.";
    }

    /// <summary>What to know of a thick feed that is spliced to a thinner wire.</summary>
    /// <param name="at">The place in a reader's words.</param>
    public static string Thin(ThinFeed feed, string at)
    {
        var wires = string.Create(CultureInfo.InvariantCulture, $"{feed.Title}: the {feed.NewMm2:0.##} mm² of {InSentence.Lower(feed.Device)} end at the harness's wire of {feed.SizeMm2:0.##} mm² ({at}, {feed.Cavity}), and from that splice on the thinner wire carries the current.");
        var fuse = feed.FuseA > 0
            ? string.Create(CultureInfo.InvariantCulture, $"Fuse the feed for it, with {feed.FuseA:0.#} A at the most.")
            : "No blade fuse is small enough to guard it.";
        return feed.CurrentA > feed.CarriesA
            ? string.Create(CultureInfo.InvariantCulture, $"{wires} It carries {feed.CarriesA:0.#} A, and {feed.CurrentA:0.#} A may flow with everything on: lead the thick wire on into the loom to where the loads branch off, or give those that draw most a feed and a fuse of their own. {fuse}")
            : string.Create(CultureInfo.InvariantCulture, $"{wires} It carries {feed.CarriesA:0.#} A, and {feed.CurrentA:0.#} A may flow. {fuse}");
    }

    /// <summary>What to do where more hangs behind a wire at the bulkhead than it carries.</summary>
    internal static string Bulkhead(BulkheadFeed feed, WiringData data)
    {
        var sum = string.Create(CultureInfo.InvariantCulture, $"{feed.Title}: {feed.CurrentA:0.#} A hang behind the bulkhead plug with everything on that stays on, and the wires of {feed.SizeMm2:0.##} mm² there (cabin {feed.CabinCavity}, harness {feed.HarnessCavity}) carry {feed.CarriesA:0.#} A.");
        var loads = string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", feed.Moved)} ({feed.MovedA:0.#} A)");
        return feed is { FuseA: { } fuse, FeedMm2: { } size }
            ? string.Create(CultureInfo.InvariantCulture, $"{sum} Feed {loads} over a relay instead: its coil on this wire, its contact 30 fed from {data.BatteryTitle} with {size:0.##} mm² over a {fuse:0.#} A fuse.")
            : $"{sum} Share {loads} out between relays instead: their coils on this wire, each contact fed from {data.BatteryTitle} over a fuse.";
    }

    public static string End(WireEndKind kind) => kind switch
    {
        WireEndKind.Terminal => "terminal",
        WireEndKind.Splice => "splice",
        WireEndKind.Ring => "ring",
        _ => "counterpart",
    };

    public static string Action(AdapterAction action) => action switch
    {
        AdapterAction.Join => "join",
        AdapterAction.AddWire => "add-wire",
        AdapterAction.Cap => "cap",
        AdapterAction.Branch => "branch",
        _ => "missing",
    };
}
