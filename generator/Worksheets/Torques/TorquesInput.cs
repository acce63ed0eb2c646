using System.Collections.Immutable;

namespace Swapwright.Worksheets.Torques;

/// <summary>What is reckoned with where no manual says more: shares of one, and K of T = K F d.</summary>
public sealed record TighteningAssumptions(double ProofShare, double NutFactor, double NutFactorLubricated, double Scatter);

/// <summary>Fasteners of one kind, and where in the work they are tightened.</summary>
/// <param name="For">Title of the task or part.</param>
/// <param name="Origin">Kind and id of the entity that says so.</param>
/// <param name="Thread">As written, such as M10x1.25.</param>
/// <param name="Class">Strength class, empty where it is not known.</param>
/// <param name="Stated">What a manual says, N m.</param>
/// <param name="AngleDeg">By how much the manual turns it further.</param>
/// <param name="StatedBy">Title of that manual; empty where it is not named.</param>
public sealed record Fastener(string Id, string Title, string For, string Origin, string Thread, string Class, int Count, double? NutFactor, bool Lubricated, double? Stated, double? AngleDeg, string StatedBy, bool ToYield, bool Once, string Into)
{
    /// <summary>Only the manual's figure will do, and nobody has written it down: none is computed.</summary>
    public bool LookUp { get; init; }
}

/// <summary>A filling of one vehicle, engine or part.</summary>
/// <param name="Kind">Id of the kind of filling.</param>
/// <param name="Amount">Litres, or kilograms of a gas; null where it is not known.</param>
/// <param name="Holder">Title of what it is filled into.</param>
/// <param name="IsLicensed">A refrigerant, which only a licensed person may handle.</param>
public sealed record Filling(string Kind, string Title, string Grade, double? Amount, string Holder, string Origin, bool IsLicensed);

/// <summary>What is renewed while it is within reach.</summary>
public sealed record Refresh(string Title, string WhyNow);

/// <summary>What the worksheet needs, in the order of work.</summary>
public sealed record TorquesInput(TighteningAssumptions Assumptions, ImmutableArray<Fastener> Fasteners, ImmutableArray<Filling> Fillings, ImmutableArray<Refresh> Refreshes);
