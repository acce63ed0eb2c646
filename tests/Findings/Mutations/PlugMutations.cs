using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Source;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Pins, wires and connectors that are not as in the vehicle.</summary>
internal static class PlugMutations
{
    private const string Wires = "harness/plugs/*/pins";

    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("swap two pins of a device that has a plug", Duty.Always, "pin-type", (shipped, _) => Swapped(shipped, "chassis engine", "devices/*/pins", spot => Plugged(shipped, spot))),
        MutationClass.Of("swap two wires of a plug that has a device", Duty.Always, "pin-type", (shipped, _) => Swapped(shipped, "chassis engine", Wires, spot => Plugged(shipped, spot))),
        MutationClass.Of("swap two pins that nothing is held against", Duty.WhereItBreaks, "pin-type stated-value", (shipped, _) => Swapped(shipped, "ecu part chassis", "plugs/*/pins|devices/*/pins|body/pins", spot => !Plugged(shipped, spot))),
        MutationClass.Of("use a cavity that does not exist", Duty.Always, "pin-clash", (shipped, _) => Spot.In(shipped, "chassis engine ecu part", ".*pins/[^/]+").Select(spot => spot.Mistake("in cavity 99", spot.Renamed("99")))),
        MutationClass.Of("give a connector a cavity twice", Duty.Always, "pin-clash schema", (shipped, _) => Spot.In(shipped, "connector", "rows").Where(spot => spot.Node is SequenceNode { Items.Length: > 1 }).Select(spot => spot.Mistake("first cavity twice", TextEdit.Replace(spot.File, ((SequenceNode)spot.Node).Items[1].Place, TextEdit.Text(spot.File, ((SequenceNode)spot.Node).Items[0].Place))))),
        MutationClass.Of("put another connector on a device", Duty.Always, "mate pin-clash", OtherConnector),
        MutationClass.Of("thin a wire to a hair", Duty.Always, "wire-size unit", (shipped, _) => Sizes(shipped).Select(spot => spot.Mistake("0.05 mm²", spot.Replaced("0.05")))),
        MutationClass.Of("thin a wire below what it may be", Duty.Always, "wire-size unit", (shipped, _) => Halved(shipped, within: false)),
        MutationClass.Of("thin a wire within what it may be", Duty.WhereItBreaks, "stated-value", (shipped, _) => Halved(shipped, within: true)),
        MutationClass.Of("let a signal carry 500 A", Duty.Always, "wire-size", (shipped, _) => Spot.In(shipped, "vocabulary", "signals/*/current").Select(spot => spot.Mistake("500 A", spot.Replaced("500")))),
        MutationClass.Of("move a plug", Duty.WhereItBreaks, "stated-value", (shipped, _) => Spot.In(shipped, "chassis engine", "(?:harness/plugs|devices)/*/location").Where(spot => spot.Parent is SequenceNode && spot.At == 2).Select(spot => spot.Mistake("300 mm off", spot.Replaced((Number(spot) + 300).ToString(CultureInfo.InvariantCulture))))),
    ];

    private static IEnumerable<Spot> Sizes(ShippedBase shipped) => Spot.In(shipped, "chassis engine", Wires + "/*/size");

    /// <summary>Wires of half the size: in range for connector and current, or not.</summary>
    private static IEnumerable<Mutation> Halved(ShippedBase shipped, bool within)
    {
        var kb = shipped.Proof.Base;
        return
            from spot in Sizes(shipped)
            let half = Number(spot) / 2
            let way = spot.Trail.Split('/')
            let plug = Variant(shipped, spot.File)!.Harness!.Plugs.First(one => one.Key == way[2]).Value
            let signal = kb.Vocabulary.Signals[plug.Pins.First(pin => pin.Cavity == way[4]).Signal]
            let least = (decimal)(signal.CurrentA is { } current ? ConductorSize.For((double)current) ?? 0 : 0)
            where within == (half >= least && half >= (kb.Connectors[plug.Connector].WireFromMm2 ?? 0) && half >= 0.1m)
            select spot.Mistake("half the size", spot.Replaced(half.ToString(CultureInfo.InvariantCulture)));
    }

    private static decimal Number(Spot spot) => decimal.Parse(spot.Word!, CultureInfo.InvariantCulture);

    private static Variant? Variant(ShippedBase shipped, SourceFile file) =>
        file.Kind == "chassis" ? shipped.Proof.Base.Chassis.Find(file.Id) : file.Kind == "engine" ? shipped.Proof.Base.Donors.Find(file.Id) : null;

    /// <summary>Whether the vehicle itself has both the device and the harness plug on it, with connectors that go together.</summary>
    private static bool Plugged(ShippedBase shipped, Spot pins)
    {
        var role = pins.Trail.Split('/')[^2];
        var variant = Variant(shipped, pins.File);
        return variant?.Device(role) is { } device && variant.Harness?.Plugs.Where(plug => plug.Key == role).Select(plug => plug.Value.Connector).FirstOrDefault() is { } plug
            && shipped.Proof.Base.Connectors[plug].MatesWith(shipped.Proof.Base.Connectors[device.Connector]);
    }

    private static IEnumerable<Mutation> Swapped(ShippedBase shipped, string kinds, string pattern, Func<Spot, bool> which) =>
        from spot in Spot.In(shipped, kinds, pattern)
        where spot.Node is MappingNode { Entries.Length: > 1 } && which(spot)
        let entries = ((MappingNode)spot.Node).Entries
        let one = Signal(entries[0].Value)
        let other = Signal(entries[1].Value)
        where one is not null && other is not null && one.Text != other.Text && one.Text != "unused" && other.Text != "unused"
        select spot.Mistake($"`{one.Text}` and `{other.Text}` swapped", Swap(spot.File, one, other));

    /// <summary>The later of the two is written first, so that the place of the earlier one stays right.</summary>
    private static string Swap(SourceFile file, ScalarNode first, ScalarNode second) =>
        TextEdit.Replace(TextEdit.Replace(file.Text, second.Place, first.Text), first.Place, second.Text);

    private static ScalarNode? Signal(SourceNode pin) => pin as ScalarNode ?? (pin as MappingNode)?["signal"] as ScalarNode;

    private static IEnumerable<Mutation> OtherConnector(ShippedBase shipped, Random random)
    {
        var connectors = shipped.Proof.Base.Connectors;
        return
            from spot in Spot.In(shipped, "chassis engine", "devices/*/connector")
            where Plugged(shipped, spot)
            let own = connectors[spot.Word!]
            let others = connectors.All.Where(other => !other.MatesWith(own)).ToList()
            let other = others[random.Next(others.Count)].Id
            select spot.Mistake($"`{spot.Word}` became `{other}`", spot.Replaced(other));
    }
}
