using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>What to do at a position.</summary>
/// <param name="Source">chassis, donor, other, new, made or none.</param>
/// <param name="Treatment">as-is, refresh, modify, move or blank.</param>
/// <param name="Also">Parts wanted besides.</param>
public sealed record Answer(string Position, string Source, string Treatment, string? Part, ImmutableArray<string> Also, ImmutableArray<string> Steps, string Notes, ImmutableArray<string> Mistakes, string? Article, Place Place)
{
    /// <summary>Ports that are left without a hose and get a cap or a plug.</summary>
    public ImmutableArray<string> Closes { get; init; } = [];

    /// <summary>The part that is fitted and those wanted besides.</summary>
    public IEnumerable<string> PartIds => Part is null ? Also : Also.Prepend(Part);

    /// <summary>Two answers that tell the builder the same: source, treatment and parts.</summary>
    public bool Agrees(Answer other) =>
        Source == other.Source && Treatment == other.Treatment && Part == other.Part && Also.Order(StringComparer.Ordinal).SequenceEqual(other.Also.Order(StringComparer.Ordinal));
}

/// <summary>A number that a rule states and the generator computes too.</summary>
public sealed record StatedValue(string Name, decimal Value, decimal Tolerance, Place Place)
{
    /// <summary>Nobody measured it: it was written down as the worksheet had it, so that a later change is seen.</summary>
    public bool WrittenDown { get; init; }
}

/// <param name="About">fuel, brakes, lifting, airbag, heat, electric, law or general.</param>
public sealed record Caution(string About, string Text, Place Place);

/// <summary>A better way that a rule points to without deciding.</summary>
public sealed record Advice(string Text, string? Option, string? Donor, Place Place);

/// <summary>When, then, why, on whose word and how sure.</summary>
public sealed record Rule(string Id, string Title, Place Place) : Entity(Id, Title, Place)
{
    /// <summary>The whole file, for quoting.</summary>
    public Condition When { get; init; } = Condition.Always;

    public ImmutableArray<Answer> Answers { get; init; } = [];

    public bool Excludes { get; init; }

    /// <summary>Combinations in <see cref="When"/> but outside this cannot be built; null where nothing is required.</summary>
    public Condition? Requires { get; init; }

    /// <summary>Why the combination cannot be built, in place of <see cref="Because"/>.</summary>
    public string ExcludeText { get; init; } = "";

    public ImmutableArray<StatedValue> Values { get; init; } = [];

    public ImmutableArray<string> Tasks { get; init; } = [];

    public ImmutableArray<Caution> Cautions { get; init; } = [];

    public ImmutableArray<string> Mistakes { get; init; } = [];

    public ImmutableArray<Advice> Advises { get; init; } = [];

    public ImmutableArray<Named> Overrides { get; init; } = [];

    public string Because { get; init; } = "";

    /// <summary>What a reader is told where the rule excludes: its own words for that, else its reason.</summary>
    public string WhyExcluded => ExcludeText.Length > 0 ? ExcludeText : Because;

    public ImmutableArray<string> Sources { get; init; } = [];

    /// <summary>reported, measured or built.</summary>
    public string Standing { get; init; } = "reported";

    /// <summary>The day on which it was last held against the vehicle, as written.</summary>
    public string? Checked { get; init; }

    /// <summary>Of <see cref="Checked"/>, where it is said.</summary>
    public Place CheckedPlace { get; init; }

    public Answer? AnswerAt(string position)
    {
        foreach (var answer in Answers)
        {
            if (answer.Position == position)
            {
                return answer;
            }
        }

        return null;
    }
}

/// <summary>A reference with the place where it is written.</summary>
public sealed record Named(string Id, Place Place);
