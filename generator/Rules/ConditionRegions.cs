using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>Conditions → regions. Conditions on answers ask <paramref name="answers"/>, which must have resolved the position.</summary>
internal sealed class ConditionRegions(SpaceModel space, Func<AnswerTest, Region> answers, Action<Finding> report)
{
    private readonly FactPartition _partition = new(space);

    public Region Of(Condition condition) => condition switch
    {
        AllOf all => space.Store.AndAll(all.Terms.Select(Of)),
        AnyOf any => space.Store.OrAll(any.Terms.Select(Of)),
        NotOf not => space.Store.Not(Of(not.Term)),
        ChoiceTest test => space.WhereChoice(test.Choice, test.Options),
        AnswerTest test => answers(test),
        FactTest { Fact: "year", Subject: "chassis" or "donor" } test => Years(test),
        FactTest test => Fact(test),
        _ => throw new ArgumentException($"no region for {condition.GetType().Name}", nameof(condition)),
    };

    private Region Fact(FactTest test)
    {
        var pieces = _partition.Of(new FactName(test.Subject, test.Fact));
        return test.Test switch
        {
            OneOfTest oneOf => Where(pieces, value => oneOf.Values.Any(value.Same)),
            EqualsFactTest equals => Compare(pieces, equals.Fact, (value, other) => value.Same(other)),
            RangeTest range => space.Store.And(Above(pieces, range.Lower), Below(pieces, range.Upper)),
            _ => throw new ArgumentException($"no region for {test.Test.GetType().Name}", nameof(test)),
        };
    }

    private Region Above(ImmutableArray<FactPiece> pieces, Bound? bound) =>
        Side(pieces, bound, (value, limit) => bound!.Inclusive ? value.Number >= limit.Number : value.Number > limit.Number);

    private Region Below(ImmutableArray<FactPiece> pieces, Bound? bound) =>
        Side(pieces, bound, (value, limit) => bound!.Inclusive ? value.Number <= limit.Number : value.Number < limit.Number);

    private Region Side(ImmutableArray<FactPiece> pieces, Bound? bound, Func<FactValue, FactValue, bool> holds) => bound switch
    {
        null => Where(pieces, _ => true),
        { Fact: { } fact } => Compare(pieces, fact, holds),
        _ => Where(pieces, value => holds(value, bound.Value!.Value)),
    };

    private Region Where(ImmutableArray<FactPiece> pieces, Func<FactValue, bool> holds) =>
        space.Store.OrAll(pieces.Where(piece => holds(piece.Value)).Select(piece => piece.Region));

    // One fact against another: pairs of values, never pairs of combinations. Binding has seen to it that both are in one unit.
    private Region Compare(ImmutableArray<FactPiece> pieces, FactName other, Func<FactValue, FactValue, bool> holds)
    {
        var others = _partition.Of(other);
        return space.Store.OrAll(
            from piece in pieces
            let matching = others.Where(candidate => holds(piece.Value, candidate.Value)).Select(candidate => candidate.Region)
            select space.Store.And(piece.Region, space.Store.OrAll(matching)));
    }

    private Region Years(FactTest test)
    {
        var isChassis = test.Subject == "chassis";
        return isChassis
            ? space.WhereChassis(variant => Holds(test, variant))
            : space.WhereDonor(variant => Holds(test, variant));
    }

    private bool Holds(FactTest test, Variant variant)
    {
        var span = variant.Years;
        var inside = 0;
        for (var year = span.From; year <= span.To; year++)
        {
            inside += InYear(test.Test, year) ? 1 : 0;
        }

        var all = span.To - span.From + 1;
        if (inside > 0 && inside < all)
        {
            report(new Finding(FindingKinds.Vocabulary, $"`{test.Name}` cuts through the years of `{variant.Id}` ({span.ToString()})", test.Place)
            {
                Related = [new RelatedPlace($"`{variant.Id}` is one variant with one set of facts", variant.YearsPlace)],
                Mend = $"Split `{variant.Id}` into one variant for each side of the year split, or move the years in the condition.",
            });
        }

        return inside == all && all > 0;
    }

    private static bool InYear(ValueTest test, int year) => test switch
    {
        OneOfTest oneOf => oneOf.Values.Any(value => value.Number == year),
        RangeTest range => (range.Lower?.Value is not { } lower || (range.Lower.Inclusive ? year >= lower.Number : year > lower.Number))
            && (range.Upper?.Value is not { } upper || (range.Upper.Inclusive ? year <= upper.Number : year < upper.Number)),
        _ => throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"a year is not tested by {test.GetType().Name}")),
    };
}
