using System.Collections.Immutable;

namespace Swapwright.Worksheets.Ledgers;

/// <summary>
/// The result of a worksheet that ends in numbers: figures with the way they were got, tables, charts, and what could not be
/// computed. Every worksheet of this form reaches the sheet, the page, the JSON and the CSV by the same road.
/// </summary>
/// <param name="Id">Name of the worksheet: gearing, fuel, load …</param>
public sealed record Ledger(string Id, string Title)
{
    public ImmutableArray<Figure> Figures { get; init; } = [];

    public ImmutableArray<LedgerTable> Tables { get; init; } = [];

    public ImmutableArray<LedgerChart> Charts { get; init; } = [];

    /// <summary>What is missing or impossible, and so leaves a figure out.</summary>
    public ImmutableArray<LedgerGap> Gaps { get; init; } = [];

    /// <summary>Sentences that go with the numbers: assumptions, cautions.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    public bool IsEmpty => Figures.IsEmpty && Tables.IsEmpty && Charts.IsEmpty && Gaps.IsEmpty;

    public Figure? Figure(string id) => Figures.FirstOrDefault(figure => figure.Id == id);
}

/// <summary>A figure that was not computed, why, and what would mend it.</summary>
/// <param name="About">Title of the figure or table.</param>
public sealed record LedgerGap(string About, string Reason, string Mend);

public sealed record LedgerTable(string Id, string Title, ImmutableArray<LedgerColumn> Columns, ImmutableArray<ImmutableArray<LedgerCell>> Rows);

/// <param name="Unit">Symbol that the numbers of the column carry; empty for words and plain numbers.</param>
public sealed record LedgerColumn(string Id, string Title, string Unit = "", int Decimals = 1);

/// <summary>Words or a number; neither is an empty cell.</summary>
public readonly record struct LedgerCell(string Text, double? Value)
{
    public bool IsEmpty => Value is null && string.IsNullOrEmpty(Text);

    public static LedgerCell Words(string text) => new(text, null);

    public static LedgerCell Number(double? value) => new("", value is { } number && double.IsFinite(number) ? number : null);
}

/// <summary>Lines over two axes.</summary>
public sealed record LedgerChart(string Id, string Title, ChartAxis Across, ChartAxis Up, ImmutableArray<ChartSeries> Series)
{
    /// <summary>What the chart shows, in a sentence, for who cannot see it.</summary>
    public required string Words { get; init; }
}

public sealed record ChartAxis(string Title, string Unit, double From, double To);

/// <param name="IsReference">Drawn lighter, broken: the state to compare with.</param>
public sealed record ChartSeries(string Title, ImmutableArray<ChartPoint> Points, bool IsReference = false);

public readonly record struct ChartPoint(double Across, double Up);
