using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>The numbers that a check ends with.</summary>
/// <param name="Guides">Headline combinations that can be built.</param>
/// <param name="Proved">The space was examined; false where mistakes in the files kept it from being known.</param>
public sealed record Counts(
    int Rules, int Positions, int ChassisVariants, int DonorVariants, int Choices, int Connectors, int Guides,
    BigInteger Combinations, BigInteger Buildable, int Errors, int Warnings, int Notes, int Accepted, bool Proved)
{
    public static Counts Of(Proof proof)
    {
        var kb = proof.Base;
        var resolution = proof.Resolution;
        return new Counts(
            kb.Rules.Count,
            kb.Positions.Count,
            kb.Chassis.Count,
            kb.Donors.Count,
            kb.Choices.Count,
            kb.Connectors.Count,
            resolution is null ? 0 : Headlines.Count(resolution),
            resolution?.DomainParts.Size ?? 0,
            resolution?.BuildableParts.Size ?? 0,
            proof.Count(Severity.Error),
            proof.Count(Severity.Warning),
            proof.Count(Severity.Note),
            proof.Accepted.Length,
            resolution is not null);
    }
}
