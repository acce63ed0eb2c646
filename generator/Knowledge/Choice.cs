using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>What an option brings into the combination, so that its facts can be asked: an entity, or the one that a fact of the chassis or donor names.</summary>
public sealed record OptionBinding(string? FactName, string? Kind, string? Entity, Place Place);

public sealed record ChoiceOption(string Id, string Title, string About, OptionBinding? Binds, Place Place);

/// <summary>An option that is recommended in a part of the space.</summary>
public sealed record Recommendation(string Option, Condition When, string Because, Place Place);

/// <summary>Something that the builder decides.</summary>
public sealed record Choice(string Id, string Title, Place Place) : Entity(Id, Title, Place)
{
    /// <summary>The value that stands in a combination where the choice does not apply.</summary>
    public const string None = "none";

    public string Question { get; init; } = "";

    public int Order { get; init; }

    public Condition Applies { get; init; } = Condition.Always;

    public ImmutableArray<ChoiceOption> Options { get; init; } = [];

    public ImmutableArray<Recommendation> Recommendations { get; init; } = [];

    public ChoiceOption? Option(string id) => Options.FirstOrDefault(option => option.Id == id);
}
