using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>A computed number of a guide's recommended combination; null where there is none on that side.</summary>
/// <param name="Name">As rules may state it (<c>belt.accessory.length</c>); <c>money.likely</c>, <c>hours.least</c> and the like; or a ledger's figure or cell.</param>
/// <param name="Title">What it is, for people.</param>
public sealed record NumberChange(GuideName Guide, string Name, string Title, string Unit, decimal? Old, decimal? New);

/// <summary>The recommended combination of a guide is another one.</summary>
/// <param name="Old">Options of the choices that differ, as they were; <c>none</c> where a choice did not apply or was not asked.</param>
public sealed record DefaultChange(GuideName Guide, ImmutableArray<KeyValuePair<string, string>> Old, ImmutableArray<KeyValuePair<string, string>> New);

/// <summary>Numbers that moved in the recommended combinations of guides that both bases have.</summary>
/// <param name="Compared">Guides whose numbers were worked out on both sides.</param>
/// <param name="Candidates">Guides whose numbers might differ; where they are more than compared, the rest is not known.</param>
public sealed record NumberChanges(ImmutableArray<NumberChange> Moved, ImmutableArray<DefaultChange> Defaults, int Compared, int Candidates)
{
    /// <summary>A sheet takes milliseconds: more guides than these are not compared one by one.</summary>
    internal const int MostGuides = 1000;

    /// <param name="candidates">Guides that both bases have and whose numbers might differ.</param>
    /// <param name="same">Whether a combination is certain to have the same numbers on both sides, where both recommend it.</param>
    internal static NumberChanges Between(SharedSpace shared, IReadOnlyCollection<GuideName> candidates, Func<Combination, bool> same)
    {
        var moved = ImmutableArray.CreateBuilder<NumberChange>();
        var defaults = ImmutableArray.CreateBuilder<DefaultChange>();
        var (old, @new) = (new Recommended(shared.Old.Resolution), new Recommended(shared.New.Resolution));
        foreach (var guide in candidates.Take(MostGuides))
        {
            var (before, now) = (old.Of(guide), @new.Of(guide));
            var (oldOptions, newOptions) = (Options(shared.Old.Resolution, before), Options(shared.New.Resolution, now));
            ImmutableArray<string> other =
            [
                .. oldOptions.Keys.Union(newOptions.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)
                    .Where(choice => oldOptions.GetValueOrDefault(choice, Choice.None) != newOptions.GetValueOrDefault(choice, Choice.None)),
            ];
            if (other.IsEmpty && same(new Combination([.. now])))
            {
                continue;
            }

            if (!other.IsEmpty)
            {
                defaults.Add(new DefaultChange(guide, Picked(oldOptions, other), Picked(newOptions, other)));
            }

            moved.AddRange(Compare(guide, old.Sheet(before), @new.Sheet(now), shared.New.Base.Settings.Currency));
        }

        return new NumberChanges(moved.ToImmutable(), defaults.ToImmutable(), Math.Min(candidates.Count, MostGuides), candidates.Count);
    }

    private static Dictionary<string, string> Options(Resolution resolution, int[] combination) =>
        resolution.Space.Base.Choices.All.ToDictionary(choice => choice.Id, choice => resolution.Space.OptionOf(combination, choice.Id), StringComparer.Ordinal);

    private static ImmutableArray<KeyValuePair<string, string>> Picked(Dictionary<string, string> options, ImmutableArray<string> choices) =>
        [.. choices.Select(choice => KeyValuePair.Create(choice, options.GetValueOrDefault(choice, Choice.None)))];

    private static IEnumerable<NumberChange> Compare(GuideName guide, Sheet old, Sheet @new, string currency)
    {
        var (before, now) = (SheetNumbers.Of(old, currency), SheetNumbers.Of(@new, currency));
        return from name in before.Keys.Union(now.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal)
               let was = before.GetValueOrDefault(name)
               let one = now.GetValueOrDefault(name) ?? was!
               where was?.Value != now.GetValueOrDefault(name)?.Value
               select new NumberChange(guide, name, one.Title, one.Unit, was?.Value, now.GetValueOrDefault(name)?.Value);
    }

    /// <summary>The recommended combinations of one base and their sheets.</summary>
    private sealed class Recommended(Resolution resolution)
    {
        private readonly Headlines _headlines = new(resolution);
        private SheetBuilder? _builder;
        private (string? Chassis, string? Donor, Region Region) _pair;

        public int[] Of(GuideName guide)
        {
            var space = resolution.Space;
            return _headlines.Default(resolution.Store.AndAll(
                guide.Options.Select(option => space.WhereChoice(option.Key, [option.Value]))
                    .Append(space.WhereChassis(chassis => chassis.Id == guide.Chassis))
                    .Append(space.WhereDonor(donor => donor.Id == guide.Donor))
                    .Append(Buildable(guide.Chassis, guide.Donor))));
        }

        /// <summary>What can be built of a chassis and a donor; their guides follow one another.</summary>
        private Region Buildable(string chassis, string donor)
        {
            if (_pair.Chassis != chassis || _pair.Donor != donor)
            {
                var kb = resolution.Space.Base;
                _pair = (chassis, donor, resolution.BuildableParts.At(Array.IndexOf([.. kb.Chassis.Ids], chassis), Array.IndexOf([.. kb.Donors.Ids], donor)));
            }

            return _pair.Region;
        }

        public Sheet Sheet(int[] combination) => (_builder ??= new SheetBuilder(resolution)).Build(combination);
    }
}
