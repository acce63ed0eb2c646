using System.Collections.Frozen;
using System.Collections.Immutable;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Sheets.Questions;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Sheets.Questions;

public sealed class VariantQuestionsTests
{
    private static KnowledgeBase Shipped => ShippedKnowledge.Base;

    [Fact]
    public void Of_FactThatCannotBeSeen_IsNotAsked()
    {
        var step = Ask([Fact("layout", false)], Car("a", 1990, 1991, ("layout", "x")), Car("b", 1991, 1992, ("layout", "y")));

        Assert.Null(step.Question);
        Assert.Equal(["a", "b"], step.Variants.Select(one => one.Id));
    }

    [Fact]
    public void Of_FactThatOneVariantDoesNotGive_IsNotAskedAmongThem()
    {
        var step = Ask([Fact("layout", true)], Car("a", 1990, 1991, ("layout", "x")), Car("b", 1991, 1992));

        Assert.Null(step.Question);
    }

    [Fact]
    public void Of_OverlappingYears_BelongToOneReply()
    {
        var step = Ask([], Car("a", 1990, 1992), Car("b", 1992, 1994), Car("c", 1994, 1994), Car("d", 1996, 1997));

        Assert.True(step.Question!.IsYear);
        Assert.Equal([new YearSpan(1990, 1994), new YearSpan(1996, 1997)], step.Replies.Select(reply => reply.Reply.Years));
        Assert.Equal(["a", "b", "c"], step.Replies[0].Next.Variants.Select(one => one.Id));
        Assert.Null(step.Replies[0].Next.Question);
    }

    [Fact]
    public void Of_FactAndYearThatDivideAlike_AsksTheFactAndNamesTheYear()
    {
        var step = Ask([Fact("layout", true)], Car("a", 1990, 1991, ("layout", "x")), Car("b", 1992, 1992, ("layout", "y")));

        Assert.Equal("layout", step.Question!.Fact!.Id);
        Assert.True(Assert.Single(step.Same).IsYear);
    }

    [Fact]
    public void Of_ShippedVariants_EveryOneIsReachedByItsOwnAnswers()
    {
        Reached("chassis", Shipped.Chassis.All);
        Reached("donor", Shipped.Donors.All);
    }

    /// <summary>Whoever answers truly, question by question, ends at a leaf that names their variant.</summary>
    private static void Reached<T>(string subject, ImmutableArray<T> variants)
        where T : Variant
    {
        foreach (var variant in variants)
        {
            var step = VariantQuestions.Of(Shipped.Vocabulary, subject, variants);
            while (step.Question is { } question)
            {
                step = Assert.Single(step.Replies, reply => question.Fact is { } fact
                    ? variant.Fact(fact.Id)!.Value.Same(reply.Reply.Value!.Value)
                    : variant.Years.From >= reply.Reply.Years.From && variant.Years.To <= reply.Reply.Years.To).Next;
            }

            Assert.Contains(variant, step.Variants);

            // Who stops asking has to have nothing left to ask: nothing that can be seen tells those who are left apart, and their years meet.
            Assert.All(Shipped.Vocabulary.Facts.All.Where(fact => fact.Subject == subject && fact.Observable), fact =>
            {
                var seen = step.Variants.Select(one => one.Fact(fact.Id)).ToList();
                Assert.True(seen.Exists(value => value is null) || seen.TrueForAll(value => value!.Value.Same(seen[0]!.Value)), $"`{fact.Id}` would tell those apart that `{variant.Id}` is left with");
            });
            var years = step.Variants.Select(one => one.Years).OrderBy(span => span.From).ToList();
            Assert.All(Enumerable.Range(1, years.Count - 1), at => Assert.True(years[at].From <= years.Take(at).Max(span => span.To)));
        }
    }

    private static QuestionStep<ChassisVariant> Ask(FactDeclaration[] facts, params ChassisVariant[] variants) =>
        VariantQuestions.Of(new Vocabulary(new(facts, fact => fact.Name), new([], signal => signal.Id), new([], role => role.Id)), "chassis", [.. variants]);

    private static FactDeclaration Fact(string id, bool observable) =>
        new("chassis", id, id, FactType.OneOf, default) { Observable = observable, Options = [new("x", "X"), new("y", "Y")] };

    private static ChassisVariant Car(string id, int from, int to, params (string Fact, string Value)[] facts) => new(id, id, default)
    {
        Years = new YearSpan(from, to),
        Facts = facts.ToFrozenDictionary(fact => fact.Fact, fact => new FactValue(FactType.OneOf, fact.Value, 0, default), StringComparer.Ordinal),
    };
}
