using Swapwright.Findings;
using Swapwright.Sheets;
using Swapwright.Tests.Source;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Fitting;

/// <summary>Every guide of the shipped base: numbers that a workshop could live with.</summary>
public sealed class ShippedFuelAndTorquesTests
{
    [Fact]
    public void Assemble_EveryGuide_GivesPlausibleNumbersWithUnits()
    {
        var proof = Proof.Of(Path.Combine(Reading.Repository(), "swap-kb"));
        var builder = new SheetBuilder(proof.Resolution!);
        var headlines = new Headlines(proof.Resolution!);
        var sheets = headlines.All().Select(headline => builder.Build(headlines.Default(headline.Slice))).ToList();

        Assert.NotEmpty(sheets);
        Assert.All(sheets, sheet =>
        {
            var (fuel, torques) = (sheet.Ledger("fuel")!, sheet.Ledger("torques")!);
            Assert.All(fuel.Figures.Concat(torques.Figures), figure => Assert.True(double.IsFinite(figure.Value) && figure.Unit.Length > 0, figure.Id));
            Between(fuel, "injector-need", 80, 600);
            Between(fuel, "injector-duty", 30, 90);
            Between(fuel, "driver-current", 0.5, 5);
            Between(fuel, "pump-need", 20, 200);
            Between(fuel, "pump-flow", 40, 300);
            Assert.Equal(["fuel line", "ignition"], fuel.Tables.Where(table => table.Id is "line" or "ignition").Select(table => table.Id == "line" ? "fuel line" : table.Id));
            Assert.DoesNotContain(fuel.Figures, figure => figure.Weight == FigureWeight.Bad);
            Assert.All(torques.Figures.Where(figure => figure.Id.StartsWith("bolt-", StringComparison.Ordinal)), figure => Assert.InRange(figure.Value, 2, 400));
            Between(torques, "fluid-engine-oil", 2, 12);
            Between(torques, "fluid-coolant", 4, 25);
            Assert.Contains(torques.Tables, table => table.Id == "stated");
            Assert.Contains(torques.Tables, table => table.Id == "refresh");
        });
    }

    private static void Between(Ledger ledger, string id, double from, double to) => Assert.InRange(ledger.Figure(id)?.Value ?? double.NaN, from, to);
}
