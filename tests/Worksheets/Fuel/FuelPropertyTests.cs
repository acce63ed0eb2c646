using System.Collections.Immutable;
using Swapwright.Worksheets.Fuel;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Tests.Worksheets.Fuel;

/// <summary>What must hold for any engine, injectors and pump, tried on ones drawn from a seeded generator.</summary>
public sealed class FuelPropertyTests
{
    private const int Engines = 200;
    private const double CcPerMinute = 1e-6 / 60;
    private const double LitrePerHour = 0.001 / 3600;

    /// <summary>Power and every flow scaled alike: the same duty, the same margin.</summary>
    [Fact]
    public void Work_PowerAndFlowsScaledAlike_KeepsDutyAndMargin()
    {
        foreach (var (input, random) in Inputs(1))
        {
            var factor = random.Between(0.5, 2);
            var scaled = FuelWorksheet.Work(input with
            {
                Power = V(input.Power!.Si * factor),
                Injectors = input.Injectors with { Flow = V(input.Injectors.Flow!.Si * factor) },
                Line = input.Line with { PumpFlow = V(input.Line.PumpFlow!.Si * factor) },
            });
            var ledger = FuelWorksheet.Work(input);
            Assert.All(["injector-duty", "pump-margin"], id => Assert.Equal(ledger.Value(id), scaled.Value(id), 1e-6));
            Assert.Equal(ledger.Value("pump-need") * factor, scaled.Value("pump-need"), 1e-6);
        }
    }

    [Fact]
    public void Work_MorePower_WantsMoreOfEverything()
    {
        foreach (var (input, random) in Inputs(2))
        {
            var (ledger, stronger) = (FuelWorksheet.Work(input), FuelWorksheet.Work(input with { Power = V(input.Power!.Si * random.Between(1.01, 2)) }));
            Assert.True(ledger.Value("injector-need") < stronger.Value("injector-need"));
            Assert.True(ledger.Value("injector-duty") < stronger.Value("injector-duty"));
            Assert.True(ledger.Value("pump-need") < stronger.Value("pump-need"));
            Assert.True(ledger.Value("pump-margin") > stronger.Value("pump-margin"));
        }
    }

    [Fact]
    public void Work_MoreRailPressure_OpensInjectorsLessAndNeverHelpsThePump()
    {
        foreach (var (input, random) in Inputs(3))
        {
            var line = input.Line with { PumpCurve = Curve(random), PumpHolder = "part p" };
            var more = line.Pressure!.Si * random.Between(1.01, 1.3);
            var (ledger, higher) = (FuelWorksheet.Work(input with { Line = line }), FuelWorksheet.Work(input with { Line = line with { Pressure = V(more) } }));
            Assert.True(ledger.Value("injector-duty") > higher.Value("injector-duty"));
            Assert.True(ledger.Value("pump-flow") >= higher.Value("pump-flow"));
        }
    }

    [Fact]
    public void Work_MoreInjectors_AreOpenLess()
    {
        foreach (var (input, _) in Inputs(4))
        {
            var six = FuelWorksheet.Work(input with { Injectors = input.Injectors with { Count = V(input.Injectors.Count!.Si + 2) } });
            Assert.True(six.Value("injector-duty") < FuelWorksheet.Work(input).Value("injector-duty"));
        }
    }

    [Fact]
    public void Work_MoreBallast_LessCurrent()
    {
        foreach (var (input, random) in Inputs(5))
        {
            var more = FuelWorksheet.Work(input with { BallastResistance = V(input.BallastResistance!.Si * random.Between(1.1, 3)) });
            Assert.True(more.Value("driver-current") < FuelWorksheet.Work(input).Value("driver-current"));
        }
    }

    [Fact]
    public void Work_PumpPointsInAnyOrder_GiveTheSame()
    {
        foreach (var (input, random) in Inputs(6))
        {
            var curve = Curve(random);
            Drawn.AreTheSame(
                FuelWorksheet.Work(input with { Line = input.Line with { PumpCurve = curve, PumpHolder = "part p" } }),
                FuelWorksheet.Work(input with { Line = input.Line with { PumpCurve = [.. curve.OrderBy(_ => random.Next())], PumpHolder = "part p" } }));
        }
    }

    [Fact]
    public void Work_AnyEngine_HasNumbersOnly() => Assert.All(Inputs(7).ToList(), pair => Drawn.HasNumbersOnly(FuelWorksheet.Work(pair.Input)));

    [Fact]
    public void Work_ImpossibleInput_IsAGapAndNoNumber()
    {
        foreach (var (input, _) in Inputs(8).Take(20))
        {
            foreach (var number in Drawn.Impossible)
            {
                var odd = V(number);
                var (line, ignition, injectors) = (input.Line, input.Ignition, input.Injectors);
                ImmutableArray<FuelInput> spoilt =
                [
                    input with { Power = odd }, input with { Injectors = injectors with { Count = odd } }, input with { Injectors = injectors with { Flow = odd } }, input with { Line = line with { Pressure = odd } }, input with { Line = line with { PumpFlow = odd } },
                    input with { Injectors = injectors with { Resistance = odd } }, input with { Injectors = injectors with { FlowPressure = odd } }, input with { PowerSpeed = odd }, input with { Cylinders = odd },
                    input with { Line = line with { PumpFlowPressure = odd } }, input with { Line = line with { PumpCurve = [new(number, 1e-5), new(4e5, 8e-6)] } }, input with { Line = line with { PumpCurve = [new(1e5, number)] } },
                    input with { BallastResistance = odd }, input with { BallastPower = odd }, input with { Ecu = input.Ecu with { DriverCurrent = odd } }, input with { Ecu = input.Ecu with { Channels = odd } }, input with { Ecu = input.Ecu with { Flow = odd } },
                    input with { Ignition = ignition with { CoilResistance = odd } }, input with { Ignition = ignition with { CoilInductance = odd } }, input with { Ignition = ignition with { CoilCurrent = odd } }, input with { Ignition = ignition with { Coils = odd } },
                ];
                Assert.All(spoilt, one => Drawn.HasNumbersOnly(FuelWorksheet.Work(one)));
                if (!double.IsFinite(number) || number <= 0)
                {
                    Assert.All(spoilt.Take(5), one => Assert.NotEmpty(FuelWorksheet.Work(one).Gaps));
                }
            }
        }
    }

    private static ImmutableArray<PumpFlowPoint> Curve(Random random)
    {
        var (pressure, flow) = (random.Between(0.5e5, 2e5), random.Between(90, 140) * LitrePerHour);
        var points = ImmutableArray.CreateBuilder<PumpFlowPoint>();
        while (pressure < 6e5)
        {
            points.Add(new PumpFlowPoint(pressure, flow));
            pressure += random.Between(0.4e5, 1.2e5);
            flow *= random.Between(0.85, 0.99);
        }

        points.Add(new PumpFlowPoint(6e5, flow));
        return points.ToImmutable();
    }

    private static FuelValue V(double si) => new(si, new("drawn", si, "", "test"));

    private static IEnumerable<(FuelInput Input, Random Random)> Inputs(int seed)
    {
        var random = new Random(seed);
        FuelValue Of(double least, double most) => V(random.Between(least, most));
        FuelWord Word(string id) => new(id, id, "test");
        for (var engine = 0; engine < Engines; engine++)
        {
            yield return (new FuelInput
            {
                Assumptions = new FuelAssumptions(random.Between(270, 330) / 3.6e9, random.Between(700, 760), random.Between(0.75, 0.9), random.Between(0.1, 0.4), random.Between(13, 14.5)),
                Power = Of(40000, 160000),
                PowerSpeed = Of(450, 800),
                Cylinders = V(random.Next(2, 4) * 2),
                Family = "f",
                Ecu = new EngineControl("ECU", InjectorDriver.Saturated, Of(1, 4), V(4), Word("f"), Of(150 * CcPerMinute, 300 * CcPerMinute), Word("lobes"), V(1), Word("trigger")),
                Injectors = new InjectorSet(Of(150 * CcPerMinute, 400 * CcPerMinute), Of(2.5e5, 3.5e5), Of(2, 16), V(4)),
                Ballast = BallastWork.Kept,
                BallastResistance = Of(3, 8),
                BallastPower = Of(10, 30),
                Line = new FuelLine(Of(2.5e5, 3.5e5), false, false, Of(40 * LitrePerHour, 120 * LitrePerHour), V(3.6e5), [("Hose", FuelHoseClass.R9)], false, V(6e5), 0.5),
                Ignition = new IgnitionSet(Word("distributor"), Word("lobes"), V(1), null, Word("igniter"), Of(0.4, 0.9), Of(0.003, 0.008), Of(4, 8)),
            }, random);
        }
    }
}
