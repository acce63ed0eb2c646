using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Devices, plugs, harnesses and connectors.</summary>
internal sealed class ElectricalBinder(BindingContext context, Vocabulary vocabulary)
{
    public static Connector Connector(SourceFile file, NodeReader reader) => new Connector(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
    {
        Rows = reader.Get("rows") is SequenceNode rows
            ? [.. rows.Items.OfType<SequenceNode>().Select(row => row.Items.OfType<ScalarNode>().Select(cell => cell.Text).ToImmutableArray())]
            : [],
        Terminal = reader.Text("terminal"),
        Sealed = reader.Flag("sealed"),
        Keying = reader.Text("keying"),
        Mates = reader.WantedNames("mates", "connector"),
        WireFromMm2 = reader.Mapping("wire").OptionalNumber("from", Unit.SquareMillimetre, 0.1m, 120),
        WireToMm2 = reader.Mapping("wire").OptionalNumber("to", Unit.SquareMillimetre, 0.1m, 120),
        MaxCurrentA = reader.OptionalNumber("max-current", Unit.Ampere, 0, 1000),
        Price = reader.OptionalRange("price", Unit.One, Range3.MostMoney),
    }.Common(reader);

    public static WiringGoods? Goods(NodeReader parent)
    {
        var reader = parent.Mapping("wiring");
        return reader.Text("goods") is { Length: > 0 } kind ? new WiringGoods(kind, reader.OptionalNumber("size", Unit.SquareMillimetre, 0.1m, 120)) : null;
    }

    public ImmutableArray<KeyValuePair<string, PlugEntry>> Plugs(NodeReader parent, string key) =>
        [.. parent.Members(key).Select(member => KeyValuePair.Create(member.Key.Text, Plug(member.Value)))];

    public PlugEntry? OptionalPlug(NodeReader parent, string key) => parent.Get(key) is MappingNode ? Plug(parent.Mapping(key)) : null;

    public HarnessEntry? Harness(NodeReader parent)
    {
        if (parent.Get("harness") is not MappingNode)
        {
            return null;
        }

        var reader = parent.Mapping("harness");
        var trunk = reader.Point("trunk");
        var plugs = Plugs(reader, "plugs");
        foreach (var (key, _) in reader.Members("plugs"))
        {
            Role(key);
        }

        return new HarnessEntry(reader.OptionalId("ecu", "ecu"), trunk ?? default, reader.Point("ecu-place") ?? trunk ?? default, plugs, OptionalPlug(reader, "body"), reader.Place);
    }

    public ImmutableArray<DeviceEntry> Devices(NodeReader parent)
    {
        var devices = ImmutableArray.CreateBuilder<DeviceEntry>();
        foreach (var (key, reader) in parent.Members("devices"))
        {
            Role(key);
            if (reader.Get("connector") is null)
            {
                // No schema can ask for it: a vehicle that is like another writes what differs.
                context.Report(FindingKinds.Reference, $"the device `{key.Text}` names no connector", key.Place, "Name its `connector`.");
            }

            devices.Add(Device(key.Text, reader));
        }

        return devices.ToImmutable();
    }

    /// <summary>Wires that a part brings for devices; of a device that it puts in place itself it can only bring what that has.</summary>
    public ImmutableArray<BroughtWires> Brings(NodeReader parent, ImmutableArray<DeviceEntry> devices)
    {
        var brings = ImmutableArray.CreateBuilder<BroughtWires>();
        foreach (var (key, reader) in parent.Members("brings"))
        {
            Role(key);
            var own = devices.FirstOrDefault(device => device.Role == key.Text);
            foreach (var cavity in reader.Scalars("cavities").Where(cavity => own is not null && own.Pins.All(pin => pin.Cavity != cavity.Text)))
            {
                context.Report(FindingKinds.Reference, $"the device `{key.Text}` has no signal at cavity `{cavity.Text}`, which `brings` names", cavity.Place, "Name a cavity of its `pins`, or say there which signal the cavity has.");
            }

            brings.Add(new(key.Text, reader.Texts("cavities"), reader.Flag("plug"), reader.Flag("far-ends")));
        }

        return brings.ToImmutable();
    }

    public ImmutableDictionary<string, BayPoint> Places(NodeReader parent)
    {
        if (parent.Get("places") is not MappingNode)
        {
            return ImmutableDictionary<string, BayPoint>.Empty;
        }

        var reader = parent.Mapping("places");
        var places = ImmutableDictionary.CreateBuilder<string, BayPoint>(StringComparer.Ordinal);
        foreach (var entry in reader.Node!.Entries)
        {
            Role(entry.Key);
            if (reader.Point(entry.Key.Text) is { } point)
            {
                places[entry.Key.Text] = point;
            }
        }

        return places.ToImmutable();
    }

    private DeviceEntry Device(string role, NodeReader reader)
    {
        var pins = Pins(reader);
        return new(role, reader.OptionalText("title"), reader.OptionalId("connector", "connector") ?? "", reader.Point("location") ?? default, pins, reader.PlaceOf("connector"), reader.OptionalNumber("current", Unit.Ampere, 0, 1000))
        {
            ToCabin = ToCabin(role, reader, pins),
        };
    }

    // A cavity without a signal would give the cabin nothing, and nobody would see why.
    private ImmutableArray<string> ToCabin(string role, NodeReader reader, ImmutableArray<PinEntry> pins)
    {
        ScalarNode[] given = reader.Get("to-cabin") is SequenceNode list ? [.. list.Items.OfType<ScalarNode>()] : [];
        foreach (var cavity in given.Where(cavity => pins.All(pin => pin.Cavity != cavity.Text)))
        {
            context.Report(FindingKinds.Reference, $"the device `{role}` has no signal at cavity `{cavity.Text}`, which `to-cabin` names", cavity.Place, "Name a cavity of its `pins`, or say there which signal the cavity has.");
        }

        return [.. given.Select(cavity => cavity.Text)];
    }

    private PlugEntry Plug(NodeReader reader) => new(reader.OptionalId("connector", "connector") ?? "", reader.Point("location"), Pins(reader), reader.PlaceOf("connector"));

    private ImmutableArray<PinEntry> Pins(NodeReader reader)
    {
        if (reader.Get("pins") is not MappingNode pins)
        {
            return [];
        }

        var entries = ImmutableArray.CreateBuilder<PinEntry>();
        foreach (var entry in pins.Entries)
        {
            var detail = new NodeReader(context, entry.Value as MappingNode);
            var signalNode = entry.Value is ScalarNode scalar ? scalar : detail.Get("signal") as ScalarNode;
            if (signalNode is null)
            {
                continue;
            }

            var signal = vocabulary.Signals.Find(signalNode.Text);
            if (signal is null)
            {
                context.Unknown(FindingKinds.Reference, "signal", signalNode.Text, vocabulary.Signals.Ids, signalNode.Place);
            }

            entries.Add(new PinEntry(
                entry.Key.Text,
                signalNode.Text,
                detail.OptionalText("colour") ?? signal?.Colour ?? "BK",
                detail.Number("size", Unit.SquareMillimetre, signal?.SizeMm2 ?? 0.5m, 0.1m, 120),
                entry.Key.Place));
        }

        return entries.ToImmutable();
    }

    private void Role(ScalarNode key)
    {
        if (!vocabulary.Devices.Has(key.Text))
        {
            context.Unknown(FindingKinds.Reference, "device", key.Text, vocabulary.Devices.Ids, key.Place);
        }
    }
}
