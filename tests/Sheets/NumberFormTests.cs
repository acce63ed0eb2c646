using Swapwright.Sheets;
using Swapwright.Site.Pages;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Sheets;

/// <summary>One form of numbers for readers: thousands grouped, the sign of arithmetic; programs get the plain one.</summary>
public class NumberFormTests
{
    [Fact]
    public void Value_BelowZero_HasTheSignOfArithmetic() =>
        Assert.Equal("−1,234.5 mm", LedgerWords.Value(new Figure("a", "A", -1234.5, "mm") { Decimals = 1 }));

    [Fact]
    public void Input_BelowZero_HasTheSignOfArithmetic() => Assert.Equal("−130 mm", LedgerWords.Input(new FigureInput("a", -130, "mm", "here")));

    [Fact]
    public void Number_BelowZero_IsForPrograms() => Assert.Equal("-1234.5", LedgerWords.Number(-1234.5, 1));

    [Fact]
    public void Number_OfMillimetres_IsGrouped() => Assert.Equal("1,254", SiteKnowledge.Number(1254.0));
}
