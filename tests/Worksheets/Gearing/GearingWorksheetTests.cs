using System.Collections.Immutable;
using Swapwright.Worksheets.Gearing;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Gearing;

public sealed class GearingWorksheetTests
{
    private static readonly GearSet s_five = new("Five-speed", [new("first", 3.55), new("second", 1.95), new("third", 1.28), new("fourth", 0.95), new("fifth", 0.76)], 4.06)
    {
        Origin = "gearbox five",
        Speed = new SpeedDrive(true, 6, 18, null),
    };

    private static GearingInput Input => new()
    {
        Gearbox = s_five,
        Before = s_five,
        Tyre = Size(0.175, 0.7),
        PowerSpeed = new Given(6000 * Math.PI / 30, new FigureInput("speed at full power", 6000, "rpm", "donor one")),
        AsksForSpeedometer = true,
        Cruise = [90 / 3.6, 130 / 3.6],
    };

    [Fact]
    public void Work_SameGearbox_ShowsAsBefore()
    {
        var ledger = GearingWorksheet.Work(Input);

        Assert.Empty(ledger.Gaps);
        Assert.Equal(0, ledger.Figure("speedometer-error")!.Value, 9);
        Assert.Null(ledger.Figure("speedometer-pinion"));
        Assert.All(Assert.Single(ledger.Charts).Series, series => Assert.False(series.IsReference));
    }

    [Fact]
    public void Work_TopGear_AgreesWithItsOwnCruise()
    {
        var ledger = GearingWorksheet.Work(Input);

        Assert.Equal(130, ledger.Figure("cruise-130")!.Value / 1000 * ledger.Figure("top-gear")!.Value, 6);
        Assert.Equal(6 * ledger.Figure("top-gear")!.Value, ledger.Figure("top-speed")!.Value, 6);
    }

    [Fact]
    public void Work_ShorterFinalDrive_TurnsFasterAndMisleadsTheSpeedometer()
    {
        var ledger = GearingWorksheet.Work(Input with { Gearbox = s_five with { Final = 4.06 * 1.2 } });

        Assert.Equal(20, ledger.Figure("speedometer-error")!.Value, 6);
        Assert.Equal(FigureWeight.Bad, ledger.Figure("speedometer-error")!.Weight);
        Assert.Equal(21, ledger.Figure("speedometer-pinion")!.Value);
        Assert.Equal(1 / 1.2, ledger.Figure("speedometer-factor")!.Value, 9);
        Assert.Equal(GearingWorksheet.Work(Input).Figure("cruise-90")!.Value * 1.2, ledger.Figure("cruise-90")!.Value, 6);
        Assert.Equal(5, ledger.Charts[0].Series.Count(series => series.IsReference));
    }

    /// <summary>A car of four gears gets one of five: its fourth stands beside the new fifth, and says that it was the fourth. The figures were worked out by hand from 4.06 × 0.95 and 4.06 × 0.76.</summary>
    [Fact]
    public void Work_OldGearboxOfFewerGears_SaysWhichGearWasItsHighest()
    {
        var ledger = GearingWorksheet.Work(Input with { Before = s_five with { Gears = [.. s_five.Gears.Where(gear => gear.Name != "fifth")] } });

        Assert.EndsWith(" before, in fourth: geared 25.0 % longer", ledger.Figure("top-gear")!.Remark, StringComparison.Ordinal);
        Assert.EndsWith(" rpm before, in fourth", ledger.Figure("cruise-90")!.Remark, StringComparison.Ordinal);
    }

    /// <summary>One gear more, and the same ratio in the highest: what is as before was so in another gear.</summary>
    [Fact]
    public void Work_SameRatioInAnotherGear_SaysWhichGearItWas()
    {
        var ledger = GearingWorksheet.Work(Input with { Before = s_five with { Gears = [.. s_five.Gears.Where(gear => gear.Name != "fifth").Select(gear => gear.Name == "fourth" ? gear with { Ratio = 0.76 } : gear)] } });

        Assert.Equal("as before, in fourth", ledger.Figure("top-gear")!.Remark);
        Assert.Equal("as before, in fourth", ledger.Figure("cruise-130")!.Remark);
    }

    [Fact]
    public void Work_SameHighestGear_NamesItOnce()
    {
        var ledger = GearingWorksheet.Work(Input with { Before = s_five with { Final = 4.44 } });

        Assert.DoesNotContain(", in ", ledger.Figure("top-gear")!.Remark + ledger.Figure("cruise-90")!.Remark, StringComparison.Ordinal);
    }

    /// <summary>Chassis and donor had the same gearbox from the works: one guide of it says what is bought, and the other row that it is no other gearbox.</summary>
    [Fact]
    public void Work_AlternativeThatIsTheSameGearbox_SaysSo()
    {
        var other = s_five with { Origin = "gearbox other" };
        var table = GearingWorksheet.Work(Input with
        {
            Alternatives = [new("keep", s_five, true, true), new("donor", s_five, false, true), new("close", other, false, true), new("heavy", s_five, false, false)],
        }).Tables.Single(table => table.Id == "options");

        Assert.Equal(
            ["this guide", "the same gearbox as in this guide: take whichever of the two turns better", "", "not with everything else as here"],
            table.Rows.Select(row => row[^1].Text));
    }

    [Fact]
    public void Work_TwoAlternativesThatAreOneGearbox_SaySoOfEachOther()
    {
        var other = s_five with { Origin = "gearbox other" };
        var table = GearingWorksheet.Work(Input with
        {
            Alternatives = [new("Keep it", other, false, true), new("Heavy", s_five, true, true), new("The donor's", other, false, true)],
        }).Tables.Single(table => table.Id == "options");

        Assert.Equal(["", "this guide", "the same gearbox as “Keep it” brings: take whichever of the two turns better"], table.Rows.Select(row => row[^1].Text));
    }

    [Fact]
    public void Work_LargerTyre_ShowsTooLittle()
    {
        // 28 in before, 31 in after, 60 shown: 66.43 true (worked out by hand).
        var ledger = GearingWorksheet.Work(Input with { Tyre = Size(0.2, 1, 31 - (0.4 / 0.0254)), TyreBefore = Size(0.2, 1, 28 - (0.4 / 0.0254)) });

        Assert.Equal(66.43, 60 / (1 + (ledger.Figure("speedometer-error")!.Value / 100)), 0.005);
        Assert.Contains("too little", ledger.Figure("speedometer-error")!.Remark, StringComparison.Ordinal);
    }

    /// <summary>An axle from 4.44 to 3.70 turns a drive ahead of it slower: a pinion that is bought for it has fewer teeth in proportion.</summary>
    [Fact]
    public void Work_PinionToBeBought_SaysWhichOne()
    {
        Given own = new(21, new FigureInput("pinion", 21, "", "chassis one"));
        var ledger = GearingWorksheet.Work(Input with { Before = s_five with { Final = 4.44 }, Gearbox = s_five with { Final = 3.7 }, PinionBefore = own, SpeedIsAdjustable = true });

        Assert.Empty(ledger.Gaps);
        Assert.Equal(17, ledger.Figure("speedometer-pinion")!.Value);
        Assert.Null(ledger.Figure("speedometer-error"));
    }

    [Theory]
    [InlineData(0, 0.7)]
    [InlineData(0.175, -0.7)]
    [InlineData(double.NaN, 0.7)]
    public void Work_ImpossibleTyre_IsAGapAndNoFigure(double width, double aspect)
    {
        var ledger = GearingWorksheet.Work(Input with { Tyre = Size(width, aspect) });

        Assert.Empty(ledger.Figures);
        Assert.Single(ledger.Gaps);
    }

    [Fact]
    public void Work_NothingKnownBesides_StillGivesSpeeds()
    {
        var ledger = GearingWorksheet.Work(Input with { Before = null, PowerSpeed = null, Gearbox = s_five with { Speed = null } });

        Assert.Equal(["Shift points and top speed by gearing", "Speedometer"], ledger.Gaps.Select(gap => gap.About));
        Assert.NotNull(ledger.Figure("top-gear"));
    }

    [Fact]
    public void Work_Converter_SaysThatItSlips() =>
        Assert.Contains(GearingWorksheet.Work(Input with { Gearbox = s_five with { HasConverter = true } }).Notes, note => note.Contains("converter", StringComparison.Ordinal));

    [Fact]
    public void Steps_GearsInAnyOrder_AreTheSame() =>
        Assert.Equal(ShiftSteps.Of(s_five, 0.48).AsEnumerable(), ShiftSteps.Of(s_five with { Gears = [.. s_five.Gears.OrderBy(gear => gear.Ratio)] }, 0.48));

    [Fact]
    public void Steps_MissingGear_IsAGap()
    {
        GearSet gapped = s_five with { Gears = [.. s_five.Gears.Where(gear => gear.Name != "third")] };

        Assert.Equal(["second"], ShiftSteps.Of(gapped, 0.48).Where(step => step.IsGap).Select(step => step.From.Name));
    }

    private static TyreSize Size(double width, double aspect, double rimInches = 13) => new(Metres(width), new Given(aspect, new FigureInput("aspect", aspect, "", "chassis one")), Metres(rimInches * 0.0254), TyreConstruction.Radial);

    private static Given Metres(double value) => new(value, new FigureInput("length", value, "m", "chassis one"));
}
