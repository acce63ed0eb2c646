using System.Collections.Immutable;
using System.Numerics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>A rule that takes away combinations which the other side can build.</summary>
/// <param name="Rule">As the side with the exclusion has it.</param>
public sealed record ExclusionChange(Rule Rule, Extent Extent);

/// <summary>Combinations that one side can build and the other cannot.</summary>
/// <param name="All">Exact number, counted among that side's combinations.</param>
/// <param name="ByRules">Those among them that the other side knows and excludes; the others it does not know, or asks differently.</param>
/// <param name="Exclusions">The rules that exclude them; a combination counts with each of its rules.</param>
public sealed record Unmatched(BigInteger All, BigInteger ByRules, ImmutableArray<ExclusionChange> Exclusions);

/// <summary>Which combinations can be built, before and after.</summary>
internal static class CombinationChanges
{
    /// <summary>What <paramref name="from"/> can build and <paramref name="to"/> cannot.</summary>
    public static Unmatched Between(SharedSpace shared, Side from, Side to)
    {
        var all = from.Resolution.BuildableParts.Size;
        var kept = shared.Kept(from, to);
        var known = shared.Corresponding(from.Buildable, to.Domain, to).Size / shared.Choices(to);
        return new Unmatched(all - kept, known - kept, [.. Exclusions(shared, from, to)]);
    }

    /// <summary>Where corresponding combinations may be ones of which one side cannot be built: for marking guides.</summary>
    public static Region Touched(SharedSpace shared)
    {
        var (old, @new) = (shared.Old.Buildable.Factors.ToHashSet(), shared.New.Buildable.Factors.ToHashSet());
        old.SymmetricExceptWith(@new);
        return shared.Store.OrAll(old.Select(shared.Store.Not));
    }

    private static IEnumerable<ExclusionChange> Exclusions(SharedSpace shared, Side from, Side to)
    {
        // Counted among the combinations of the side that excludes: there the rule is asked, and there `sheet` shows it.
        var ruler = new Ruler(shared, shared.Corresponding(to.Domain, from.Buildable, from), to, from);
        var before = from.Exclusions.Select(one => one.Region).ToHashSet();
        return from one in to.Exclusions
               where !before.Contains(one.Region)
               let extent = ruler.Measure(one.Region)
               where extent is not null
               select new ExclusionChange(one.Rule, extent);
    }
}
