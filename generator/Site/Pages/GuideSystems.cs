using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The positions of a guide, system by system, with every answer that some choice leads to.</summary>
/// <param name="conditions">Within the guide.</param>
internal sealed class GuideSystems(SiteKnowledge site, GuideEntry guide, GuideConditions conditions)
{
    private readonly List<string> _sources = [];

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
            Positions = [.. Positions(system).Select(Position)],
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
                    [.. Standing(position).Other.Select((standing, at) => new OtherwiseLine(Anchor(position, at), Line(standing, path)))]))
                    .Where(position => position.Lines.Count > 0),
            ])).Where(system => system.Positions.Count > 0),
    ];

    /// <summary>The positions at which choices make a difference, with every line.</summary>
    public ImmutableArray<VariantPosition> Variable()
    {
        var found = ImmutableArray.CreateBuilder<VariantPosition>();
        foreach (var position in site.Base.Systems.SelectMany(Positions))
        {
            var (recommended, other) = Standing(position);
            var others = other
                .Select((standing, at) => new VariantLine(standing.Rule.Id, at + 1, Anchor(position, at), Line(standing, guide.Path), [.. standing.Rule.Sources.Select(site.Base.Sources.Find).OfType<SourceEntry>()]));
            var lines = recommended.Select(standing => new VariantLine(standing.Rule.Id, 0, "", null, [])).Concat(others).ToImmutableArray();
            if (lines.Length > 1 || conditions.Of(site.Resolution.Applies(position.Id)) is not null)
            {
                found.Add(new VariantPosition(position.Id, lines));
            }
        }

        return found.ToImmutable();
    }

    private IEnumerable<Position> Positions(VehicleSystem system) =>
        site.PositionsOf[system.Id].Where(position => conditions.Meets(site.Resolution.Applies(position.Id)));

    /// <summary>What stands at a position in some combination of the guide: in the recommended one, and in others.</summary>
    private (List<StandingAnswer> Recommended, List<StandingAnswer> Other) Standing(Position position)
    {
        var (recommended, other) = (new List<StandingAnswer>(), new List<StandingAnswer>());
        foreach (var answer in site.Resolution.At(position.Id))
        {
            if (conditions.Meets(answer.Region))
            {
                (site.Store.Contains(answer.Region, guide.Recommended.AsSpan()) ? recommended : other).Add(answer);
            }
        }

        return (recommended, other);
    }

    private GuidePosition Position(Position position)
    {
        var (recommended, other) = Standing(position);
        var lines = recommended.ConvertAll(standing => Line(standing, guide.Path));

        // The lines of other choices lead to the guide's own sheet.
        return other.Count == 0
            ? site.Pieces.Of(new MadeFrom([position, .. lines]), () => Position(position, lines, []))
            : Position(position, lines, [.. other.Select((standing, at) => Other(position, standing, at))]);
    }

    private static GuidePosition Position(Position position, List<GuideLine> lines, ImmutableArray<GuideOtherLine> others) =>
        new() { Id = position.Id, Position = SiteKnowledge.Link(position), Lines = lines, Others = others };

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

        return site.SourceNumbers[at];
    }

    private GuideLine Line(StandingAnswer standing, string path)
    {
        var said = site.SaidOf(standing.Rule, standing.Answer, path);
        var condition = conditions.Of(standing.Region);
        List<object?> from = [said, condition];
        foreach (var source in standing.Rule.Sources)
        {
            if (site.Base.Sources.Has(source))
            {
                from.Add(Numbered(source));
            }
        }

        return site.Pieces.Of(
            new MadeFrom([.. from]),
            () => said with { Condition = condition, Reason = said.Reason with { Sources = [.. from.OfType<PageLink>()] } });
    }
}
