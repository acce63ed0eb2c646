using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Load;

namespace Swapwright.Tests.Worksheets.Load;

public sealed class LoadWorksheetTests
{
    private static LoadInput Input => new()
    {
        Asked = [LoadWorksheet.Masses, LoadWorksheet.Clutch, LoadWorksheet.Shafts, LoadWorksheet.Mounts, LoadWorksheet.Bonnet, LoadWorksheet.Ground, LoadWorksheet.Cooling],
        KerbMass = Of(850),
        FrontShare = Of(0.6),
        Wheelbase = Of(2.4),
        PermittedFront = Of(640),
        PermittedRear = Of(540),
        Changes = [new MassChange("engine", "Engine", Of(105), Of(120), Of(-0.12)), new MassChange("gearbox", "Gearbox", Of(30), Of(36), Of(-0.02))],
        PowerBefore = Of(60000),
        Power = Of(90000),
        Torque = Of(150),
        Clutch = new ClutchInput(Of(4200), Of(0.19), Of(0.13), Of(0.3), null),
        GearboxTorque = Of(165),
        FirstGear = Of(3.5),
        FinalDrive = Of(4),
        ShaftTorque = Of(1200),
        Mounts = new MountInput(Of(0), Of(0.7), Of(0.23), Of(0.45), Of(0.17), Of(1200), Of(1200)),
        BonnetSpace = Of(0.56),
        EngineHeight = Of(0.54),
        AxisHeight = Of(0.325),
        GroundClearance = Of(0.14),
        SumpDepth = Of(0.18),
        RadiatorHeat = Of(95000),
        RadiatorPower = Of(92000),
    };

    [Fact]
    public void Work_EverythingKnown_HasNoGapAndAddsUp()
    {
        var ledger = LoadWorksheet.Work(Input);

        Assert.Empty(ledger.Gaps);
        Assert.Equal(871, Value(ledger, "mass"), 9);
        Assert.Equal(Value(ledger, "mass"), Value(ledger, "front") + Value(ledger, "rear"), 9);
        Assert.Equal(LoadFormulas.Gravity * 156, Value(ledger, "timing-mount") + Value(ledger, "gearbox-mount"), 9);
        Assert.Equal(1050, Value(ledger, "shaft-torque"), 9);
        Assert.Equal(20, Value(ledger, "bonnet"), 9);
        Assert.Equal(145, Value(ledger, "ground"), 9);
    }

    [Fact]
    public void Work_NothingExchanged_LeavesTheAxlesAsTheyWere()
    {
        var ledger = LoadWorksheet.Work(Input with { Changes = [.. Input.Changes.Select(change => change with { After = change.Before })] });

        Assert.Equal(0, Value(ledger, "front-change"), 9);
        Assert.Equal(60, Value(ledger, "front-share"), 9);
    }

    [Fact]
    public void Work_ChangesInAnotherOrder_GiveTheSame() =>
        Assert.Equal(Value(LoadWorksheet.Work(Input), "front"), Value(LoadWorksheet.Work(Input with { Changes = [.. Input.Changes.Reverse()] }), "front"), 9);

    [Fact]
    public void Work_EverythingTwiceAsHeavy_LoadsTwice()
    {
        static Given? Twice(Given? given) => given is null ? null : Of(given.Si * 2);
        var heavy = Input with { KerbMass = Twice(Input.KerbMass), Changes = [.. Input.Changes.Select(change => change with { Before = Twice(change.Before), After = Twice(change.After) })] };

        Assert.Equal(2 * Value(LoadWorksheet.Work(Input), "front"), Value(LoadWorksheet.Work(heavy), "front"), 9);
        Assert.Equal(2 * Value(LoadWorksheet.Work(Input), "timing-mount"), Value(LoadWorksheet.Work(heavy), "timing-mount"), 9);
    }

    [Fact]
    public void Work_EquipmentLeftOffInFront_RelievesTheFrontAxleByMoreThanItWeighs()
    {
        var ledger = LoadWorksheet.Work(Input with { Changes = Input.Changes.Add(new MassChange("air-conditioning", "Air conditioning", Of(15), null, Of(-0.4))) });

        Assert.Equal(-17.5, Value(ledger, "front") - Value(LoadWorksheet.Work(Input), "front"), 9);
    }

    [Theory]
    [InlineData(520, FigureWeight.Bad)]
    [InlineData(560, FigureWeight.Caution)]
    [InlineData(640, FigureWeight.Good)]
    public void Work_PermittedFront_JudgesWhatIsLeft(double permitted, FigureWeight weight) =>
        Assert.Equal(weight, LoadWorksheet.Work(Input with { PermittedFront = Of(permitted) }).Figure("front")!.Weight);

    [Theory]
    [InlineData(150, FigureWeight.Good)]
    [InlineData(190, FigureWeight.Caution)]
    [InlineData(210, FigureWeight.Bad)]
    public void Work_MoreTorque_WantsMoreClutch(double torque, FigureWeight weight) =>
        Assert.Equal(weight, LoadWorksheet.Work(Input with { Torque = Of(torque) }).Figure("clutch-margin")!.Weight);

    [Theory]
    [InlineData(95000, FigureWeight.Good)]
    [InlineData(70000, FigureWeight.Caution)]
    [InlineData(40000, FigureWeight.Bad)]
    public void Work_Radiator_IsHeldAgainstBothEndsOfTheRange(double heat, FigureWeight weight) =>
        Assert.Equal(weight, LoadWorksheet.Work(Input with { RadiatorHeat = Of(heat) }).Figure("heat-most")!.Weight);

    [Fact]
    public void Work_PropellerShaft_TurnsBeforeTheFinalDrive() =>
        Assert.Equal(525, Value(LoadWorksheet.Work(Input with { HasPropellerShaft = true }), "shaft-torque"), 9);

    [Fact]
    public void Work_NothingKnown_SaysWhatIsMissing()
    {
        var ledger = LoadWorksheet.Work(new LoadInput { Asked = Input.Asked, Clutch = new ClutchInput(null, null, null, null, null), Mounts = new MountInput(null, null, null, null, null, null, null) });

        Assert.Empty(ledger.Figures);
        Assert.Equal(["Mass", "Clutch torque", "Torque on the drive shafts", "Load on the mounts", "Room above the engine", "Ground clearance below the sump", "Heat to the coolant"], ledger.Gaps.Select(gap => gap.About));
    }

    [Fact]
    public void Work_ImpossibleNumbers_AreGaps()
    {
        var ledger = LoadWorksheet.Work(Input with { Clutch = Input.Clutch! with { Inner = Of(0.2) }, Mounts = Input.Mounts! with { GearboxPlace = Of(0) }, KerbMass = Of(-1) });

        Assert.Equal(["Mass", "Clutch torque", "Load on the mounts"], ledger.Gaps.Select(gap => gap.About));
        Assert.All(ledger.Figures, figure => Assert.True(double.IsFinite(figure.Value)));
    }

    /// <summary>What cannot be reckoned without a number says which: a mass that nobody weighed, more taken out than there is, a place that nobody measured, an axle's share.</summary>
    [Fact]
    public void Work_OneNumberMissing_SaysWhichAndKeepsTheRest()
    {
        static string Reason(LoadInput input, string about) => LoadWorksheet.Work(input).Gaps.Single(gap => gap.About == about).Reason;
        var (engine, gearbox) = (Input.Changes[0], Input.Changes[1]);

        Assert.Equal("the mass of the original engine is not known", Reason(Input with { Changes = [engine with { Before = null }, gearbox] }, "Mass"));
        Assert.Equal("the mass of the new gearbox is not known", Reason(Input with { Changes = [engine, gearbox with { After = null }] }, "Mass"));
        Assert.Contains("more would be taken out than it weighs", Reason(Input with { Changes = [engine with { Before = Of(2000) }, gearbox] }, "Mass"), StringComparison.Ordinal);
        Assert.Equal("it is not known where the engine lies", Reason(Input with { Changes = [engine with { Place = null }, gearbox] }, "Axle loads"));
        Assert.Equal("the share on the front axle or the wheelbase is not known", Reason(Input with { FrontShare = null }, "Axle loads"));

        // An engine as heavy as the old one changes nothing wherever it lies.
        Assert.Equal(0.6 * 856, Value(LoadWorksheet.Work(Input with { Changes = [engine with { After = engine.Before, Place = null }, gearbox with { Place = Of(0.96) }] }), "front"), 9);
    }

    /// <summary>
    /// 60 kW in 850 kg are 70.6 W/kg. 90 kW in 871 kg are 103.3: 46 % more. 65 kW are 74.6, 6 % more and not worth a word. Without the old
    /// power there is nothing to compare with.
    /// </summary>
    [Theory]
    [InlineData(60000.0, 90000, "71 W/kg before: +46 %; brakes and tyres were made for the old figure", FigureWeight.Caution)]
    [InlineData(60000.0, 65000, "71 W/kg before: +6 %", FigureWeight.Plain)]
    [InlineData(60000.0, 50000, "71 W/kg before: −19 %", FigureWeight.Plain)]
    [InlineData(null, 90000, "", FigureWeight.Plain)]
    public void Work_PowerToMass_IsHeldAgainstTheOldOne(double? before, double power, string remark, FigureWeight weight)
    {
        var figure = LoadWorksheet.Work(Input with { PowerBefore = before is { } was ? Of(was) : null, Power = Of(power) }).Figure("power-to-mass")!;

        Assert.Equal((power / 871, remark, weight), (figure.Value, figure.Remark, figure.Weight));
    }

    [Fact]
    public void Work_NoPermittedLoad_IsToldWithoutAVerdict()
    {
        var figure = LoadWorksheet.Work(Input with { PermittedRear = null, Power = null }).Figure("rear")!;

        Assert.Equal(("340 kg before; no permitted load is stated", FigureWeight.Plain), (figure.Remark, figure.Weight));
    }

    [Fact]
    public void Work_NotAsked_IsEmpty() => Assert.True(LoadWorksheet.Work(new LoadInput()).IsEmpty);

    private static double Value(Ledger ledger, string id) => ledger.Figure(id)!.Value;

    private static Given Of(double value) => new(value, new FigureInput("value", value, "", "chassis one"));
}
