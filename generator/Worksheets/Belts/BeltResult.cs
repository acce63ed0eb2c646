using System.Collections.Immutable;

namespace Swapwright.Worksheets.Belts;

/// <summary>Why a belt was put first or second.</summary>
public enum BeltChoiceReason
{
    /// <summary>No other stocked belt can be both slipped on and tightened.</summary>
    OnlyOneThatFits,

    /// <summary>Several fit; this one is tight nearest to the middle of the adjuster's travel.</summary>
    NearestMidTravel,

    /// <summary>It fits too, but is tight further from the middle of the travel than the one put first.</summary>
    FurtherFromMidTravel,

    /// <summary>A spring: of those that hold its arm in the middle part of the travel, this one leaves it nearest to the nominal mark.</summary>
    NearestMark,

    /// <summary>It holds the arm in the middle part too, but further from the nominal mark than the one put first.</summary>
    FurtherFromMark,

    /// <summary>Fixed centres: its length is that of the loop within the tolerance.</summary>
    WithinFixedCentreTolerance,
}

/// <summary>A stocked belt that fits, and how.</summary>
/// <param name="Designation">As in <c>6PK1780</c>.</param>
/// <param name="OverNominalMm">Belt length less nominal loop length.</param>
/// <param name="InstallRoomMm">How much shorter than the belt the loop becomes; negative on fixed centres with too short a belt.</param>
/// <param name="TakeUpRoomMm">How much longer than the belt the loop becomes.</param>
/// <param name="TightAt">Adjuster position, mm or rad, at which the loop has the belt's length; null on fixed centres.</param>
public sealed record BeltChoice(
    StockedBelt Belt,
    string Designation,
    BeltChoiceReason Reason,
    double OverNominalMm,
    double InstallRoomMm,
    double TakeUpRoomMm,
    double? TightAt)
{
    /// <summary><see cref="TightAt"/> as a share of the travel, in percent from its slack end.</summary>
    public double? TravelPercent { get; init; }
}

/// <summary>How far a pulley is to be moved along the crank axis so that the belt runs true.</summary>
/// <param name="MoveMm">Positive towards the gearbox, which is onto the engine; negative away from it, which takes a spacer.</param>
public sealed record PlaneShim(string StationId, double MoveMm);

/// <summary>The shortest and the longest loop over the adjuster's usable travel; positions in mm or rad.</summary>
public sealed record BeltWindow(double ShortestMm, double LongestMm, double ShortestAt, double LongestAt);

/// <summary>One pulley as judged, in the order of the loop; the geometry is that of <see cref="BeltResult.Running"/>.</summary>
/// <param name="PlaneOffsetToNextMm">Plane of the next pulley less plane of this one.</param>
/// <param name="AllowedPlaneOffsetMm">What the span to the next pulley allows, as a magnitude.</param>
public sealed record PulleyJudgement(
    string StationId,
    string NextId,
    double WrapRad,
    double WrapLimitRad,
    bool WrapWithinLimit,
    double SpanToNextMm,
    double PlaneOffsetToNextMm,
    double AllowedPlaneOffsetMm,
    bool PlaneWithinLimit);

/// <summary>
/// The belt worksheet of one loop. Parts that an impossible input leaves without a value are null or empty; no number is ever NaN.
/// </summary>
/// <param name="Nominal">
/// The path with the adjuster in the middle of its travel, also one that no real belt can take, for the drawing; null where
/// some span does not exist at all.
/// </param>
/// <param name="NominalAt">That position, mm or rad; null on fixed centres.</param>
/// <param name="Running">The path with the recommended belt tight; the nominal one where none is recommended.</param>
/// <param name="Window">Null on fixed centres and where the nominal path is impossible.</param>
/// <param name="Ribs">Grooves of the narrowest grooved pulley; 0 where none has any.</param>
/// <param name="Designation">
/// Of the recommended belt, or else of the one that the nominal loop asks for; null without ribs or a possible path.
/// </param>
/// <param name="WidthMm">Rib pitch times ribs.</param>
/// <param name="Pulleys">Empty where the path is impossible: there is nothing to judge then.</param>
public sealed record BeltResult(
    BeltPath? Nominal,
    double? NominalAt,
    BeltPath? Running,
    BeltWindow? Window,
    int Ribs,
    double WidthMm,
    string? Designation,
    BeltChoice? Recommended,
    BeltChoice? RunnerUp,
    ImmutableArray<PulleyJudgement> Pulleys,
    ImmutableArray<BeltProblem> Problems)
{
    /// <summary>How the belt sounds when it is tight; null where a spring or nothing tightens it.</summary>
    public BeltTone? Tone { get; init; }

    /// <summary>What would bring the pulleys that are out of plane into line; empty where none is.</summary>
    public ImmutableArray<PlaneShim> Shims { get; init; } = [];

    /// <summary>Whether a real belt can run as <see cref="Running"/> does.</summary>
    public bool PathIsPossible => !Pulleys.IsEmpty;
}
