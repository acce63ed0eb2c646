using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A region of the space as a contributor writes it.</summary>
public abstract record Condition(Place Place)
{
    public static readonly Condition Always = new AllOf([], default);

    /// <summary>The positions whose answers the condition asks about.</summary>
    public IEnumerable<AnswerTest> AnswerTests() => this switch
    {
        AllOf all => all.Terms.SelectMany(term => term.AnswerTests()),
        AnyOf any => any.Terms.SelectMany(term => term.AnswerTests()),
        NotOf not => not.Term.AnswerTests(),
        AnswerTest test => [test],
        _ => [],
    };

    /// <summary>The facts that the condition asks about, those included that a bound names.</summary>
    public IEnumerable<FactName> FactsAsked() => this switch
    {
        AllOf all => all.Terms.SelectMany(term => term.FactsAsked()),
        AnyOf any => any.Terms.SelectMany(term => term.FactsAsked()),
        NotOf not => not.Term.FactsAsked(),
        FactTest test => test.Test switch
        {
            RangeTest range => new[] { new FactName(test.Subject, test.Fact), range.Lower?.Fact, range.Upper?.Fact }.OfType<FactName>(),
            EqualsFactTest equal => [new(test.Subject, test.Fact), equal.Fact],
            _ => [new(test.Subject, test.Fact)],
        },
        _ => [],
    };

    /// <summary>The choices that the condition asks about, directly or through the entity an option binds.</summary>
    public IEnumerable<string> ChoicesAsked() => this switch
    {
        AllOf all => all.Terms.SelectMany(term => term.ChoicesAsked()),
        AnyOf any => any.Terms.SelectMany(term => term.ChoicesAsked()),
        NotOf not => not.Term.ChoicesAsked(),
        ChoiceTest test => [test.Choice],
        FactTest { Subject: not ("chassis" or "donor") } test => [test.Subject],
        _ => [],
    };
}

public sealed record AllOf(ImmutableArray<Condition> Terms, Place Place) : Condition(Place);

public sealed record AnyOf(ImmutableArray<Condition> Terms, Place Place) : Condition(Place);

public sealed record NotOf(Condition Term, Place Place) : Condition(Place);

/// <param name="Options">Option ids, or <see cref="Knowledge.Choice.None"/>.</param>
public sealed record ChoiceTest(string Choice, ImmutableArray<string> Options, Place Place) : Condition(Place);

/// <summary>A question about a fact of the chassis, the donor or the entity that a choice's option binds.</summary>
/// <param name="Subject">chassis, donor or a choice id.</param>
public sealed record FactTest(string Subject, string Fact, ValueTest Test, Place Place) : Condition(Place)
{
    public string Name => $"{Subject}.{Fact}";
}

/// <summary>A question about the answer that other rules give at a position. Null parts are not asked.</summary>
public sealed record AnswerTest(string Position, ImmutableArray<string> Sources, ImmutableArray<string> Treatments, ImmutableArray<string> Parts, Place Place) : Condition(Place)
{
    public bool Matches(Answer answer) =>
        (Sources.IsEmpty || Sources.Contains(answer.Source))
        && (Treatments.IsEmpty || Treatments.Contains(answer.Treatment))
        && (Parts.IsEmpty || (answer.Part is { } part && Parts.Contains(part)));
}

/// <summary>What is asked of a value.</summary>
public abstract record ValueTest;

/// <summary>One of the listed values; a flag is <c>yes</c> or <c>no</c>, a number is written invariantly.</summary>
public sealed record OneOfTest(ImmutableArray<FactValue> Values) : ValueTest;

/// <summary>A bound of a range: a value, or the fact of another subject.</summary>
public sealed record Bound(FactValue? Value, FactName? Fact, bool Inclusive);

public readonly record struct FactName(string Subject, string Fact)
{
    public override string ToString() => $"{Subject}.{Fact}";
}

public sealed record RangeTest(Bound? Lower, Bound? Upper) : ValueTest;

/// <summary>The value equals another fact's value.</summary>
public sealed record EqualsFactTest(FactName Fact) : ValueTest;
