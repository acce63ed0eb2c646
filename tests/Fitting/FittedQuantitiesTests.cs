using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Tests.Rules;
using Swapwright.Tests.Worksheets;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Fitting;

/// <summary>What the load and fuel worksheets are told of things that answers put in place.</summary>
public sealed class FittedQuantitiesTests
{
    private static readonly KnowledgeBase Base = new MemoryBase
    {
        ["kb.yaml"] = "title: Shafts\nas-of: 2026-03-01\n",
        ["vocabulary.yaml"] = """
            facts:
              chassis:
                shaft-rating: {title: Rating of a drive shaft, type: number, unit: N·m, means: shaft-torque, at: shafts}
                joint-rating: {title: Rating of an outer joint, type: number, unit: N·m, means: shaft-torque, at: joints}
                room: {title: Room, type: number, unit: mm, means: bonnet-space}
                bay: {title: Bay, type: number, unit: mm, means: bay-length, optional: true}
              donor:
                torque: {title: Torque, type: number, unit: N·m, means: engine-torque}
                power: {title: Power, type: number, unit: kW, means: engine-power}
                rail: {title: Rail, type: number, unit: bar, means: rail-pressure}
                height: {title: Height, type: number, unit: mm, means: engine-height}
                block: {title: Block, type: number, unit: mm, means: block-length}
                fan: {title: From its fan, type: number, unit: mm, means: fan-length, at: fan}
                throttle: {title: Throttle, type: one-of, values: {cable: Cable, electronic: Motor}, means: throttle-kind}
              part:
                shaft-rating: {title: Rating, type: number, unit: N·m, means: shaft-torque, at: shafts, optional: true}
                joint-rating: {title: Rating, type: number, unit: N·m, means: shaft-torque, at: joints, optional: true}
                raise: {title: Raises, type: number, unit: mm, means: bonnet-raise, at: lid, optional: true}
                flow: {title: Flow, type: number, unit: L/h, means: pump-flow, at: pump, optional: true}
                at-pressure: {title: At, type: number, unit: bar, means: pump-flow-pressure, at: pump, optional: true}
                drives: {title: Drives a throttle, type: flag, means: throttle-drive, at: pedal, optional: true}
              ecu:
                drives: {title: Drives a throttle, type: flag, means: throttle-drive, optional: true}
                driver: {title: Driver, type: one-of, values: {saturated: Saturated, peak-hold: Limits}, means: injector-driver, optional: true}

            """,
        ["positions.yaml"] = """
            systems: {drive: {title: Drive}}
            positions:
              shafts: {system: drive, title: Shafts}
              joints: {system: drive, title: Joints}
              lid: {system: drive, title: Lid}
              fan: {system: drive, title: Fan}
              pump: {system: drive, title: Pump}
              pedal: {system: drive, title: Pedal}

            """,
        ["chassis/car.yaml"] = "title: Car\nyears: {from: 1990, to: 1992}\nfacts: {shaft-rating: 1500, joint-rating: 1100, room: 560, bay: 700}\n",
        ["engines/motor.yaml"] = "title: Motor\nyears: {from: 1996, to: 1998}\nfacts: {torque: 150, power: 77, rail: 3, height: 570, block: 500, fan: 640, throttle: electronic}\n",
        ["gearboxes/five.yaml"] = "title: Five\nratios: {first: 3.5, final: 4}\n",
        ["ecus/plain.yaml"] = "title: Plain ECU\nfacts: {driver: saturated}\n",
        ["ecus/rich.yaml"] = "title: Rich ECU\nfacts: {driver: saturated, drives: true}\n",
        ["parts/strong-shafts.yaml"] = "title: Shafts\nfacts: {shaft-rating: 2000}\n",
        ["parts/strong-joints.yaml"] = "title: Joints\nfacts: {joint-rating: 1700}\n",
        ["parts/spacers.yaml"] = "title: Spacers\nfacts: {raise: 25}\n",
        ["parts/pump.yaml"] = "title: Pump\nfacts: {flow: 55, at-pressure: 3.5}\npump-curve: [{pressure: 2, flow: 70}, {pressure: 4, flow: 50}]\n",
        ["parts/small-pump.yaml"] = "title: Small pump\nfacts: {flow: 60, at-pressure: 2.5}\n",
        ["parts/controller.yaml"] = "title: Controller\nfacts: {drives: true}\n",
    }.Bind();

    /// <summary>A chain is as strong as its weakest link, whichever position it is fitted at.</summary>
    [Theory]
    [InlineData(null, null, 1100, "chassis car")]
    [InlineData("strong-shafts", null, 1100, "chassis car")]
    [InlineData(null, "strong-joints", 1500, "chassis car")]
    [InlineData("strong-shafts", "strong-joints", 1700, "part strong-joints")]
    public void ShaftTorque_RatedAtTwoPositions_IsTheLower(string? shafts, string? joints, double rating, string holder)
    {
        var figure = Load(Fit("shafts", shafts), Fit("joints", joints)).Figure("shaft-torque")!;
        Assert.Equal(150 * 3.5 * 4 / 2, figure.Value, 6);
        var input = Assert.Single(figure.From, input => input.Unit == "N m" && input.Value.Equals(rating));
        Assert.Equal(holder, input.Origin);
        Assert.Contains(FormattableString.Invariant($"{rating:#,0} N m"), figure.Remark, StringComparison.Ordinal);
    }

    /// <summary>A joint that is left off is not the weakest link.</summary>
    [Fact]
    public void ShaftTorque_OnePositionLeftOff_IsTheOther() =>
        Assert.Contains("1,500 N m", Load(Fit("shafts", null), Answer("joints", "none")).Figure("shaft-torque")!.Remark, StringComparison.Ordinal);

    [Fact]
    public void Bonnet_LidThatIsRaised_HasTheRoomOfTheKit()
    {
        Assert.Equal(-10, Load(Answer("lid", "chassis")).Value("bonnet"), 9);
        Assert.Equal(15, Load(Answer("lid", "chassis", "spacers")).Value("bonnet"), 9);
    }

    [Fact]
    public void Bay_FanOnItsHub_TakesItsRoomOnlyWhereItStays()
    {
        Assert.Equal(60, Load(Answer("fan", "donor")).Value("bay"), 9);
        Assert.Equal(200, Load(Answer("fan", "new")).Value("bay"), 9);
        Assert.Equal(200, Load(Answer("fan", "donor", treatment: "blank")).Value("bay"), 9);
    }

    /// <summary>70 L/h at 2 bar and 50 at 4: 60 at 3. A part that states one pressure only is not believed by another's curve.</summary>
    [Theory]
    [InlineData("pump", 60)]
    [InlineData("small-pump", 57)]
    public void PumpFlow_PartThatIsFitted_GivesItsOwn(string part, double flow) => Assert.Equal(flow, Fuel("plain", Answer("pump", "new", part)).Value("pump-flow"), 6);

    [Theory]
    [InlineData("plain", null, true)]
    [InlineData("rich", null, false)]
    [InlineData("plain", "controller", false)]
    public void Throttle_ElectronicOne_IsAGapWhereNothingWorksIt(string ecu, string? pedal, bool isGap) =>
        Assert.Equal(isGap, Fuel(ecu, Answer("pedal", "donor", pedal)).Gaps.Any(gap => gap.About == "Throttle"));

    private static Ledger Load(params Answer[] answers) => Assemble("load", "plain", answers);

    private static Ledger Fuel(string ecu, params Answer[] answers) => Assemble("fuel", ecu, answers);

    private static Ledger Assemble(string ledger, string ecu, Answer[] answers) => new LedgerAssembly(Base).Assemble(
        new LedgerCase(Base.Chassis["car"], Base.Donors["motor"], Base.Gearboxes["five"], Base.Ecus[ecu], position => answers.FirstOrDefault(answer => answer.Position == position)), ledger)!;

    private static Answer Fit(string position, string? part) => Answer(position, part is null ? "chassis" : "new", part);

    private static Answer Answer(string position, string source, string? part = null, string treatment = "as-is") =>
        new(position, source, treatment, part, [], [], "", [], null, default);
}
