using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Port and hose roles of the vocabulary, ports of vehicles and parts, hose goods.</summary>
internal static class PlumbingBinder
{
    private static readonly Unit s_litresAnHour = Unit.Find("L/h")!;

    public static (EntitySet<PortRole> Ports, EntitySet<HoseRole> Hoses) Roles(NodeReader root)
    {
        var ports = new EntitySet<PortRole>(
            root.Members("ports").Select((member, order) => new PortRole(
                member.Key.Text,
                member.Value.Text("title", member.Key.Text),
                member.Value.Text("circuit", "vacuum"),
                member.Value.OptionalId("position", "position"),
                member.Value.Text("on") == "chassis",
                order,
                member.Key.Place)).ToList(),
            port => port.Id);
        return (ports, new(root.Members("hoses").Select((member, order) => Hose(member.Key, member.Value, order, ports)).ToList(), hose => hose.Id));
    }

    public static ImmutableArray<PortEntry> Ports(NodeReader parent, Vocabulary vocabulary)
    {
        var ports = ImmutableArray.CreateBuilder<PortEntry>();
        foreach (var (key, reader) in parent.Members("ports"))
        {
            if (!vocabulary.Ports.Has(key.Text))
            {
                parent.Context.Unknown(FindingKinds.Reference, "port", key.Text, vocabulary.Ports.Ids, key.Place);
                continue;
            }

            // Without its size nothing about a port can be judged; 0 would look like a measurement.
            if (reader.OptionalNumber("size", Unit.Millimetre, 1, 100) is not { } size)
            {
                parent.Context.Report(FindingKinds.Schema, $"port `{key.Text}` does not say its `size`", key.Place, "Add `size:` with the outer diameter in millimetres.");
                continue;
            }

            ports.Add(new PortEntry(key.Text, reader.OptionalText("title"), size, reader.Text("kind", "barb"), reader.Text("thread"), reader.Point("location"), reader.OptionalNumber("pressure", Unit.Bar, 0, 20), reader.Text("open"), key.Place));
        }

        return ports.ToImmutable();
    }

    /// <summary>Points of a pump's flow, by rising pressure; a pump that gives more against more pressure is a slip of the pen.</summary>
    public static ImmutableArray<PumpPoint> PumpCurve(NodeReader parent)
    {
        var points = ImmutableArray.CreateBuilder<PumpPoint>();
        foreach (var reader in parent.Items("pump-curve"))
        {
            if (reader.OptionalNumber("pressure", Unit.Bar, 0, 12) is not { } pressure || reader.OptionalNumber("flow", s_litresAnHour, 1, 1000) is not { } flow)
            {
                continue;
            }

            if (points.Count > 0 && (pressure <= points[^1].PressureBar || flow > points[^1].LitresAnHour))
            {
                parent.Context.Report(FindingKinds.Schema, "the pump's points are not in order: with the pressure rising, its flow falls", reader.Place, "Put the points in the order of their pressures, and check the flows.");
                continue;
            }

            points.Add(new PumpPoint(pressure, flow, reader.Place));
        }

        return points.ToImmutable();
    }

    public static HoseGoods? Goods(NodeReader parent)
    {
        var reader = parent.Mapping("hose");
        return reader.Node is null
            ? null
            : new HoseGoods(reader.Texts("circuits"), reader.OptionalNumber("bore", Unit.Millimetre, 1, 100), reader.OptionalText("class"), reader.OptionalNumber("length", Unit.Millimetre, 50, 100_000), reader.Flag("set"));
    }

    public static ReducerGoods? Reducer(NodeReader parent)
    {
        var reader = parent.Mapping("reducer");
        return reader.OptionalNumber("from", Unit.Millimetre, 1, 100) is { } from && reader.OptionalNumber("to", Unit.Millimetre, 1, 100) is { } to ? new ReducerGoods(from, to) : null;
    }

    public static ImmutableArray<decimal> Tee(NodeReader parent)
    {
        var reader = parent.Mapping("tee");
        return [.. reader.Scalars("sizes").Select(scalar => reader.Quantity(scalar, Unit.Millimetre, 1, 100)).OfType<decimal>()];
    }

    private static HoseRole Hose(ScalarNode key, NodeReader reader, int order, EntitySet<PortRole> ports)
    {
        var context = reader.Context;
        var from = reader.Text("from");
        var to = reader.Text("to");
        foreach (var (id, end) in new[] { (from, "from"), (to, "to") })
        {
            if (!ports.Has(id))
            {
                context.Unknown(FindingKinds.Reference, "port", id, ports.Ids, reader.PlaceOf(end));
            }
        }

        if (from == to)
        {
            context.Report(FindingKinds.Vocabulary, $"`{key.Text}` joins `{from}` to itself", reader.PlaceOf("to"), "Name the port at the other end.");
        }
        else if (ports.Find(from) is { } first && ports.Find(to) is { } second && first.Circuit != second.Circuit)
        {
            context.Report(FindingKinds.Vocabulary, $"`{key.Text}` joins circuit `{first.Circuit}` to circuit `{second.Circuit}`", reader.PlaceOf("to"), "Name two ports of one circuit, or correct the circuit of one of them.");
        }

        return new HoseRole(key.Text, reader.Text("title", key.Text), ports.Find(from)?.Circuit ?? ports.Find(to)?.Circuit ?? "vacuum", from, to, reader.OptionalId("position", "position"), reader.Flag("optional"), order, key.Place);
    }
}
