using System.Collections.Immutable;

namespace Swapwright.Worksheets.Belts;

/// <summary>Which face of the belt runs on a pulley.</summary>
public enum BeltSide
{
    /// <summary>The ribbed face: the pulley sits inside the loop.</summary>
    Grooved,

    /// <summary>The smooth back: the pulley presses on the loop from outside.</summary>
    Back,
}

/// <summary>What a pulley drives. It decides how much of the pulley the belt must embrace.</summary>
public enum StationRole
{
    Crank,
    Alternator,
    Other,
    Idler,
}

/// <summary>One pulley of a loop. Lengths in millimetres; x points right and y up, as seen from the front of the belt drive.</summary>
/// <param name="DiameterMm">
/// Effective diameter of a grooved pulley. For a roller on the back of the belt, the diameter of its face: the distance from
/// there to the belt's effective line is ignored, as it is in the loops that the tests reproduce.
/// </param>
/// <param name="Ribs">Number of grooves; 0 for a flat roller.</param>
/// <param name="PlaneMm">Offset of the middle of the belt track along the crank axis.</param>
public sealed record Pulley(
    string Id, string Title, StationRole Role, double X, double Y, double DiameterMm, int Ribs, double PlaneMm, BeltSide Side);

/// <summary>How one pulley of a loop is moved to tighten the belt.</summary>
public abstract record Adjuster(string StationId);

/// <summary>
/// The pulley slides in a straight slot: its centre is its drawn place plus the travel along the direction, which need not be a unit
/// vector.
/// </summary>
public sealed record SlideAdjuster(string StationId, double DirectionX, double DirectionY, double FromMm, double ToMm)
    : Adjuster(StationId);

/// <summary>The pulley swings about a pivot, anticlockwise positive; angle 0 is its drawn place.</summary>
public sealed record SwingAdjuster(string StationId, double PivotX, double PivotY, double FromRad, double ToRad)
    : Adjuster(StationId);

/// <summary>
/// A spring pushes the pulley along its way and keeps the belt tight by itself. The end of the way where the loop is shorter is the stop
/// to which the arm is swung back by hand, the other the one at which the spring has run out.
/// </summary>
/// <param name="Way">The slot or the arc that the pulley moves along.</param>
/// <param name="Nominal">Where on its way the tensioner's mark asks the pulley to stand, mm or rad.</param>
public sealed record SpringAdjuster(Adjuster Way, double Nominal) : Adjuster(Way.StationId);

/// <summary>A belt and the pulleys that it visits, in belt order. Either way round will do: the worksheet finds out which it is.</summary>
/// <param name="Profile">Profile letters of the designation, such as <c>PK</c>.</param>
/// <param name="RibPitchMm">Distance between neighbouring ribs: 3.56 mm for PK (ISO 9982, as a trade glossary quotes it).</param>
public sealed record BeltLoop(
    string Id, string Title, string Profile, double RibPitchMm, ImmutableArray<Pulley> Pulleys, Adjuster? Adjuster);
