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
        var name = new FactName(test.Subject, test.Fact);
        return test.Test switch
        {
            OneOfTest oneOf => _partition.Where(name, value => oneOf.Values.Any(value.Same)),
            EqualsFactTest equals => Compare(name, equals.Fact, (value, other) => value.Same(other)),
            RangeTest range => space.Store.And(Above(name, range.Lower), Below(name, range.Upper)),
            _ => throw new ArgumentException($"no region for {test.Test.GetType().Name}", nameof(test)),
        };
    }

    private Region Above(FactName name, Bound? bound) =>
        Side(name, bound, (value, limit) => bound!.Inclusive ? value.Number >= limit.Number : value.Number > limit.Number);

    private Region Below(FactName name, Bound? bound) =>
        Side(name, bound, (value, limit) => bound!.Inclusive ? value.Number <= limit.Number : value.Number < limit.Number);

    private Region Side(FactName name, Bound? bound, Func<FactValue, FactValue, bool> holds) => bound switch
    {
        null => _partition.Where(name, _ => true),
        { Fact: { } fact } => Compare(name, fact, holds),
        _ => _partition.Where(name, value => holds(value, bound.Value!.Value)),
    };

    // One fact against another: pairs of values, never pairs of combinations. Binding has seen to it that both are in one unit.
    private Region Compare(FactName name, FactName other, Func<FactValue, FactValue, bool> holds) => space.Store.OrAll(
        _partition.Of(name).Select(piece => space.Store.And(piece.Region, _partition.Where(other, candidate => holds(piece.Value, candidate)))));

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
