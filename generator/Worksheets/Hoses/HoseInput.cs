using System.Collections.Immutable;

namespace Swapwright.Worksheets.Hoses;

public enum HoseCircuit
{
    Vacuum,
    BrakeBooster,
    Breather,
    Purge,
    Fuel,
    Coolant,
    Heater,
}

public enum PortKind
{
    Barb,
    Thread,
    Quick,
}

/// <summary>Millimetres in one frame.</summary>
public readonly record struct HosePoint(double X, double Y, double Z)
{
    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);

    public double DistanceTo(HosePoint other) => Math.Sqrt(Square(X - other.X) + Square(Y - other.Y) + Square(Z - other.Z));

    private static double Square(double value) => value * value;
}

/// <summary>What a hose is pushed or screwed on.</summary>
/// <param name="Owner">Whose it is, in words.</param>
/// <param name="SizeMm">Outer diameter that the hose goes over.</param>
/// <param name="Location">null where nobody has measured it.</param>
/// <param name="PressureBar">Highest gauge pressure in use; null for suction and open pipes.</param>
/// <param name="Open">Why it may stay open to the air; empty where it may not.</param>
/// <param name="Closed">Something says that it gets a cap or a plug where no hose goes on.</param>
public sealed record Port(string Id, string Title, string Owner, HoseCircuit Circuit, double SizeMm, PortKind Kind, string Thread, HosePoint? Location, double? PressureBar, string Open, bool Closed);

/// <summary>What the builder does about a hose.</summary>
public enum HoseWork
{
    /// <summary>It has no place in this combination.</summary>
    Absent,

    /// <summary>It is left off, and its ports are closed.</summary>
    LeftOff,

    /// <summary>The hose that is there stays, unless one to cut it from is named.</summary>
    Keep,

    New,
}

/// <summary>A hose that joins two ports, with what is at hand for it.</summary>
/// <param name="Optional">The port at the other end need not be there.</param>
/// <param name="Stock">Hose named for it; empty where any will do.</param>
public sealed record Hose(string Id, string Title, HoseCircuit Circuit, string From, string To, HoseWork Work, bool Optional, ImmutableArray<StockHose> Stock, ImmutableArray<StepJoiner> Joiners, ImmutableArray<Tee> Tees)
{
    /// <summary>What is cut into it.</summary>
    public ImmutableArray<CutInPart> CutIn { get; init; } = [];
}

/// <summary>An adapter or a tee in the middle of a hose: it parts the hose, so that two more ends are pushed on and clipped.</summary>
/// <param name="LengthMm">From one outer end to the other; null where nobody says, and then nothing comes off the hose for it.</param>
public sealed record CutInPart(string Part, double? LengthMm);

/// <summary>Hose that a shop sells.</summary>
/// <param name="BoreMm">Inner diameter; null for a moulded set of several sizes.</param>
/// <param name="Class">Class of a fuel hose; null where none is printed on it.</param>
/// <param name="PieceMm">Length of the piece as sold; null by the metre and for sets.</param>
public sealed record StockHose(string Part, ImmutableArray<HoseCircuit> Circuits, double? BoreMm, FuelHoseClass? Class, double? PieceMm, bool IsSet);

/// <summary>A stepped joiner, usable either way round.</summary>
public sealed record StepJoiner(string Part, double FromMm, double ToMm);

public sealed record Tee(string Part, ImmutableArray<double> SizesMm);

/// <summary>Allowances. Millimetres, bar.</summary>
/// <param name="RoutingFactor">How much longer than the straight line a hose is laid.</param>
/// <param name="SlackMm">Added to every piece for what is pushed over its two ends.</param>
/// <param name="StepMm">How far from the port a stepped joiner sits.</param>
/// <param name="FitMm">Difference of two diameters up to which one hose goes over both.</param>
/// <param name="InjectionBar">Pressure from which a fuel hose must be of a class made for injection.</param>
/// <param name="SparePercent">By how much longer each piece is counted where hose is bought, so that a cut may go wrong.</param>
public sealed record HoseLimits(double RoutingFactor, double SlackMm, double StepMm, double FitMm, double InjectionBar, double SparePercent)
{
    public double WithSpare(double lengthMm) => lengthMm * (1 + (SparePercent / 100));

    public bool Fits(double oneMm, double otherMm) => Math.Abs(oneMm - otherMm) <= FitMm + 1e-9;

    public bool Joins(StepJoiner joiner, double oneMm, double otherMm) =>
        (Fits(joiner.FromMm, oneMm) && Fits(joiner.ToMm, otherMm)) || (Fits(joiner.FromMm, otherMm) && Fits(joiner.ToMm, oneMm));
}

/// <param name="Shop">Hose that may be bought for what names none, in order of preference.</param>
public sealed record HoseInput(ImmutableArray<Port> Ports, ImmutableArray<Hose> Hoses, ImmutableArray<StockHose> Shop, HoseLimits Limits);
