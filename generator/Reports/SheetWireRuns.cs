using System.Text.Json;
using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Reports;

/// <summary>The new wires of a sheet as JSON, with what protects, joins and ends them.</summary>
internal static class SheetWireRuns
{
    public static void Write(Utf8JsonWriter json, WiringSheet wiring)
    {
        json.Objects("runs", wiring.Runs, run => Run(json, wiring, run));
        json.Objects("cuts", wiring.Bill.Cuts.Select((cut, at) => (cut, at)), pair =>
        {
            json.WriteNumber("number", pair.at + 1);
            json.Quantity("size", pair.cut.SizeMm2, "mm²", 2);
            json.WriteString("colour", pair.cut.Colour);
            json.Quantity("length", pair.cut.LengthMm, "mm", 0);
            json.WriteString("signal", pair.cut.Signal);
            json.WriteString("run", pair.cut.Label);
        });
        json.Objects("fuses", LoadProtection.Fuses(wiring), fuse =>
        {
            json.WriteString("device", fuse.Role);
            json.WriteString("signal", fuse.Signal);
            json.Quantity("current", fuse.CurrentA, "A", 2);
            Optional(json, "fuse", fuse.FuseA, "A", 1);
            json.Quantity("wire", fuse.SizeMm2, "mm²", 2);
            json.Quantity("wireStands", fuse.SizeStandsA, "A");
            json.WriteString("run", fuse.Run);
        });
        json.Objects("relays", LoadProtection.Relays(wiring), relay =>
        {
            json.WriteString("device", relay.Role);
            json.WriteString("signal", relay.Signal);
            json.Quantity("current", relay.CurrentA, "A", 2);
            json.Quantity("limit", relay.LimitA, "A", 2);
        });
        json.Objects("sharedFeeds", wiring.Overloads, feed =>
        {
            Loaded(json, feed.Signal, feed.Place, feed.Cavity, feed.SizeMm2, feed.CarriesA, feed.CurrentA);
            Optional(json, "fuse", feed.FuseA, "A", 1);
            Optional(json, "feed", feed.FeedMm2, "mm²", 2);
        });
        json.Objects("bulkheadFeeds", wiring.BulkheadFeeds, feed =>
        {
            Loaded(json, feed.Signal, Places.Body, feed.CabinCavity, feed.SizeMm2, feed.CarriesA, feed.CurrentA);
            json.Texts("moved", feed.Moved);
            json.Quantity("movedCurrent", feed.MovedA, "A", 2);
            Optional(json, "fuse", feed.FuseA, "A", 1);
            Optional(json, "feed", feed.FeedMm2, "mm²", 2);
        });
        json.Objects("thinFeeds", ThinFeeds.Of(wiring), feed =>
        {
            Loaded(json, feed.Signal, feed.Place, feed.Cavity, feed.SizeMm2, feed.CarriesA, feed.CurrentA);
            json.Quantity("fuse", feed.FuseA, "A", 1);
            json.WriteString("run", feed.Run);
        });
        json.Objects("joints", Joints.Splices(wiring), joint =>
        {
            json.WriteString("kind", WiringWords.Joint(joint.Kind));
            json.Quantity("size", joint.SizeMm2, "mm²", 2);
            json.Quantity("other", joint.OtherMm2, "mm²", 2);
            json.WriteNumber("count", joint.Count);
            Optional(json, "sleeve", joint.SleeveMm, "mm", 1);
            json.Quantity("sleeveLength", joint.SleeveLengthMm, "mm", 0);
        });
        json.Objects("terminalSizes", Joints.Terminals(wiring), line =>
        {
            json.WriteString("connector", line.Connector);
            json.WriteString("terminal", line.Terminal);
            json.Quantity("size", line.SizeMm2, "mm²", 2);
            json.WriteNumber("count", line.Count);
        });
        json.Objects("purchases", wiring.Purchases, want =>
        {
            json.WriteString("goods", WiringWords.Good(want.Good));
            Optional(json, "size", want.SizeMm2, "mm²", 2);
            json.Quantity("amount", want.Amount, want.SizeMm2 is null ? "" : "m", 0);
            json.Text("part", want.Part);
        });
        json.Objects("grounds", GroundGroups.Of(wiring), group =>
        {
            json.WriteString("signal", group.Signal);
            json.WriteString("kind", WiringWords.Kind(group.Kind));
            json.Objects("members", group.Members, member =>
            {
                json.WriteString("place", member.Place);
                json.WriteString("cavity", member.Cavity);
            });
            json.Texts("meets", group.Meets);
            json.Texts("apart", group.Apart);
        });
        json.Objects("loose", LooseEnds.Of(wiring), end =>
        {
            json.WriteString("signal", end.Signal);
            json.WriteString("place", end.Place);
            json.WriteString("cavity", end.Cavity);
            json.WriteString("action", WiringWords.Loose(end.Action));
            json.WriteString("reason", end.Reason);
        });
    }

    private static void Run(Utf8JsonWriter json, WiringSheet wiring, WireRun run)
    {
        json.WriteString("label", run.Label);
        json.WriteString("purpose", WiringWords.Purpose(wiring, run));
        json.WriteString("signal", run.Signal);
        json.Object("from", () => End(json, run.From));
        json.Object("to", () => End(json, run.To));
        json.WriteString("colour", run.Colour);
        json.Quantity("size", run.SizeMm2, "mm²", 2);
        json.Quantity("length", run.LengthMm, "mm", 0);
        json.WriteBoolean("shielded", run.Shielded);
        json.Text("twistedWith", TwistedPairs.Beside(wiring, run)?.Label);
        json.Text("broughtBy", run.Lead?.PartId);
        json.Text("screenOf", run.ScreenOf);
        json.WriteNumber("splices", run.Splices);
        if (run.Conductor is not { } chosen)
        {
            json.WriteNull("conductor");
            return;
        }

        json.Object("conductor", () =>
        {
            json.WriteString("reason", WiringWords.Reason(chosen.Reason));
            json.Quantity("current", chosen.For.CurrentA, "A", 2);
            json.Quantity("needed", chosen.NeededMm2, "mm²", 2);
            Optional(json, "byCurrent", chosen.ByCurrentMm2, "mm²", 2);
            Optional(json, "byDrop", chosen.ByDropMm2, "mm²", 2);
            json.Quantity("least", chosen.For.LeastMm2, "mm²", 2);
            json.Quantity("drop", chosen.DropV, "V", 3);
            json.Quantity("allowedDrop", chosen.For.AllowedDropV, "V", 2);
            json.Quantity("temperature", chosen.For.Celsius, "°C", 0);
            json.Quantity("resistance", chosen.MilliohmPerM, "mΩ/m", 2);
        });
    }

    private static void End(Utf8JsonWriter json, WireEnd end)
    {
        json.WriteString("end", WiringWords.End(end.Kind));
        json.WriteString("place", end.Place);
        json.WriteString("cavity", end.Cavity);
        json.Text("connector", end.Connector);
    }

    /// <summary>A wire of the harness with what it carries and what hangs on it.</summary>
    private static void Loaded(Utf8JsonWriter json, string signal, string place, string cavity, double sizeMm2, double carriesA, double currentA)
    {
        json.WriteString("signal", signal);
        json.WriteString("at", place);
        json.WriteString("cavity", cavity);
        json.Quantity("wire", sizeMm2, "mm²", 2);
        json.Quantity("carries", carriesA, "A", 2);
        json.Quantity("current", currentA, "A", 2);
    }

    private static void Optional(Utf8JsonWriter json, string name, double? value, string unit, int decimals)
    {
        if (value is { } known)
        {
            json.Quantity(name, known, unit, decimals);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
