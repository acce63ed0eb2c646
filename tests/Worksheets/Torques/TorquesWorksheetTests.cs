using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Torques;

namespace Swapwright.Tests.Worksheets.Torques;

public sealed class TorquesWorksheetTests
{
    private static readonly TighteningAssumptions s_usual = new(0.75, 0.20, 0.15, 0.2);
    private static readonly Fastener s_bolt = new("bolt", "Bolt", "Fit it", "task fit", "M10x1.5", "8.8", 4, null, false, null, null, "", false, false, "");

    [Fact]
    public void Work_StatedTorque_StandsFirstAndIsNotReplaced()
    {
        var ledger = Work(s_bolt with { Id = "computed" }, s_bolt with { Stated = 61, StatedBy = "A manual" });

        Assert.Equal(["stated", "computed"], ledger.Tables.Select(table => table.Id));
        Assert.Equal(61, ledger.Figure("bolt-bolt")!.Value);
        Assert.Contains(ledger.Notes, note => note.Contains("always wins", StringComparison.Ordinal));
    }

    [Fact]
    public void Work_BoltToYield_IsNeverComputed()
    {
        var ledger = Work(s_bolt with { ToYield = true });

        Assert.Null(ledger.Figure("bolt-bolt"));
        Assert.Equal("manual", Assert.Single(ledger.Tables).Id);
        Assert.Contains("to yield", ledger.Tables.Single().Rows.Single()[3].Text, StringComparison.Ordinal);
        Assert.Contains(ledger.Notes, note => note.Contains("used once", StringComparison.Ordinal));
    }

    [Fact]
    public void Work_OnlyTheManualCanSay_NamesItAndComputesNothing()
    {
        var ledger = Work(s_bolt with { LookUp = true, Once = true, StatedBy = "Some workshop manual" });

        Assert.Empty(ledger.Figures);
        Assert.Empty(ledger.Gaps);
        Assert.StartsWith("new ones, to the torque that Some workshop manual gives", ledger.Tables.Single().Rows.Single()[3].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Work_BoltToYieldWithStatedTorque_SaysNewOnesAndAngle()
    {
        var row = Work(s_bolt with { ToYield = true, Stated = 30, AngleDeg = 60 }).Tables.Single().Rows.Single();

        Assert.Equal((30.0, "60° further; to yield: new ones"), (row[3].Value!.Value, row[4].Text));
    }

    [Fact]
    public void Work_Computed_IsByHandWithItsRange()
    {
        var ledger = Work(s_bolt);

        // 57.99 mm² × 580 MPa × 0.75 = 25.2 kN; × 0.2 × 10 mm = 50.5 N m.
        Assert.Equal(50.5, ledger.Figure("bolt-bolt")!.Value, 0.1);
        Assert.Equal("40 to 61 N m", ledger.Tables.Single().Rows.Single()[4].Text);
        Assert.Equal(25.2, ledger.Tables.Single().Rows.Single()[5].Value!.Value, 0.1);
    }

    [Fact]
    public void Work_Oiled_TakesLessInTheRatioOfTheFactors() =>
        Assert.Equal(0.15 / 0.20, Value(s_bolt with { Lubricated = true }) / Value(s_bolt), 9);

    [Fact]
    public void Work_OwnNutFactor_WinsOverTheUsual() => Assert.Equal(0.12 / 0.20, Value(s_bolt with { NutFactor = 0.12, Lubricated = true }) / Value(s_bolt), 9);

    [Fact]
    public void Work_LargerOrStronger_TakesMore()
    {
        var bySize = new[] { "M5", "M6", "M8", "M10x1.25", "M12x1.25", "M14x1.5" }.Select(thread => Value(s_bolt with { Thread = thread })).ToList();
        var byClass = new[] { "4.6", "8.8", "10.9", "12.9" }.Select(name => Value(s_bolt with { Class = name })).ToList();

        Assert.Equal(bySize.Order(), bySize);
        Assert.Equal(byClass.Order(), byClass);
    }

    [Theory]
    [InlineData("M13", "8.8", "pitch")]
    [InlineData("M10", "", "strength class is not known")]
    [InlineData("M20x1.5", "9.8", "no proof strength")]
    public void Work_WhatCannotBeComputed_IsAGap(string thread, string name, string reason)
    {
        var ledger = Work(s_bolt with { Thread = thread, Class = name });

        Assert.Empty(ledger.Figures);
        Assert.Contains(reason, Assert.Single(ledger.Gaps).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Work_OneGradeInTwoPlaces_IsBoughtOnce()
    {
        var ledger = TorquesWorksheet.Work(new TorquesInput(s_usual, [], [Coolant("Glycol", 5.2), Coolant("Glycol", 2.2), Coolant("Other glycol", 1), Coolant("Glycol", null)], []));
        var rows = ledger.Tables.Single().Rows;

        Assert.Equal(8.4, ledger.Figure("fluid-coolant")!.Value, 9);
        Assert.Equal(["7.4 L and what is not known", "1 L"], rows.Select(row => row[2].Text));
        Assert.Equal(["8 L or more", "1 L"], rows.Select(row => row[4].Text));
    }

    [Fact]
    public void Work_Refrigerant_IsForALicensedPerson()
    {
        var ledger = TorquesWorksheet.Work(new TorquesInput(s_usual, [], [new Filling("refrigerant", "Refrigerant", "R134a", 0.7, "Car", "chassis x", true)], []));

        Assert.Contains("licensed", ledger.Tables.Single().Rows.Single()[4].Text, StringComparison.Ordinal);
        Assert.Equal("kg", ledger.Figure("fluid-refrigerant")!.Unit);
    }

    [Fact]
    public void Work_Nothing_IsEmpty() => Assert.True(TorquesWorksheet.Work(new TorquesInput(s_usual, [], [], [])).IsEmpty);

    private static Filling Coolant(string grade, double? amount) => new("coolant", "Coolant", grade, amount, "Engine", "donor x", false);

    private static Ledger Work(params Fastener[] fasteners) => TorquesWorksheet.Work(new TorquesInput(s_usual, [.. fasteners], [], []));

    private static double Value(Fastener fastener) => Work(fastener).Figure("bolt-bolt")!.Value;
}
