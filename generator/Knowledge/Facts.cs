using System.Collections.Frozen;
using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

public enum FactType
{
    OneOf,
    Number,
    Flag,
    Reference,
}

/// <summary>One possible value of a <see cref="FactType.OneOf"/> fact.</summary>
public sealed record FactOption(string Id, string Title);

/// <summary>A fact as the vocabulary declares it, once.</summary>
/// <param name="Subject">chassis, donor, gearbox, ecu or part.</param>
public sealed record FactDeclaration(string Subject, string Id, string Title, FactType Type, Place Place)
{
    public string Name => $"{Subject}.{Id}";

    public ImmutableArray<FactOption> Options { get; init; } = [];

    /// <summary>The written order of the options is a scale, so that ranges may be asked.</summary>
    public bool Ordered { get; init; }

    public Unit Unit { get; init; } = Unit.One;

    public decimal? Min { get; init; }

    public decimal? Max { get; init; }

    /// <summary>For a reference: the kind of entity it names.</summary>
    public string? To { get; init; }

    public bool Optional { get; init; }

    public bool Observable { get; init; }

    public string HowToTell { get; init; } = "";

    /// <summary>What the worksheets take it for: an id of <see cref="KnownQuantities"/>; null for a fact that only conditions ask.</summary>
    public string? Means { get; init; }

    /// <summary>The position whose answer decides whether the chassis's, the donor's or a part's value counts; null where the entity's own always does.</summary>
    public string? At { get; init; }

    /// <summary>Position on the scale of an ordered one-of fact; −1 for a value it does not know.</summary>
    public int RankOf(string value)
    {
        for (var rank = 0; rank < Options.Length; rank++)
        {
            if (Options[rank].Id == value)
            {
                return rank;
            }
        }

        return -1;
    }

    public string TitleOf(string value) => Options.FirstOrDefault(option => option.Id == value)?.Title ?? value;
}

/// <summary>A fact's value on an entity: text for one-of and references, the number in the declared unit, 1 or 0 for a flag.</summary>
public readonly record struct FactValue(FactType Type, string Text, decimal Number, Place Place)
{
    /// <summary>Same value, wherever it was written.</summary>
    public bool Same(FactValue other) => Type == other.Type && Text == other.Text && Number == other.Number;
}

/// <summary>An entity with facts.</summary>
public abstract record FactHolder(string Id, string Title, Place Place) : Entity(Id, Title, Place)
{
    public FrozenDictionary<string, FactValue> Facts { get; init; } = FrozenDictionary<string, FactValue>.Empty;

    public FactValue? Fact(string id) => Facts.TryGetValue(id, out var value) ? value : null;
}

/// <summary>First and last model year, both included.</summary>
public readonly record struct YearSpan(int From, int To)
{
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{From}{(From == To ? "" : $"–{To}")}");
}
