namespace Swapwright.Site.Models;

/// <summary>A worksheet that ends in numbers, display-ready.</summary>
public sealed record GuideLedger
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public IReadOnlyList<NamedValue> Figures { get; init; } = [];

    public IReadOnlyList<GuideLedgerTable> Tables { get; init; } = [];

    /// <summary>Drawings.</summary>
    public IReadOnlyList<HtmlString> Charts { get; init; } = [];

    /// <summary>What could not be computed and why, a sentence each.</summary>
    public IReadOnlyList<string> Gaps { get; init; } = [];

    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Figure → formula with what went in; the detail names the source.</summary>
    public IReadOnlyList<NamedValue> Reasons { get; init; } = [];
}

/// <summary>What a worksheet found, in short; the sheet of figures has its tables, charts and formulas.</summary>
public sealed record GuideFigures
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public IReadOnlyList<NamedValue> Figures { get; init; } = [];

    /// <summary>Which figures keep within their limits, in a sentence.</summary>
    public string Within { get; init; } = "";

    /// <summary>What could not be computed and why, a sentence each.</summary>
    public IReadOnlyList<string> Gaps { get; init; } = [];

    /// <summary>Where the rest stands.</summary>
    public required PageLink Sheet { get; init; }
}

/// <param name="Columns">Headings with their units.</param>
public sealed record GuideLedgerTable(string Title, IReadOnlyList<string> Columns, IReadOnlyList<GuideLedgerRow> Rows)
{
    /// <summary>For each column whether it holds words, which are read from the left and may wrap.</summary>
    public IReadOnlyList<bool> Words { get; init; } = [];
}

/// <param name="Cells">The first names the row.</param>
public sealed record GuideLedgerRow(IReadOnlyList<string> Cells);
