using System.Text.Json;
using NJsonSchema;
using Swapwright.Reports;
using Swapwright.Sheets;
using Swapwright.Tests.Source;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Sheets;

/// <summary>Every worksheet of every guide's recommended combination of the shipped base, as the JSON form gives it.</summary>
[Collection(ShippedSheetsCollection.Name)]
public sealed class ShippedNumbersTests(ShippedSheets shipped)
{
    private static readonly string[] s_worksheets = ["belts", "wiring", "hoses", "gearing", "load", "fuel", "torques", "effort"];

    // By the name of a quantity in the JSON: no car leaves these, in the unit given.
    private static readonly Dictionary<string, (string Unit, double Least, double Most)> s_ranges = new(StringComparer.Ordinal)
    {
        ["wrap"] = ("°", 15, 360),
        ["span"] = ("mm", 1, 2000),
        ["shortest"] = ("mm", 400, 2500),
        ["longest"] = ("mm", 400, 2600),
        ["bore"] = ("mm", 2, 80),
        ["size"] = ("mm", 0.2, 80),
        ["drop"] = ("V", 0, 1),
        ["slack"] = ("h", 0, 400),
        ["earliestStart"] = ("h", 0, 600),
    };

    private readonly HashSet<string> _ranged = new(StringComparer.Ordinal);

    [Fact]
    public void Json_EveryGuide_HasEveryWorksheetInFiniteNumbersWithUnitsWithinReason()
    {
        var counted = 0;
        foreach (var sheet in shipped.Sheets)
        {
            using var document = JsonDocument.Parse(new SheetJson(sheet, shipped.Resolution).Write());
            foreach (var name in s_worksheets)
            {
                var worksheet = document.RootElement.GetProperty(name);
                Assert.True(worksheet.ValueKind is JsonValueKind.Object || (worksheet.ValueKind is JsonValueKind.Array && worksheet.GetArrayLength() > 0), $"{Name(sheet)} has no {name}");
                counted += Walk(worksheet, name, Name(sheet));
            }

            Assert.InRange(Of(document, "effort", "money", "likely"), 1000, 15_000);
            Assert.InRange(Of(document, "effort", "hours", "likely"), 20, 300);
        }

        // A walk that finds nothing would hold nothing, and so would a range under a name that no number has.
        Assert.Equal(s_ranges.Keys.Order(StringComparer.Ordinal), _ranged.Order(StringComparer.Ordinal));
        Assert.True(counted > 500 * shipped.Sheets.Count, FormattableString.Invariant($"only {counted} numbers"));
    }

    [Fact]
    public async Task Json_SomeGuides_HaveTheFormOfTheSchema()
    {
        var schema = await JsonSchema.FromFileAsync(Path.Combine(Reading.Repository(), "schema", "reports", "sheet.schema.json"));
        Assert.All(shipped.Sheets.Where((_, at) => at % 40 == 0), sheet => Assert.Empty(schema.Validate(new SheetJson(sheet, shipped.Resolution).Write()).Select(error => error.ToString())));
    }

    [Fact]
    public void Chart_EveryGuide_HasItsLinesWithinItsAxes() => Assert.All(shipped.Sheets, sheet =>
    {
        using var document = JsonDocument.Parse(new SheetJson(sheet, shipped.Resolution).Write("gearing"));
        var chart = Assert.Single(document.RootElement.GetProperty("gearing").GetProperty("charts").EnumerateArray());
        var (across, up) = (chart.GetProperty("across"), chart.GetProperty("up"));

        Assert.Equal(("rpm", "km/h"), (across.GetProperty("unit").GetString(), up.GetProperty("unit").GetString()));
        Assert.Equal(sheet.Gearbox!.Ratios.Count(ratio => ratio.Key is not ("final" or "reverse")), chart.GetProperty("series").EnumerateArray().Count(series => !series.GetProperty("reference").GetBoolean()));
        foreach (var point in chart.GetProperty("series").EnumerateArray().SelectMany(series => series.GetProperty("points").EnumerateArray()))
        {
            Assert.InRange(point.GetProperty("across").GetDouble(), across.GetProperty("from").GetDouble(), across.GetProperty("to").GetDouble());
            Assert.InRange(point.GetProperty("up").GetDouble(), up.GetProperty("from").GetDouble(), up.GetProperty("to").GetDouble() + 0.001);
        }
    });

    /// <summary>What new wiring is made of is all bought, in no less than is cut, and counted in the money.</summary>
    [Fact]
    public void Purchases_EveryGuide_CoverTheWiringAndAreInTheMoney() => Assert.All(shipped.Sheets, sheet =>
    {
        var wiring = sheet.Wiring!;
        var bought = wiring.Purchases.ToLookup(purchase => purchase.Good);

        Assert.All(wiring.Purchases, purchase => Assert.NotNull(purchase.Part));
        Assert.All(bought[WiringGood.Wire].Concat(bought[WiringGood.ScreenedWire]).Concat(bought[WiringGood.TwistedPair]).Concat(bought[WiringGood.ScreenedPair]), purchase => Assert.True(shipped.Resolution.Space.Base.Parts[purchase.Part!].Wiring!.SizeMm2 >= (decimal)purchase.SizeMm2!.Value, purchase.Part));
        Assert.True((bought[WiringGood.Wire].Concat(bought[WiringGood.ScreenedWire]).Sum(purchase => purchase.Amount) + (2 * bought[WiringGood.TwistedPair].Concat(bought[WiringGood.ScreenedPair]).Sum(purchase => purchase.Amount))) * 1000 >= wiring.Bill.TotalLengthMm - 1e-6);
        Assert.Equal(wiring.Bill.Terminals.Sum(line => line.Count), bought[WiringGood.Terminal].Sum(purchase => purchase.Amount));
        var housings = bought[WiringGood.Housing].Sum(purchase => purchase.Amount);
        var isDonors = sheet.At(shipped.Resolution.Space.Base.Settings.HarnessPosition)?.Answer?.Source == "donor";
        Assert.InRange(housings, isDonors ? wiring.Counts.Changed + wiring.Counts.Added : 0, wiring.Counts.Changed + wiring.Counts.Added);
        Assert.Equal(wiring.Bill.Splices, bought[WiringGood.Splice].Sum(purchase => purchase.Amount));
        Assert.Equal(wiring.Bill.Caps, bought[WiringGood.WireCap].Sum(purchase => purchase.Amount));
        Assert.All(bought[WiringGood.ScreenedWire].Concat(bought[WiringGood.ScreenedPair]), purchase => Assert.Equal(shipped.Resolution.Space.Base.Parts[purchase.Part!].Wiring!.SizeMm2, (decimal)purchase.SizeMm2!.Value));
        Assert.Equal(wiring.Bill.HeatShrink, bought[WiringGood.HeatShrink].Sum(purchase => purchase.Amount));
        Assert.All(wiring.Purchases.GroupBy(purchase => purchase.Part, StringComparer.Ordinal), part =>
        {
            var line = Assert.Single(sheet.Shopping, line => line.Part.Id == part.Key);
            Assert.Equal(("wire-shop", part.Sum(purchase => purchase.Amount)), (line.Part.From, line.Amount));
            Assert.True(line.Price!.Value.Least > 0);
        });
        Assert.Equal((double)sheet.Shopping.Sum(line => line.Price?.Most ?? 0), sheet.Effort.Money.OuterMost, 6);
    });

    /// <summary>No base has a cabin that gives the park or neutral report: a wire for it has the switch of an automatic gearbox at one end.</summary>
    [Fact]
    public void Wires_OfTheNeutralReport_HaveASwitchThatGivesIt()
    {
        var listening = shipped.Sheets.Where(sheet => sheet.Wiring!.Runs.Any(run => run.Signal == "park-neutral")).ToList();

        Assert.NotEmpty(listening);
        Assert.All(listening, sheet => Assert.Contains(sheet.Wiring!.Plugs, plug => plug is { Role: "neutral-switch", Outcome: not PlugOutcome.Capped }));
    }

    /// <summary>Every belt can be ordered: it is on the shopping list by its designation, and paid for.</summary>
    [Fact]
    public void Belts_EveryGuide_AreOnTheListByTheirDesignations() => Assert.All(shipped.Sheets, sheet =>
    {
        var wanted = sheet.Belts.Select(belt => belt.Result.Recommended!.Designation).ToList();
        var lines = sheet.Shopping.Where(line => line.Part.Belt is not null).ToList();

        Assert.Equal(wanted.Order(StringComparer.Ordinal), lines.SelectMany(line => line.Sizes).Order(StringComparer.Ordinal));
        Assert.Equal(wanted.Count, lines.Sum(line => line.Amount));
    });

    /// <summary>
    /// Behind a longer engine the gearbox takes its crossmember along, and towers stand where the engine has its bosses: neither is where the car's own was, as
    /// the rules of the six say in millimetres (96 mm behind the old bridge, the nose 112 mm further forward).
    /// </summary>
    [Fact]
    public void Mounts_OfTheLongSix_AreReckonedWhereTheyAreMade()
    {
        var sheets = shipped.Sheets.Where(sheet => sheet.Donor.Id.StartsWith("ferrow-", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(sheets);
        Assert.All(sheets, sheet =>
        {
            var from = sheet.Ledger("load")!.Figure("gearbox-mount")!.From;
            Assert.Contains(from, input => input.Origin == "part ferrow-mount-rubbers");
            Assert.Contains(from, input => input.Title == "Its mount from the engine's face" && input.Origin == $"gearbox {sheet.Gearbox!.Id}");
            Assert.DoesNotContain(from, input => input.Origin.StartsWith("chassis ", StringComparison.Ordinal));
            if (sheet.Gearbox!.Id == "wexley-heavy-5")
            {
                var mm = from.Where(input => input.Title is "Crank nose to gearbox face" or "Thickness of the plate" or "Its mount from the engine's face").Sum(input => input.Value);
                Assert.Equal(96, mm - 112 - 985, 9);
            }
        });
    }

    /// <summary>A builder is told of every signal without a counterpart what becomes of it: none is left with nothing that carries it.</summary>
    [Fact]
    public void LooseEnds_EveryGuide_AreDealtWith() => Assert.All(shipped.Sheets, sheet => Assert.DoesNotContain(LooseEnds.Of(sheet.Wiring!), end => end.Action == LooseAction.Missing));

    /// <summary>
    /// 198 numbers stated in the base are held against computed ones. The seven that nobody measured, what a plucked belt sounds and what a
    /// wire loses, say so, and are not among the forty that have to be there.
    /// </summary>
    [Fact]
    public void Values_ShippedBase_AreFortyMeasuredOnesAtLeastAndTheOthersSaySo()
    {
        var stated = shipped.Resolution.Space.Base.Rules.All.SelectMany(rule => rule.Values).ToList();
        var held = shipped.Sheets.SelectMany(sheet => sheet.Values).Where(value => value.Computed is not null).ToList();

        Assert.True(stated.Count(value => !value.WrittenDown) >= 40, FormattableString.Invariant($"{stated.Count}"));
        Assert.All(stated.Where(value => value.Name.EndsWith(".frequency", StringComparison.Ordinal) || value.Name == "wiring.longest-drop"), value => Assert.True(value.WrittenDown, $"{value.Place}: {value.Name}"));
        Assert.True(held.DistinctBy(value => value.Stated.Value).Count(value => !value.Stated.Value.WrittenDown) >= 40);
        Assert.All(held, value => Assert.True(value.Agrees, $"{value.Stated.Value.Place}: {value.Stated.Value.Name}"));
    }

    private static string Name(Sheet sheet) => $"{sheet.Chassis.Id}/{sheet.Donor.Id}/{sheet.Gearbox?.Id}";

    private static double Of(JsonDocument document, params ReadOnlySpan<string> path)
    {
        var at = document.RootElement;
        foreach (var step in path)
        {
            at = at.GetProperty(step);
        }

        return at.GetDouble();
    }

    private int Walk(JsonElement element, string name, string where)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Array:
                return element.EnumerateArray().Sum(item => Walk(item, name, where));
            case JsonValueKind.Number:
                Assert.True(double.IsFinite(element.GetDouble()) && Math.Abs(element.GetDouble()) < 1e6, $"{where}: {name} {element.GetRawText()}");
                return 1;
            case JsonValueKind.Object:
                if (element.TryGetProperty("value", out var value) && value.ValueKind == JsonValueKind.Number && element.TryGetProperty("unit", out var unit)
                    && s_ranges.TryGetValue(name, out var range) && range.Unit == unit.GetString())
                {
                    _ranged.Add(name);
                    Assert.True(value.GetDouble() >= range.Least && value.GetDouble() <= range.Most, $"{where}: {name} {value.GetRawText()} {range.Unit}");
                }

                if (element.TryGetProperty("value", out var bare) && bare.ValueKind == JsonValueKind.Number)
                {
                    Assert.True(element.TryGetProperty("unit", out _), $"{where}: {name} has no unit");
                }

                return element.EnumerateObject().Sum(member => Walk(member.Value, member.Name, where));
            default:
                return 0;
        }
    }
}
