using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>Bolts, screws or nuts of one kind that are tightened together.</summary>
/// <param name="Thread">As written: M10x1.25, or M10 for the coarse pitch.</param>
/// <param name="Class">Strength class of ISO 898-1; empty where it is not known.</param>
/// <param name="NutFactor">K of T = K F d; null for the usual one.</param>
/// <param name="StatedNm">What a manual says, N m.</param>
/// <param name="AngleDeg">By how much the manual turns it further after that, degrees.</param>
/// <param name="StatedBy">The source that says so.</param>
/// <param name="ToYield">Tightened into yield: used once, never computed.</param>
/// <param name="Into">What the thread is cut in: steel, iron, aluminium or plastic; empty where it is not said.</param>
public sealed record FastenerEntry(string Id, string Title, string Thread, string Class, int Count, decimal? NutFactor, bool Lubricated, decimal? StatedNm, decimal? AngleDeg, string? StatedBy, bool ToYield, bool Once, string Into, Place Place)
{
    /// <summary>Where it is tightened, of the combinations that have its task or part; null for all of them.</summary>
    public Condition? When { get; init; }

    /// <summary>Only the manual's figure will do, and it is not written down here: readers are told to look it up, in <see cref="StatedBy"/> where that is named.</summary>
    public bool LookUp { get; init; }
}

/// <summary>What a vehicle, engine or part is filled with.</summary>
/// <param name="Kind">One of <see cref="Kinds"/>.</param>
/// <param name="Amount">Litres; kilograms of a refrigerant; null where a fact of the entity says it, or nobody does.</param>
/// <param name="At">The position whose answer has to put this vehicle's own thing in place for the filling to count.</param>
/// <param name="Needs">The position at which something has to stand, whosever it is.</param>
public sealed record FluidEntry(string Kind, string Grade, decimal? Amount, string? At, string? Needs, Place Place)
{
    /// <summary>Every kind of filling, in the order in which a guide lists them.</summary>
    public static readonly ImmutableArray<(string Id, string Title)> Kinds =
    [
        ("engine-oil", "Engine oil"),
        ("gearbox-oil", "Gearbox oil"),
        ("final-drive-oil", "Final drive oil"),
        ("coolant", "Coolant"),
        ("brake-fluid", "Brake fluid"),
        ("clutch-fluid", "Clutch fluid"),
        ("steering-fluid", "Steering fluid"),
        ("refrigerant", "Refrigerant"),
    ];

    /// <summary>A gas that only a licensed person may handle; it goes by mass.</summary>
    public bool IsRefrigerant => Kind == "refrigerant";
}
