namespace Swapwright.Worksheets.Belts;

/// <summary>How much a problem weighs.</summary>
public enum BeltProblemWeight
{
    /// <summary>Worth knowing; nothing need change.</summary>
    Note,

    /// <summary>The belt can be fitted but will not serve well.</summary>
    Warning,

    /// <summary>No belt can be fitted, or none can be named.</summary>
    Blocking,
}

/// <summary>Something about a loop that the builder must know. The page words it; this carries the facts.</summary>
public abstract record BeltProblem(BeltProblemWeight Weight);

/// <summary>A number that is not finite or out of range, or a name that nothing carries.</summary>
/// <param name="Field">Name of the property at fault, as in <c>DiameterMm</c>.</param>
public sealed record InvalidInput(string Field, string? StationId) : BeltProblem(BeltProblemWeight.Blocking);

public sealed record TooFewPulleys(int Count) : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>Two pulleys occupy the same place.</summary>
public sealed record PulleysOverlap(string FirstId, string SecondId, double OverlapMm) : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>
/// The belt would have to go almost the whole way round this pulley: it lies on the other side of the belt than its face says
/// (a grooved pulley inside the hull of its neighbours, a roller that the belt passes without touching).
/// </summary>
public sealed record PulleyNotReached(string StationId) : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>The faces cannot be right: the belt does not close into one simple turn with its ribs inwards.</summary>
/// <param name="Turns">Full turns the belt makes, ribs inwards positive; a proper loop has 1.</param>
public sealed record WrongWinding(int Turns) : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>There is no straight span from one pulley to the next: one lies inside the other or they overlap.</summary>
public sealed record NoSpan(string FromId, string ToId) : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>Two spans cross; each is named by the pulley it leaves.</summary>
public sealed record BeltCrossesItself(string FirstFromId, string SecondFromId) : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>A span runs through a pulley that is at neither of its ends.</summary>
public sealed record BeltRunsOverPulley(string FromId, string ToId, string OverId) : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>Only part of the adjuster's travel leaves a possible belt path. In the adjuster's own unit, mm or rad.</summary>
public sealed record TravelRestricted(double UsableFrom, double UsableTo) : BeltProblem(BeltProblemWeight.Note);

/// <summary>Fixed centres: only a belt of this length will do, or a stretch belt made for the drive.</summary>
public sealed record MissingAdjuster(double LengthMm, double ToleranceMm) : BeltProblem(BeltProblemWeight.Warning);

/// <summary>No stocked belt can be both slipped on and tightened.</summary>
/// <param name="NearestShorter">The longest of those with the right ribs that is no longer than the nominal loop.</param>
/// <param name="NearestLonger">The shortest of those that is longer.</param>
public sealed record NoStockedBelt(int Ribs, StockedBelt? NearestShorter, StockedBelt? NearestLonger)
    : BeltProblem(BeltProblemWeight.Blocking);

/// <summary>No belt of the right rib count is stocked: a wider one is to be trimmed along a groove.</summary>
public sealed record TrimmedBelt(int Ribs, int FromRibs) : BeltProblem(BeltProblemWeight.Warning);

public sealed record WrapBelowLimit(string StationId, double WrapRad, double LimitRad) : BeltProblem(BeltProblemWeight.Warning);

public sealed record OutOfPlane(string FromId, string ToId, double OffsetMm, double AllowedMm) : BeltProblem(BeltProblemWeight.Warning);

/// <summary>A pulley with more grooves than the belt has ribs: the belt leaves some empty, which is fine while the planes agree.</summary>
public sealed record RibMismatch(string StationId, int Ribs, int BeltRibs) : BeltProblem(BeltProblemWeight.Note);

/// <summary>The face named for the belt does not suit the pulley: no grooves for the ribs, or grooves for the smooth back.</summary>
public sealed record FaceMismatch(string StationId, BeltSide Side, int Ribs) : BeltProblem(BeltProblemWeight.Warning);

public sealed record BelowMinimumDiameter(string StationId, double DiameterMm, double MinimumMm) : BeltProblem(BeltProblemWeight.Warning);
