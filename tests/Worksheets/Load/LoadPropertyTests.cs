using System.Collections.Immutable;
using Swapwright.Worksheets.Load;

namespace Swapwright.Tests.Worksheets.Load;

/// <summary>What must hold for any car, engine and clutch, tried on ones drawn from a seeded generator.</summary>
public sealed class LoadPropertyTests
{
    private const int Cars = 200;

    /// <summary>Front and rear exchanged, every place counted from the other axle: each axle carries what the other did.</summary>
    [Fact]
    public void Work_MirroredFrontToRear_ExchangesTheAxles()
    {
        foreach (var (input, _) in Inputs(1))
        {
            var wheelbase = input.Wheelbase!.Si;
            var mirrored = LoadWorksheet.Work(input with
            {
                FrontShare = Drawn.Given(1 - input.FrontShare!.Si),
                Changes = [.. input.Changes.Select(change => change with { Place = Drawn.Given(wheelbase - change.Place!.Si), Offset = -change.Offset })],
            });
            var ledger = LoadWorksheet.Work(input);
            Assert.Equal(ledger.Value("front"), mirrored.Value("rear"), 1e-6);
            Assert.Equal(ledger.Value("rear"), mirrored.Value("front"), 1e-6);
        }
    }

    [Fact]
    public void Work_EveryMassScaled_ScalesTheAxles()
    {
        foreach (var (input, random) in Inputs(2))
        {
            var factor = random.Between(0.5, 2);
            var scaled = LoadWorksheet.Work(input with
            {
                KerbMass = Drawn.Given(input.KerbMass!.Si * factor),
                Changes = [.. input.Changes.Select(change => change with { Before = Drawn.Given(change.Before!.Si * factor), After = Drawn.Given(change.After!.Si * factor) })],
            });
            var ledger = LoadWorksheet.Work(input);
            Assert.All(["mass", "front", "rear", "timing-mount", "gearbox-mount"], id => Assert.Equal(ledger.Value(id) * factor, scaled.Value(id), 1e-6));
        }
    }

    [Fact]
    public void Work_ChangesInAnyOrder_GiveTheSameAxles()
    {
        // Engine and gearbox stand first, by what the worksheet asks; equipment follows in any order.
        foreach (var (input, random) in Inputs(3))
        {
            var shuffled = input with { Changes = [.. input.Changes.Take(2), .. input.Changes.Skip(2).OrderBy(_ => random.Next())] };
            Drawn.AreTheSame(LoadWorksheet.Work(input), LoadWorksheet.Work(shuffled));
        }
    }

    [Fact]
    public void Work_Axles_AddUpToTheMass() =>
        Assert.All(Inputs(4).Select(pair => LoadWorksheet.Work(pair.Input)).ToList(), ledger => Assert.Equal(ledger.Value("mass"), ledger.Value("front") + ledger.Value("rear"), 1e-6));

    [Fact]
    public void Work_EngineFurtherBack_UnloadsTheFrontAxle()
    {
        foreach (var (input, random) in Inputs(5))
        {
            var back = LoadWorksheet.Work(input with { Changes = [input.Changes[0] with { Offset = input.Changes[0].Offset + random.Between(0.01, 0.3) }, .. input.Changes.Skip(1)] });
            Assert.True(back.Value("front") < LoadWorksheet.Work(input).Value("front"));
        }
    }

    [Fact]
    public void Work_StrongerSpringLargerFaceMoreFriction_CarryMore()
    {
        foreach (var (input, random) in Inputs(6))
        {
            var more = random.Between(1.01, 1.4);
            double Carries(ClutchInput clutch) => LoadWorksheet.Work(input with { Clutch = clutch }).Value("clutch-torque");
            var clutch = input.Clutch!;
            Assert.Equal(Carries(clutch) * more, Carries(clutch with { Clamp = Drawn.Given(clutch.Clamp!.Si * more) }), 1e-6);
            Assert.Equal(Carries(clutch) * more, Carries(clutch with { Friction = Drawn.Given(clutch.Friction!.Si * more) }), 1e-6);
            Assert.True(Carries(clutch) < Carries(clutch with { Outer = Drawn.Given(clutch.Outer!.Si * more) }));
        }
    }

    [Fact]
    public void Work_TallerEngineDeeperSumpLongerBlock_TakeRoomAndALidGivesIt()
    {
        foreach (var (input, random) in Inputs(7))
        {
            var more = random.Between(0.001, 0.05);
            var ledger = LoadWorksheet.Work(input);
            Assert.Equal(ledger.Value("bonnet") - (more * 1000), LoadWorksheet.Work(input with { EngineHeight = Drawn.Given(input.EngineHeight!.Si + more) }).Value("bonnet"), 1e-6);
            Assert.Equal(ledger.Value("bonnet") + (more * 1000), LoadWorksheet.Work(input with { BonnetRaise = Drawn.Given(more) }).Value("bonnet"), 1e-6);
            Assert.Equal(ledger.Value("ground") - (more * 1000), LoadWorksheet.Work(input with { SumpDepth = Drawn.Given(input.SumpDepth!.Si + more) }).Value("ground"), 1e-6);
            Assert.Equal(ledger.Value("bay") - (more * 1000), LoadWorksheet.Work(input with { BlockLength = Drawn.Given(input.BlockLength!.Si + more) }).Value("bay"), 1e-6);
            Assert.Equal((input.BayLength!.Si - input.BlockLength.Si - more) * 1000, LoadWorksheet.Work(input with { FanLength = Drawn.Given(input.BlockLength.Si + more) }).Value("bay"), 1e-6);
        }
    }

    [Fact]
    public void Work_AnyCar_HasNumbersOnly() => Assert.All(Inputs(8).ToList(), pair => Drawn.HasNumbersOnly(LoadWorksheet.Work(pair.Input)));

    [Fact]
    public void Work_ImpossibleInput_IsAGapAndNoNumber()
    {
        foreach (var (input, _) in Inputs(9).Take(20))
        {
            foreach (var odd in Drawn.Impossible.Select(Drawn.Given))
            {
                ImmutableArray<LoadInput> spoilt =
                [
                    input with { KerbMass = odd }, input with { FrontShare = odd }, input with { Wheelbase = odd }, input with { Power = odd }, input with { Torque = odd },
                    input with { Clutch = input.Clutch! with { Clamp = odd } }, input with { Clutch = input.Clutch with { Inner = odd } }, input with { Clutch = input.Clutch with { Faces = odd } },
                    input with { FirstGear = odd }, input with { FinalDrive = odd }, input with { ShaftTorque = odd }, input with { GearboxTorque = odd },
                    input with { Mounts = input.Mounts! with { GearboxPlace = odd } }, input with { Mounts = input.Mounts with { EngineCentre = odd } },
                    input with { BonnetSpace = odd }, input with { EngineHeight = odd }, input with { AxisHeight = odd }, input with { SumpDepth = odd }, input with { BayLength = odd }, input with { BlockLength = odd },
                    input with { RadiatorHeat = odd }, input with { RadiatorPower = odd }, input with { PowerBefore = odd },
                    input with { Changes = [input.Changes[0] with { After = odd }, .. input.Changes.Skip(1)] }, input with { Changes = [input.Changes[0] with { Place = odd }, .. input.Changes.Skip(1)] },
                ];
                Assert.All(spoilt, one => Drawn.HasNumbersOnly(LoadWorksheet.Work(one)));
                if (!double.IsFinite(odd.Si))
                {
                    Assert.All(spoilt.Take(3), one => Assert.NotEmpty(LoadWorksheet.Work(one).Gaps));
                }
            }
        }
    }

    private static IEnumerable<(LoadInput Input, Random Random)> Inputs(int seed)
    {
        var random = new Random(seed);
        Swapwright.Worksheets.Ledgers.Given Of(double least, double most) => Drawn.Given(random.Between(least, most));
        MassChange Change(string id, double least, double most) => new(id, id, Of(least, most), Of(least, most), Of(-0.4, 2.5), random.Between(-0.05, 0.1));
        for (var car = 0; car < Cars; car++)
        {
            yield return (new LoadInput
            {
                Asked = [LoadWorksheet.Masses, LoadWorksheet.Clutch, LoadWorksheet.Shafts, LoadWorksheet.Mounts, LoadWorksheet.Bonnet, LoadWorksheet.Bay, LoadWorksheet.Ground, LoadWorksheet.Cooling],
                KerbMass = Of(700, 1600),
                FrontShare = Of(0.4, 0.65),
                Wheelbase = Of(2.1, 2.9),
                PermittedFront = Of(500, 1000),
                PermittedRear = Of(500, 1100),
                Changes = [Change("engine", 80, 220), Change("gearbox", 25, 70), Change("compressor", 4, 12), Change("pump", 3, 8)],
                PowerBefore = Of(40000, 90000),
                Power = Of(60000, 150000),
                Torque = Of(100, 280),
                Clutch = new ClutchInput(Of(3000, 7000), Of(0.18, 0.25), Of(0.11, 0.16), Of(0.25, 0.35), null),
                GearboxTorque = Of(140, 320),
                FirstGear = Of(2.8, 4.2),
                FinalDrive = Of(3, 4.6),
                ShaftTorque = Of(900, 2000),
                Mounts = new MountInput(Of(-0.1, 0.05), Of(0.6, 0.9), Of(0.15, 0.3), Of(0.4, 0.7), Of(0.12, 0.3), Of(900, 1500), Of(900, 1500)) { Plate = Of(0.01, 0.02), GearboxReach = random.Next(2) == 0 ? Of(0.2, 0.5) : null },
                BonnetSpace = Of(0.5, 0.65),
                EngineHeight = Of(0.45, 0.62),
                BayLength = Of(0.7, 0.9),
                BlockLength = Of(0.42, 0.7),
                AxisHeight = Of(0.3, 0.43),
                GroundClearance = Of(0.12, 0.2),
                SumpDepth = Of(0.15, 0.25),
                RadiatorHeat = Of(60000, 130000),
                RadiatorPower = Of(60000, 130000),
            }, random);
        }
    }
}
