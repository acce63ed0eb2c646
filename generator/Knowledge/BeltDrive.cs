using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A pulley as it sits on an accessory or a part: millimetres; offsets against the station it is fitted to.</summary>
public sealed record PulleyEntry(decimal DiameterMm, int Ribs, decimal PlaneMm, decimal Dx, decimal Dy);

/// <summary>A place on a donor's belt drive where a pulley runs.</summary>
/// <param name="Position">The position whose answer says which accessory is fitted; null for what belongs to the engine.</param>
/// <param name="Role">crank, alternator, other or idler: decides the wrap that is asked for.</param>
/// <param name="OnBack">The belt's smooth face runs on it.</param>
/// <param name="CanBeLeftOut">The loop closes without it where its position is answered with nothing.</param>
public sealed record BeltStation(string Id, string Title, string? Position, decimal X, decimal Y, decimal PlaneMm, bool OnBack, decimal DiameterMm, int Ribs, string Role, bool CanBeLeftOut, Place Place);

/// <summary>What tightens a loop. Where the pulley turns about a pivot the limits are degrees, else millimetres along the direction.</summary>
/// <param name="Kind">slide, swing or spring.</param>
public sealed record AdjusterEntry(string Station, string Kind, decimal X, decimal Y, decimal From, decimal To, Place Place)
{
    /// <summary>X and Y are a pivot, not a direction: every swing, and a spring that pushes an arm.</summary>
    public bool Turns { get; init; }

    /// <summary>For a spring: where its mark asks the pulley to stand; null for the middle of the travel.</summary>
    public decimal? Nominal { get; init; }
}

/// <summary>One belt of a donor engine with its pulleys in the order in which the belt passes them.</summary>
public sealed record BeltDrive(string Id, string Title, string Profile, decimal RibPitchMm, ImmutableArray<BeltStation> Stations, AdjusterEntry? Adjuster, Place Place);

/// <summary>An accessory of a vehicle that may be moved to another engine.</summary>
public sealed record Accessory(string Position, string? Title, PulleyEntry? Pulley, decimal? MassKg, decimal? OutputA, Place Place);

/// <summary>Belts that a shop stocks.</summary>
/// <param name="RibMassGPerM">Mass a metre and rib in grams; null where nobody weighed one.</param>
public sealed record BeltStock(string Profile, ImmutableArray<int> Ribs, ImmutableArray<decimal> LengthsMm, decimal? RibMassGPerM = null);
