using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets;

/// <summary>Inputs drawn from a seeded generator, inputs that cannot be, and what has to hold for a ledger whatever went in.</summary>
internal static class Drawn
{
    /// <summary>What no measurement gives.</summary>
    public static readonly ImmutableArray<double> Impossible = [double.NaN, double.PositiveInfinity, double.NegativeInfinity, 0, -1, double.MaxValue, double.Epsilon];

    private static readonly string[] s_nonsense = ["NaN", "Infinity", "∞"];

    public static Given Given(double si) => new(si, new FigureInput("drawn", si, "", "test"));

    public static double Between(this Random random, double least, double most) => least + (random.NextDouble() * (most - least));

    /// <summary>Value of a figure that has to be there.</summary>
    public static double Value(this Ledger ledger, string id)
    {
        var figure = ledger.Figure(id);
        Assert.True(figure is not null, $"{id} is missing: {string.Join("; ", ledger.Gaps.Select(gap => $"{gap.About}, {gap.Reason}"))}");
        return figure.Value;
    }

    /// <summary>Every number that would reach a page is one.</summary>
    public static void HasNumbersOnly(Ledger ledger)
    {
        Assert.All(ledger.Figures, figure =>
        {
            Assert.True(double.IsFinite(figure.Value), figure.Id);
            Assert.All(figure.From, input => Assert.True(double.IsFinite(input.Value), $"{figure.Id} from {input.Title}"));
            Assert.DoesNotContain(s_nonsense, word => figure.Remark.Contains(word, StringComparison.Ordinal));
        });
        Assert.All(ledger.Tables.SelectMany(table => table.Rows).SelectMany(row => row), cell => Assert.True(cell.Value is not { } value || double.IsFinite(value)));
        Assert.All(ledger.Tables.SelectMany(table => table.Rows).SelectMany(row => row), cell => Assert.DoesNotContain(s_nonsense, word => cell.Text?.Contains(word, StringComparison.Ordinal) == true));
        Assert.All(ledger.Charts.SelectMany(chart => chart.Series).SelectMany(series => series.Points), point => Assert.True(double.IsFinite(point.Across) && double.IsFinite(point.Up)));
        Assert.All(ledger.Gaps, gap => Assert.True(gap.Reason.Length > 0 && gap.Mend.Length > 0, gap.About));
    }

    /// <summary>Two ledgers with the same figures.</summary>
    public static void AreTheSame(Ledger one, Ledger other)
    {
        Assert.Equal(one.Figures.Select(figure => figure.Id).Order(StringComparer.Ordinal), other.Figures.Select(figure => figure.Id).Order(StringComparer.Ordinal));
        Assert.All(one.Figures, figure => Assert.Equal(figure.Value, other.Value(figure.Id), Math.Abs(figure.Value * 1e-9) + 1e-9));
    }
}
