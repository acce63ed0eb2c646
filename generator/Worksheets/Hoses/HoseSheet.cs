using System.Collections.Immutable;

namespace Swapwright.Worksheets.Hoses;

public enum HoseAction
{
    /// <summary>The hose that is there stays.</summary>
    Keep,

    /// <summary>Cut from length.</summary>
    Cut,

    /// <summary>A moulded hose of a set.</summary>
    Set,
}

/// <summary>A piece to cut.</summary>
/// <param name="LengthMm">null where an end has not been measured.</param>
/// <param name="Part">The hose it is cut from; null where no shop of the base has it.</param>
public sealed record HosePiece(double BoreMm, double? LengthMm, string? Part);

/// <summary>A hose of the combination.</summary>
/// <param name="LengthMm">Of all its pieces together; null where an end has not been measured.</param>
/// <param name="PressureBar">The higher of its two ends; before the regulator, the highest of the whole feed.</param>
/// <param name="LeastClass">For fuel.</param>
/// <param name="Set">The moulded set it comes from.</param>
/// <param name="Pieces">Two where a stepped joiner parts it; none where nothing is cut.</param>
public sealed record HoseRun(string Id, string Title, HoseCircuit Circuit, Port From, Port To, HoseAction Action, double? LengthMm, double? PressureBar, FuelHoseClass? LeastClass, string? Set, StepJoiner? Joiner, ImmutableArray<HosePiece> Pieces)
{
    /// <summary>What is cut into it: its length is told with them.</summary>
    public ImmutableArray<CutInPart> CutIn { get; init; } = [];

    /// <summary>Clips for the ends that are there only because something is cut into it.</summary>
    public int MoreClips => 2 * CutIn.Length;
}

/// <summary>A port that gets a cap or a plug.</summary>
public sealed record BlankedPort(Port Port);

/// <summary>A port that serves several hoses through a tee.</summary>
public sealed record TeedPort(Port Port, Tee Tee, ImmutableArray<string> Hoses);

/// <summary>Hose to buy, by circuit, bore and class.</summary>
/// <param name="LengthMm">Sum of the pieces whose length is known.</param>
public sealed record HoseTotal(HoseCircuit Circuit, double BoreMm, FuelHoseClass? LeastClass, double LengthMm, int Pieces);

/// <summary>How many of a part are bought: pieces of a stocked hose as sold (metres, where it is sold by the metre), a moulded set, stepped joiners.</summary>
public sealed record HosePurchase(string Part, int Amount)
{
    /// <summary>What is cut from it; null for what is not cut.</summary>
    public double? CutMm { get; init; }

    /// <summary>What is over when everything is cut.</summary>
    public double? LeftMm { get; init; }
}

/// <summary>The hoses of one combination.</summary>
public sealed record HoseSheet(
    ImmutableArray<HoseRun> Runs,
    ImmutableArray<BlankedPort> Blanked,
    ImmutableArray<Port> Open,
    ImmutableArray<TeedPort> Tees,
    ImmutableArray<HoseTotal> Totals,
    ImmutableArray<HosePurchase> Purchases,
    ImmutableArray<HoseProblem> Problems)
{
    public bool IsEmpty => Runs.IsEmpty && Blanked.IsEmpty && Open.IsEmpty && Problems.IsEmpty;
}
