using System.Globalization;
using Swapwright.Commands;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Sheets;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Reports;

/// <summary>The tables of belts and wires for a spreadsheet, from the shipped base.</summary>
public sealed class SheetTablesTests
{
    private static readonly Sheet Shipped = Build();

    [Fact]
    public void Csv_Wiring_IsTheCuttingListBySizeColourAndLength()
    {
        var rows = Rows("wiring");
        var cuts = rows.Select(row => (Size: Number(row["size-mm2"]), Colour: row["colour"], Length: -Number(row["length-mm"]))).ToList();

        Assert.NotEmpty(cuts);
        Assert.Equal(cuts.OrderBy(cut => cut.Size).ThenBy(cut => cut.Colour, StringComparer.Ordinal).ThenBy(cut => cut.Length), cuts);
        Assert.Equal(Shipped.Wiring!.Bill.TotalLengthMm, -cuts.Sum(cut => cut.Length));
        Assert.All(rows.Where(row => row["current-a"].Length > 0), row => Assert.Contains(row["why"], new[] { "mechanical", "current", "fuse", "drop" }));
    }

    [Fact]
    public void Csv_Belts_HasARowAPulley()
    {
        var rows = Rows("belts");

        Assert.Equal(Shipped.Belts.Sum(belt => belt.Loop.Pulleys.Length), rows.Count);
        Assert.All(rows, row => Assert.InRange(Number(row["position-percent"]), 0, 100));
    }

    private static List<Dictionary<string, string>> Rows(string part)
    {
        var lines = SheetTables.Csv(Shipped, part).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var names = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => names.Zip(line.Split(',')).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal))];
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static Sheet Build()
    {
        var resolution = Proof.Of(Path.Combine(Reading.Repository(), "swap-kb")).Resolution!;
        return new SheetBuilder(resolution).Build(CombinationArguments.Read(resolution, resolution.Space.Base.Chassis.All[0].Id, resolution.Space.Base.Donors.All[0].Id, []));
    }
}
