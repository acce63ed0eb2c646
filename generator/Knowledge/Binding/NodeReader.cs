using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>
/// Reads typed values from a mapping. The schema has already judged the form, so a value of the wrong kind reads as
/// absent here without a second report; quantities are judged here, for only here their unit is known.
/// </summary>
internal readonly struct NodeReader(BindingContext context, MappingNode? node)
{
    public BindingContext Context => context;

    public MappingNode? Node => node;

    public Place Place => node?.Place ?? default;

    public bool Has(string key) => node is not null && node.TryGet(key, out var entry) && !IsNull(entry.Value);

    public SourceNode? Get(string key) => node?[key];

    public Place PlaceOf(string key) => node is not null && node.TryGet(key, out var entry) ? entry.Value.Place : Place;

    public string? OptionalText(string key) => Get(key) is ScalarNode scalar && scalar.Kind != ScalarKind.Null ? scalar.Text : null;

    public string Text(string key, string otherwise = "") => OptionalText(key) ?? otherwise;

    public bool Flag(string key, bool otherwise = false) => Get(key) is ScalarNode { Kind: ScalarKind.Flag } scalar ? IsTrue(scalar) : otherwise;

    public int Integer(string key, int otherwise) =>
        Get(key) is ScalarNode scalar && int.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) ? value : otherwise;

    /// <summary>A quantity in <paramref name="unit"/>; null where the key is absent or the text is no such quantity (then reported).</summary>
    public decimal? OptionalNumber(string key, Unit unit, decimal? min = null, decimal? max = null) =>
        Get(key) is ScalarNode scalar && scalar.Kind != ScalarKind.Null ? Quantity(scalar, unit, min, max) : null;

    public decimal Number(string key, Unit unit, decimal otherwise, decimal? min = null, decimal? max = null) => OptionalNumber(key, unit, min, max) ?? otherwise;

    /// <param name="mend">What to do about a number that is not plausible.</param>
    public decimal? Quantity(ScalarNode scalar, Unit unit, decimal? min, decimal? max, string mend = "Check the number and its unit.")
    {
        if (Knowledge.Quantity.Read(scalar.Text, unit, out var value) is { } problem)
        {
            context.Report(FindingKinds.Unit, problem, scalar.Place, unit.Symbol.Length == 0 ? "Write a plain number." : $"Write a number of {unit.Symbol}, or a quantity with a unit that converts to it.");
            return null;
        }

        if (value < min || value > max)
        {
            var (side, limit) = value < min ? ("below", min.Value) : ("above", max!.Value);
            context.Report(
                FindingKinds.Unit,
                $"`{scalar.Text}` is not plausible: it is {side} {new Quantity(limit, unit)}",
                scalar.Place,
                mend);
        }

        return value;
    }

    /// <param name="max">What is above is reported, and read as this.</param>
    public Range3? OptionalRange(string key, Unit unit, decimal max)
    {
        switch (Get(key))
        {
            case ScalarNode { Kind: not ScalarKind.Null } scalar:
                return Quantity(scalar, unit, 0, max) is { } one ? Range3.Exactly(Math.Min(one, max)) : null;
            case MappingNode mapping:
                var reader = new NodeReader(context, mapping);
                var likely = reader.Number("likely", unit, 0, 0, max);
                var range = new Range3(reader.Number("least", unit, likely, 0, max), likely, reader.Number("most", unit, likely, 0, max));
                if (range.Least > range.Likely || range.Likely > range.Most)
                {
                    context.Report(FindingKinds.Unit, "least, likely and most are not in rising order", mapping.Place, "Put the three numbers in rising order.");
                }

                return new Range3(Math.Min(range.Least, max), Math.Min(range.Likely, max), Math.Min(range.Most, max));
            default:
                return null;
        }
    }

    public NodeReader Mapping(string key) => new(context, Get(key) as MappingNode);

    /// <summary>The members of a mapping member that are mappings themselves.</summary>
    public IEnumerable<(ScalarNode Key, NodeReader Value)> Members(string key)
    {
        var inner = context;
        return Get(key) is MappingNode mapping
            ? mapping.Entries.Where(entry => entry.Value is MappingNode).Select(entry => (entry.Key, new NodeReader(inner, (MappingNode)entry.Value)))
            : [];
    }

    /// <summary>The items of a list member that are mappings.</summary>
    public IEnumerable<NodeReader> Items(string key)
    {
        var inner = context;
        return Get(key) is SequenceNode sequence ? sequence.Items.OfType<MappingNode>().Select(item => new NodeReader(inner, item)) : [];
    }

    /// <summary>The texts of a list member, or the one text where a scalar stands in place of a list.</summary>
    public IEnumerable<ScalarNode> Scalars(string key) => Get(key) switch
    {
        SequenceNode sequence => sequence.Items.OfType<ScalarNode>(),
        ScalarNode { Kind: not ScalarKind.Null } scalar => [scalar],
        _ => [],
    };

    public ImmutableArray<string> Texts(string key) => [.. Scalars(key).Select(scalar => scalar.Text)];

    /// <summary>The ids that a list member names; each has to be carried by an entity of the kind.</summary>
    public ImmutableArray<string> Ids(string key, string kind)
    {
        foreach (var scalar in Scalars(key))
        {
            context.Want(kind, scalar.Text, scalar.Place);
        }

        return Texts(key);
    }

    /// <summary>The id that a member names; it has to be carried by an entity of the kind.</summary>
    public string? OptionalId(string key, string kind)
    {
        if (OptionalText(key) is { } id)
        {
            context.Want(kind, id, PlaceOf(key));
        }

        return OptionalText(key);
    }

    /// <summary>As <see cref="Ids"/>, with the place of each.</summary>
    public ImmutableArray<Named> WantedNames(string key, string kind)
    {
        Ids(key, kind);
        return Names(key);
    }

    public ImmutableArray<Named> Names(string key) => [.. Scalars(key).Select(scalar => new Named(scalar.Text, scalar.Place))];

    public YearSpan Years(string key)
    {
        var reader = Mapping(key);
        var from = reader.Integer("from", 0);
        var span = new YearSpan(from, reader.Integer("to", from));
        if (reader.Node is not null && span.To < span.From)
        {
            context.Report(FindingKinds.Unit, "the years end before they begin", reader.Place, "Put the earlier year under `from`.");
        }

        return span;
    }

    /// <summary>A place in the bay; null where the key is absent.</summary>
    public BayPoint? Point(string key) => Get(key) is SequenceNode { Items: [ScalarNode x, ScalarNode y, ScalarNode z] }
        ? new BayPoint(Coordinate(x), Coordinate(y), Coordinate(z))
        : null;

    // A car is no longer than this, so a coordinate beyond it is a slip of the unit.
    private decimal Coordinate(ScalarNode scalar) => Quantity(scalar, Unit.Millimetre, -6000, 6000) ?? 0;

    internal static bool IsTrue(ScalarNode scalar) => scalar.Text is "true" or "True" or "TRUE";

    private static bool IsNull(SourceNode value) => value is ScalarNode { Kind: ScalarKind.Null };
}
