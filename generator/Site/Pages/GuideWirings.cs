using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Site.Pages;

/// <summary>The wiring of a guide's recommended combination.</summary>
internal static class GuideWirings
{
    /// <summary>The plugs that there is work on.</summary>
    public static GuideWiring? Of(SiteKnowledge site, Sheet sheet) => sheet.Wiring is not { } wiring
        ? null
        : new GuideWiring(
            Counts(sheet),
            [
                .. InOrder(wiring).Where(IsWork).Select(plug => new GuidePlug(
                    plug.Title,
                    Action(plug),
                    string.Join("; ", Details(site, plug, site.ConnectorLink(plug.DeviceConnector ?? plug.HarnessConnector)?.Text)))),
            ]);

    public static WiringBench? Bench(SiteKnowledge site, Sheet sheet) => sheet.Wiring is { } wiring ? Bench(site, sheet, wiring) : null;

    /// <summary>Plugs by what they need, for the summary.</summary>
    public static ImmutableArray<NamedCount> Counts(Sheet sheet) => sheet.Wiring?.Counts is not { } counts
        ? []
        :
        [
            .. new NamedCount[]
            {
                new("straight in", counts.StraightIn),
                new("re-pinned", counts.RePinned),
                new(counts.Changed == 1 ? "plug changed" : "plugs changed", counts.Changed),
                new("by an adapter lead", counts.Lead),
                new(counts.Added == 1 ? "plug added" : "plugs added", counts.Added),
                new("lengthened only", counts.ExtendedOnly),
                new("capped", counts.Capped),
            }.Where(count => count.Count > 0),
        ];

    private static WiringBench Bench(SiteKnowledge site, Sheet sheet, WiringSheet wiring) => new()
    {
        Counts = Counts(sheet),
        Devices = [.. InOrder(wiring).Select((plug, at) => Device(site, wiring, plug, Number(at + 1)))],
        Plan = new HtmlString(BayPlan.Svg(wiring, [.. InOrder(wiring)], "plan")),
        Cuts = [.. wiring.Bill.Listed.Select((cut, at) => Cut(site, wiring, cut, at))],
        Sizing = wiring.Runs.Any(run => run.Conductor is not null)
            ? $"Each size is the smallest of 0.5, 0.75, 1, 1.5, 2.5, 4, 6 and 10 mm² that carries the current, loses no more than {SiteKnowledge.Number(site.Base.Settings.Wiring.AllowedDropV)} V with its conductor at {SiteKnowledge.Number(site.Base.Settings.Wiring.ConductorCelsius)} °C (greatest resistance by IEC 60228, class 5) and is no thinner than {SiteKnowledge.Number(site.Base.Settings.Wiring.LeastMm2)} mm²; a wire that is thicker already keeps its size."
            : "",
        Protection = [.. LoadProtection.Fuses(wiring).Select(Fuse), .. LoadProtection.Relays(wiring).Select(relay => new GuideProtection(WiringWords.Relay(relay))), .. wiring.Overloads.Select((feed, at) => new GuideProtection(WiringWords.Shared(feed, wiring.Data!, at + 1))), .. wiring.BulkheadFeeds.Select(feed => new GuideProtection(WiringWords.Bulkhead(feed, wiring.Data!))), .. ThinFeeds.Of(wiring).Select(feed => new GuideProtection(WiringWords.Thin(feed, wiring.Data!.TitleOf(feed.Place))))],
        Joints =
        [
            .. Joints.Splices(wiring).Select(joint => new GuideJoint(
                joint.Kind == JointKind.InLine ? "end to end" : "onto a wire that goes on",
                joint.SizeMm2 == joint.OtherMm2 ? Size(joint.SizeMm2) : $"{Size(joint.SizeMm2)} with {Size(joint.OtherMm2)}",
                Number(joint.Count),
                joint.SleeveMm is { } sleeve ? $"{SiteKnowledge.Number(sleeve, "0.#")} mm" : "wrap by hand",
                Millimetres(joint.SleeveLengthMm))),
        ],
        Grounds = [.. GroundGroups.Of(wiring).Select(group => Ground(site, group))],
        Loose = [.. LooseEnds.Of(wiring).Select(end => Loose(wiring, end))],
        Wire = [.. wiring.Bill.Wire.Select(line => new GuideWireTotal(new Models.WireColour(line.Colour), SiteKnowledge.Number(line.SizeMm2, "0.##"), Metres(line.LengthMm), line.Pieces) { Screened = line.Screened })],
        Terminals =
        [
            .. Joints.Terminals(wiring).Select(line => new GuideTerminal(
                WiringWords.Terminal(line.Terminal),
                SiteKnowledge.Number(line.SizeMm2, "0.##"),
                line.Count,
                site.Base.Connectors.Find(line.Connector) is { Sealed: true } ? Number(line.Count) : "none",
                site.Base.Connectors.Find(line.Connector)?.Title ?? (line.Connector == Places.RelayBase ? "Base of an added relay" : "Under a screw"))),
        ],
        Consumables =
        [
            new("Splices", Number(wiring.Bill.Splices)),
            new("Heat-shrink sleeves", Number(wiring.Bill.HeatShrink)),
            new("Blanking plugs", Number(wiring.Bill.BlankingPlugs)),
            new("Caps for wire ends", Number(wiring.Bill.Caps)),
            .. wiring.Bill.Housings.Select(line => new NamedValue($"New housing: {site.Base.Connectors.Find(line.Name)?.Title ?? line.Name}", Number(line.Count))),
            .. wiring.Bill.Counterparts.Select(line => new NamedValue($"Counterpart for the adapter: {site.Base.Connectors.Find(line.Name)?.Title ?? line.Name}", Number(line.Count))),
        ],
        Signals = [.. wiring.Needs.Select(need => Supply(site, wiring, need))],
        Adapter = Adapter(site, wiring),
    };

    private static IEnumerable<PlugWork> InOrder(WiringSheet wiring) => wiring.Plugs.OrderBy(plug => Rank(plug.Outcome)).ThenBy(plug => plug.Title, StringComparer.Ordinal);

    private static GuideDevice Device(SiteKnowledge site, WiringSheet wiring, PlugWork plug, string number) => new()
    {
        Title = plug.Title,
        Face = IsWork(plug) && site.Base.Connectors.Find(plug.DeviceConnector ?? "") is { } connector
            ? new HtmlString(ConnectorFace.Svg($"face-{number}", connector.Title, connector.Rows, plug.Wires.Where(wire => wire.Action is not (WireAction.Unreached or WireAction.Empty)).DistinctBy(wire => wire.Cavity).ToDictionary(wire => wire.Cavity, wire => wire.Colour, StringComparer.Ordinal)))
            : HtmlString.Empty,
        Wires = IsWork(plug) ? new HtmlString(DeviceDrawing.Svg(wiring, plug, $"wires-{number}")) : HtmlString.Empty,
        Connector = site.ConnectorLink(plug.DeviceConnector ?? plug.HarnessConnector),
        Action = Action(plug),
        Detail = string.Join("; ", Details(site, plug)),
        Weight = plug.Outcome switch
        {
            PlugOutcome.StraightIn => Weight.Good,
            PlugOutcome.Changed or PlugOutcome.Added => Weight.Caution,
            _ => Weight.Plain,
        },
        IsOpen = IsWork(plug),
        Pins = plug.Outcome == PlugOutcome.Capped
            ? []
            : [.. plug.Wires.Select(wire => new GuidePin(wire.Cavity, SignalTitle(site, wire.Signal), Wire(wiring, wire), new Models.WireColour(wire.Colour), Size(wire.SizeMm2)))],
    };

    private static bool IsWork(PlugWork plug) => plug.Outcome != PlugOutcome.StraightIn || plug.Extended;

    private static string Action(PlugWork plug) => plug.Outcome switch
    {
        PlugOutcome.StraightIn => "plugs straight in",
        PlugOutcome.Extended => "lengthen the wires",
        PlugOutcome.RePinned => "re-pin the plug",
        PlugOutcome.Changed => "change the plug",
        PlugOutcome.Lead => "fit the adapter lead",
        PlugOutcome.Added => "add a plug",
        _ => "cap: not fitted",
    };

    private static IEnumerable<string> Details(SiteKnowledge site, PlugWork plug, string? fitted = null)
    {
        if (plug.Capped.Where(wire => !wire.Takers.IsEmpty).Select(wire => wire.Cavity).ToList() is { Count: > 0 } cut)
        {
            yield return $"cut {string.Join(", ", cut)} out first";
        }

        if (plug.Wires.Any(wire => wire.IsRenewed))
        {
            yield return "renew the cable in one piece, a ring terminal at either end";
        }

        if (plug.Wires.Where(wire => !wire.IsRenewed).Select(wire => wire.ExtensionMm).DefaultIfEmpty(0).Max() is > 0 and var most)
        {
            yield return $"wires longer by {Millimetres(most)}";
        }

        if (plug.Outcome == PlugOutcome.Changed && site.ConnectorLink(plug.HarnessConnector) is { } old)
        {
            yield return $"cut off the {InSentence.Lower(old.Text)}, fit{(fitted is null ? ":" : $" the {InSentence.Lower(fitted)}")}";
        }

        if (plug is { Outcome: PlugOutcome.Lead, LeadPart: { } part })
        {
            yield return InSentence.Lower(site.Base.Parts.Find(part)?.Title ?? part);
        }
    }

    // What there is work on comes first, the heaviest work at the top; a plug that goes straight in is only to be ticked.
    private static int Rank(PlugOutcome outcome) => outcome switch
    {
        PlugOutcome.Changed => 0,
        PlugOutcome.Added => 1,
        PlugOutcome.RePinned => 2,
        PlugOutcome.Lead => 3,
        PlugOutcome.Extended => 4,
        PlugOutcome.Capped => 5,
        _ => 6,
    };

    private static string Wire(WiringSheet wiring, WireRow wire) => wire.Action switch
    {
        _ when Run(wiring, wire.Run) is { IsCut: false } run => WiringWords.Uncut(wiring, run),
        _ when wire.IsRenewed => "renew in one piece",
        WireAction.Stays => wire.ExtensionMm > 0 ? $"lengthen by {Millimetres(wire.ExtensionMm)}" : "",
        WireAction.Moves => $"from cavity {wire.FromCavity}{(wire.ExtensionMm > 0 ? $", lengthen by {Millimetres(wire.ExtensionMm)}" : "")}",
        WireAction.Runs => "new wire",
        WireAction.Joins => "new wire, spliced to the nearest of this signal",
        WireAction.TakesOver => "from a wire that nothing takes any more",
        WireAction.Screen => "the screen of the old wires: draw it out, sleeve it",
        WireAction.Empty => "leave empty: the cabin has one of its own",
        _ => "nothing carries it: see the rules",
    };

    private static GuideWireCut Cut(SiteKnowledge site, WiringSheet wiring, CutPiece cut, int at)
    {
        var run = Run(wiring, cut.Label);
        return new GuideWireCut(
            Number(at + 1),
            new Models.WireColour(cut.Colour),
            SiteKnowledge.Number(cut.SizeMm2, "0.##"),
            run is { IsCut: false } ? "none" : SiteKnowledge.Number(cut.LengthMm),
            SignalTitle(site, cut.Signal),
            run is null ? "" : End(wiring, run, run.From),
            run is null ? "" : End(wiring, run, run.To),
            run?.Purpose switch
            {
                _ when run is { IsCut: false } => WiringWords.Uncut(wiring, run),
                _ when run is not null && Joints.Lengthens(wiring, run) => "lengthens a wire",
                WirePurpose.Extension => "lengthens a wire",
                WirePurpose.Renewal => "renews the cable; cut it by the old one",
                _ when run?.To.Place == Places.Battery && wiring.Data?.Battery is null => "new wire; reckoned to the bulkhead, measure it on the car before you cut it",
                WirePurpose.EcuAdapter => "ECU adapter",
                WirePurpose.BodyAdapter => "bulkhead adapter",
                _ => "new wire",
            },
            run?.Conductor is { } chosen ? SiteKnowledge.Number(chosen.For.CurrentA, "0.##") : "",
            run?.DropV is { } drop ? SiteKnowledge.Number(drop, "0.00") : "",
            run is null ? "" : string.Join("; ", new[] { run.Conductor is { } why ? WiringWords.Why(why) : "", WiringWords.Beyond(wiring, run) }.Where(words => words.Length > 0)),
            (run is { Lead: null }, run is null ? null : Beside(wiring, run)) switch
            {
                (true, { } twin) when run!.Shielded => WiringWords.ScreenedWith(twin),
                (true, null) when run!.Shielded => WiringWords.Screen,
                (_, { } twin) => WiringWords.Twisted(twin),
                _ => "",
            });
    }

    // On the cut list, from 1.
    private static int? Beside(WiringSheet wiring, WireRun run) => TwistedPairs.Beside(wiring, run) is { } twin
        ? WiringWords.Number(wiring, twin.Label)
        : null;

    private static WireRun? Run(WiringSheet wiring, string? label) => label is null ? null : wiring.Runs.FirstOrDefault(run => run.Label == label);

    private static GuideProtection Fuse(FuseAdvice fuse)
    {
        var colour = FuseColour.Of(fuse.FuseA);
        return new GuideProtection(WiringWords.Fuse(fuse), colour?.Name ?? "", colour?.Code ?? "");
    }

    private static GuideGround Ground(SiteKnowledge site, GroundGroup group) => new(
        group.Title,
        string.Join("; ", group.Members.GroupBy(member => member.Title, StringComparer.Ordinal).Select(same => $"{same.Key}: {string.Join(", ", same.Select(member => member.Cavity))}")),
        group.Point,
        group.Meets.IsEmpty ? "nothing else" : string.Join(", ", group.Meets.Select(signal => InSentence.Lower(SignalTitle(site, signal)))),
        group.Apart.IsEmpty ? "" : string.Join(", ", group.Apart.Select(signal => InSentence.Lower(SignalTitle(site, signal)))));

    private static GuideLooseEnd Loose(WiringSheet wiring, LooseEnd end) => new(
        end.Title,
        $"{Place(wiring, end.Place)}{(end.Cavity.Length > 0 ? $", {end.Cavity}" : "")}",
        end.Action switch
        {
            LooseAction.Cap => "cap",
            LooseAction.CutOut => "cut it out",
            LooseAction.RunNew => "run a new wire",
            LooseAction.FeedFrom => "feed it",
            LooseAction.LeaveOff => "leave off",
            _ => "settle it",
        },
        end.Reason,
        end.Action == LooseAction.Missing ? Weight.Bad : Weight.Plain);

    // A piece that lengthens a wire begins where the old plug was cut off and ends at the device: both ends are the device's otherwise.
    private static string End(WiringSheet wiring, WireRun run, WireEnd end)
    {
        var place = wiring.Data?.TitleOf(end.Place) ?? end.Place;
        var cavity = end.Cavity.Length > 0 ? $", {end.Cavity}" : "";
        return InSentence.Upper(
            ReferenceEquals(end, run.To) && Joints.Lengthens(wiring, run) ? $"harness wire from {place}{cavity}"
            : run.Purpose != WirePurpose.Extension ? $"{(end.Kind == WireEndKind.Splice ? $"splice at {place}" : place)}{cavity}"
            : ReferenceEquals(end, run.From) ? $"harness wire from cavity {end.Cavity}"
            : $"{place}{cavity}");
    }

    private static string Place(WiringSheet wiring, string place) => InSentence.Upper(wiring.Data?.TitleOf(place) ?? place);

    private static GuideSignalSupply Supply(SiteKnowledge site, WiringSheet wiring, NeedTrace need)
    {
        var place = need.Place is null ? "" : wiring.Data?.TitleOf(need.Place) ?? need.Place;
        var (words, weight) = need.Supply switch
        {
            NeedSupply.HarnessBody => ($"the harness's bulkhead plug{(need.Cavity is { } cavity ? $", cavity {cavity}" : "")}", need.Behind is null ? Weight.Caution : Weight.Good),
            NeedSupply.Device => (place, Weight.Plain),
            NeedSupply.Ecu => ($"{place}{(need.Cavity is { } cavity ? $", {cavity}" : "")}", Weight.Plain),
            _ => ("nobody yet", Weight.Bad),
        };
        var behind = need.Behind is { } id ? $"fed by {wiring.Data?.TitleOf(id) ?? id}" : need.Supply == NeedSupply.HarnessBody ? "check what feeds it" : "";
        return new GuideSignalSupply(SignalTitle(site, need.Signal), words, behind, weight);
    }

    private static GuideAdapter? Adapter(SiteKnowledge site, WiringSheet wiring)
    {
        if ((wiring.EcuAdapter ?? wiring.BodyAdapter) is not { } adapter)
        {
            return null;
        }

        // Both adapters are made on the bench in one go, so their rows stand in one table; the drawing shows the larger one.
        var rows = (wiring.EcuAdapter?.Rows ?? []).Concat(wiring.BodyAdapter?.Rows ?? []);
        return new GuideAdapter
        {
            Title = $"{adapter.From.Title} to {adapter.To.Title}",
            Words = (wiring is { EcuAdapter: not null, BodyAdapter: not null } ? "The table has the rows of the ECU adapter, then those of the bulkhead adapter. " : "")
                + "A number is that of the cut list, and the colour beside it is the one to cut; without a number it is the colour found at the cavity.",
            Drawing = new HtmlString(AdapterDrawing.Svg(adapter, "adapter")),
            DrawingText = $"{adapter.From.Title} on one side, {adapter.To.Title} on the other, a line for each signal that both have.",
            Rows =
            [
                .. rows.Select(row => new GuideAdapterRow(
                    row.Title,
                    row.From ?? "none",
                    row.To ?? "none",
                    row.Action switch
                    {
                        AdapterAction.Join => "join",
                        AdapterAction.AddWire => "add a wire",
                        AdapterAction.Cap => "cap",
                        AdapterAction.Branch => "goes to",
                        _ => row.Optional ? "leave empty" : "missing",
                    } + (row.Note.Length > 0 ? $": {row.Note}" : "") + (row is { Shielded: true, Action: AdapterAction.Join } ? $"; {WiringWords.Screen}" : ""),
                    row.Colour is { Length: > 0 } colour ? new Models.WireColour(colour) : null,
                    SiteKnowledge.Number(row.SizeMm2, "0.##"),
                    row is { Action: AdapterAction.Missing, Optional: false } ? Weight.Bad : Weight.Plain)
                {
                    Number = row.Run is { } label ? Number(WiringWords.Number(wiring, label)) : "",
                }),
            ],
        };
    }

    private static string SignalTitle(SiteKnowledge site, string signal) =>
        signal == Places.Battery ? "Battery, to the relay's contact" : site.Base.Vocabulary.Signals.Find(signal)?.Title ?? signal;

    private static string Size(double size) => $"{SiteKnowledge.Number(size, "0.##")} mm²";

    private static string Metres(double length) => $"{SiteKnowledge.Number(length / 1000, "0.0")} m";

    private static string Millimetres(double length) => $"{SiteKnowledge.Number(length)} mm";

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
