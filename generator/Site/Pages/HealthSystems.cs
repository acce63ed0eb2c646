using System.Collections.Immutable;
using System.Numerics;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>
/// How far each system is covered and how sure its answers are. Every combination counts once for each position, so that an
/// answer weighs by how often a reader meets it; the counts come from the regions. One worker at a time.
/// </summary>
internal sealed class HealthSystems(SiteKnowledge site)
{
    private static readonly ImmutableArray<string> s_standings = ["built", "measured", "reported"];

    private sealed record Covered(Position Position, ImmutableArray<StandingAnswer> Answers, BigInteger Applies, BigInteger Answered, ImmutableArray<BigInteger> ByStanding);

    public ImmutableArray<HealthSystem> All()
    {
        var whole = site.Store.Count(site.Resolution.Buildable);
        var positions = site.Base.PositionOrder.Select(Cover).ToLookup(one => one.Position.System, StringComparer.Ordinal);
        return [.. site.Base.Systems.Where(system => positions.Contains(system.Id)).Select(system => Show(system, [.. positions[system.Id]], whole))];
    }

    private Covered Cover(Position position)
    {
        var store = site.Store;
        var resolution = site.Resolution;
        var applies = store.And(resolution.Applies(position.Id), resolution.Buildable);
        var standing = resolution.At(position.Id).Select(answer => (answer, region: store.And(answer.Region, resolution.Buildable))).Where(pair => !pair.region.IsNone).ToList();
        return new Covered(
            position,
            [.. standing.Select(pair => pair.answer)],
            store.Count(applies),
            store.Count(store.And(applies, store.OrAll(standing.Select(pair => pair.region)))),
            [.. s_standings.Select(word => standing.Where(pair => pair.answer.Rule.Standing == word).Aggregate(BigInteger.Zero, (sum, pair) => sum + store.Count(pair.region)))]);
    }

    private static HealthSystem Show(VehicleSystem system, ImmutableArray<Covered> positions, BigInteger whole)
    {
        var answers = positions.Sum(one => one.Answers.Length);
        ImmutableArray<BigInteger> standing = [.. s_standings.Select((_, i) => positions.Aggregate(BigInteger.Zero, (sum, one) => sum + one.ByStanding[i]))];
        var told = Sum(standing);
        return new HealthSystem(
            system.Id,
            system.Title,
            $"{Many(answers, "answer")} at {Many(positions.Length, "position")}",
            HealthBars.Parts(standing),
            $"{string.Join(", ", s_standings.Select((word, i) => $"{SiteKnowledge.StandingText(word)} {Share(standing[i], told)}"))}",
            [.. positions.Select(one => Line(one, whole))]);
    }

    private static HealthPosition Line(Covered one, BigInteger whole)
    {
        var told = Sum(one.ByStanding);
        return new HealthPosition(
            SiteKnowledge.Link(one.Position),
            SiteKnowledge.Grouped(one.Answers.Length),
            SiteKnowledge.Grouped(one.Answers.Count(answer => !answer.Rule.Overrides.IsEmpty)),
            Share(one.Applies, whole),
            Share(one.Answered, one.Applies),
            Share(one.ByStanding[0], told),
            Share(one.ByStanding[1], told),
            Share(one.ByStanding[2], told));
    }

    /// <summary>In whole per cent; what is neither nothing nor everything is never rounded to either.</summary>
    public static string Share(BigInteger part, BigInteger whole)
    {
        if (whole.IsZero || part.IsZero)
        {
            return whole.IsZero ? "–" : "0 %";
        }

        var percent = ((200 * part) + whole) / (2 * whole);
        return part == whole ? "100 %" : percent.IsZero ? "under 1 %" : percent == 100 ? "over 99 %" : $"{SiteKnowledge.Grouped(percent)} %";
    }

    private static BigInteger Sum(ImmutableArray<BigInteger> parts) => parts.Aggregate(BigInteger.Zero, (sum, part) => sum + part);

    private static string Many(int count, string one) => $"{SiteKnowledge.Grouped(count)} {one}{(count == 1 ? "" : "s")}";
}
