using Swapwright.Knowledge;
using Swapwright.Fitting;
using Swapwright.Tests.Rules;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Tests.Fitting;

/// <summary>Which pulleys a belt of the combination runs on.</summary>
public class BeltAssemblyTests
{
    private static readonly KnowledgeBase Base = new MemoryBase
    {
        ["kb.yaml"] = "title: Belts\nas-of: 2026-03-01\nlimits: {belt: {crank-wrap: 100, alternator-wrap: 90}}\n",
        ["vocabulary.yaml"] = "{}\n",
        ["positions.yaml"] = """
            systems: {charging: {title: Charging}}
            positions:
              alternator: {system: charging, title: Alternator}
              pump: {system: charging, title: Steering pump}

            """,
        ["chassis/car.yaml"] = """
            title: Car
            years: {from: 1990, to: 1992}
            accessories:
              alternator: {title: Car alternator, pulley: {diameter: 55, ribs: 4, plane: 2, dx: 5, dy: -3}}

            """,
        ["engines/motor.yaml"] = """
            title: Motor
            years: {from: 1996, to: 1998}
            belt-drives:
              main:
                title: Main belt
                profile: PK
                stations:
                  - {id: crank, x: 0, y: 0, plane: -40, side: grooved, diameter: 140, ribs: 6, role: crank}
                  - {id: alternator, title: Alternator, position: alternator, x: 220, y: 160, plane: -40, side: grooved, diameter: 60, ribs: 5, role: alternator}
                  - {id: pump, position: pump, x: -60, y: 230, plane: -40, side: grooved, diameter: 120, ribs: 6, role: other}
                adjuster: {station: alternator, kind: slide, direction: [0.8, 0.6], from: -15, to: 15}
              second:
                profile: PK
                stations:
                  - {id: crank, x: 0, y: 0, plane: -60, side: grooved, diameter: 120, ribs: 4, role: crank}
                  - {id: roller, x: 100, y: 60, plane: -60, side: back, diameter: 70, role: idler}
                  - {id: pump, position: pump, x: -200, y: 120, plane: -60, side: grooved, diameter: 130, ribs: 4, role: other}
                adjuster: {station: pump, kind: swing, pivot: [-150, 100], from: -5, to: 5}

            """,
        ["parts/adapter.yaml"] = "title: Adapter pulley\npulley: {diameter: 70, ribs: 3, plane: -1, dx: 10, dy: 4}\n",
        ["parts/bolt.yaml"] = "title: Bolt\n",
        ["parts/belt-5.yaml"] = "title: Five-rib belts\nbelt: {profile: PK, ribs: [4, 5], lengths: [1120, 1130, 1140, 1150, 1160]}\n",
        ["parts/belt-v.yaml"] = "title: Another profile\nbelt: {profile: PL, ribs: [5], lengths: [1140]}\n",
    }.Bind();

    [Fact]
    public void Assemble_DonorsAccessory_KeepsTheStationAsWritten() =>
        Assert.Equal(new Pulley("alternator", "Alternator", StationRole.Alternator, 220, 160, 60, 5, -40, BeltSide.Grooved), Alternator(Answer("alternator", "donor")));

    [Fact]
    public void Assemble_ChassisAccessory_ReplacesTheDonorsPulley() =>
        Assert.Equal(new Pulley("alternator", "Car alternator", StationRole.Alternator, 225, 157, 55, 4, -38, BeltSide.Grooved), Alternator(Answer("alternator", "chassis")));

    [Fact]
    public void Assemble_PartWithAPulley_WinsOverTheChassisAccessory()
    {
        var wanted = new Pulley("alternator", "Adapter pulley", StationRole.Alternator, 230, 164, 70, 3, -41, BeltSide.Grooved);
        Assert.Equal(wanted, Alternator(Answer("alternator", "chassis", part: "adapter")));
        Assert.Equal(wanted, Alternator(Answer("alternator", "chassis", part: "bolt", also: "adapter")));
        Assert.Equal(wanted, Alternator(Answer("alternator", "donor", also: "adapter")));
    }

    [Fact]
    public void Assemble_PartWithoutAPulley_ChangesNothing() =>
        Assert.Equal(60, Alternator(Answer("alternator", "donor", part: "bolt"))!.DiameterMm);

    [Fact]
    public void Assemble_ChassisWithoutThatAccessory_KeepsTheStationAsWritten() =>
        Assert.Equal(120, Belt("main", Answer("alternator", "donor"), Answer("pump", "chassis"))!.Loop.Pulleys.Single(pulley => pulley.Id == "pump").DiameterMm);

    [Theory]
    [InlineData("none", "as-is")]
    [InlineData("donor", "blank")]
    public void Assemble_LeftOff_LeavesThePulleyOut(string source, string treatment)
    {
        var belt = Belt("main", Answer("alternator", "donor"), Answer("pump", source, treatment));
        Assert.Equal(["crank", "alternator"], belt!.Loop.Pulleys.Select(pulley => pulley.Id));
    }

    [Fact]
    public void Assemble_NoAnswer_LeavesThePulleyOut() =>
        Assert.Equal(["crank", "alternator"], Belt("main", Answer("alternator", "donor"))!.Loop.Pulleys.Select(pulley => pulley.Id));

    [Fact]
    public void Assemble_NothingDriven_LeavesTheBeltOut()
    {
        Assert.Null(Belt("second", Answer("alternator", "donor"), Answer("pump", "none")));
        Assert.Null(Belt("main", Answer("alternator", "none"), Answer("pump", "none")));
        Assert.NotNull(Belt("second", Answer("alternator", "none"), Answer("pump", "donor")));
    }

    [Fact]
    public void Assemble_AdjusterStationLeftOut_HasFixedCentres() =>
        Assert.Null(Belt("main", Answer("alternator", "none"), Answer("pump", "donor"))!.Loop.Adjuster);

    [Fact]
    public void Assemble_SwingAdjuster_TurnsDegreesIntoRadians()
    {
        var swing = Assert.IsType<SwingAdjuster>(Belt("second", Answer("pump", "donor"))!.Loop.Adjuster);
        Assert.Equal((-150.0, 100.0), (swing.PivotX, swing.PivotY));
        Assert.Equal(-5 * Math.PI / 180, swing.FromRad, 12);
        Assert.Equal(5 * Math.PI / 180, swing.ToRad, 12);
    }

    [Fact]
    public void Assemble_StockedBelts_AreThoseOfTheProfile()
    {
        var belt = Belt("main", Answer("alternator", "donor"), Answer("pump", "donor"))!;
        Assert.Equal(5, belt.Result.Ribs);
        Assert.True(belt.Result.Recommended is null or { Belt.PartId: "belt-5" });
        Assert.All(belt.Result.Pulleys.Where(pulley => pulley.StationId == "crank"), pulley => Assert.Equal(100 * Math.PI / 180, pulley.WrapLimitRad, 9));
    }

    private static Pulley? Alternator(Answer answer) => Belt("main", answer, Answer("pump", "donor"))!.Loop.Pulleys.SingleOrDefault(pulley => pulley.Id == "alternator");

    private static FittedBelt? Belt(string id, params Answer[] answers) =>
        new BeltAssembly(Base).Assemble(Base.Donors["motor"], Base.Chassis["car"], position => answers.FirstOrDefault(answer => answer.Position == position))
            .SingleOrDefault(belt => belt.Loop.Id == id);

    private static Answer Answer(string position, string source, string treatment = "as-is", string? part = null, string? also = null) =>
        new(position, source, treatment, part, also is null ? [] : [also], [], "", [], null, default);
}
