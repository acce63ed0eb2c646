namespace Swapwright.Site.Models;

/// <summary>Guides side by side: on a chassis page its donors, on a donor page its chassis.</summary>
/// <param name="Chart">Money against hours; empty where there are not two to compare.</param>
/// <param name="Words">What is marked, in a sentence.</param>
public sealed record Comparison(HtmlString Chart, string Words, IReadOnlyList<ComparisonRow> Rows)
{
    /// <summary>The guides differ in what is hard; where they do not, the sentence says it once in place of a column.</summary>
    public bool HasHard { get; init; } = true;
}

/// <summary>What a cell shows and by what it is sorted.</summary>
/// <param name="Sort">A number, or a word where the column holds words.</param>
public sealed record ComparedCell(string Text, string Sort);

/// <summary>One guide in a comparison; every number display-ready.</summary>
public sealed record ComparisonRow
{
    /// <summary>The number by which the chart and the table speak of the guide.</summary>
    public required string Number { get; init; }

    /// <summary>The donor on a chassis page, the chassis on a donor page.</summary>
    public required PageLink Other { get; init; }

    /// <summary>Under its headline options: "Use the donor's gearbox".</summary>
    public required PageLink Guide { get; init; }

    /// <summary>The row's id where it is the first of a family: other pages lead here.</summary>
    public string? Family { get; init; }

    /// <summary>No other guide of the table beats it.</summary>
    public bool IsUnbeaten { get; init; }

    public required ComparedCell Money { get; init; }

    public required ComparedCell Hours { get; init; }

    public required ComparedCell Power { get; init; }

    public required ComparedCell Plugs { get; init; }

    public required ComparedCell Wires { get; init; }

    public required ComparedCell Parts { get; init; }

    public required ComparedCell Standing { get; init; }

    public required ComparedCell Hard { get; init; }
}
