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

    [Fact]
    public void Csv_Hoses_HasEveryPieceAndEveryPort()
    {
        var rows = Rows("hoses");
        var hoses = Shipped.Hoses!;

        Assert.Equal(hoses.Runs.Sum(run => Math.Max(1, run.Pieces.Length)) + hoses.Blanked.Length + hoses.Open.Length + hoses.Tees.Length, rows.Count);
        Assert.Equal(hoses.Totals.Sum(total => total.LengthMm), rows.Where(row => row["action"] == "cut").Sum(row => Number(row["length-mm"])));
        Assert.All(rows.Where(row => row["circuit"] == "fuel" && row["hose"].Length > 0), row => Assert.NotEmpty(row["class"]));
    }

    [Fact]
    public void Csv_Effort_HasHoursAndMoneyLineByLine()
    {
        var rows = Rows("effort");
        double Sum(string kind, string column) => rows.Where(row => row["kind"] == kind && row[column].Length > 0).Sum(row => Number(row[column]));

        Assert.Equal(Shipped.Tasks.Select(task => task.Id).Order(StringComparer.Ordinal), rows.Where(row => row["kind"] == "task").Select(row => row["id"]).Order(StringComparer.Ordinal));
        Assert.Equal(Shipped.Shopping.Select(line => line.Part.Id), rows.Where(row => row["kind"] == "part").Select(row => row["id"]));
        Assert.Equal(Shipped.Effort.Hours.OuterLeast, Sum("task", "least"), 6);
        Assert.Equal(Shipped.Effort.Hours.OuterMost, Sum("task", "most"), 6);
        Assert.Equal(Shipped.Effort.Money.OuterMost, Sum("part", "most"), 6);
        Assert.Equal(["hours", "hand-hours", "money"], rows.Where(row => row["kind"] == "sum").Select(row => row["id"]));
    }

    private static List<Dictionary<string, string>> Rows(string part)
    {
        var lines = SheetTables.Csv(Shipped, part, "EUR").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var names = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => names.Zip(Cells(line)).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal))];
    }

    // Quoted cells hold commas.
    private static IEnumerable<string> Cells(string line) => System.Text.RegularExpressions.Regex.Matches(line, "(^|,)(\"(?<quoted>([^\"]|\"\")*)\"|(?<plain>[^,]*))", System.Text.RegularExpressions.RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5))
        .Select(match => match.Groups["quoted"].Success ? match.Groups["quoted"].Value : match.Groups["plain"].Value);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static Sheet Build()
    {
        var resolution = ShippedKnowledge.Proof().Resolution!;
        return new SheetBuilder(resolution).Build(CombinationArguments.Read(resolution, resolution.Space.Base.Chassis.All[0].Id, resolution.Space.Base.Donors.All[0].Id, []));
    }
}
