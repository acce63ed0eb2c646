using System.Text.Json;
using NJsonSchema;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Sheets;

/// <summary>Gearing and load of the base that is shipped, in every guide's recommended combination.</summary>
[Collection(ShippedSheetsCollection.Name)]
public sealed class ShippedLedgersTests(ShippedSheets shipped)
{
    /// <summary>What no road car leaves, in the unit of the figure.</summary>
    public static TheoryData<string, double, double> Plausible => new()
    {
        { "gearing.rolling-circumference", 1500, 2600 },
        { "gearing.top-gear", 20, 60 },
        { "gearing.cruise-110", 1800, 6500 },
        { "gearing.top-speed", 120, 320 },
        { "gearing.largest-drop", 500, 4000 },
        { "load.mass", 500, 2500 },
        { "load.front", 250, 1400 },
        { "load.rear", 200, 1400 },
        { "load.power-to-mass", 40, 250 },
        { "load.shaft-torque", 300, 5000 },
        { "load.timing-mount", 200, 3000 },
        { "load.gearbox-mount", 200, 3000 },
        { "load.bonnet", -100, 300 },
        { "load.ground", 80, 350 },
        { "load.heat-most", 30, 300 },
    };

    [Theory]
    [MemberData(nameof(Plausible))]
    public void Figure_EveryGuide_IsThereAndPlausible(string name, double least, double most) => Assert.All(shipped.Sheets, sheet =>
    {
        var figure = sheet.Ledger(name.Split('.')[0])?.Figure(name.Split('.')[1]);

        Assert.NotNull(figure);
        Assert.InRange(figure.Value, least, most);
        Assert.NotEmpty(figure.Unit);
        Assert.NotEmpty(figure.Formula);
    });

    [Fact]
    public void Ledgers_EveryGuide_ComputeEverythingTheyAreAskedFor() => Assert.All(shipped.Sheets, sheet =>
    {
        Assert.Empty(sheet.Ledger("gearing")!.Gaps);
        Assert.Empty(sheet.Ledger("load")!.Gaps);
    });

    /// <summary>A clutch belongs to a manual gearbox; behind a converter there is none.</summary>
    [Fact]
    public void Clutch_EveryGuide_IsWhereTheGearboxIsManual() => Assert.All(shipped.Sheets, sheet =>
    {
        var isManual = sheet.Gearbox!.Fact("kind")!.Value.Text == "manual";

        Assert.Equal(isManual, sheet.Ledger("load")!.Figure("clutch-margin") is not null);
        Assert.Equal(isManual, Joints(sheet).Any(joint => joint[0].Text.StartsWith("Clutch", StringComparison.Ordinal)));
        Assert.Equal(!isManual, sheet.Ledger("gearing")!.Notes.Any(note => note.Contains("converter slips", StringComparison.Ordinal)));
    });

    /// <summary>A starter turns one ring gear, behind a clutch or a converter, and what does not go together in a recommended build is a mistake of the base.</summary>
    [Fact]
    public void Joints_EveryGuide_FitAndNameTheStarter() => Assert.All(shipped.Sheets, sheet =>
    {
        Assert.Contains(Joints(sheet), joint => joint[0].Text == "Starter on the ring gear");
        Assert.All(Joints(sheet), joint => Assert.Equal("fits", joint[^1].Text));
    });

    /// <summary>An electronic throttle is opened by its ECU, in every guide that has one.</summary>
    [Fact]
    public void Throttle_EveryElectronicOne_IsDriven()
    {
        var electronic = shipped.Sheets.Where(sheet => sheet.Donor.Fact("throttle")?.Text == "electronic").ToList();
        Assert.NotEmpty(electronic);
        Assert.All(electronic, sheet => Assert.Contains(sheet.Ledger("fuel")!.Tables.Single(table => table.Id == "ignition").Rows, row => row[0].Text == "Throttle" && row[^1].Text.StartsWith("they agree", StringComparison.Ordinal)));
    }

    /// <summary>A lid that the guide raises gives its height to the room above the engine; along the bay there is room wherever the car says how much it has.</summary>
    [Fact]
    public void Room_EveryGuide_CountsTheKitThatItFits()
    {
        var raised = shipped.Sheets.Where(sheet => sheet.Shopping.Any(line => line.Part.Id == "lid-spacers")).ToList();
        Assert.NotEmpty(raised);
        Assert.All(raised, sheet => Assert.True(sheet.Ledger("load")!.Figure("bonnet") is { Value: > 0 } room && room.From.Any(input => input.Origin == "part lid-spacers")));
        var along = shipped.Sheets.Where(sheet => sheet.Chassis.Fact("bay-length") is not null).ToList();
        Assert.NotEmpty(along);
        Assert.All(along, sheet => Assert.True(sheet.Ledger("load")!.Figure("bay") is { Value: > 0 }));
        Assert.All(shipped.Sheets.Except(along), sheet => Assert.Null(sheet.Ledger("load")!.Figure("bay")));
    }

    private static IEnumerable<System.Collections.Immutable.ImmutableArray<Swapwright.Worksheets.Ledgers.LedgerCell>> Joints(Sheet sheet) => sheet.Ledger("load")!.Tables.Where(table => table.Id == "joints").SelectMany(table => table.Rows);

    /// <summary>The gearbox makes a guide of its own, so the options beside each other are the guides of the same chassis and donor, and no more.</summary>
    [Fact]
    public void Gearboxes_ThatTheChassisTakesBehindTheDonor_StandBesideEachOther()
    {
        var ways = shipped.Sheets.GroupBy(sheet => (sheet.Chassis.Id, sheet.Donor.Id)).ToDictionary(group => group.Key, group => group.DistinctBy(sheet => sheet.Choices.Single(choice => choice.Key == "gearbox").Value).Select(sheet => sheet.Gearbox!.Title).Order(StringComparer.Ordinal).ToArray());
        Assert.Contains(ways.Values, boxes => boxes.Length > 1);
        Assert.Contains(ways.Values, boxes => boxes.Length == 1);
        foreach (var sheet in shipped.Sheets)
        {
            var rows = sheet.Ledger("gearing")!.Tables.Where(table => table.Id == "options").SelectMany(table => table.Rows).ToList();
            var boxes = ways[(sheet.Chassis.Id, sheet.Donor.Id)];

            Assert.Equal(boxes.Length > 1 ? boxes : [], rows.Select(row => row[1].Text).Order(StringComparer.Ordinal));
            Assert.Equal(boxes.Length > 1 ? [sheet.Gearbox!.Title] : [], rows.Where(row => row[^1].Text == "this guide").Select(row => row[1].Text));
        }
    }

    [Theory]
    [InlineData("load")]
    [InlineData("gearing")]
    [InlineData("belt")]
    [InlineData("wiring")]
    [InlineData("hoses")]
    [InlineData("effort")]
    public void Why_Worksheet_IsValidAndTellsWhatWentIn(string asked)
    {
        using var report = Valid(new WhyLedgerReport(shipped.Sheets[0], shipped.Resolution, asked).Json());

        Assert.Equal(asked, report.RootElement.GetProperty("worksheet").GetString());
        Assert.NotEqual(0, report.RootElement.GetProperty("figures").GetArrayLength());
        Assert.All(report.RootElement.GetProperty("figures").EnumerateArray(), figure =>
        {
            Assert.NotEqual(0, figure.GetProperty("from").GetArrayLength());
            Assert.NotEmpty(figure.GetProperty("formula").GetString()!);
            Assert.NotEmpty(figure.GetProperty("source").GetString()!);
        });
    }

    /// <summary>Every number that a rule may state of belts and wiring is told with its way, and is the number that the rule is held against.</summary>
    [Fact]
    public void Workings_EveryGuide_TellTheNumbersThatRulesState()
    {
        var held = 0;
        foreach (var sheet in shipped.Sheets)
        {
            foreach (var stated in sheet.Values.Where(value => value.Computed is not null))
            {
                var name = stated.Stated.Value.Name.Split('.');
                var figure = Workings.Of(sheet, shipped.Resolution.Space.Base, name[0])?.Figure(string.Join('-', name[1..]));
                Assert.True(figure is not null, stated.Stated.Value.Name);
                Assert.Equal((double)stated.Computed!.Value, figure.Value, 6);
                held++;
            }
        }

        Assert.True(held > 2000, FormattableString.Invariant($"{held}"));
    }

    /// <summary>Ids are names for the command, so no two figures of a worksheet share one.</summary>
    [Fact]
    public void Workings_EveryGuide_HaveIdsOfTheirOwn() => Assert.All(shipped.Sheets.Where((_, at) => at % 10 == 0), sheet => Assert.All(Workings.Ids, id =>
    {
        var figures = Workings.Of(sheet, shipped.Resolution.Space.Base, id)!.Figures;
        Assert.Equal(figures.Length, figures.DistinctBy(figure => figure.Id).Count());
        Assert.All(figures, figure => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*$", figure.Id));
    }));

    [Theory]
    [InlineData("belt.accessory.length")]
    [InlineData("belts.accessory-length")]
    public void Why_BeltsLength_IsNamedAsRulesNameIt(string asked)
    {
        using var report = Valid(new WhyLedgerReport(shipped.Sheets.First(sheet => sheet.Belts.Any(belt => belt.Loop.Id == "accessory")), shipped.Resolution, asked).Json());

        Assert.Equal("belt", report.RootElement.GetProperty("worksheet").GetString());
        Assert.Equal("accessory-length", Assert.Single(report.RootElement.GetProperty("figures").EnumerateArray()).GetProperty("id").GetString());
    }

    [Fact]
    public void Why_StatedNumber_ShowsTheRuleBesideIt()
    {
        var sheet = shipped.Sheets.First(one => one.Chassis.Id == "quillet-m-92" && one.Donor.Id == "orrel-18-95" && one.Choices.Any(choice => choice is { Key: "gearbox", Value: "keep" }));
        var why = new WhyLedgerReport(sheet, shipped.Resolution, "load.front");

        Assert.Contains("  stated: 530 ± 6 kg by weighed-m92, which agrees\n", why.Text(), StringComparison.Ordinal);
        Assert.Contains(", chassis quillet-m-92\n", why.Text(), StringComparison.Ordinal);
        using var report = Valid(why.Json());
        Assert.Equal("front", Assert.Single(report.RootElement.GetProperty("figures").EnumerateArray()).GetProperty("id").GetString());
        Assert.Equal("weighed-m92", Assert.Single(report.RootElement.GetProperty("values").EnumerateArray()).GetProperty("rule").GetString());
    }

    private static JsonDocument Valid(string json)
    {
        var path = Path.Combine(Reading.Repository(), "schema", "reports", "why.schema.json");
        Assert.Empty(JsonSchema.FromFileAsync(path).GetAwaiter().GetResult().Validate(json).Select(error => error.ToString()));
        return JsonDocument.Parse(json);
    }
}
