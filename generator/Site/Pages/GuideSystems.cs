using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>The positions of a guide, system by system, with every answer that some choice leads to.</summary>
internal sealed class GuideSystems(SiteKnowledge site, GuideEntry guide)
{
    private readonly List<string> _sources = [];

    private readonly GuideConditions _conditions = new(site, guide, guide.Headline.Slice);

    /// <summary>On whose word the answers stand, in the order in which they are first named.</summary>
    public IReadOnlyList<string> Sources => _sources;

    public ImmutableArray<GuideSystem> All() =>
    [
        .. site.Base.Systems.Select(system => new GuideSystem
        {
            Id = system.Id,
            Title = system.Title,
            About = site.Inline(system.About, guide.Path),
            Positions =
            [
                .. site.Base.PositionOrder.Where(position => position.System == system.Id && _conditions.Meets(site.Resolution.Applies(position.Id)))
                    .Select(position => new GuidePosition { Id = position.Id, Position = SiteKnowledge.Link(position), Lines = Lines(position) }),
            ],
        }).Where(system => system.Positions.Count > 0),
    ];

    private IReadOnlyList<GuideLine> Lines(Position position) =>
        [.. site.Resolution.At(position.Id).Where(standing => _conditions.Meets(standing.Region)).Select(standing => Line(position, standing))];

    private PageLink Numbered(string source)
    {
        var at = _sources.IndexOf(source);
        if (at < 0)
        {
            at = _sources.Count;
            _sources.Add(source);
        }

        var number = (at + 1).ToString(CultureInfo.InvariantCulture);
        return new PageLink(number, $"#source-{number}");
    }

    private GuideLine Line(Position position, StandingAnswer standing)
    {
        var (rule, answer) = (standing.Rule, standing.Answer);
        var overridden = rule.Overrides.Select(named => site.Base.Rules.Find(named.Id)).OfType<Rule>()
            .Where(other => other.AnswerAt(position.Id) is not null && _conditions.Meets(site.Store.And(site.Resolution.When(other), standing.Region)));
        return new GuideLine
        {
            Verb = ShopWords.Verb(answer),
            VerbText = ShopWords.Sentence(answer),
            Condition = _conditions.Of(standing.Region),
            Parts = [.. new[] { answer.Part }.Concat(answer.Also).OfType<string>().Select(site.Part)],
            Steps = site.Inlines(answer.Steps, guide.Path),
            Notes = site.Block(answer.Notes, guide.Path),
            Mistakes = site.Inlines(answer.Mistakes, guide.Path),
            Articles = answer.Article is { } article && site.Base.Articles.Find(article) is { } found ? [SiteKnowledge.Link(found)] : [],
            Reason = new GuideReason
            {
                Because = site.Block(rule.Because, guide.Path),
                Rule = SiteKnowledge.Link(rule) with { Text = rule.Id },
                Standing = SiteKnowledge.Standing(rule.Standing),
                StandingText = SiteKnowledge.StandingText(rule.Standing),
                Checked = rule.Checked,
                Sources = [.. rule.Sources.Where(site.Base.Sources.Has).Select(Numbered)],
                Overridden = [.. overridden.Select(other => SiteKnowledge.Link(other) with { Text = other.Id })],
            },
        };
    }
}
