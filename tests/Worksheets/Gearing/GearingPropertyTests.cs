using System.Collections.Immutable;
using Swapwright.Worksheets.Gearing;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Gearing;

/// <summary>What must hold for any gearbox and any tyre, tried on ones drawn from a seeded generator.</summary>
public sealed class GearingPropertyTests
{
    private const int Cars = 200;

    [Fact]
    public void Work_GearsInAnotherOrder_GivesTheSame()
    {
        foreach (var (input, random) in Inputs(1))
        {
            var shuffled = input with { Gearbox = input.Gearbox with { Gears = [.. input.Gearbox.Gears.OrderBy(_ => random.Next())] } };
            Drawn.AreTheSame(GearingWorksheet.Work(input), GearingWorksheet.Work(shuffled));
        }
    }

    /// <summary>Speed goes with the tyre and against the overall ratio: both scaled alike, the car is as fast as it was.</summary>
    [Fact]
    public void Work_TyreAndFinalDriveScaledAlike_KeepsEveryRoadSpeed()
    {
        foreach (var (input, random) in Inputs(2))
        {
            var factor = random.Between(0.8, 1.25);
            var scaled = GearingWorksheet.Work(input with { Tyre = Scaled(input.Tyre!, factor), Gearbox = input.Gearbox with { Final = input.Gearbox.Final * factor } });
            var ledger = GearingWorksheet.Work(input);
            Assert.All(["top-gear", "top-speed", "cruise-90", "cruise-130", "largest-drop"], id => Assert.Equal(ledger.Value(id), scaled.Value(id), 1e-6));
        }
    }

    [Fact]
    public void Work_ShorterFinalDrive_TurnsTheEngineFasterAtTheSameSpeed()
    {
        foreach (var (input, random) in Inputs(3))
        {
            var factor = random.Between(1.01, 1.5);
            var shorter = GearingWorksheet.Work(input with { Gearbox = input.Gearbox with { Final = input.Gearbox.Final * factor } });
            var ledger = GearingWorksheet.Work(input);
            Assert.Equal(ledger.Value("cruise-90") * factor, shorter.Value("cruise-90"), 1e-6);
            Assert.Equal(ledger.Value("top-speed") / factor, shorter.Value("top-speed"), 1e-6);
            Assert.Equal(ledger.Value("largest-drop"), shorter.Value("largest-drop"), 1e-6);
        }
    }

    [Fact]
    public void Work_CruisingFaster_TurnsTheEngineFaster()
    {
        foreach (var (input, _) in Inputs(4))
        {
            var ledger = GearingWorksheet.Work(input);
            Assert.True(ledger.Value("cruise-90") < ledger.Value("cruise-130"));
        }
    }

    /// <summary>A tyre that rolls further makes the car faster than its speedometer says.</summary>
    [Fact]
    public void Work_WiderTyreThanBefore_LowersTheSpeedometersError()
    {
        foreach (var (input, random) in Inputs(5))
        {
            var larger = GearingWorksheet.Work(input with { Before = input.Gearbox, TyreBefore = input.Tyre, Tyre = Scaled(input.Tyre!, random.Between(1.01, 1.2)) });
            Assert.True(larger.Value("speedometer-error") < 0);
        }
    }

    [Fact]
    public void Work_AnyCar_HasNumbersOnly() => Assert.All(Inputs(6).ToList(), pair => Drawn.HasNumbersOnly(GearingWorksheet.Work(pair.Input)));

    /// <summary>Each number in turn made impossible: nothing that is no number comes out, and what is left out says why.</summary>
    [Fact]
    public void Work_ImpossibleInput_IsAGapAndNoNumber()
    {
        foreach (var (input, _) in Inputs(7).Take(20))
        {
            foreach (var odd in Drawn.Impossible)
            {
                ImmutableArray<GearingInput> spoilt =
                [
                    input with { Gearbox = input.Gearbox with { Final = odd } },
                    input with { Gearbox = input.Gearbox with { Gears = [new("first", odd), .. input.Gearbox.Gears.Skip(1)] } },
                    input with { Gearbox = input.Gearbox with { Speed = input.Gearbox.Speed! with { PinionTeeth = odd } } },
                    input with { Gearbox = input.Gearbox with { Speed = input.Gearbox.Speed! with { DriveTeeth = odd } } },
                    input with { Tyre = input.Tyre! with { Width = Drawn.Given(odd) } },
                    input with { Tyre = input.Tyre! with { Rim = Drawn.Given(odd) } },
                    input with { PowerSpeed = Drawn.Given(odd) },
                    input with { Before = input.Gearbox with { Final = odd } },
                ];
                Assert.All(spoilt, one => Drawn.HasNumbersOnly(GearingWorksheet.Work(one)));
                if (!double.IsFinite(odd) || odd <= 0)
                {
                    Assert.All(spoilt.Take(2), one => Assert.NotEmpty(GearingWorksheet.Work(one).Gaps));
                    Assert.NotEmpty(GearingWorksheet.Work(spoilt[4]).Gaps);
                }
            }
        }
    }

    private static TyreSize Scaled(TyreSize tyre, double factor) => tyre with { Width = Drawn.Given(tyre.Width.Si * factor), Rim = Drawn.Given(tyre.Rim.Si * factor) };

    private static IEnumerable<(GearingInput Input, Random Random)> Inputs(int seed)
    {
        var random = new Random(seed);
        for (var car = 0; car < Cars; car++)
        {
            var ratio = random.Between(2.8, 4.2);
            var gears = ImmutableArray.CreateBuilder<GearRatio>();
            for (var gear = 1; gear <= random.Next(3, 7); gear++)
            {
                gears.Add(new GearRatio(FormattableString.Invariant($"gear {gear}"), ratio));
                ratio *= random.Between(0.55, 0.85);
            }

            var set = new GearSet("drawn", gears.ToImmutable(), random.Between(2.8, 4.8)) { Speed = new SpeedDrive(random.Next(2) == 0, random.Next(4, 9), random.Next(14, 30), null) };
            yield return (new GearingInput
            {
                Gearbox = set,
                Before = set,
                Tyre = new TyreSize(Drawn.Given(random.Between(0.135, 0.245)), random.Next(3) == 0 ? null : Drawn.Given(random.Between(0.5, 0.82)), Drawn.Given(random.Next(12, 18) * 0.0254), random.Next(4) == 0 ? TyreConstruction.Bias : TyreConstruction.Radial),
                PowerSpeed = Drawn.Given(random.Between(4000, 8000) * Math.PI / 30),
                AsksForSpeedometer = true,
                Cruise = [90 / 3.6, 130 / 3.6],
            }, random);
        }
    }
}
