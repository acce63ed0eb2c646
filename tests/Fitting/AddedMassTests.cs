using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Tests.Rules;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Fitting;

/// <summary>What comes to the engine where the car had nothing weighs all of its mass; what takes the place of something is not counted, since nobody weighed that.</summary>
public sealed class AddedMassTests
{
    private static readonly KnowledgeBase s_base = new MemoryBase
    {
        ["kb.yaml"] = "title: Masses\nas-of: 2026-03-01\n",
        ["vocabulary.yaml"] = """
            facts:
              chassis:
                kerb: {title: Kerb mass, type: number, unit: kg, means: kerb-mass}
                front: {title: Share in front, type: number, unit: "%", means: front-share}
                wheelbase: {title: Wheelbase, type: number, unit: mm, means: wheelbase}
                engine: {title: Engine, type: number, unit: kg, means: engine-mass}
                place: {title: Engine behind the axle, type: number, unit: mm, means: engine-place}
                box: {title: Original gearbox, type: reference, to: gearbox, means: original-gearbox}
                box-place: {title: Gearbox behind the axle, type: number, unit: mm, means: gearbox-place}
              donor:
                engine: {title: Engine, type: number, unit: kg, means: engine-mass}

            """,
        ["positions.yaml"] = "systems: {drive: {title: Drive}}\npositions: {plate: {system: drive, title: Plate}, mount: {system: drive, title: Mount}}\n",
        ["chassis/car.yaml"] = "title: Car\nyears: {from: 1990, to: 1992}\nfacts: {kerb: 800, front: 60, wheelbase: 2400, engine: 100, place: -240, box: five, box-place: -100}\n",
        ["engines/motor.yaml"] = "title: Motor\nyears: {from: 1996, to: 1998}\nfacts: {engine: 110}\n",
        ["gearboxes/five.yaml"] = "title: Five\nmass: 30\nratios: {first: 3.5, final: 4}\n",
        ["parts/plate.yaml"] = "title: Adapter plate\nmass: 2.4\naddition: true\n",
        ["parts/unweighed.yaml"] = "title: Plate that nobody weighed\naddition: true\n",
        ["parts/bracket.yaml"] = "title: Bracket\nmass: 1.6\n",
        ["rules/drive/plate.yaml"] = "title: Plate\nthen: {answers: {plate: {source: new, treatment: as-is, part: plate, also: [bracket]}}}\n",
    }.Bind();

    /// <summary>By hand: 800 + 10 + 2.4 kg; of the change 10 % of the wheelbase ahead of the axle, so 110 % of it in front.</summary>
    [Theory]
    [InlineData("plate", "new", 812.4)]
    [InlineData("bracket", "new", 810)]
    [InlineData("unweighed", "new", 810)]
    [InlineData("plate", "none", 810)]
    [InlineData(null, "chassis", 810)]
    public void Assemble_WhatTheCarHadNothingInThePlaceOf_IsAdded(string? part, string source, double mass)
    {
        var answer = new Answer("plate", source, "as-is", part, [], [], "", [], null, default);
        var ledger = Load(position => position == "plate" ? answer : null);

        Assert.Equal(mass, ledger.Figure("mass")!.Value, 9);
        Assert.Equal(480 + ((mass - 800) * 1.1), ledger.Figure("front")!.Value, 9);
        Assert.Equal(mass > 812, ledger.Tables.Single(table => table.Id == "masses").Rows.Any(row => row[0].Text == "Adapter plate"));
    }

    /// <summary>A position that brings nothing of the kind is not asked for, so that a stated mass is not held against every answer there.</summary>
    [Fact]
    public void Assemble_PositionThatBringsNoAddition_IsNotAskedFor()
    {
        var asked = new HashSet<string>(StringComparer.Ordinal);
        Load(position =>
        {
            asked.Add(position);
            return null;
        });

        Assert.Equal(["plate"], asked);
    }

    private static Ledger Load(Func<string, Answer?> at) =>
        new LedgerAssembly(s_base).Assemble(new LedgerCase(s_base.Chassis["car"], s_base.Donors["motor"], s_base.Gearboxes["five"], null, at), "load")!;
}
