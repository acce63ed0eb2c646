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

    /// <param name="name">Subject chassis, donor or a choice id, whose options bind the entity that is asked.</param>
    public ImmutableArray<FactPiece> Of(FactName name)
    {
        if (!_pieces.TryGetValue(name, out var pieces))
        {
            pieces = name.Subject switch
            {
                "chassis" => Pieces(space.Chassis, space.Base.Chassis.All, name.Fact),
                "donor" => Pieces(space.Donor, space.Base.Donors.All, name.Fact),
                _ => OfChoice(name),
            };
            _pieces.Add(name, pieces);
        }

        return pieces;
    }

    private ImmutableArray<FactPiece> Pieces<T>(int level, ImmutableArray<T> variants, string fact)
        where T : Variant =>
        Group(variants.Select((variant, at) => (Value: Value(variant, fact), Region: space.Store.Where(level, ValueSet.Of(variants.Length, at)))));

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
            .GroupBy(pair => (pair.Value!.Value.Type, pair.Value.Value.Text, pair.Value.Value.Number))
            .Select(group => new FactPiece(group.First().Value!.Value, space.Store.OrAll(group.Select(pair => pair.Region)))),
    ];

    private static FactValue? Value(Variant variant, string fact) => fact switch
    {
        "family" => new FactValue(FactType.OneOf, variant.Family, 0, variant.Place),
        "variant" => new FactValue(FactType.OneOf, variant.Id, 0, variant.Place),
        _ => variant.Fact(fact),
    };
}
