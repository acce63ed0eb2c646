using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>A guide by ids: a headline combination.</summary>
/// <param name="Options">Choice id → option id, in the order in which kb.yaml names the choices.</param>
public sealed record GuideName(string Chassis, string Donor, ImmutableArray<KeyValuePair<string, string>> Options)
{
    /// <summary>As in <c>chassis/donor/option</c>.</summary>
    public string Id => string.Join('/', Options.Select(option => option.Value).Prepend(Donor).Prepend(Chassis));

    public bool Equals(GuideName? other) => other is not null && Id == other.Id && Options.SequenceEqual(other.Options);

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);
}

/// <summary>A guide that readers of both bases have and that tells them something else.</summary>
/// <param name="Kinds">Of <see cref="GuideChanges.Kinds"/>, in that order.</param>
public sealed record ChangedGuide(GuideName Guide, ImmutableArray<string> Kinds);

/// <summary>Guides that came, went and changed, in order of chassis, donor and options.</summary>
public sealed record GuideChanges(ImmutableArray<GuideName> Gained, ImmutableArray<GuideName> Lost, ImmutableArray<ChangedGuide> Changed)
{
    /// <summary>What may change in a guide: combinations it covers, answers, tasks and what to mind, words, facts and parts it shows, the options it recommends, numbers.</summary>
    public static readonly ImmutableArray<string> Kinds = ["combinations", "answers", "work", "words", "entries", "defaults", "numbers"];
}

/// <summary>Reads guides off regions: a few steps down the diagram for each, never through its combinations.</summary>
internal static class GuideWalk
{
    /// <summary>The guides of a base.</summary>
    public static IEnumerable<GuideName> Of(Resolution resolution)
    {
        var headline = Headline(resolution.Space.Base);
        ImmutableArray<int> levels = [.. headline.Select(resolution.Space.LevelOf)];
        return Named(resolution.Store, resolution.BuildableParts.Onto(levels), headline, levels);
    }

    /// <summary>The guides, as the new base makes them, of the combinations that lie in a region of the shared space and in one of some stretches of it.</summary>
    public static IEnumerable<GuideName> Meeting(SharedSpace shared, Region region, params ReadOnlySpan<FactoredRegion> among)
    {
        var headline = Headline(shared.New.Base);
        ImmutableArray<int> levels = [.. headline.Select(choice => shared.New.LevelOf(choice))];
        var met = Region.None;
        foreach (var stretch in among)
        {
            met = shared.Store.Or(met, stretch.Onto(levels, region));
        }

        return Named(shared.Store, met, headline, levels);
    }

    private static ImmutableArray<string> Headline(KnowledgeBase kb) =>
        [.. kb.Settings.Headline.Select(named => named.Id).Where(kb.Choices.Has).Distinct(StringComparer.Ordinal)];

    private static IEnumerable<GuideName> Named(RegionStore store, Region region, ImmutableArray<string> headline, ImmutableArray<int> levels)
    {
        int[] order = [SharedSpace.Chassis, SharedSpace.Donor, .. levels.Order()];
        ImmutableArray<int> place = [.. levels.Select(level => Array.IndexOf(order, level))];
        return Walk(store, region, order, []).Select(values => new GuideName(
            store.Variables[SharedSpace.Chassis].Values[values[0]],
            store.Variables[SharedSpace.Donor].Values[values[1]],
            [.. headline.Select((choice, at) => KeyValuePair.Create(choice, store.Variables[levels[at]].Values[values[place[at]]]))]));
    }

    private static IEnumerable<ImmutableArray<int>> Walk(RegionStore store, Region region, ReadOnlyMemory<int> levels, ImmutableArray<int> taken)
    {
        if (region.IsNone)
        {
            return [];
        }

        return levels.IsEmpty
            ? [taken]
            : store.Classes(levels.Span[0], [region]).SelectMany(cell => cell.Values.SelectMany(value => Walk(store, cell.Children[0], levels[1..], taken.Add(value))));
    }
}
