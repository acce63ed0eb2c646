using Swapwright.Worksheets.Fuel;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Fuel;

public sealed class FuelWorksheetTests
{
    private const double CcPerMinute = 1e-6 / 60;
    private const double LitrePerHour = 0.001 / 3600;

    private static readonly FuelInput s_usual = new()
    {
        Assumptions = new FuelAssumptions(304 / 3.6e9, 720, 0.85, 0.25, 14),
        Power = V(77000),
        PowerSpeed = V(6000 * Math.PI / 30),
        Cylinders = V(4),
        Family = "marn",
        Ecu = new EngineControl("ECU", InjectorDriver.Saturated, V(2), V(4), new FuelWord("marn", "Marn", "ecu x"), V(190 * CcPerMinute), new FuelWord("lobes", "Lobes", "ecu x"), V(1), new FuelWord("trigger", "Triggers", "ecu x")),
        Injectors = new InjectorSet(V(190 * CcPerMinute), V(2.8e5), V(2.4), V(4)),
        Ballast = BallastWork.Kept,
        BallastResistance = V(6.8),
        BallastPower = V(20),
        Line = new FuelLine(V(2.8e5), false, false, V(60 * LitrePerHour), V(3e5), [("Hose", FuelHoseClass.R9)], false, V(6e5), 0.5),
        Ignition = new IgnitionSet(new FuelWord("distributor", "Distributor", "donor x"), new FuelWord("lobes", "Lobes", "donor x"), V(1), null, new FuelWord("igniter", "Igniter", "donor x"), V(0.6), V(0.0055), V(6.5)),
    };

    [Fact]
    public void Work_MarnOnItsOwnEcu_IsByHand()
    {
        var ledger = FuelWorksheet.Work(s_usual);

        // 77 kW × 304 g/kWh ∕ 720 g/L = 32.51 L/h = 541.9 cm³/min.
        Assert.Equal(541.9 / 4 / 0.85, Value(ledger, "injector-need"), 0.1);
        Assert.Equal(541.9 / 4 / 190 * 100, Value(ledger, "injector-duty"), 0.1);
        Assert.Equal(14 / 9.2, Value(ledger, "driver-current"), 9);
        Assert.Equal(32.51 * 1.25, Value(ledger, "pump-need"), 0.01);
        Assert.Equal((60 / 32.51 * 100) - 100, Value(ledger, "pump-margin"), 0.1);
        Assert.Empty(ledger.Gaps);
        Assert.All(ledger.Figures, figure => Assert.Equal((true, true), (double.IsFinite(figure.Value), figure.Source.Length > 0 || figure.Formula.Length == 0)));
    }

    /// <summary>What opens an electronic throttle, by who says that they do (common practice, no source): the ECU, a part that is fitted, nobody.</summary>
    [Theory]
    [InlineData("cable", false, "", null, false)]
    [InlineData("cable", null, "", null, false)]
    [InlineData("cable", true, "", "none is there: it has to be told so", false)]
    [InlineData("electronic", true, "", "they agree; prove that the engine falls to idle", false)]
    [InlineData("electronic", false, "Throttle box", "the part that is fitted works it", false)]
    [InlineData("electronic", false, "", "nothing opens the throttle", true)]
    [InlineData("electronic", null, "", "nothing opens the throttle", true)]
    public void Work_Throttle_IsOpenedBySomebodyOrAGap(string kind, bool? driven, string controller, string? verdict, bool gap)
    {
        var ledger = FuelWorksheet.Work(s_usual with { Throttle = new FuelWord(kind, "Its kind", "donor x"), EcuDrivesThrottle = driven, ThrottleController = controller });

        var row = ledger.Tables.SelectMany(table => table.Rows).SingleOrDefault(row => row[0].Text == "Throttle");
        Assert.Equal(verdict is null, row.IsDefault);
        Assert.True(verdict is null || row[^1].Text.StartsWith(verdict, StringComparison.Ordinal), verdict);
        Assert.Equal(gap, ledger.Gaps.Any(one => one.About == "Throttle"));
    }

    /// <summary>
    /// An output of the ECU fires one coil, or two plugs of a pack, or goes by the distributor; fewer outputs than coils never do. A logic output and
    /// a bare coil want an igniter between them; an igniter behind a power output is one too many (common practice, no source).
    /// </summary>
    [Theory]
    [InlineData("distributor", 1, 1, "trigger", "igniter", "the distributor shares the sparks out", "they agree")]
    [InlineData("coil-packs", 2, 2, "power", "ecu", "each pack fires two plugs at once", "they agree")]
    [InlineData("coil-on-plug", 4, 4, "power", "coil", "one coil for each plug", "two power stages in a row")]
    [InlineData("coil-on-plug", 4, 2, "power", "igniter", "too few outputs", "two power stages in a row")]
    [InlineData("coil-packs", 2, 1, "trigger", "ecu", "too few outputs", "a logic output cannot switch a coil")]
    public void Work_Ignition_SaysWhetherSparksAndStagesGoTogether(string kind, double coils, double outputs, string drive, string stage, string sparks, string current)
    {
        var ledger = FuelWorksheet.Work(s_usual with
        {
            Ecu = s_usual.Ecu with { SparkOutputs = V(outputs), Drive = new FuelWord(drive, drive, "ecu x") },
            Ignition = s_usual.Ignition with { Kind = new FuelWord(kind, kind, "donor x"), Coils = V(coils), Stage = new FuelWord(stage, stage, "donor x") },
        });

        var rows = ledger.Tables.SelectMany(table => table.Rows).ToDictionary(row => row[0].Text, row => row[^1].Text, StringComparer.Ordinal);
        Assert.StartsWith(sparks, rows["Sparks"], StringComparison.Ordinal);
        Assert.StartsWith(current, rows["Coil current"], StringComparison.Ordinal);
    }

    /// <summary>A part that shares the sparks out takes the place of the ECU's outputs.</summary>
    [Fact]
    public void Work_SparkDriverThatIsFitted_CountsInPlaceOfTheEcus()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Ignition = s_usual.Ignition with { Kind = new FuelWord("coil-packs", "Packs", "donor x"), Coils = V(2), SparkOutputs = V(2) } });

        var row = ledger.Tables.SelectMany(table => table.Rows).Single(row => row[0].Text == "Sparks");
        Assert.Contains("2 outputs, with the driver that is fitted", string.Join('|', row.Select(cell => cell.Text)), StringComparison.Ordinal);
        Assert.StartsWith("each pack", row[^1].Text, StringComparison.Ordinal);
    }

    /// <summary>A pump measured to 2.5 bar says nothing of a rail at 2.8, where it gives less; what it gave at 2.5 is no answer.</summary>
    [Fact]
    public void Work_PumpMeasuredBelowTheRailsPressure_IsAGap()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Line = s_usual.Line with { PumpCurve = [new(1e5, 90 * LitrePerHour), new(2.5e5, 70 * LitrePerHour)], PumpHolder = "part p" } });

        Assert.Null(ledger.Figure("pump-flow"));
        Assert.Equal("the pump was measured up to 2.5 bar, and the rail is at 2.8 bar, where every pump gives less", Assert.Single(ledger.Gaps, gap => gap.About == "Pump delivery").Reason);
    }

    /// <summary>14 V through 0.6 Ω drive 23 A at most: 30 A never come.</summary>
    [Fact]
    public void Work_CoilThatNeverReachesItsCurrent_IsAGap() =>
        Assert.Contains(FuelWorksheet.Work(s_usual with { Ignition = s_usual.Ignition with { CoilCurrent = V(30) } }).Gaps, gap => gap.About == "Charging time of a coil" && gap.Reason.Contains("never drive", StringComparison.Ordinal));

    [Fact]
    public void Work_NothingKnown_NamesEachGapAndNoNumber()
    {
        var ledger = FuelWorksheet.Work(s_usual with
        {
            Power = null,
            Injectors = new InjectorSet(null, null, null, null),
            Line = s_usual.Line with { Pressure = null },
            Ignition = new IgnitionSet(null, null, null, null, null, null, null, null),
            Ecu = new EngineControl("ECU", null, null, null, null, null, null, null, null),
        });

        Assert.Empty(ledger.Figures);
        Assert.Equal(["Injector duty", "Injector flow needed", "Injector driver current", "Fuel pump"], ledger.Gaps.Select(gap => gap.About));
        Assert.All(ledger.Gaps, gap => Assert.True(gap.Reason.Length > 0 && gap.Mend.Length > 0));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void Work_ImpossibleInput_IsAGapAndNeverANumber(double odd)
    {
        var ledger = FuelWorksheet.Work(s_usual with
        {
            Power = V(odd),
            Injectors = new InjectorSet(V(odd), V(odd), V(odd), V(odd)),
            Line = s_usual.Line with { Pressure = V(odd), PumpFlow = V(odd) },
        });

        Assert.NotEmpty(ledger.Gaps);
        Assert.All(ledger.Figures, figure => Assert.True(double.IsFinite(figure.Value)));
        Assert.Null(ledger.Figure("injector-duty"));
        Assert.Null(ledger.Figure("driver-current"));
    }

    [Theory]
    [InlineData(InjectorDriver.Saturated, 2, 2.4, BallastWork.Kept, 6.8, "keep the ballast", FigureWeight.Good)]
    [InlineData(InjectorDriver.Saturated, 1.5, 2.4, BallastWork.Added, 7, "add the ballast", FigureWeight.Good)]
    [InlineData(InjectorDriver.Saturated, 1.5, 2.4, BallastWork.Kept, 6.8, "too small", FigureWeight.Bad)]
    [InlineData(InjectorDriver.Saturated, 1.5, 2.4, BallastWork.LeftOff, 0, "overloaded: add ballast", FigureWeight.Bad)]
    [InlineData(InjectorDriver.Saturated, 1.5, 14, BallastWork.Kept, 6.8, "by-pass them", FigureWeight.Caution)]
    [InlineData(InjectorDriver.PeakHold, 4, 2.4, BallastWork.Kept, 6.8, "by-pass them", FigureWeight.Caution)]
    [InlineData(InjectorDriver.PeakHold, 4, 2.4, BallastWork.LeftOff, 0, "by-pass the pack", FigureWeight.Good)]
    [InlineData(InjectorDriver.Saturated, 1.5, 14, BallastWork.None, 0, "no ballast resistors are needed", FigureWeight.Good)]
    public void Work_DriverAndInjector_SayWhatBecomesOfTheBallast(InjectorDriver driver, double limit, double ohms, BallastWork work, double ballast, string words, FigureWeight weight)
    {
        var ledger = FuelWorksheet.Work(s_usual with
        {
            Ecu = s_usual.Ecu with { Driver = driver, DriverCurrent = V(limit) },
            Injectors = s_usual.Injectors with { Resistance = V(ohms) },
            Ballast = work,
            BallastResistance = ballast > 0 ? V(ballast) : null,
        });
        var current = ledger.Figure("driver-current")!;

        Assert.Contains(words, current.Remark, StringComparison.Ordinal);
        Assert.Equal(weight, current.Weight);
        Assert.Equal(driver == InjectorDriver.Saturated && 14 / limit > ohms, ledger.Figure("ballast-need") is not null);
    }

    [Fact]
    public void Work_MorePressure_MoreFlowAndLessDuty()
    {
        var duties = new[] { 2.0, 2.5, 3, 3.5, 4 }.Select(bar => Value(FuelWorksheet.Work(s_usual with { Line = s_usual.Line with { Pressure = V(bar * 1e5) } }), "injector-duty")).ToList();

        Assert.Equal(duties.OrderDescending(), duties);
        Assert.Equal(duties[0] / duties[4], Math.Sqrt(2), 9);
    }

    [Fact]
    public void Work_TwiceThePowerOnTwiceTheInjectors_SameDuty()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Power = V(154000), Injectors = s_usual.Injectors with { Count = V(8) } });

        Assert.Equal(Value(FuelWorksheet.Work(s_usual), "injector-duty"), Value(ledger, "injector-duty"), 9);
    }

    [Fact]
    public void Work_PumpMeasuredAtLessThanTheRail_IsAGap()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Line = s_usual.Line with { PumpFlowPressure = V(1e5) } });

        Assert.Null(ledger.Figure("pump-flow"));
        Assert.Contains("every pump gives less", Assert.Single(ledger.Gaps).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Work_RegulatedAtTheTank_NothingReturnsAndIdleIsTrimmed()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Line = s_usual.Line with { AtTank = true, Pressure = V(3e5) } });

        Assert.Null(ledger.Figure("return-flow"));
        Assert.Equal((Math.Sqrt(3.65 / 3) - 1) * 100, Value(ledger, "idle-excess"), 9);
        Assert.Contains(Rows(ledger, "tuning"), row => row.StartsWith("Idle and part load", StringComparison.Ordinal));
    }

    [Fact]
    public void Work_MadeToBeRegulatedAtTheTank_NeedsNoTrimAndKeepsItsRail()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Line = s_usual.Line with { AtTank = true, MadeForTank = true, Pressure = V(3.5e5) } });

        Assert.Null(ledger.Figure("return-flow"));
        Assert.Null(ledger.Figure("idle-excess"));
        Assert.DoesNotContain(ledger.Notes, note => note.Contains("come off", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("lobes", "they agree")]
    [InlineData("any", "set the ECU to this pattern")]
    [InlineData("wheel", "will not start")]
    public void Work_TriggerOfEcuAndEngine_SaysWhetherTheyAgree(string wanted, string verdict)
    {
        var ledger = FuelWorksheet.Work(s_usual with { Ecu = s_usual.Ecu with { Trigger = new FuelWord(wanted, wanted, "ecu x") } });

        Assert.Contains(verdict, Rows(ledger, "ignition")[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Work_EcuOfAnotherEngine_SaysWhatToTuneAndWhy()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Family = "orrel", Injectors = s_usual.Injectors with { Flow = V(235 * CcPerMinute), FlowPressure = V(2.8e5) } });

        Assert.Equal(["Fuel map", "Ignition map", "Injector constant"], ledger.Tables.Single(table => table.Id == "tuning").Rows.Select(row => row[0].Text));
        Assert.Contains("by 0.81", Rows(ledger, "tuning")[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Work_FewerDriversThanInjectors_EachCarriesSeveral()
    {
        var ledger = FuelWorksheet.Work(s_usual with { Ecu = s_usual.Ecu with { Channels = V(2) } });

        Assert.Equal(2 * 14 / 9.2, Value(ledger, "driver-current"), 9);
        Assert.Equal(FigureWeight.Bad, ledger.Figure("driver-current")!.Weight);
    }

    private static FuelValue V(double si) => new(si, new FigureInput("Given", si, "", "test"));

    private static double Value(Ledger ledger, string id) => ledger.Figure(id)!.Value;

    private static List<string> Rows(Ledger ledger, string table) => [.. ledger.Tables.Single(one => one.Id == table).Rows.Select(row => string.Join(" | ", row.Select(cell => cell.Text)))];
}
