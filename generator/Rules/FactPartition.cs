using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>
/// The space cut by the value of one fact: where the fact has which value. Where the fact is missing, no piece
/// covers the space, so that a condition on it is false there.
/// </summary>
internal sealed record FactPiece(FactValue Value, Region Region);

/// <summary>Cuts the space by facts; each fact is cut once.</summary>
internal sealed class FactPartition(SpaceModel space)
{
    private readonly Dictionary<FactName, ImmutableArray<FactPiece>> _pieces = [];
    private readonly Dictionary<FactName, ImmutableArray<(FactValue Value, ValueSet Variants)>> _variants = [];

    /// <param name="name">Subject chassis, donor or a choice id, whose options bind the entity that is asked.</param>
    public ImmutableArray<FactPiece> Of(FactName name)
    {
        if (!_pieces.TryGetValue(name, out var pieces))
        {
            pieces = name.Subject switch
            {
                "chassis" or "donor" => [.. Variants(name).Select(one => new FactPiece(one.Value, space.Store.Where(LevelOf(name), one.Variants)))],
                _ => OfChoice(name),
            };
            _pieces.Add(name, pieces);
        }

        return pieces;
    }

    /// <summary>Where a fact has a value that holds. Of a chassis or a donor that is one set of variants, and no regions are joined for it.</summary>
    public Region Where(FactName name, Func<FactValue, bool> holds)
    {
        if (name.Subject is not ("chassis" or "donor"))
        {
            return space.Store.OrAll(Of(name).Where(piece => holds(piece.Value)).Select(piece => piece.Region));
        }

        var level = LevelOf(name);
        var all = ValueSet.Union(space.Store.Variables[level].Size, Variants(name).Where(one => holds(one.Value)).Select(one => one.Variants));
        return space.Store.Where(level, all);
    }

    private int LevelOf(FactName name) => name.Subject == "chassis" ? space.Chassis : space.Donor;

    private ImmutableArray<(FactValue Value, ValueSet Variants)> Variants(FactName name)
    {
        if (!_variants.TryGetValue(name, out var found))
        {
            found = name.Subject == "chassis" ? Variants(space.Base.Chassis.All, name.Fact) : Variants(space.Base.Donors.All, name.Fact);
            _variants.Add(name, found);
        }

        return found;
    }

    private static ImmutableArray<(FactValue Value, ValueSet Variants)> Variants<T>(ImmutableArray<T> variants, string fact)
        where T : Variant =>
    [
        .. variants.Select((variant, at) => (Value: Value(variant, fact), At: at)).Where(pair => pair.Value is not null)
            .GroupBy(pair => Key(pair.Value!.Value))
            .Select(group => (group.First().Value!.Value, ValueSet.Of(variants.Length, [.. group.Select(pair => pair.At)]))),
    ];

    private ImmutableArray<FactPiece> OfChoice(FactName name)
    {
        var store = space.Store;
        var found = new List<(FactValue?, Region)>();
        foreach (var option in space.Base.Choices[name.Subject].Options)
        {
            if (option.Binds is not { } binding)
            {
                continue;
            }

            var taken = space.WhereChoice(name.Subject, [option.Id]);
            if (binding.Kind is { } kind)
            {
                found.Add((space.Base.FactHolder(kind, binding.Entity!)?.Fact(name.Fact), taken));
                continue;
            }

            var dot = binding.FactName!.IndexOf('.', StringComparison.Ordinal);
            var reference = new FactName(binding.FactName[..dot], binding.FactName[(dot + 1)..]);
            var to = space.Base.Vocabulary.Fact(reference.Subject, reference.Fact)?.To;
            foreach (var piece in to is null ? [] : Of(reference))
            {
                found.Add((space.Base.FactHolder(to!, piece.Value.Text)?.Fact(name.Fact), store.And(taken, piece.Region)));
            }
        }

        return Group(found);
    }

    private ImmutableArray<FactPiece> Group(IEnumerable<(FactValue? Value, Region Region)> found) =>
    [
        .. found.Where(pair => pair.Value is not null)
            .GroupBy(pair => Key(pair.Value!.Value))
            .Select(group => new FactPiece(group.First().Value!.Value, space.Store.OrAll(group.Select(pair => pair.Region)))),
    ];

    private static (FactType Type, string Text, decimal Number) Key(FactValue value) => (value.Type, value.Text, value.Number);

    private static FactValue? Value(Variant variant, string fact) => fact switch
    {
        "family" => new FactValue(FactType.OneOf, variant.Family, 0, variant.Place),
        "variant" => new FactValue(FactType.OneOf, variant.Id, 0, variant.Place),
        _ => variant.Fact(fact),
    };
}
