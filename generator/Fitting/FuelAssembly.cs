using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Fuel;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Fitting;

/// <summary>Injectors, pump, regulator, ECU and coils of a combination → the fuel worksheet.</summary>
internal static class FuelAssembly
{
    private static readonly ImmutableArray<(string Subject, string Quantity)> s_core =
        [("donor", "injector-flow"), ("donor", "injector-resistance"), ("ecu", "injector-driver"), ("chassis", "pump-flow"), ("part", "pump-flow"), ("ecu", "trigger-pattern"), ("ecu", "made-for")];

    /// <summary>Whether a base says anything of fuel.</summary>
    public static bool Speaks(KnowledgeBase kb) => s_core.Any(core => kb.Vocabulary.Meaning(core.Subject, core.Quantity) is not null);

    public static Ledger Assemble(KnowledgeBase kb, LedgerCase one)
    {
        var quantities = new Quantities(kb, one);
        if (one.Ecu is not { } ecu)
        {
            return new Ledger("fuel", FuelWorksheet.Title);
        }

        var fuel = kb.Settings.Fuel;
        return FuelWorksheet.Work(new FuelInput
        {
            Assumptions = new FuelAssumptions((double)fuel.Consumption / 3.6e9, (double)fuel.DensityKgPerL * 1000, (double)fuel.DutyPercent / 100, (double)fuel.PumpMarginPercent / 100, (double)fuel.SupplyV) { PumpFall = (double)fuel.PumpFallPercent / 100 / 1e5 },
            Power = Of(quantities, "donor", "engine-power"),
            PowerSpeed = Of(quantities, "donor", "engine-power-speed"),
            Cylinders = Of(quantities, "donor", "cylinders"),
            Family = one.Donor.Family,
            Ecu = Control(quantities, ecu),
            Injectors = Injectors(quantities),
            Throttle = Word(quantities.FittedWord("throttle-kind")),
            EcuDrivesThrottle = quantities.Flag(ecu, "ecu", "throttle-drive"),
            ThrottleController = quantities.AnswerFor("throttle-drive")?.PartIds.Select(kb.Parts.Find).OfType<Part>().FirstOrDefault(part => quantities.Flag(part, "part", "throttle-drive") == true)?.Title ?? "",
            Ballast = Ballast(quantities),
            BallastResistance = Fitted(quantities, "ballast-resistance"),
            BallastPower = Fitted(quantities, "ballast-power"),
            Line = Line(kb, one, quantities),
            Ignition = Ignition(quantities),
        });
    }

    private static EngineControl Control(Quantities quantities, Ecu ecu) => new(
        ecu.Title,
        quantities.Word("ecu", "injector-driver") switch
        {
            "saturated" => InjectorDriver.Saturated,
            "peak-hold" => InjectorDriver.PeakHold,
            _ => null,
        },
        Of(quantities, "ecu", "injector-driver-current"),
        Of(quantities, "ecu", "injector-channels"),
        Word(quantities.OwnWord("ecu", "made-for")),
        Of(quantities, "ecu", "injector-flow"),
        Word(quantities.OwnWord("ecu", "trigger-pattern")),
        Of(quantities, "ecu", "ignition-outputs"),
        Word(quantities.OwnWord("ecu", "ignition-drive")));

    private static InjectorSet Injectors(Quantities quantities)
    {
        var flow = Fitted(quantities, "injector-flow");
        var pressure = Fitted(quantities, "injector-flow-pressure");
        if (pressure is null && flow?.Input.Origin.StartsWith("donor ", StringComparison.Ordinal) == true)
        {
            // An engine's own injectors are stated at the engine's own pressure, unless it says otherwise.
            pressure = Of(quantities, "donor", "rail-pressure");
        }

        return new InjectorSet(flow, pressure, Fitted(quantities, "injector-resistance"), Of(quantities, "donor", "injector-count"));
    }

    private static BallastWork Ballast(Quantities quantities) => quantities.AnswerFor("ballast-resistance") switch
    {
        null => BallastWork.None,
        { Source: "none" } or { Treatment: "blank" } => BallastWork.LeftOff,
        { Source: "chassis" or "donor" } => BallastWork.Kept,
        _ => BallastWork.Added,
    };

    private static FuelLine Line(KnowledgeBase kb, LedgerCase one, Quantities quantities)
    {
        // The hoses between tank and rail hang on these answers; what they buy is hose by the metre.
        var answers = kb.Vocabulary.Hoses.All.Where(hose => hose.Circuit == "fuel").Select(hose => hose.Position).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(one.At).OfType<Answer>().ToList();
        var hoses = answers.SelectMany(answer => answer.PartIds).Distinct(StringComparer.Ordinal).Select(kb.Parts.Find).OfType<Part>().Where(part => part.Hose?.Circuits.Contains("fuel") == true);
        var (curve, holder) = Curve(kb, one, quantities.AnswerFor("pump-flow"));
        return new FuelLine(
            Fitted(quantities, "rail-pressure"),
            quantities.FittedWord("regulator-place")?.Id == "tank",
            quantities.OwnWord("donor", "regulator-place")?.Id == "tank",
            Fitted(quantities, "pump-flow"),
            Fitted(quantities, "pump-flow-pressure"),
            [.. hoses.Select(part => Enum.TryParse<FuelHoseClass>(part.Hose!.Class, out var known) ? (part.Title, known) : ((string Title, FuelHoseClass Class)?)null).OfType<(string Title, FuelHoseClass Class)>()],
            answers.Any(answer => answer.Source is "chassis" or "donor"),
            Fitted(quantities, "fuel-pressure-rating"),
            (double)kb.Settings.Hoses.InjectionBar)
        {
            PumpCurve = [.. curve.Select(point => new PumpFlowPoint((double)point.PressureBar * 1e5, (double)point.LitresAnHour / 3.6e6))],
            PumpHolder = holder,
        };
    }

    /// <summary>The points of the pump that the answers put in place, and whose they are; none where it says one pressure at most.</summary>
    private static (ImmutableArray<PumpPoint> Points, string Holder) Curve(KnowledgeBase kb, LedgerCase one, Answer? answer)
    {
        if (answer is null)
        {
            return one.Donor.PumpCurve.IsEmpty ? (one.Chassis.PumpCurve, $"chassis {one.Chassis.Id}") : (one.Donor.PumpCurve, $"donor {one.Donor.Id}");
        }

        // A part that says one pressure takes the place of what the vehicle's own pump was measured at.
        var pump = answer.PartIds.Select(kb.Parts.Find).OfType<Part>().FirstOrDefault(part => !part.PumpCurve.IsEmpty || (kb.Vocabulary.Meaning("part", "pump-flow") is { } flow && part.Fact(flow.Id) is not null));
        return (pump, answer) switch
        {
            ({ } part, _) => (part.PumpCurve, $"part {part.Id}"),
            (_, { Treatment: "blank" }) => ([], ""),
            (_, { Source: "chassis" }) => (one.Chassis.PumpCurve, $"chassis {one.Chassis.Id}"),
            (_, { Source: "donor" }) => (one.Donor.PumpCurve, $"donor {one.Donor.Id}"),
            _ => ([], ""),
        };
    }

    private static IgnitionSet Ignition(Quantities quantities) => new(
        Word(quantities.OwnWord("donor", "ignition-kind")),
        Word(quantities.FittedWord("trigger-pattern")),
        Fitted(quantities, "ignition-coils"),
        quantities.AnswerFor("ignition-coils") is { } answer ? Value(quantities.Part(answer, "ignition-outputs")) : null,
        Word(quantities.FittedWord("coil-stage")),
        Fitted(quantities, "coil-resistance"),
        Fitted(quantities, "coil-inductance"),
        Fitted(quantities, "coil-current"));

    private static FuelValue? Of(Quantities quantities, string subject, string quantity) => Value(quantities.Of(subject, quantity));

    private static FuelValue? Fitted(Quantities quantities, string quantity) => Value(quantities.Fitted(quantity));

    private static FuelValue? Value(KnownValue? value) => value is null ? null : new FuelValue(value.Si, value.Input);

    private static FuelWord? Word((string Id, string Title, string Holder)? word) => word is { } one ? new FuelWord(one.Id, one.Title, one.Holder) : null;
}
