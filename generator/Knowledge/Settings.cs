using System.Collections.Immutable;

namespace Swapwright.Knowledge;

/// <summary>Limits that belt worksheets are judged by. Degrees, millimetres, per cent.</summary>
public sealed record BeltSettings(decimal CrankWrapDeg, decimal AlternatorWrapDeg, decimal OtherWrapDeg, decimal PlaneOffsetMmPer100Mm, decimal FitSlackPercent, decimal TakeUpPercent)
{
    // Common practice, no source, all of them.

    /// <summary>The part of a spring's travel, about its nominal mark, in which the arm has to stand.</summary>
    public decimal SpringMiddlePercent { get; init; } = 50;

    /// <summary>Most ribs that may be cut off a wider belt where the right one is not stocked; 0: none.</summary>
    public int TrimRibs { get; init; } = 1;

    /// <summary>Grams a metre and rib of a belt that does not say what it weighs.</summary>
    public decimal RibMassGPerM { get; init; } = 20;

    /// <summary>Newtons a rib of a belt that is fitted new.</summary>
    public decimal TensionNewN { get; init; } = 110;

    /// <summary>Newtons a rib of a belt that has run.</summary>
    public decimal TensionRunInN { get; init; } = 80;

    /// <summary>How far either way of it a tension is still good.</summary>
    public decimal TensionSpreadPercent { get; init; } = 10;
}

/// <summary>Allowances for lengths of wire. Millimetres.</summary>
/// <param name="RoutingFactor">How much longer than the straight line a wire is laid.</param>
/// <param name="SlackMm">Added to every wire that is cut.</param>
/// <param name="ReachMm">How far a device may sit from its plug before the branch counts as short.</param>
public sealed record WiringSettings(decimal RoutingFactor, decimal SlackMm, decimal ReachMm)
{
    // Common practice, no source, all of them.

    /// <summary>Volts that a new wire may lose at its current.</summary>
    public decimal AllowedDropV { get; init; } = 0.3m;

    /// <summary>Degrees Celsius that conductors are reckoned at: what the insulation stands for long.</summary>
    public decimal ConductorCelsius { get; init; } = 85;

    /// <summary>Square millimetres of the thinnest wire that is run anew or let in.</summary>
    public decimal LeastMm2 { get; init; } = 0.5m;

    /// <summary>Amperes that an ECU's output switches where the ECU does not say.</summary>
    public decimal OutputCurrentA { get; init; } = 2;
}

/// <summary>Allowances for hoses. Millimetres, bar.</summary>
/// <param name="RoutingFactor">How much longer than the straight line a hose is laid.</param>
/// <param name="SlackMm">Added to every piece for what is pushed over its two ends.</param>
/// <param name="StepMm">How far from the port a stepped joiner sits.</param>
/// <param name="FitMm">Difference of two diameters up to which one hose goes over both.</param>
/// <param name="InjectionBar">Pressure from which a fuel hose must be of a class made for injection.</param>
/// <param name="SparePercent">By how much longer each piece is counted where hose is bought.</param>
public sealed record HoseSettings(decimal RoutingFactor, decimal SlackMm, decimal StepMm, decimal FitMm, decimal InjectionBar, decimal SparePercent);

/// <summary>What the fuel worksheet reckons with.</summary>
/// <param name="Consumption">Fuel burnt for the work given at full power, g/kWh.</param>
/// <param name="DutyPercent">Most of the time that an injector may be open.</param>
/// <param name="PumpMarginPercent">What the pump is to deliver beyond the need.</param>
public sealed record FuelSettings(decimal Consumption, decimal DensityKgPerL, decimal DutyPercent, decimal PumpMarginPercent, decimal SupplyV)
{
    /// <summary>By how much of what it gave where it was measured a pump gives less for each bar more: common practice, no source.</summary>
    public decimal PumpFallPercent { get; init; } = 10;
}

/// <summary>What tightening torques are computed with.</summary>
/// <param name="ProofPercent">Preload as a share of the proof load.</param>
/// <param name="NutFactor">K of T = K F d, dry.</param>
/// <param name="ScatterPercent">By how much K may differ either way.</param>
public sealed record TighteningSettings(decimal ProofPercent, decimal NutFactor, decimal NutFactorLubricated, decimal ScatterPercent);

/// <summary>What gearing worksheets ask and are judged by. Kilometres an hour, per cent.</summary>
/// <param name="CruiseKmh">Speeds at which the engine speed is told.</param>
/// <param name="WidestDropPercent">Share of the engine speed that may be lost at a shift before the step counts as a gap.</param>
public sealed record GearingSettings(ImmutableArray<decimal> CruiseKmh, decimal WidestDropPercent);

/// <summary>What load worksheets are judged by.</summary>
/// <param name="ClutchMargin">What the worn clutch has to carry, to the engine's torque.</param>
/// <param name="GroundClearanceMm">Least ground clearance below the sump.</param>
/// <param name="FrontReserveKg">What has to be left on the front axle for people and luggage.</param>
public sealed record LoadSettings(decimal ClutchMargin, decimal GroundClearanceMm, decimal FrontReserveKg);

/// <summary>What sums of hours and money are reckoned with.</summary>
/// <param name="HoursADay">Hours of work in a day.</param>
/// <param name="InCommon">How far guesses err together, as a correlation from 0 to 1. The usual 0.3 is common practice, no source.</param>
public sealed record EffortSettings(decimal HoursADay, decimal InCommon);

/// <summary>kb.yaml: what holds for the whole base.</summary>
public sealed record Settings(string Title)
{
    /// <summary>Printed on every page, as in "invented scenario". Markdown.</summary>
    public string Label { get; init; } = "";

    public string About { get; init; } = "";

    public string Language { get; init; } = "en";

    /// <summary>ISO 4217.</summary>
    public string Currency { get; init; } = "EUR";

    public string PriceDate { get; init; } = "";

    /// <summary>The day that the knowledge is judged by: no clock is read.</summary>
    public string AsOf { get; init; } = "";

    public int StaleAfterMonths { get; init; } = 48;

    /// <summary>The choices whose options make guides of their own.</summary>
    public ImmutableArray<Named> Headline { get; init; } = [];

    public string? BaseAddress { get; init; }

    /// <summary>The position whose answer says whose engine harness is used.</summary>
    public string HarnessPosition { get; init; } = "engine-harness";

    public BeltSettings Belt { get; init; } = new(140, 120, 60, 1, 0.5m, 1);

    public WiringSettings Wiring { get; init; } = new(1.2m, 60, 40);

    // Common practice, no source: 30 mm on each barb; a carburettor's 0.35 bar is the most that low-pressure hose is left with; a tenth over for cuts that go wrong.
    public HoseSettings Hoses { get; init; } = new(1.25m, 60, 100, 0.5m, 0.5m, 10);

    // 0.50 lb for each horsepower and hour, and 1.586 lb to the litre (carburetor-manual.com, sdsefi.com); of the duties published,
    // 80 to 90 %, the middle one; a quarter in hand on the pump and 14 V with the engine running are from memory.
    public FuelSettings Fuel { get; init; } = new(304, 0.72m, 85, 25, 14);

    // 75 % of proof and K 0.20 as in the table of the Martin guide, page 10; K 0.15 oiled and the scatter are from memory.
    public TighteningSettings Tightening { get; init; } = new(75, 0.20m, 0.15m, 20);

    // Common practice, no source: the step from first to second of a road gearbox loses up to about 47 per cent.
    public GearingSettings Gearing { get; init; } = new([90, 110, 130], 48);

    // Common practice, no source: a fifth in hand on a worn clutch, a hand's breadth above the road, two people's share in front.
    public LoadSettings Load { get; init; } = new(1.2m, 110, 80);

    public EffortSettings Effort { get; init; } = new(6, 0.3m);

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}
