using System.Collections.Immutable;
using Swapwright.Worksheets.Gearing;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Gearing;

/// <summary>Drives of speedometers that only half is known of, sensors, and the other gearboxes of a choice.</summary>
public sealed class GearingGapsTests
{
    private static readonly SpeedDrive s_cable = new(false, 6, null, null);

    private static readonly GearSet s_five = new("Five-speed", [new("first", 3.55), new("second", 1.95), new("third", 1.28)], 4.06) { Origin = "gearbox five", Speed = s_cable };

    private static GearingInput Input => new() { Gearbox = s_five, Before = s_five, Tyre = s_tyre, Pinion = Drawn.Given(18), PinionBefore = Drawn.Given(18), AsksForSpeedometer = true, Cruise = [90 / 3.6] };

    private static readonly TyreSize s_tyre = new(Drawn.Given(0.175), Drawn.Given(0.7), Drawn.Given(0.3302), TyreConstruction.Radial);

    [Fact]
    public void Work_NoTyre_IsOneGap() => Assert.Equal(["Road speeds"], GearingWorksheet.Work(Input with { Tyre = null }).Gaps.Select(gap => gap.About));

    [Fact]
    public void Work_NobodyAsksForTheSpeedometer_SaysNothingOfIt()
    {
        var ledger = GearingWorksheet.Work(Input with { AsksForSpeedometer = false, Before = null });

        Assert.DoesNotContain(ledger.Figures, figure => figure.Id.StartsWith("speedometer", StringComparison.Ordinal));
        Assert.Empty(Speedometers(ledger));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0.0)]
    [InlineData(-18.0)]
    public void Work_CableWithoutAPinion_SaysWhatToCount(double? teeth)
    {
        var ledger = GearingWorksheet.Work(Input with { Pinion = teeth is { } count ? Drawn.Given(count) : null });

        Assert.Contains("Count", Assert.Single(Speedometers(ledger)).Mend, StringComparison.Ordinal);
        Assert.Null(ledger.Figure("speedometer-error"));
    }

    /// <summary>A pinion of nought teeth in the chassis as it was leaves nothing to compare with.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData(0.0)]
    public void Work_NoPinionBefore_SaysThatItIsNotKnown(double? teeth)
    {
        var ledger = GearingWorksheet.Work(Input with { PinionBefore = teeth is { } count ? Drawn.Given(count) : null });

        Assert.Contains("how the speedometer was driven before", Assert.Single(Speedometers(ledger)).Reason, StringComparison.Ordinal);
    }

    /// <summary>JIS D 5601 (from memory): the cable turns 637 times for a kilometre, and a sensor of four pulses gives 2,548.</summary>
    [Theory]
    [InlineData(false, "what the speedometer has to be made for")]
    [InlineData(true, "set the converter to this and prove it on a measured kilometre")]
    public void Work_SensorOfFourPulses_GivesThoseOfTheStandard(bool adjustable, string remark)
    {
        var sensor = new SpeedDrive(false, 0.637 * s_tyre.Circumference * 18, 18, 4);
        var ledger = GearingWorksheet.Work(Input with { Gearbox = s_five with { Speed = sensor }, SpeedIsAdjustable = adjustable });

        Assert.Equal(2548, ledger.Value("speedometer-pulses"), 6);
        Assert.Equal(remark, ledger.Figure("speedometer-pulses")!.Remark);
        Assert.Equal(adjustable ? [] : ["one gearbox turns a cable and the other gives pulses"], Speedometers(ledger).Select(gap => gap.Reason));
    }

    /// <summary>A sensor keeps its own pinion: what the chassis had for its cable says nothing of it.</summary>
    [Fact]
    public void Work_SensorWithoutAPinion_IsAGap() =>
        Assert.Contains("teeth", Assert.Single(Speedometers(GearingWorksheet.Work(Input with { Gearbox = s_five with { Speed = s_cable with { Pulses = 4 } } }))).Reason, StringComparison.Ordinal);

    /// <summary>Two sensors are compared by their pulses: twice as many for a turn, and the instrument shows twice the speed.</summary>
    [Fact]
    public void Work_SensorBeforeAndAfter_AreComparedByTheirPulses()
    {
        GearSet Sensor(double pulses) => s_five with { Speed = new SpeedDrive(false, 6, 18, pulses) };
        var ledger = GearingWorksheet.Work(Input with { Gearbox = Sensor(8), Before = Sensor(4) });

        Assert.Equal(100, ledger.Value("speedometer-error"), 9);
        Assert.Null(ledger.Figure("speedometer-pinion"));
        Assert.Equal(0.5, ledger.Value("speedometer-factor"), 12);
    }

    /// <summary>Where a pinion is to be bought and the gearbox has none of its own, the chassis's is reckoned from: 6 ∕ 18 turns for one of the wheel.</summary>
    [Fact]
    public void Work_PinionToBeBoughtForABareGearbox_ReckonsFromTheChassis()
    {
        var ledger = GearingWorksheet.Work(Input with { Pinion = null, SpeedIsAdjustable = true });

        Assert.Equal(1000 / s_tyre.Circumference * 6 / 18, ledger.Value("speedometer-turns"), 9);
        Assert.Equal(18, ledger.Value("speedometer-pinion"));
    }

    /// <summary>Without what was there before the turns are told, and no correction.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Work_PinionToBeBoughtAndNothingToCompareWith_TellsTheTurnsAlone(bool sensorBefore)
    {
        var before = sensorBefore ? s_five with { Speed = new SpeedDrive(false, 6, 18, 4) } : null;
        var ledger = GearingWorksheet.Work(Input with { Before = before, SpeedIsAdjustable = true });

        Assert.NotNull(ledger.Figure("speedometer-turns"));
        Assert.Null(ledger.Figure("speedometer-factor"));
        Assert.Empty(Speedometers(ledger));
    }

    /// <summary>The row of the chosen gearbox has the numbers of the ledger's own figures; one that cannot be is left out.</summary>
    [Fact]
    public void Work_OtherGearboxes_StandBesideTheChosenOne()
    {
        var tall = s_five with { Title = "Tall", Origin = "gearbox tall", Final = 3.7 };
        ImmutableArray<GearboxAlternative> options =
            [new("five", s_five, true, true), new("tall", tall, false, false), new("four", tall with { Title = "Unknown", Origin = "gearbox four" }, false, null), new("broken", tall with { Final = 0 }, false, true)];
        var ledger = GearingWorksheet.Work(Input with { Alternatives = options, PowerSpeed = Drawn.Given(6000 * Math.PI / 30) });
        var table = Assert.Single(ledger.Tables, table => table.Id == "options");

        Assert.Equal([("five", "this guide"), ("tall", "not with everything else as here"), ("four", "")], table.Rows.Select(row => (row[0].Text, row[^1].Text)));
        Assert.Equal(["Engine at 90 km/h"], table.Columns.Where(column => column.Id == "cruise").Select(column => column.Title));
        Assert.Equal([ledger.Value("top-gear"), ledger.Value("cruise-90"), ledger.Value("top-speed")], table.Rows[0][5..8].Select(cell => cell.Value!.Value), Near);
        Assert.Equal(3.7 / 4.06, table.Rows[1][6].Value!.Value / table.Rows[0][6].Value!.Value, 9);
    }

    [Fact]
    public void Work_OtherGearboxesWithoutSpeeds_LeaveTheirCellsOut()
    {
        var ledger = GearingWorksheet.Work(Input with { Alternatives = [new("five", s_five, true, true), new("six", s_five, false, true)], Cruise = [] });
        var table = Assert.Single(ledger.Tables, table => table.Id == "options");

        Assert.DoesNotContain(table.Columns, column => column.Id == "cruise");
        Assert.All(table.Rows, row => Assert.True(row[table.Columns.Select(column => column.Id).ToList().IndexOf("top-speed")].IsEmpty));
    }

    private static bool Near(double one, double other) => Math.Abs(one - other) < 1e-6;

    private static IEnumerable<LedgerGap> Speedometers(Ledger ledger) => ledger.Gaps.Where(gap => gap.About.StartsWith("Speedometer", StringComparison.Ordinal));
}
