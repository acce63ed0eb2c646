using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Fuel.FuelWorksheet;

namespace Swapwright.Worksheets.Fuel;

/// <summary>Whether the ECU understands the engine's pick-ups, can fire its coils and open its throttle.</summary>
internal static class IgnitionFigures
{
    /// <summary>The word for an ECU that takes each of them.</summary>
    public const string Any = "any";

    public static void Add(LedgerBuilder ledger, FuelInput input)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<LedgerCell>>();
        Trigger(rows, input);
        Sparks(rows, input);
        Stage(rows, input);
        Throttle(rows, ledger, input);
        if (rows.Count > 0)
        {
            ledger.Add(new LedgerTable("ignition", "Ignition and throttle", [new("item", "Item"), new("ecu", "The ECU"), new("engine", "The engine as fitted"), new("verdict", "So")], rows.ToImmutable()));
        }

        Charge(ledger, input);
    }

    /// <summary>Whether pick-ups and ECU speak of one pattern; null where either is not known.</summary>
    public static bool? TriggerAgrees(FuelInput input) =>
        (input.Ecu.Trigger, input.Ignition.Trigger) is ({ } wanted, { } given) ? wanted.Id == Any || given.Id == Any || wanted.Id == given.Id : null;

    private static void Trigger(ImmutableArray<ImmutableArray<LedgerCell>>.Builder rows, FuelInput input)
    {
        if (TriggerAgrees(input) is { } agrees)
        {
            rows.Add(Row("Trigger pattern", input.Ecu.Trigger!.Title, input.Ignition.Trigger!.Title, agrees
                ? input.Ecu.Trigger.Id == Any ? "set the ECU to this pattern, then prove the timing with a lamp" : "they agree"
                : "they do not agree: the engine will not start until pick-ups and ECU are of one pattern"));
        }
    }

    private static void Sparks(ImmutableArray<ImmutableArray<LedgerCell>>.Builder rows, FuelInput input)
    {
        if (input.Ignition.Kind is not { } kind || input.Ignition.Coils is not { Si: > 0 } coils)
        {
            return;
        }

        var outputs = input.Ignition.SparkOutputs ?? input.Ecu.SparkOutputs;
        if (outputs is null)
        {
            return;
        }

        var module = input.Ignition.SparkOutputs is not null;
        rows.Add(Row(
            "Sparks",
            $"{Number(outputs.Si)} {(outputs.Si == 1 ? "output" : "outputs")}{(module ? ", with the driver that is fitted" : "")}",
            $"{kind.Title}, {Number(coils.Si)} {(coils.Si == 1 ? "coil" : "coils")}",
            outputs.Si < coils.Si
                ? "too few outputs: a driver that shares the sparks out, or another ECU"
                : kind.Id switch
                {
                    "distributor" => "the distributor shares the sparks out; its rotor has to point at the lead when the spark comes",
                    "coil-packs" => "each pack fires two plugs at once, one of them in the exhaust stroke; both plugs of a pack wear",
                    _ => "one coil for each plug",
                }));
    }

    private static void Stage(ImmutableArray<ImmutableArray<LedgerCell>>.Builder rows, FuelInput input)
    {
        if ((input.Ecu.Drive, input.Ignition.Stage) is not ({ } drive, { } stage))
        {
            return;
        }

        rows.Add(Row("Coil current", drive.Title, stage.Title, (drive.Id, stage.Id) switch
        {
            ("trigger", "ecu") => "a logic output cannot switch a coil: an igniter is wanted between them",
            ("power", "igniter" or "coil") => "two power stages in a row: leave the engine's igniter out, or ask the ECU for a logic output",
            _ => "they agree",
        }));
    }

    private static void Throttle(ImmutableArray<ImmutableArray<LedgerCell>>.Builder rows, LedgerBuilder ledger, FuelInput input)
    {
        if (input.Throttle is not { } throttle || (throttle.Id == "cable" && input.EcuDrivesThrottle != true))
        {
            return;
        }

        var drives = input.EcuDrivesThrottle == true;
        var (ecu, verdict) = (throttle.Id, input.ThrottleController, drives) switch
        {
            ("cable", _, _) => ("works a throttle motor", "none is there: it has to be told so, or it falls back to its emergency idle"),
            (_, { Length: > 0 }, _) => (input.ThrottleController, "the part that is fitted works it"),
            (_, _, true) => ("works a throttle motor", "they agree; prove that the engine falls to idle with the pedal's plug off"),
            _ => (input.EcuDrivesThrottle is null ? "not known to work a throttle motor" : "works no throttle motor", "nothing opens the throttle: another ECU, a controller beside it, or the throttle body with a cable"),
        };
        rows.Add(Row("Throttle", ecu, throttle.Title, verdict));
        if (throttle.Id != "cable" && !drives && input.ThrottleController.Length == 0)
        {
            ledger.Gap("Throttle", $"nothing works the motor of the electronic throttle: {input.Ecu.Title} does not say that it does", "Say that the ECU drives a throttle, fit a controller, or convert to a cable.");
        }
    }

    private static void Charge(LedgerBuilder ledger, FuelInput input)
    {
        var ignition = input.Ignition;
        if (ignition is not { CoilResistance: { Si: > 0 } resistance, CoilInductance: { Si: > 0 } inductance, CoilCurrent: { Si: > 0 } current })
        {
            return;
        }

        var supply = input.Assumptions.Supply;
        if (CoilCharge.Time(inductance.Si, resistance.Si, supply, current.Si) is not { } time)
        {
            ledger.Gap("Charging time of a coil", $"{Number(supply)} V never drive {Number(current.Si, 1)} A through {Number(resistance.Si, 2)} Ω", "Measure the coil again, or correct its current.");
            return;
        }

        double? between = (input.PowerSpeed, input.Cylinders, ignition.Coils) is ({ Si: > 0 } speed, { Si: > 0 } cylinders, { Si: > 0 } coils)
            ? CoilCharge.Between(speed.Si, cylinders.Si / coils.Si)
            : null;
        ledger.Add(new Figure("coil-charge", "Charging time of a coil", time * 1000, "ms")
        {
            Formula = "t = −(L ∕ R) ln(1 − I R ∕ U)",
            Source = "step response of a coil with resistance, any textbook of circuits; from memory",
            From = [inductance.Input, resistance.Input, current.Input, Assumed("Supply", supply, "V")],
            Remark = between is { } gap
                ? time > gap ? $"longer than the {Number(gap * 1000)} ms from one spark to its next at full power: the spark weakens" : $"the ECU's dwell; {Number(gap * 1000)} ms pass from one spark of the coil to its next at full power"
                : "the ECU's dwell",
            Weight = between is { } most ? time > most ? FigureWeight.Bad : FigureWeight.Good : FigureWeight.Plain,
        });
    }

    private static ImmutableArray<LedgerCell> Row(params ReadOnlySpan<string> cells) => [.. cells.ToArray().Select(LedgerCell.Words)];
}
