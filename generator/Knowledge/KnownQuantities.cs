using System.Collections.Immutable;

namespace Swapwright.Knowledge;

/// <summary>Something the worksheets know how to compute with. A fact says that it is one by <c>means</c>.</summary>
/// <param name="Id">As written after <c>means</c>.</param>
/// <param name="Subjects">The kinds of entity that can have it.</param>
/// <param name="Dimension">What its unit has to measure; for words, <see cref="Knowledge.Dimension.None"/>.</param>
public sealed record KnownQuantity(string Id, ImmutableArray<string> Subjects, Dimension Dimension, string Title)
{
    /// <summary>For a one-of fact: the values that the worksheets understand; empty for a number.</summary>
    public ImmutableArray<string> Words { get; init; } = [];
}

/// <summary>
/// The meanings that facts can carry. A base names its facts as its people talk; <c>means</c> ties them to what the formulas
/// want, so no fact id is built into the worksheets.
/// </summary>
public static class KnownQuantities
{
    public static readonly ImmutableArray<KnownQuantity> All =
    [
        new("engine-power", ["chassis", "donor"], Dimension.Power, "greatest power of the engine; of a chassis, the engine it was built with"),
        new("engine-power-speed", ["chassis", "donor"], Dimension.RotationalSpeed, "engine speed at greatest power"),
        new("engine-torque", ["chassis", "donor"], Dimension.Torque, "greatest torque of the engine"),
        new("tyre-width", ["chassis"], Dimension.Length, "nominal section width of the tyre"),
        new("tyre-aspect", ["chassis"], Dimension.Share, "section height of the tyre as a share of its width"),
        new("rim-diameter", ["chassis"], Dimension.Length, "nominal diameter of the rim"),
        new("original-gearbox", ["chassis"], Dimension.None, "the gearbox the chassis was built with, a reference"),
    ];

    public static KnownQuantity? Find(string id) => All.FirstOrDefault(quantity => quantity.Id == id);
}
