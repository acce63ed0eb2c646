using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>What comes nearest to something that cannot be built. It asks the space, which one worker may do at a time.</summary>
internal sealed class NearestWays(SiteKnowledge site)
{
    // A headline choice makes another guide, the others are switched on the page that is reached.
    private const int HeadlineCost = 100;

    /// <summary>The nearest donor for the chassis and the nearest chassis for the donor, of a region that their pair does not reach.</summary>
    public ImmutableArray<NearestWay> OfPair(ChassisVariant chassis, DonorVariant donor, Region wanted)
    {
        var ways = ImmutableArray.CreateBuilder<NearestWay>();
        if (NearestPairs.Donor(site.Resolution, chassis, donor, wanted) is { } other && GuideTo(chassis.Id, other.Id, wanted) is { } first)
        {
            ways.Add(new NearestWay("this chassis with", new PageLink(other.Title, first.Path)));
        }

        if (NearestPairs.Chassis(site.Resolution, chassis, donor, wanted) is { } body && GuideTo(body.Id, donor.Id, wanted) is { } second)
        {
            ways.Add(new NearestWay("this donor in", new PageLink(body.Title, second.Path)));
        }

        return ways.ToImmutable();
    }

    /// <summary>The guide to change to for an option that a guide does not reach; else the nearest donor and chassis that do.</summary>
    public ImmutableArray<NearestWay> OfOption(GuideEntry guide, string choice, string option)
    {
        var (chassis, donor) = (guide.Headline.Chassis, guide.Headline.Donor);
        var wanted = site.Resolution.Space.WhereChoice(choice, [option]);
        var pair = site.Store.And(PairSpace.Buildable(site.Resolution, chassis.Id, donor.Id), wanted);
        if (pair.IsNone)
        {
            return OfPair(chassis, donor, wanted);
        }

        var headline = guide.Headline.Options.Select(one => site.Resolution.Space.LevelOf(one.Key)).ToHashSet();
        int[] costs = [.. Enumerable.Range(0, site.Store.Variables.Length).Select(level => headline.Contains(level) ? HeadlineCost : 1)];
        var nearest = site.Store.Nearest(pair, guide.Recommended.AsSpan(), costs);
        var other = site.GuidesOfChassis[chassis.Id].First(one => site.Store.Contains(one.Headline.Slice, nearest));
        var changed = other.Headline.Options.Except(guide.Headline.Options).Select(one => $"{InSentence.Lower(site.Base.Choices[one.Key].Title)}: {InSentence.Lower(site.OptionTitle(one.Key, one.Value))}");
        return [new NearestWay("this chassis and this donor with", new PageLink(string.Join(", ", changed), other.Path))];
    }

    private GuideEntry? GuideTo(string chassis, string donor, Region wanted) =>
        site.GuidesOfChassis[chassis].FirstOrDefault(guide => guide.Headline.Donor.Id == donor && site.Store.Intersects(guide.Headline.Slice, wanted));
}
