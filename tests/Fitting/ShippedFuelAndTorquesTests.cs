using Swapwright.Tests.Sheets;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Fitting;

/// <summary>Every guide of the shipped base: numbers that a workshop could live with.</summary>
[Collection(ShippedSheetsCollection.Name)]
public sealed class ShippedFuelAndTorquesTests(ShippedSheets shipped)
{
    [Fact]
    public void Assemble_EveryGuide_GivesPlausibleNumbersWithUnits()
    {
        var sheets = shipped.Sheets;

        Assert.All(sheets.SelectMany(sheet => sheet.Ledgers).Where(ledger => ledger.Id is "fuel" or "torques").SelectMany(ledger => ledger.Figures), figure => Assert.True(double.IsFinite(figure.Value) && figure.Unit.Length > 0, figure.Id));

        // Where nothing is missing, every number is there.
        var whole = sheets.Where(sheet => sheet.Ledger("fuel") is { Gaps.IsEmpty: true }).ToList();
        Assert.True(whole.Count >= 100, $"only {whole.Count} guides tell everything of fuel");
        Assert.All(whole, sheet =>
        {
            var fuel = sheet.Ledger("fuel")!;
            Between(fuel, "injector-need", 80, 600);
            Between(fuel, "injector-duty", 30, 90);
            Between(fuel, "driver-current", 0.5, 5);
            Between(fuel, "pump-need", 20, 200);
            Between(fuel, "pump-flow", 40, 300);
            Assert.Contains(fuel.Tables, table => table.Id == "line");
            Assert.DoesNotContain(fuel.Figures, figure => figure.Weight == FigureWeight.Bad);
        });
        Assert.All(sheets, sheet =>
        {
            var torques = sheet.Ledger("torques")!;
            Assert.All(torques.Figures.Where(figure => figure.Id.StartsWith("bolt-", StringComparison.Ordinal)), figure => Assert.InRange(figure.Value, 2, 400));
            Assert.Contains(torques.Tables, table => table.Id == "stated");
            Assert.Contains(torques.Tables, table => table.Id == "refresh");
        });
        Assert.All(sheets.Where(sheet => !sheet.Donor.Fluids.IsEmpty), sheet =>
        {
            Between(sheet.Ledger("torques")!, "fluid-engine-oil", 2, 12);
            Between(sheet.Ledger("torques")!, "fluid-coolant", 4, 25);
        });
    }

    /// <summary>A car's bolts are tightened by its own manual: no guide quotes another car's.</summary>
    [Fact]
    public void Torques_EveryGuide_QuoteNoOtherCarsManual()
    {
        var families = ShippedKnowledge.Base.Chassis.All.Select(chassis => chassis.Family).Distinct(StringComparer.Ordinal).ToList();
        Assert.Equal(3, families.Count);
        Assert.All(shipped.Sheets, sheet =>
        {
            var words = sheet.Ledger("torques")!.Tables.Where(table => table.Id is "stated" or "manual").SelectMany(table => table.Rows).Select(row => row[^1].Text).ToList();

            Assert.Contains(words, text => text.Contains(sheet.Chassis.Family, StringComparison.OrdinalIgnoreCase));
            Assert.All(families.Where(family => family != sheet.Chassis.Family), other => Assert.DoesNotContain(words, text => text.Contains(other, StringComparison.OrdinalIgnoreCase)));
        });
    }

    private static void Between(Ledger ledger, string id, double from, double to) => Assert.InRange(ledger.Figure(id)?.Value ?? double.NaN, from, to);
}
