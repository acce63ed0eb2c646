namespace Swapwright.Source;

/// <summary>
/// How much of a knowledge base is read at most. A knowledge base comes from strangers: each limit gives a finding, and
/// reading stops there. The values leave a generous factor over what an honest file needs.
/// </summary>
public sealed record SourceLimits
{
    public static SourceLimits Default { get; } = new();

    public int MaxFileBytes { get; init; } = 2 * 1024 * 1024;

    public long MaxTotalBytes { get; init; } = 256L * 1024 * 1024;

    public int MaxFiles { get; init; } = 50_000;

    /// <summary>Folders inside folders, counted from the knowledge base.</summary>
    public int MaxFolderDepth { get; init; } = 8;

    /// <summary>Mappings and lists inside each other.</summary>
    public int MaxDepth { get; init; } = 64;

    /// <summary>Values, keys, lists and mappings together.</summary>
    public int MaxNodesPerFile { get; init; } = 200_000;

    /// <summary>The validator needs time in the square of a list's length.</summary>
    public int MaxItemsPerList { get; init; } = 20_000;

    /// <summary>In UTF-16 code units.</summary>
    public int MaxScalarLength { get; init; } = 200_000;

    /// <summary>Findings that one file gives while it is read; the last one says that there may be more.</summary>
    public int MaxFindingsPerFile { get; init; } = 100;
}
