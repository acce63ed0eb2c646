using System.Collections.Immutable;

namespace Swapwright.Worksheets.Belts;

/// <summary>Says which pulley to move, and by how much, where neighbours run out of plane.</summary>
/// <remarks>
/// Common practice, no source: the plane that most pulleys share stays, the crank's where as many share another, since the crank pulley is
/// the one that nobody shims. Every pulley at a faulty span that lies out of that plane is brought into it.
/// </remarks>
internal static class PlaneShims
{
    /// <summary>Planes are measured with a straight edge: closer than this they are the same, mm.</summary>
    private const double SameMm = 0.2;

    public static ImmutableArray<PlaneShim> Of(BeltLoop loop, ImmutableArray<PulleyJudgement> judged)
    {
        var faulty = judged.Where(pulley => !pulley.PlaneWithinLimit).SelectMany(pulley => new[] { pulley.StationId, pulley.NextId }).ToHashSet(StringComparer.Ordinal);
        if (faulty.Count == 0)
        {
            return [];
        }

        var kept = loop.Pulleys.OrderByDescending(one => loop.Pulleys.Count(other => IsSame(one, other)))
            .ThenByDescending(one => one.Role == StationRole.Crank)
            .ThenBy(one => loop.Pulleys.IndexOf(one))
            .First();
        return [.. loop.Pulleys.Where(pulley => faulty.Contains(pulley.Id) && !IsSame(pulley, kept)).Select(pulley => new PlaneShim(pulley.Id, kept.PlaneMm - pulley.PlaneMm))];
    }

    private static bool IsSame(Pulley one, Pulley other) => Math.Abs(one.PlaneMm - other.PlaneMm) <= SameMm;
}
