using Google.OrTools.Sat;
using Swapwright.Knowledge;

namespace Swapwright.Benchmarks.Solving;

/// <summary>Tests of facts as truth values: over the variants one by one, and over the options that bind an entity.</summary>
internal sealed class SolverFacts(
    KnowledgeBase kb,
    Dictionary<string, ILiteral> chassis,
    Dictionary<string, ILiteral> donors,
    Dictionary<(string Choice, string Option), ILiteral> options,
    Func<IEnumerable<ILiteral>, ILiteral> all,
    Func<IEnumerable<ILiteral>, ILiteral> any)
{
    public ILiteral Is(Variant variant) => variant is ChassisVariant ? chassis[variant.Id] : donors[variant.Id];

    public ILiteral Of(FactTest test)
    {
        if (test.Fact == "year")
        {
            return any(Variants(test.Subject).Where(variant => Enumerable.Range(variant.Years.From, variant.Years.To - variant.Years.From + 1)
                .All(year => Meets(test.Test, new FactValue(FactType.Number, "", year, default), _ => null))).Select(Is));
        }

        var other = Other(test.Test);
        var holders = Holders(test.Subject);
        return other is not { } name
            ? any(holders.Where(holder => ValueOf(holder.Holder, test.Fact) is { } value && Meets(test.Test, value, _ => null)).Select(holder => holder.Where))
            : any(from holder in holders
                  from second in Holders(name.Subject)
                  where ValueOf(holder.Holder, test.Fact) is { } value && Meets(test.Test, value, fact => ValueOf(second.Holder, fact.Fact))
                  select all([holder.Where, second.Where]));
    }

    /// <summary>The entities that a subject may stand for, each with where it does.</summary>
    private List<(FactHolder Holder, ILiteral Where)> Holders(string subject)
    {
        if (subject is "chassis" or "donor")
        {
            return [.. Variants(subject).Select(variant => ((FactHolder)variant, Is(variant)))];
        }

        var holders = new List<(FactHolder, ILiteral)>();
        foreach (var option in kb.Choices[subject].Options)
        {
            var taken = options[(subject, option.Id)];
            if (option.Binds is { Kind: { } kind, Entity: { } id } && Entity(kind, id) is { } entity)
            {
                holders.Add((entity, taken));
            }
            else if (option.Binds?.FactName?.Split('.') is [var owner, var fact])
            {
                var to = kb.Vocabulary.Fact(owner, fact)!.To!;
                holders.AddRange(
                    from variant in Variants(owner)
                    let reference = variant.Fact(fact)
                    where reference is not null && Entity(to, reference.Value.Text) is not null
                    select (Entity(to, reference.Value.Text)!, all([taken, Is(variant)])));
            }
        }

        return holders;
    }

    private FactHolder? Entity(string kind, string id) => kind switch
    {
        "gearbox" => kb.Gearboxes.Find(id),
        "ecu" => kb.Ecus.Find(id),
        _ => kb.Parts.Find(id),
    };

    private IEnumerable<Variant> Variants(string subject) => subject == "chassis" ? kb.Chassis.All : kb.Donors.All;

    private static FactValue? ValueOf(FactHolder holder, string fact) => (holder, fact) switch
    {
        (Variant variant, "family") => new FactValue(FactType.OneOf, variant.Family, 0, default),
        (Variant variant, "variant") => new FactValue(FactType.OneOf, variant.Id, 0, default),
        _ => holder.Fact(fact),
    };

    private static FactName? Other(ValueTest test) => test switch
    {
        EqualsFactTest equals => equals.Fact,
        RangeTest range => range.Lower?.Fact ?? range.Upper?.Fact,
        _ => null,
    };

    private static bool Meets(ValueTest test, FactValue value, Func<FactName, FactValue?> factOf) => test switch
    {
        OneOfTest oneOf => oneOf.Values.Any(wanted => Equal(wanted, value)),
        EqualsFactTest equals => factOf(equals.Fact) is { } other && Equal(value, other),
        RangeTest range => Within(range.Lower, value.Number, factOf, lower: true) && Within(range.Upper, value.Number, factOf, lower: false),
        _ => throw new InvalidOperationException(test.GetType().Name),
    };

    private static bool Within(Bound? bound, decimal number, Func<FactName, FactValue?> factOf, bool lower)
    {
        if (bound is null)
        {
            return true;
        }

        var limit = bound.Fact is { } fact ? factOf(fact)?.Number : bound.Value!.Value.Number;
        return limit is { } known && (number == known ? bound.Inclusive : number > known == lower);
    }

    private static bool Equal(FactValue one, FactValue other) => one.Type == FactType.Number ? one.Number == other.Number : one.Text == other.Text;
}
