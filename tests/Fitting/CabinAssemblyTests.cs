using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Tests.Rules;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Fitting;

/// <summary>A dash that is elsewhere than the part was written for.</summary>
public class CabinAssemblyTests
{
    private static KnowledgeBase Base(string places) => new MemoryBase
    {
        ["kb.yaml"] = "title: Dash\nas-of: 2026-03-01\nharness-position: loom\n",
        ["vocabulary.yaml"] = """
            signals:
              pulses: {title: Pulses, kind: frequency}
            devices:
              divider: {title: Divider, position: dash, in-cabin: true}

            """,
        ["positions.yaml"] = """
            systems: {electrics: {title: Electrics}}
            positions:
              dash: {system: electrics, title: Dash}
              loom: {system: electrics, title: Loom}

            """,
        ["connectors/row.yaml"] = "title: Row\nrows: [[1, 2, 3]]\n",
        ["connectors/wall.yaml"] = "title: Wall\nrows: [[1, 2, 3]]\n",
        ["chassis/car.yaml"] = $$$"""
            title: Car
            years: {from: 1990, to: 1992}
            {{{places}}}
            body: {connector: wall, location: [0, 0, 500], pins: {3: pulses}}

            """,
        ["engines/motor.yaml"] = """
            title: Motor
            years: {from: 1996, to: 1998}
            harness:
              trunk: [0, 100, 0]
              body: {connector: row, location: [0, 0, 500], pins: {1: pulses}}

            """,
        ["parts/divider.yaml"] = "title: Divider\ndevices: {divider: {connector: row, location: [0, 0, 600], pins: {1: pulses, 2: pulses}, to-cabin: [\"2\"]}}\n",
    }.Bind();

    /// <summary>100 mm from plug to the part's own place, 1,000 mm to the car's: 1.2 times as much and 60 mm.</summary>
    [Theory]
    [InlineData("", 180)]
    [InlineData("places: {divider: [0, 0, 1500]}", 1260)]
    public void Assemble_DeviceThatAPartBrings_StandsWhereTheCarHasRoomForIt(string places, double length)
    {
        var kb = Base(places);
        var answer = new Answer("dash", "new", "as-is", "divider", [], [], "", [], null, default);
        var sheet = new WiringAssembly(kb).Assemble(kb.Donors.Find("motor")!, kb.Chassis.Find("car")!, null, position => position == "dash" ? answer : null, [kb.Parts.Find("divider")!])!;

        Assert.Equal([length, length], sheet.Runs.Where(run => run.Role == "divider").Select(run => run.LengthMm));
        Assert.Equal([("harness body", "1"), ("body", "3")], sheet.Runs.Where(run => run.Role == "divider").Select(run => (run.To.Place, run.To.Cavity)));
    }
}
