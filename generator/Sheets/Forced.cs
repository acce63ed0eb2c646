using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>What is settled without asking: options that are the only ones left of their choice.</summary>
public static class Forced
{
    /// <summary>
    /// The options of the other choices that every buildable combination takes with this chassis, this donor and these
    /// options. Empty where no such combination can be built.
    /// </summary>
    /// <param name="decided">Choice id → option id.</param>
    public static ImmutableArray<KeyValuePair<string, string>> By(Resolution resolution, string chassis, string donor, IReadOnlyCollection<KeyValuePair<string, string>> decided)
    {
        var space = resolution.Space;
        var store = resolution.Store;
        var left = store.And(PairSpace.Buildable(resolution, chassis, donor), store.AndAll(decided.Select(one => space.WhereChoice(one.Key, [one.Value]))));
        return Settled(resolution, left, [.. decided.Select(one => one.Key)]);
    }

    /// <summary>What one option more settles within a part of the space: options of other choices that were not the only ones before.</summary>
    /// <param name="within">Buildable combinations, such as those of a guide.</param>
    public static ImmutableArray<KeyValuePair<string, string>> ByOption(Resolution resolution, Region within, string choice, string option)
    {
        var before = Settled(resolution, within, [choice]);
        return [.. Settled(resolution, resolution.Store.And(within, resolution.Space.WhereChoice(choice, [option])), [choice]).Except(before)];
    }

    private static ImmutableArray<KeyValuePair<string, string>> Settled(Resolution resolution, Region left, ImmutableArray<string> decided)
    {
        if (left.IsNone)
        {
            return [];
        }

        var store = resolution.Store;
        return
        [
            .. resolution.Space.Base.Choices.All.Where(choice => !decided.Contains(choice.Id, StringComparer.Ordinal))
                .Select(choice => (choice.Id, Level: resolution.Space.LevelOf(choice.Id)))
                .Select(choice => (choice.Id, choice.Level, Allowed: store.AllowedValues(left, choice.Level)))
                .Where(choice => choice.Allowed.Count == 1)
                .Select(choice => KeyValuePair.Create(choice.Id, store.Variables[choice.Level].Values[choice.Allowed.Lowest]))
                .Where(choice => choice.Value != Choice.None),
        ];
    }
}
