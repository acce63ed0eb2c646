using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>Chassis and donor variants, gearboxes, ECUs and parts.</summary>
internal sealed class VariantBinder(BindingContext context, Vocabulary vocabulary, FactBinder facts, ElectricalBinder electrical)
{
    public ChassisVariant Chassis(SourceFile file, NodeReader reader) => Shared(new ChassisVariant(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
    {
        Trim = reader.Text("trim"),
        Body = electrical.OptionalPlug(reader, "body"),
        Needs = reader.Ids("needs", "signal"),
        Places = electrical.Places(reader),
        Battery = reader.Mapping("battery") is var battery && battery.Point("location") is { } post ? new BatteryEntry(battery.OptionalText("title"), post) : null,
    }, "chassis", reader);

    public DonorVariant Donor(SourceFile file, NodeReader reader) => Shared(new DonorVariant(file.Id, reader.Text("title", file.Id), EntityBinder.PlaceOf(file))
    {
        BeltDrives = [.. reader.Members("belt-drives").Select(member => Drive(member.Key, member.Value))],
    }, "donor", reader);

    public Gearbox Gearbox(SourceFile file, NodeReader reader)
    {
        var place = EntityBinder.PlaceOf(file);
        return new Gearbox(file.Id, reader.Text("title", file.Id), place)
        {
            Facts = facts.Bind("gearbox", reader, file.Id, place),
            Ratios = reader.Get("ratios") is MappingNode ratios
                ? [.. ratios.Entries.Where(entry => entry.Value is ScalarNode { Kind: not ScalarKind.Null }).Select(entry => KeyValuePair.Create(entry.Key.Text, reader.Quantity((ScalarNode)entry.Value, Unit.One, 0.3m, 20) ?? 1))]
                : [],
            MassKg = reader.OptionalNumber("mass", Unit.Kilogram, 1, 500),
            OilGrade = reader.Mapping("oil").Text("grade"),
            OilLitres = reader.Mapping("oil").OptionalNumber("amount", Unit.Litre, 0.1m, 50),
        }.Common(reader);
    }

    public Ecu Ecu(SourceFile file, NodeReader reader)
    {
        var place = EntityBinder.PlaceOf(file);
        return new Ecu(file.Id, reader.Text("title", file.Id), place)
        {
            Facts = facts.Bind("ecu", reader, file.Id, place),
            Plugs = electrical.Plugs(reader, "plugs"),
            OutputCurrentA = reader.OptionalNumber("output-current", Unit.Ampere, 0, 50),
        }.Common(reader);
    }

    public Part Part(SourceFile file, NodeReader reader, ConditionBinder conditions)
    {
        var place = EntityBinder.PlaceOf(file);
        var lead = reader.Mapping("lead");
        var devices = electrical.Devices(reader);
        return new Part(file.Id, reader.Text("title", file.Id), place)
        {
            Facts = facts.Bind("part", reader, file.Id, place),
            Category = reader.Text("category"),
            Price = reader.OptionalRange("price", Unit.One, Range3.MostMoney),
            From = reader.Text("from", "parts-shop"),
            MassKg = reader.OptionalNumber("mass", Unit.Kilogram, 0, 1000),
            IsAddition = reader.Flag("addition"),
            Pulley = Pulley(reader),
            Devices = devices,
            Lead = lead.Node is null ? null : (lead.OptionalId("from", "connector") ?? "", lead.OptionalId("to", "connector") ?? ""),
            LeadPlace = reader.PlaceOf("lead"),
            OwnWires = reader.Ids("own-wires", "signal"),
            Brings = electrical.Brings(reader, devices),
            Wiring = ElectricalBinder.Goods(reader),
            Like = reader.OptionalText("like"),
            Belt = reader.Get("belt") is MappingNode ? Stock(reader.Mapping("belt")) : null,
            Ports = PlumbingBinder.Ports(reader, vocabulary),
            Fasteners = TighteningBinder.Fasteners(reader, conditions),
            Fluids = TighteningBinder.Fluids(reader),
            PumpCurve = PlumbingBinder.PumpCurve(reader),
            Hose = PlumbingBinder.Goods(reader),
            Reducer = PlumbingBinder.Reducer(reader),
            Tee = PlumbingBinder.Tee(reader),
            CutInto = reader.Ids("cut-into", "hose"),
            CutIntoLengthMm = reader.OptionalNumber("cut-into-length", Unit.Millimetre, 1, 500),
        }.Common(reader);
    }

    private T Shared<T>(T variant, string subject, NodeReader reader)
        where T : Variant
    {
        if (!reader.Has("years"))
        {
            context.Report(FindingKinds.Schema, $"`{variant.Id}` does not say its `years`", variant.Place, "Add `years: {from: …, to: …}`.");
        }

        return (variant with
        {
            Maker = reader.Text("maker"),
            Family = reader.Text("family", variant.Id),
            Years = reader.Years("years"),
            YearsPlace = reader.PlaceOf("years"),
            Facts = facts.Bind(subject, reader, variant.Id, variant.Place),
            Accessories = [.. reader.Members("accessories").Select(member => Accessory(member.Key, member.Value))],
            Devices = electrical.Devices(reader),
            Harness = electrical.Harness(reader),
            Ports = PlumbingBinder.Ports(reader, vocabulary),
            Fluids = TighteningBinder.Fluids(reader),
            PumpCurve = PlumbingBinder.PumpCurve(reader),
        }).Common(reader);
    }

    private static Accessory Accessory(ScalarNode key, NodeReader reader) => new(
        key.Text,
        reader.OptionalText("title"),
        Pulley(reader),
        reader.OptionalNumber("mass", Unit.Kilogram, 0, 200),
        reader.OptionalNumber("output", Unit.Ampere, 0, 500),
        key.Place);

    private static PulleyEntry? Pulley(NodeReader parent)
    {
        if (parent.Get("pulley") is not MappingNode)
        {
            return null;
        }

        var reader = parent.Mapping("pulley");
        return new PulleyEntry(
            reader.Number("diameter", Unit.Millimetre, 0, 10, 600),
            reader.Integer("ribs", 0),
            reader.Number("plane", Unit.Millimetre, 0, -200, 200),
            reader.Number("dx", Unit.Millimetre, 0, -500, 500),
            reader.Number("dy", Unit.Millimetre, 0, -500, 500));
    }

    private static BeltStock Stock(NodeReader reader) => new(
        reader.Text("profile", "PK"),
        [.. reader.Texts("ribs").Select(text => int.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var ribs) ? ribs : 0).Where(ribs => ribs > 0)],
        [.. reader.Scalars("lengths").Select(scalar => reader.Quantity(scalar, Unit.Millimetre, 300, 4000)).OfType<decimal>()],
        reader.OptionalNumber("rib-mass", Unit.One, 1, 500));

    private BeltDrive Drive(ScalarNode key, NodeReader reader)
    {
        var stations = reader.Items("stations").Select(Station).ToImmutableArray();
        var adjuster = reader.Mapping("adjuster");
        AdjusterEntry? entry = null;
        if (adjuster.Node is not null)
        {
            var station = adjuster.Text("station");
            if (stations.All(one => one.Id != station))
            {
                context.Unknown(FindingKinds.Reference, "station of this belt", station, stations.Select(one => one.Id), adjuster.PlaceOf("station"));
            }

            var kind = adjuster.Text("kind", "slide");
            var turns = kind == "swing" || (kind == "spring" && adjuster.Get("pivot") is Source.SequenceNode);
            var (x, y) = Pair(adjuster, turns ? "pivot" : "direction");
            var unit = turns ? Unit.Degree : Unit.Millimetre;
            entry = new AdjusterEntry(station, kind, x, y, adjuster.Number("from", unit, 0, -500, 500), adjuster.Number("to", unit, 0, -500, 500), adjuster.Place)
            {
                Turns = turns,
                Nominal = adjuster.OptionalNumber("nominal", unit, -500, 500),
            };
        }

        return new BeltDrive(key.Text, reader.Text("title", key.Text), reader.Text("profile", "PK"), reader.Number("rib-pitch", Unit.Millimetre, 3.56m, 1, 20), stations, entry, key.Place);
    }

    private static BeltStation Station(NodeReader reader) => new(
        reader.Text("id"),
        reader.Text("title", reader.Text("id")),
        reader.OptionalId("position", "position"),
        reader.Number("x", Unit.Millimetre, 0, -2000, 2000),
        reader.Number("y", Unit.Millimetre, 0, -2000, 2000),
        reader.Number("plane", Unit.Millimetre, 0, -500, 500),
        reader.Text("side") == "back",
        reader.Number("diameter", Unit.Millimetre, 0, 10, 600),
        reader.Integer("ribs", 0),
        reader.Text("role", "other"),
        reader.Text("when-left-out", "skip") != "impossible",
        reader.Place);

    private static (decimal X, decimal Y) Pair(NodeReader reader, string key) =>
        reader.Get(key) is SequenceNode { Items: [ScalarNode x, ScalarNode y] }
            ? (reader.Quantity(x, Unit.Millimetre, -5000, 5000) ?? 0, reader.Quantity(y, Unit.Millimetre, -5000, 5000) ?? 0)
            : (0, 0);
}
