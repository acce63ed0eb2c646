using System.Collections.Immutable;
using Swapwright.Impact;

namespace Swapwright.Reports;

/// <summary>A base as it was named on the command line.</summary>
/// <param name="Commit">Of a revision; null for a folder.</param>
public sealed record BaseName(string Given, string? Commit = null)
{
    public override string ToString() => Commit is null || Commit.StartsWith(Given, StringComparison.OrdinalIgnoreCase) ? Given : $"{Given} ({Commit[..Math.Min(Commit.Length, 10)]})";
}

public sealed record ImpactNames(BaseName Old, BaseName New);

/// <summary>Whose word weighs more.</summary>
internal static class StandingOrder
{
    private static readonly ImmutableArray<string> s_rising = ["reported", "measured", "built"];

    public static bool Raised(WordChange change) => change.What == "standing" && s_rising.IndexOf(change.To) > s_rising.IndexOf(change.From);

    public static bool Lowered(WordChange change) => change.What == "standing" && !Raised(change);
}
