using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>
/// A chassis and a donor whose recommended options, taken together, cannot be built, though the pair can; and
/// recommendations of one choice that contradict each other.
/// </summary>
public static class DefaultClash
{
    public static readonly SpaceCheck Check = new(FindingKinds.DefaultClash, examination => new Search(examination).Run());

    /// <summary>An option that is the default of its choice in a region.</summary>
    private sealed record Default(string Option, Region Where, Place Place);

    private sealed class Search(Examination examination)
    {
        private readonly Resolution _resolution = examination.Resolution;
        private readonly SpaceModel _space = examination.Resolution.Space;
        private readonly RegionStore _store = examination.Resolution.Store;
        private readonly ImmutableDictionary<string, ImmutableArray<Default>> _defaults =
            examination.Base.Choices.All.ToImmutableDictionary(choice => choice.Id, choice => DefaultsOf(examination.Resolution, choice), StringComparer.Ordinal);

        public IEnumerable<Finding> Run() => examination.Base.Choices.All.SelectMany(Overlaps).Concat(Clashes());

        private IEnumerable<Finding> Overlaps(Choice choice)
        {
            for (var second = 1; second < choice.Recommendations.Length; second++)
            {
                for (var first = 0; first < second; first++)
                {
                    var (one, other) = (choice.Recommendations[first], choice.Recommendations[second]);
                    var both = _store.And(_store.And(_resolution.RegionOf(one.When), _resolution.RegionOf(other.When)), _resolution.RegionOf(choice.Applies));
                    if (one.Option != other.Option && _resolution.BuildableParts.Intersects(both))
                    {
                        yield return examination.About(FindingKinds.DefaultClash, $"`{choice.Id}` recommends `{one.Option}` and `{other.Option}` for the same combinations", other.Place, both) with
                        {
                            Related = [new RelatedPlace($"`{one.Option}` is recommended here", one.Place)],
                            Mend = "Narrow the `when` of one of the two, so that they do not meet.",
                        };
                    }
                }
            }
        }

        private IEnumerable<Finding> Clashes()
        {
            var factors = examination.Base.Choices.All.Select(Followed).ToImmutableArray();
            var buildable = new FactoredRegion(_store, factors.Concat(_resolution.Exclusions.Select(exclusion => _store.Not(exclusion.Region))), SpaceModel.Entities);
            var open = _store.Minus(_resolution.BuildableParts.Possible, buildable.Possible);
            if (open.IsNone)
            {
                yield break;
            }

            var followed = new FactoredRegion(_store, factors, SpaceModel.Entities);
            var choices = Enumerable.Range(SpaceModel.Entities, _store.Variables.Length - SpaceModel.Entities).ToList();
            foreach (var exclusion in _resolution.Exclusions)
            {
                var pairs = _store.And(open, _store.Project(followed.Narrow(_store.And(exclusion.Region, open)), choices));
                if (!pairs.IsNone)
                {
                    open = _store.Minus(open, pairs);
                    yield return Excluded(exclusion, pairs, followed);
                }
            }

            if (!open.IsNone)
            {
                yield return Circular(open);
            }
        }

        private Finding Excluded(Exclusion exclusion, Region pairs, FactoredRegion followed)
        {
            var region = _store.And(exclusion.Region, pairs);
            var values = followed.Witness(region);
            var clashing = InPageOrder(_store.Support(exclusion.Region).Select(level => _space.ChoiceAt[level]).OfType<Choice>())
                .Select(choice => (Choice: choice, Default: _defaults[choice.Id].FirstOrDefault(one => _store.Contains(one.Where, values))))
                .Where(one => one.Default is not null).ToList();
            var nearest = _store.Nearest(_resolution.BuildableParts.At(values.AsSpan(0, SpaceModel.Entities)), values);
            var changes = InPageOrder(examination.Base.Choices.All).Where(choice => nearest[_space.LevelOf(choice.Id)] != values[_space.LevelOf(choice.Id)])
                .Select(choice => $"`{choice.Id}: {_space.OptionOf(nearest, choice.Id)}`").ToList();
            var options = string.Join(" and ", clashing.Select(one => $"`{one.Choice.Id}: {one.Default!.Option}`"));
            var others = _resolution.Exclusions.Where(other => other != exclusion && _store.Contains(other.Region, values)).Take(3);
            return new Finding(FindingKinds.DefaultClash, $"{options}: recommended together, and excluded by `{exclusion.Rule.Id}`, {Pairs(pairs)}", clashing.Count > 0 ? clashing[0].Default!.Place : exclusion.Rule.Place)
            {
                Related =
                [
                    .. clashing.Skip(1).Select(one => new RelatedPlace($"`{one.Choice.Id}: {one.Default!.Option}` comes from here", one.Default!.Place)),
                    .. others.Prepend(exclusion).Select(other => new RelatedPlace($"`{other.Rule.Id}` excludes the combination", other.Rule.Place)),
                ],
                Witness = _space.Witness(values),
                Touches = followed.Count(region),
                Region = examination.Words.Describe(pairs, _resolution.BuildableParts.Possible),
                Mend = $"Recommend the nearest that can be built, {string.Join(" and ", changes)}{When(pairs)}, or correct `{exclusion.Rule.Id}`.",
            };
        }

        private Finding Circular(Region pairs)
        {
            var values = _resolution.BuildableParts.Witness(pairs);
            var asking = InPageOrder(examination.Base.Choices.All.Where(choice => choice.Recommendations.Any(one => one.When.ChoicesAsked().Any() || one.When.AnswerTests().Any()))).ToList();
            return new Finding(
                FindingKinds.DefaultClash,
                $"the recommendations of {string.Join(", ", asking.Select(choice => $"`{choice.Id}`"))} depend on each other and agree on no combination, {Pairs(pairs)}",
                asking.Count > 0 ? asking[0].Recommendations[0].Place : Place.Of("kb.yaml"))
            {
                Related = [.. asking.Skip(1).Select(choice => new RelatedPlace($"`{choice.Id}` is recommended here", choice.Recommendations[0].Place))],
                Witness = new Witness(_space.ChassisOf(values).Id, _space.DonorOf(values).Id, []),
                Touches = _resolution.DomainParts.Count(pairs),
                Region = examination.Words.Describe(pairs, _resolution.BuildableParts.Possible),
                Mend = "Let one of these recommendations ask facts in place of other choices.",
            };
        }

        private string Pairs(Region pairs)
        {
            int[] entities = [_space.Chassis, _space.Donor];
            return string.Create(CultureInfo.InvariantCulture, $"for {_store.CountWithin(pairs, entities)} of {_store.CountWithin(_resolution.BuildableParts.Possible, entities)} pairs of chassis and donor");
        }

        private string When(Region pairs) =>
            examination.Yaml.Write(pairs, _resolution.BuildableParts.Possible) switch { null or "{}" => "", var yaml => $", where `{yaml}`" };

        /// <summary>Where a choice takes its default option, and none where it does not apply.</summary>
        private Region Followed(Choice choice)
        {
            var taken = _defaults[choice.Id].Select(one => _store.And(one.Where, _space.WhereChoice(choice.Id, [one.Option])));
            var none = _store.Minus(_space.WhereChoice(choice.Id, [Choice.None]), _resolution.RegionOf(choice.Applies));
            return _store.Or(_store.OrAll(taken), none);
        }

        private static IEnumerable<Choice> InPageOrder(IEnumerable<Choice> choices) => choices.OrderBy(choice => choice.Order).ThenBy(choice => choice.Id, StringComparer.Ordinal);

        private static ImmutableArray<Default> DefaultsOf(Resolution resolution, Choice choice)
        {
            var defaults = ImmutableArray.CreateBuilder<Default>();
            var left = resolution.RegionOf(choice.Applies);
            foreach (var recommended in choice.Recommendations.Where(one => choice.Option(one.Option) is not null))
            {
                var here = resolution.Store.And(left, resolution.RegionOf(recommended.When));
                defaults.Add(new Default(recommended.Option, here, recommended.Place));
                left = resolution.Store.Minus(left, here);
            }

            defaults.Add(new Default(choice.Options[0].Id, left, choice.Options[0].Place));
            return defaults.ToImmutable();
        }
    }
}
