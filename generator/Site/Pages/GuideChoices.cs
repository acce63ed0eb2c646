using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>What the reader of a guide still decides, and what rules out.</summary>
/// <param name="conditions">Within the guide.</param>
internal sealed class GuideChoices(SiteKnowledge site, GuideEntry guide, GuideConditions conditions)
{
    public ImmutableArray<GuideChoice> Choices()
    {
        var headline = guide.Headline.Options.Select(option => option.Key).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. site.Base.Choices.All.Where(choice => !headline.Contains(choice.Id) && conditions.Meets(Applies(choice)))
                .OrderBy(choice => choice.Order).ThenBy(choice => choice.Id, StringComparer.Ordinal)
                .Select(Choice),
        ];
    }

    /// <summary>Exclusions that touch this chassis and donor with these headline options.</summary>
    /// <param name="path">Of the page that shows them.</param>
    public static ImmutableArray<GuideExclusion> Exclusions(SiteKnowledge site, GuideEntry guide, string path)
    {
        var everything = GuideConditions.Beyond(site, guide);
        return
        [
            .. site.Resolution.Exclusions.Where(exclusion => everything.Meets(exclusion.Region)).Select(exclusion => new GuideExclusion(
                site.Inline(exclusion.Rule.WhyExcluded, path),
                SiteKnowledge.Link(exclusion.Rule),
                everything.Of(exclusion.Region))),
        ];
    }

    public ImmutableArray<GuideAdvice> Advice() =>
    [
        .. from rule in site.Base.Rules.All
           where !rule.Advises.IsEmpty && conditions.Meets(site.Sheets.Speaks(rule))
           from advice in rule.Advises
           select new GuideAdvice(
               site.Inline(advice.Text, guide.Path),
               advice.Donor is { } id && site.Base.Donors.Find(id) is { } donor ? SiteKnowledge.Link(donor) : null,
               SiteKnowledge.Link(rule),
               conditions.Of(site.Sheets.Speaks(rule))),
    ];

    private Region Applies(Choice choice) => site.Store.Not(site.Resolution.Space.WhereChoice(choice.Id, [Knowledge.Choice.None]));

    private GuideChoice Choice(Choice choice)
    {
        var space = site.Resolution.Space;
        var level = space.LevelOf(choice.Id);
        var offered = site.Store.AllowedValues(guide.Headline.Slice, level);
        var taken = space.OptionOf(guide.Recommended.AsSpan(), choice.Id);
        return new GuideChoice
        {
            Id = choice.Id,
            Title = choice.Title,
            Question = choice.Question,
            About = site.Inline(choice.About, guide.Path),
            Condition = conditions.Of(Applies(choice)),
            Options =
            [
                .. choice.Options.Select((option, value) => new GuideOption
                {
                    Id = option.Id,
                    Title = option.Title,
                    About = site.Inline(option.About, guide.Path),
                    IsRecommended = option.Id == taken,
                    IsOffered = offered.Contains(value),
                    Because = offered.Contains(value) ? Recommended(choice, option) : Closed(choice, option),
                    Ways = offered.Contains(value) ? [] : new NearestWays(site).OfOption(guide, choice.Id, option.Id),
                    Settles = offered.Contains(value) ? Settled(choice, option) : [],
                }),
            ],
        };
    }

    private ImmutableArray<SettledChoice> Settled(Choice choice, ChoiceOption option) =>
    [
        .. site.SettledBy(conditions.Context, choice.Id, option.Id).Select(one => new SettledChoice(InSentence.Lower(site.Base.Choices[one.Key].Title), InSentence.Lower(site.OptionTitle(one.Key, one.Value)))),
    ];

    private HtmlString Recommended(Choice choice, ChoiceOption option) => site.Inline(
        choice.Recommendations.FirstOrDefault(one => one.Option == option.Id && site.Store.Contains(site.Resolution.RegionOf(one.When), guide.Recommended.AsSpan()))?.Because,
        guide.Path);

    // Why nobody can take the option here: a rule that alone excludes every combination with it, or as few as do so together.
    private HtmlString Closed(Choice choice, ChoiceOption option)
    {
        var store = site.Store;
        var space = site.Resolution.Space;
        var taken = guide.Headline.Options.Aggregate(
            store.And(PairSpace.Domain(site.Resolution, guide.Headline.Chassis.Id, guide.Headline.Donor.Id), space.WhereChoice(choice.Id, [option.Id])),
            (region, headline) => store.And(region, space.WhereChoice(headline.Key, [headline.Value])));
        var closing = site.Resolution.Exclusions.Where(exclusion => store.Intersects(taken, exclusion.Region)).ToList();
        if (closing.Find(exclusion => store.Implies(taken, exclusion.Region)) is { } alone)
        {
            closing = [alone];
        }

        foreach (var exclusion in closing.ToList())
        {
            var others = closing.Where(other => other != exclusion).ToList();
            if (store.Implies(taken, store.OrAll(others.Select(other => other.Region))))
            {
                closing = others;
            }
        }

        var reasons = closing.Select(exclusion => exclusion.Rule.WhyExcluded);
        return site.Inline(string.Join(" ", reasons.Distinct(StringComparer.Ordinal)), guide.Path);
    }
}
