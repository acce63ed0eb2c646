using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Tests.Rules;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Tests.Fitting;

/// <summary>Two loops of one engine, one with an idler on the back, whose pulleys answers exchange.</summary>
public sealed class BeltExchangeTests
{
    // The first loop is an example of Budynas and Nisbett's solutions manual to Shigley, chapter 17: D 18 in, d 6 in, C 96 in, 230.074 in; here at a quarter of its size.
    // The second is the test loop of BeltTransmission.jl with its idler on the back, 200 mm to the right of the first so that they do not meet.
    private static readonly KnowledgeBase Base = new MemoryBase
    {
        ["kb.yaml"] = "title: Belts\nas-of: 2026-03-01\nlimits: {belt: {rib-mass: 25, tension-new: 100, trim-ribs: 0}}\n",
        ["vocabulary.yaml"] = "{}\n",
        ["positions.yaml"] = """
            systems: {charging: {title: Charging}}
            positions:
              crank-pulley: {system: charging, title: Crank pulley}
              alternator: {system: charging, title: Alternator}
              pump: {system: charging, title: Pump}

            """,
        ["chassis/car.yaml"] = "title: Car\nyears: {from: 1990, to: 1992}\n",
        ["engines/motor.yaml"] = """
            title: Motor
            years: {from: 1996, to: 1998}
            belt-drives:
              open:
                stations:
                  - {id: crank, title: Crank pulley, position: crank-pulley, x: 0, y: 0, side: grooved, diameter: 114.3, ribs: 6, role: crank}
                  - {id: alternator, position: alternator, x: 609.6, y: 0, side: grooved, diameter: 38.1, ribs: 6, role: alternator}
                adjuster: {station: alternator, kind: slide, direction: [1, 0], from: -10, to: 10}
              back:
                stations:
                  - {id: one, x: 100, y: 100, side: grooved, diameter: 20, ribs: 6, role: other}
                  - {id: two, x: -100, y: 100, side: grooved, diameter: 20, ribs: 6, role: other}
                  - {id: three, x: -100, y: -100, side: grooved, diameter: 86, ribs: 6, role: crank}
                  - {id: four, position: pump, x: 100, y: -100, side: grooved, diameter: 28, ribs: 6, role: other, when-left-out: skip}
                  - {id: idler, x: 80, y: -200, side: back, diameter: 28, role: idler}
                adjuster: {station: one, kind: spring, direction: [1, 0], from: -8, to: 8, nominal: 0}

            """,
        ["parts/small-crank.yaml"] = "title: Underdrive crank pulley\npulley: {diameter: 100, ribs: 5, plane: -2}\n",
        ["parts/belts.yaml"] = "title: Belts\nbelt: {profile: PK, ribs: [5, 6], rib-mass: 16, lengths: [1215, 1217.5, 1440, 1460]}\n",
    }.Bind();

    /// <summary>230.074 in: Budynas, solutions manual to Shigley's Mechanical Engineering Design, chapter 17.</summary>
    [Fact]
    public void Assemble_OpenLoop_HasThePublishedLength()
    {
        var open = Belt("open");

        Assert.Equal(230.074, 4 * open.Result.Nominal!.LengthMm / 25.4, 3);
        Assert.Equal("6PK1460", open.Result.Designation);
    }

    /// <summary>
    /// BeltTransmission.jl publishes 1231.345 mm for this loop with radii 10, 10, 43, 14 and 14 mm in the order of its source; that counts one arc twice (14.0504 mm).
    /// 1217.2947 mm is our own computation, whose tangency was verified apart from this code.
    /// </summary>
    [Fact]
    public void Assemble_IdlerOnTheBack_HasTheVerifiedLength() => Assert.Equal(1231.345 - 14.0504, Belt("back").Result.Nominal!.LengthMm, 2);

    [Fact]
    public void Assemble_SpringOfTheKnowledge_IsASpring()
    {
        var back = Belt("back");

        Assert.Equal(new SpringAdjuster(new SlideAdjuster("one", 1, 0, -8, 8), 0), back.Loop.Adjuster);
        Assert.Null(back.Result.Tone);
    }

    [Fact]
    public void Assemble_ExchangedCrankPulley_ShortensTheLoopAndNarrowsTheBelt()
    {
        var open = Belt("open", Answer("crank-pulley", "new", "small-crank"));
        var crank = open.Loop.Pulleys[0];

        Assert.Equal(("Underdrive crank pulley", StationRole.Crank, 100.0, 5, -2.0), (crank.Title, crank.Role, crank.DiameterMm, crank.Ribs, crank.PlaneMm));
        Assert.Equal("5PK1440", open.Result.Designation);
        Assert.Equal(new RibMismatch("alternator", 6, 5), Assert.Single(open.Result.Problems.OfType<RibMismatch>()));

        // The open belt's formula of the same chapter: L = sqrt(4C² - (D-d)²) + (D θD + d θd)/2.
        var lean = 2 * Math.Asin((100 - 38.1) / (2 * 609.6));
        Assert.Equal(Math.Sqrt((4 * 609.6 * 609.6) - Math.Pow(100 - 38.1, 2)) + (((100 * (Math.PI + lean)) + (38.1 * (Math.PI - lean))) / 2), open.Result.Nominal!.LengthMm, 9);
    }

    [Fact]
    public void Assemble_AccessoryThatBringsNoPulley_LeavesItsStationOut()
    {
        var full = Belt("back");
        var without = Belt("back", Answer("pump", "none"));

        Assert.Equal(["one", "two", "three", "idler"], without.Loop.Pulleys.Select(pulley => pulley.Id));
        Assert.NotEqual(full.Result.Nominal!.LengthMm, without.Result.Nominal!.LengthMm, 0);
    }

    [Fact]
    public void Assemble_MassOfThePart_DecidesTheNote()
    {
        var tone = Belt("open").Result.Tone!;

        Assert.Equal(BeltTone.Frequency(tone.SpanMm, 100, 0.016), tone.New.MiddleHz, 6);
    }

    private static FittedBelt Belt(string id, params Answer[] answers)
    {
        Answer[] all = [.. answers, .. new[] { "crank-pulley", "alternator", "pump" }.Where(position => answers.All(answer => answer.Position != position)).Select(position => Answer(position, "donor"))];
        return new BeltAssembly(Base).Assemble(Base.Donors.All[0], Base.Chassis.All[0], position => all.First(answer => answer.Position == position)).Single(belt => belt.Loop.Id == id);
    }

    private static Answer Answer(string position, string source, string? part = null) =>
        new(position, source, "as-is", part, [], [], "", [], null, default);
}
