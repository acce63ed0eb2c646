using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>The positions of a guide, system by system, with every answer that some choice leads to.</summary>
/// <param name="conditions">Within the guide.</param>
internal sealed class GuideSystems(SiteKnowledge site, GuideEntry guide, GuideConditions conditions)
{
    private readonly List<string> _sources = [];

    private readonly Dictionary<string, ImmutableArray<StandingAnswer>> _standing = new(StringComparer.Ordinal);

    /// <summary>On whose word the answers stand, in the order in which they are first named.</summary>
    public IReadOnlyList<string> Sources => _sources;

    /// <summary>As the guide shows them: what holds with the recommended choices in full, the rest in short.</summary>
    public ImmutableArray<GuideSystem> All() =>
    [
        .. site.Base.Systems.Select(system => new GuideSystem
        {
            Id = system.Id,
            Title = system.Title,
            About = site.Inline(system.About, guide.Path),
            Positions =
            [
                .. Positions(system).Select(position => new GuidePosition
                {
                    Id = position.Id,
                    Position = SiteKnowledge.Link(position),
                    Lines = [.. Standing(position).Where(IsRecommended).Select(standing => Line(standing, guide.Path))],
                    Others = [.. Standing(position).Where(standing => !IsRecommended(standing)).Select((standing, at) => Other(position, standing, at))],
                }),
            ],
        }).Where(system => system.Positions.Count > 0),
    ];

    /// <summary>The lines that other choices lead to, in full.</summary>
    public ImmutableArray<OtherwiseSystem> Otherwise(string path) =>
    [
        .. site.Base.Systems.Select(system => new OtherwiseSystem(
            system.Id,
            system.Title,
            [
                .. Positions(system).Select(position => new OtherwisePosition(
                    new PageLink(position.Title, $"{guide.Path}#at-{position.Id}"),
                    [.. Standing(position).Where(standing => !IsRecommended(standing)).Select((standing, at) => new OtherwiseLine(Anchor(position, at), Line(standing, path)))]))
                    .Where(position => position.Lines.Count > 0),
            ])).Where(system => system.Positions.Count > 0),
    ];

    /// <summary>The positions at which choices make a difference, with every line.</summary>
    public ImmutableArray<VariantPosition> Variable()
    {
        var found = ImmutableArray.CreateBuilder<VariantPosition>();
        foreach (var position in site.Base.Systems.SelectMany(Positions))
        {
            var others = Standing(position).Where(standing => !IsRecommended(standing))
                .Select((standing, at) => new VariantLine(standing.Rule.Id, at + 1, Anchor(position, at), Line(standing, guide.Path), [.. standing.Rule.Sources.Select(site.Base.Sources.Find).OfType<SourceEntry>()]));
            var lines = Standing(position).Where(IsRecommended).Select(standing => new VariantLine(standing.Rule.Id, 0, "", null, [])).Concat(others).ToImmutableArray();
            if (lines.Length > 1 || conditions.Of(site.Resolution.Applies(position.Id)) is not null)
            {
                found.Add(new VariantPosition(position.Id, lines));
            }
        }

        return found.ToImmutable();
    }

    private IEnumerable<Position> Positions(VehicleSystem system) =>
        site.Base.PositionOrder.Where(position => position.System == system.Id && conditions.Meets(site.Resolution.Applies(position.Id)));

    private ImmutableArray<StandingAnswer> Standing(Position position)
    {
        if (!_standing.TryGetValue(position.Id, out var standing))
        {
            var meeting = ImmutableArray.CreateBuilder<StandingAnswer>();
            foreach (var answer in site.Resolution.At(position.Id))
            {
                if (conditions.Meets(answer.Region))
                {
                    meeting.Add(answer);
                }
            }

            standing = meeting.DrainToImmutable();
            _standing.Add(position.Id, standing);
        }

        return standing;
    }

    private bool IsRecommended(StandingAnswer standing) => site.Store.Contains(standing.Region, guide.Recommended.AsSpan());

    private static string Anchor(Position position, int at) => string.Create(CultureInfo.InvariantCulture, $"or-{position.Id}-{at + 1}");

    private GuideOtherLine Other(Position position, StandingAnswer standing, int at) => new(
        Anchor(position, at),
        ShopWords.Verb(standing.Answer),
        new PageLink(ShopWords.Sentence(standing.Answer), $"{SitePaths.Bench(guide.Path, BenchSheets.Otherwise)}#{Anchor(position, at)}"),
        conditions.Of(standing.Region));

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

    private GuideLine Line(StandingAnswer standing, string path)
    {
        var (rule, answer) = (standing.Rule, standing.Answer);
        var said = site.SaidOf(rule, answer, path);
        return said with
        {
            Condition = conditions.Of(standing.Region),
            Reason = said.Reason with { Sources = [.. rule.Sources.Where(site.Base.Sources.Has).Select(Numbered)] },
        };
    }
}
