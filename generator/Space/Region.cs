namespace Swapwright.Space;

/// <summary>
/// A set of assignments, known to its <see cref="RegionStore"/> by the number of its root. The diagram is canonical:
/// two regions of one store are equal exactly when they hold the same assignments.
/// Regions of different stores must not be mixed.
/// </summary>
public readonly record struct Region(int Id)
{
    public static Region None => new(NodeTable.None);

    public static Region All => new(NodeTable.All);

    /// <summary>Holds no assignment.</summary>
    public bool IsNone => Id == NodeTable.None;

    /// <summary>Holds every assignment.</summary>
    public bool IsAll => Id == NodeTable.All;
}
