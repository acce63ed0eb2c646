using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>Which rules keep a part of the space from being built. It asks the space, which one worker may do at a time: it takes the lock itself.</summary>
internal sealed class ClosedWays(SiteKnowledge site)
{
    private readonly Dictionary<(string Chassis, string Donor), ImmutableArray<Rule>> _pairs = [];

    /// <summary>Why a chassis and a donor do not go together; empty where some of their combinations can be built or no rule says it.</summary>
    public ImmutableArray<Rule> OfPair(string chassis, string donor)
    {
        lock (site.Store)
        {
            if (!_pairs.TryGetValue((chassis, donor), out var rules))
            {
                rules = Reasons(PairSpace.Domain(site.Resolution, chassis, donor));
                _pairs.Add((chassis, donor), rules);
            }

            return rules;
        }
    }

    /// <summary>Why an option cannot be taken with a chassis and a donor; null where there is nothing to choose of it.</summary>
    public ImmutableArray<Rule>? OfOption(string chassis, string donor, string choice, string option)
    {
        lock (site.Store)
        {
            var wanted = site.Store.And(PairSpace.Domain(site.Resolution, chassis, donor), site.Resolution.Space.WhereChoice(choice, [option]));
            return wanted.IsNone ? null : Reasons(wanted);
        }
    }

    /// <summary>The first rule that excludes a region by itself, or rules none of which can be spared to do it together.</summary>
    private ImmutableArray<Rule> Reasons(Region region)
    {
        var store = site.Store;
        var touching = site.Resolution.Exclusions.Where(exclusion => store.Intersects(region, exclusion.Region)).ToList();
        if (touching.Find(exclusion => store.Implies(region, exclusion.Region)) is { } alone)
        {
            return [alone.Rule];
        }

        if (!store.Implies(region, store.OrAll(touching.Select(exclusion => exclusion.Region))))
        {
            return [];
        }

        foreach (var exclusion in touching.ToList())
        {
            var others = touching.Where(other => other != exclusion).ToList();
            if (store.Implies(region, store.OrAll(others.Select(other => other.Region))))
            {
                touching = others;
            }
        }

        return [.. touching.Select(exclusion => exclusion.Rule)];
    }
}
