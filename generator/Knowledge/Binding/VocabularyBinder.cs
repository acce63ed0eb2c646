using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>vocabulary.yaml → facts, signals, roles of devices, ports and hoses.</summary>
internal static class VocabularyBinder
{
    /// <summary>The subjects that carry facts.</summary>
    public static readonly ImmutableArray<string> Subjects = ["chassis", "donor", "gearbox", "ecu", "part"];

    // Built into every base, so that conditions can ask for them without a declaration.
    public static readonly ImmutableArray<string> BuiltIn = ["year", "family", "variant"];

    public static Vocabulary Bind(NodeReader root)
    {
        var context = root.Context;
        var facts = new List<FactDeclaration>();
        foreach (var (subject, declarations) in root.Members("facts"))
        {
            if (!Subjects.Contains(subject.Text))
            {
                context.Unknown(FindingKinds.Vocabulary, "subject of facts", subject.Text, Subjects, subject.Place);
                continue;
            }

            foreach (var entry in declarations.Node!.Entries)
            {
                if (entry.Value is MappingNode mapping)
                {
                    facts.Add(Fact(subject.Text, entry.Key, new NodeReader(context, mapping)));
                }
            }
        }

        var signals = root.Members("signals").Select(member => Signal(member.Key, member.Value)).ToList();
        if (signals.All(signal => signal.Id != SignalDeclaration.Unused))
        {
            signals.Add(new SignalDeclaration(SignalDeclaration.Unused, "Not used", "logic", null, 0.5m, "BK", false, false, default));
        }

        var devices = root.Members("devices")
            .Select(member => new DeviceRole(member.Key.Text, member.Value.Text("title", member.Key.Text), member.Value.OptionalId("position", "position"), member.Value.OptionalId("system", "system"), member.Value.Place) { OwnFuse = member.Value.Flag("own-fuse"), IsBrief = member.Value.Flag("brief"), InCabin = member.Value.Flag("in-cabin"), CurrentA = member.Value.OptionalNumber("current", Unit.Ampere, 0, 1000), ColdCurrentA = member.Value.OptionalNumber("cold-current", Unit.Ampere, 0, 1000), Supplies = member.Value.Ids("supplies", "signal") })
            .ToList();
        var (ports, hoses) = PlumbingBinder.Roles(root);
        return new Vocabulary(new(facts, fact => fact.Name), new(signals, signal => signal.Id), new(devices, device => device.Id)) { Ports = ports, Hoses = hoses };
    }

    private static FactDeclaration Fact(string subject, ScalarNode key, NodeReader reader)
    {
        var context = reader.Context;
        if (subject is "chassis" or "donor" && BuiltIn.Contains(key.Text))
        {
            context.Report(FindingKinds.Vocabulary, $"`{subject}.{key.Text}` is built in and cannot be declared", key.Place, "Take the declaration out, or give the fact another name.");
        }

        var type = reader.Text("type") switch
        {
            "number" => FactType.Number,
            "flag" => FactType.Flag,
            "reference" => FactType.Reference,
            _ => FactType.OneOf,
        };
        var unit = Unit.One;
        if (reader.OptionalText("unit") is { } symbol)
        {
            if (Unit.Find(symbol) is { } known)
            {
                unit = known;
            }
            else
            {
                context.Unknown(FindingKinds.Unit, "unit", symbol, Unit.All.Select(one => one.Symbol).Where(one => one.Length > 0), reader.PlaceOf("unit"));
            }
        }

        var options = reader.Get("values") is MappingNode values
            ? values.Entries.Select(entry => new FactOption(entry.Key.Text, (entry.Value as ScalarNode)?.Text ?? entry.Key.Text)).ToImmutableArray()
            : [];
        if (type == FactType.OneOf && options.IsEmpty)
        {
            context.Report(FindingKinds.Vocabulary, $"`{subject}.{key.Text}` is one of nothing", reader.Place, "List its values under `values`, or choose another `type`.");
        }

        var means = reader.OptionalText("means");
        if (means is not null)
        {
            Meaning(subject, means, type, unit, options, reader);
        }

        return new FactDeclaration(subject, key.Text, reader.Text("title", key.Text), type, key.Place)
        {
            Means = means,
            At = reader.OptionalId("at", "position"),
            Options = options,
            Ordered = reader.Flag("ordered"),
            Unit = unit,
            Min = reader.OptionalNumber("min", unit),
            Max = reader.OptionalNumber("max", unit),
            To = reader.OptionalText("to"),
            Optional = reader.Flag("optional"),
            Observable = reader.Flag("observable"),
            HowToTell = reader.Text("how-to-tell"),
        };
    }

    private static void Meaning(string subject, string means, FactType type, Unit unit, ImmutableArray<FactOption> options, NodeReader reader)
    {
        var context = reader.Context;
        var place = reader.PlaceOf("means");
        if (KnownQuantities.Find(means) is not { } quantity)
        {
            context.Unknown(FindingKinds.Vocabulary, "known quantity", means, KnownQuantities.All.Where(one => one.Subjects.Contains(subject)).Select(one => one.Id), place);
        }
        else if (!quantity.Subjects.Contains(subject))
        {
            context.Report(FindingKinds.Vocabulary, $"`{means}` is nothing that a {subject} has", place, $"It belongs to: {string.Join(", ", quantity.Subjects)}.");
        }
        else if (type == FactType.Number && quantity.Dimension != unit.Dimension)
        {
            context.Report(FindingKinds.Unit, $"`{means}` is a quantity of {DimensionWord(quantity.Dimension)}, and `{unit.Symbol}` does not measure that", place, "Give the fact a unit of that dimension, or take `means` out.");
        }
        else if (!quantity.HasOwnWords && options.FirstOrDefault(option => !quantity.Words.Contains(option.Id)) is { } odd)
        {
            context.Report(FindingKinds.Vocabulary, $"`{means}` cannot be `{odd.Id}`", place, quantity.Words.IsEmpty ? "It is a number." : $"It knows: {string.Join(", ", quantity.Words)}.");
        }
    }

    // RotationalSpeed → rotational speed.
    private static string DimensionWord(Dimension dimension) =>
        string.Concat(dimension.ToString().Select((letter, at) => char.IsUpper(letter) && at > 0 ? $" {char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}"));

    private static SignalDeclaration Signal(ScalarNode key, NodeReader reader) => new(
        key.Text,
        reader.Text("title", key.Text),
        reader.Text("kind", "analogue"),
        reader.OptionalNumber("current", Unit.Ampere, 0, 1000),
        reader.Number("size", Unit.SquareMillimetre, 0.5m, 0.1m, 120),
        reader.Text("colour", "BK"),
        reader.Flag("shared"),
        reader.Flag("shielded"),
        key.Place)
    {
        Through = reader.OptionalId("through", "device"),
        BranchOf = reader.OptionalId("branch-of", "signal"),
        TwistedWith = reader.OptionalId("twisted-with", "signal"),
    };
}
