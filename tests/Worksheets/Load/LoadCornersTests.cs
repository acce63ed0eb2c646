using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Load;

namespace Swapwright.Tests.Worksheets.Load;

/// <summary>What is only on one side: equipment that comes or goes, a limit that nobody states, a joint of which one half is known.</summary>
public sealed class LoadCornersTests
{
    private static LoadInput Car => new()
    {
        Asked = [LoadWorksheet.Masses],
        KerbMass = Of(850),
        FrontShare = Of(0.6),
        Wheelbase = Of(2.5),
        Changes = [new MassChange("engine", "Engine", Of(100), Of(100), Of(0)), new MassChange("gearbox", "Gearbox", Of(30), Of(30), Of(0))],
    };

    /// <summary>20 kg over the rear axle come onto it whole; 20 kg left off over the front axle leave it whole.</summary>
    [Fact]
    public void Work_EquipmentThatComesOrGoes_CountsWhereItLies()
    {
        var more = LoadWorksheet.Work(Car with { Changes = [.. Car.Changes, new MassChange("tank", "Tank", null, Of(20), Of(2.5))] });
        var less = LoadWorksheet.Work(Car with { Changes = [.. Car.Changes, new MassChange("air", "Air conditioning", Of(20), null, Of(0))] });

        Assert.Equal((510d, 360d, 870d), Axles(more));
        Assert.Equal((490d, 340d, 830d), Axles(less));
        Assert.Equal(["Engine", "Gearbox", "Tank"], Names(more).SkipLast(3));
        Assert.Equal((null, 20d, 20d), (Row(more, "Tank")[1].Value, Row(more, "Tank")[2].Value, Row(more, "Tank")[3].Value));
        Assert.Equal((20d, null, -20d), (Row(less, "Air conditioning")[1].Value, Row(less, "Air conditioning")[2].Value, Row(less, "Air conditioning")[3].Value));
    }

    /// <summary>What is there neither before nor after, or lies nobody knows where and weighs the same, moves nothing.</summary>
    [Fact]
    public void Work_EquipmentThatIsNowhere_MovesNothing()
    {
        var ledger = LoadWorksheet.Work(Car with { Changes = [.. Car.Changes, new MassChange("none", "Nothing", null, null, null), new MassChange("same", "Same", Of(20), Of(20), null)] });

        Assert.Equal((510d, 340d, 850d), Axles(ledger));
        Assert.DoesNotContain("Nothing", Names(ledger));
    }

    [Theory]
    [InlineData(null, "60.0 % before")]
    [InlineData(600.0, "60.0 % before; 90 kg are left in front for people and luggage")]
    public void Work_ShareInFront_SaysWhatIsLeftWhereALimitIsStated(double? permitted, string remark) =>
        Assert.Equal(remark, LoadWorksheet.Work(Car with { PermittedFront = permitted is { } most ? Of(most) : null }).Figure("front-share")!.Remark);

    /// <summary>T = n μ F (D + d) ∕ 4: two plates, four faces, carry twice as much as one. By hand: 2 × 0.3 × 4000 × 0.32 ∕ 4 = 192 N m.</summary>
    [Theory]
    [InlineData(null, 192, "one plate, two faces")]
    [InlineData(2.0, 192, "chassis one")]
    [InlineData(4.0, 384, "chassis one")]
    public void Work_FrictionFaces_CarryInProportion(double? faces, double torque, string origin)
    {
        var figure = Clutch(faces).Figure("clutch-torque")!;

        Assert.Equal(torque, figure.Value, 9);
        Assert.Equal(origin, figure.From[0].Origin);
    }

    [Fact]
    public void Work_ClutchWithoutAFace_IsAGap() => Assert.Equal(["Clutch torque"], Clutch(0).Gaps.Select(gap => gap.About));

    [Fact]
    public void Work_Joints_SayWhetherTheyFit()
    {
        var ledger = LoadWorksheet.Work(new LoadInput
        {
            Joints = [new("Spline", "22 teeth", "22 teeth", true), new("Flange", "four bolts", "six bolts", false), new("Bell", "", "long", null), new("Crank", "", "", null)],
        });

        Assert.Equal([("Spline", "fits"), ("Flange", "does not fit"), ("Bell", "not known")], Assert.Single(ledger.Tables).Rows.Select(row => (row[0].Text, row[3].Text)));
    }

    [Fact]
    public void Work_JointsOfWhichNothingIsKnown_AreNoTable() => Assert.Empty(LoadWorksheet.Work(new LoadInput { Joints = [new("Crank", "", "", null)] }).Tables);

    /// <summary>The sump hangs 150 mm below an axis 300 mm high: 150 mm are left, whatever the car had.</summary>
    [Theory]
    [InlineData(null, "", FigureWeight.Good)]
    [InlineData(0.14, "the car's own 140 mm stay", FigureWeight.Good)]
    [InlineData(0.17, "20 mm less than the car had", FigureWeight.Caution)]
    public void Work_GroundBelowTheSump_IsHeldAgainstTheCarsOwn(double? before, string remark, FigureWeight weight)
    {
        var figure = LoadWorksheet.Work(new LoadInput { Asked = [LoadWorksheet.Ground], AxisHeight = Of(0.3), SumpDepth = Of(0.15), GroundClearance = before is { } own ? Of(own) : null }).Figure("ground")!;

        Assert.Equal((remark, weight, before is null ? 2 : 3), (figure.Remark, figure.Weight, figure.From.Length));
        Assert.Equal(150, figure.Value, 9);
    }

    [Fact]
    public void Work_SumpTooLow_IsBadWhateverTheCarHad() =>
        Assert.Equal(FigureWeight.Bad, LoadWorksheet.Work(new LoadInput { Asked = [LoadWorksheet.Ground], AxisHeight = Of(0.2), SumpDepth = Of(0.15) }).Figure("ground")!.Weight);

    /// <summary>50 kg of engine lie 0.25 m and 30 kg of gearbox 0.65 m behind the one mount, the other at 0.5 m: it carries (12.5 + 19.5) ∕ 0.5 = 64 kg, 628 N.</summary>
    [Theory]
    [InlineData(null, FigureWeight.Plain, "64 kg")]
    [InlineData(600.0, FigureWeight.Bad, "64 kg: more than the 600 N that are allowed")]
    [InlineData(700.0, FigureWeight.Good, "64 kg, within the 700 N that are allowed")]
    public void Work_Mount_IsHeldAgainstItsLimit(double? limit, FigureWeight weight, string remark)
    {
        var stated = limit is { } most ? Of(most) : null;
        var ledger = LoadWorksheet.Work(Car with { Asked = [LoadWorksheet.Mounts], Mounts = new MountInput(Of(0), Of(0.5), Of(0.25), Of(0.45), Of(0.2), stated, stated), Changes = [Change("engine", 50), Change("gearbox", 30)] });
        var figure = ledger.Figure("gearbox-mount")!;

        Assert.Equal((weight, remark), (figure.Weight, figure.Remark));
        Assert.Equal(64 * 9.80665, figure.Value, 9);
    }

    /// <summary>
    /// A plate of 20 mm sets the gearbox back: its 30 kg lie 0.45 + 0.02 + 0.2 = 0.67 m behind the one mount, and the mount that it brings 0.45 + 0.02 + 0.13 = 0.6 m,
    /// wherever the vehicle had its own: that carries (50 × 0.25 + 30 × 0.67) ∕ 0.6 = 54.33 kg.
    /// </summary>
    [Fact]
    public void Work_GearboxBehindAPlateOnItsOwnMount_TakesTheMountAlong()
    {
        MountInput car = new(Of(0), Of(0.5), Of(0.25), Of(0.45), Of(0.2), null, null);
        double Carried(MountInput mounts) => LoadWorksheet.Work(Car with { Asked = [LoadWorksheet.Mounts], Mounts = mounts, Changes = [Change("engine", 50), Change("gearbox", 30)] }).Figure("gearbox-mount")!.Value;

        Assert.Equal(32.6 / 0.6 * 9.80665, Carried(car with { Plate = Of(0.02), GearboxReach = Of(0.13) }), 9);
        Assert.Equal(32.6 / 0.6 * 9.80665, Carried(car with { GearboxPlace = null, Plate = Of(0.02), GearboxReach = Of(0.13) }), 9);
        Assert.Equal(32.6 / 0.5 * 9.80665, Carried(car with { Plate = Of(0.02) }), 9);
    }

    private static MassChange Change(string id, double mass) => new(id, id, Of(mass), Of(mass), Of(0));

    private static Ledger Clutch(double? faces) => LoadWorksheet.Work(new LoadInput
    {
        Asked = [LoadWorksheet.Clutch],
        Torque = Of(150),
        Clutch = new ClutchInput(Of(4000), Of(0.19), Of(0.13), Of(0.3), faces is { } count ? Of(count) : null),
    });

    private static (double Front, double Rear, double Mass) Axles(Ledger ledger) => (Math.Round(ledger.Value("front"), 9), Math.Round(ledger.Value("rear"), 9), Math.Round(ledger.Value("mass"), 9));

    private static IEnumerable<string> Names(Ledger ledger) => Assert.Single(ledger.Tables).Rows.Select(row => row[0].Text);

    private static System.Collections.Immutable.ImmutableArray<LedgerCell> Row(Ledger ledger, string name) => Assert.Single(ledger.Tables).Rows.Single(row => row[0].Text == name);

    private static Given Of(double value) => new(value, new FigureInput("value", value, "", "chassis one"));
}
