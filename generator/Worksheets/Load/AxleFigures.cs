using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Load.LoadWorksheet;

namespace Swapwright.Worksheets.Load;

/// <summary>Mass and axle loads before and after.</summary>
internal static class AxleFigures
{
    // A tenth more is the least at which somebody feels it (common practice, no source).
    private const double WorthSaying = 0.1;

    private const string Levers = "moments about the front axle: follows from the lever";

    public static void Add(LedgerBuilder ledger, LoadInput input)
    {
        if (!input.Asks(Masses))
        {
            return;
        }

        if (input.KerbMass is not { Si: > 0 } kerb)
        {
            ledger.Gap("Mass", "the kerb mass of the chassis is not known", "Give the chassis its kerb mass.");
            return;
        }

        if (input.Changes.FirstOrDefault(change => change.Id is "engine" or "gearbox" && (change.Before is null || change.After is null)) is { } unknown)
        {
            ledger.Gap("Mass", $"the mass of the {(unknown.Before is null ? "original" : "new")} {unknown.Id} is not known", "Weigh it, or give it the mass its maker states.");
            return;
        }

        var mass = kerb.Si + input.Changes.Sum(Change);
        if (!(mass > 0 && Soundness.IsNumber(mass)))
        {
            ledger.Gap("Mass", "the masses give no vehicle: one is no number, or more would be taken out than it weighs", "Check the masses of engine, gearbox and chassis.");
            return;
        }

        FigureInput[] masses = [kerb.Input, .. input.Changes.SelectMany(change => new[] { Titled(change.Before, change.Title + ", before"), Titled(change.After, change.Title + ", after") }).OfType<FigureInput>()];
        ledger.Add(new Figure("mass", "Kerb mass", mass, "kg")
        {
            Decimals = 0,
            Formula = "m = m_before + Σ Δm",
            Source = "follows from the masses",
            From = [.. masses],
            Remark = $"{Number(kerb.Si)} kg before, {Signed(mass - kerb.Si)} kg",
        });
        PowerToMass(ledger, input, mass, kerb);
        Axles(ledger, input, mass, kerb, masses);
        ledger.Note("Shafts, exhaust, brackets and cooling are taken to weigh what they weighed. Weigh the car on its four wheels before it goes to inspection.");
    }

    private static double Change(MassChange change) => (change.After?.Si ?? 0) - (change.Before?.Si ?? 0);

    private static void PowerToMass(LedgerBuilder ledger, LoadInput input, double mass, Given kerb)
    {
        if (input.Power is not { } power)
        {
            return;
        }

        var now = power.Si / mass;
        var before = input.PowerBefore is { Si: > 0 } was ? was.Si / kerb.Si : (double?)null;
        ledger.Add(new Figure("power-to-mass", "Power to mass", now, "W/kg")
        {
            Decimals = 0,
            Formula = "P ∕ m",
            Source = "definition",
            From = [power.Input, new FigureInput("kerb mass", mass, "kg", "load.mass")],
            Remark = before is { } then ? $"{Number(then)} W/kg before: {Signed(((now / then) - 1) * 100)} %{((now / then) - 1 >= WorthSaying ? "; brakes and tyres were made for the old figure" : "")}" : "",
            Weight = before is { } old && now > old * 1.2 ? FigureWeight.Caution : FigureWeight.Plain,
        });
    }

    private static void Axles(LedgerBuilder ledger, LoadInput input, double mass, Given kerb, FigureInput[] masses)
    {
        if (input is not { FrontShare: { Si: > 0 and < 1 } share, Wheelbase: { Si: > 0 } wheelbase })
        {
            ledger.Gap("Axle loads", "the share on the front axle or the wheelbase is not known", "Give the chassis both.");
            return;
        }

        if (input.Changes.FirstOrDefault(change => change.Place is null && Change(change) != 0) is { } placeless)
        {
            ledger.Gap("Axle loads", $"it is not known where the {placeless.Title.ToLowerInvariant()} lies", "Give the chassis how far behind the front axle it lies, negative ahead of it.");
            return;
        }

        var rearBefore = kerb.Si * (1 - share.Si);
        var rear = rearBefore + input.Changes.Sum(change => Rear(change, wheelbase.Si));
        var front = mass - rear;
        FigureInput[] from = [.. masses, share.Input, wheelbase.Input, .. input.Changes.Select(change => Titled(change.Place, $"{change.Title}, behind the front axle")).OfType<FigureInput>(), .. input.Changes.Where(change => change.Offset != 0 && change.After is not null).Select(change => new FigureInput($"{change.Title}, further back than it was", change.Offset * 1000, "mm", change.After!.Input.Origin))];
        var reserve = input.PermittedFront is { } permitted ? permitted.Si - front : (double?)null;
        ledger.Add(Axle("front", "Front axle", front, kerb.Si - rearBefore, input.PermittedFront, input.FrontReserve) with { From = [.. from, .. Permitted(input.PermittedFront)] });
        ledger.Add(Axle("rear", "Rear axle", rear, rearBefore, input.PermittedRear, 0) with { From = [.. from, .. Permitted(input.PermittedRear)] });
        ledger.Add(new Figure("front-change", "Change on the front axle", front - (kerb.Si - rearBefore), "kg")
        {
            Formula = "ΔF_f = Σ Δm − Σ Δ(m x) ∕ L",
            Source = Levers,
            From = [.. from],
            IsStep = true,
        });
        ledger.Add(new Figure("front-share", "Share on the front axle", front / mass * 100, "%")
        {
            Formula = "F_f ∕ m",
            Source = "definition",
            From = [new FigureInput("front axle", front, "kg", "load.front"), new FigureInput("kerb mass", mass, "kg", "load.mass")],
            Remark = $"{Number(share.Si * 100, "0.0")} % before{(reserve is { } left ? $"; {Number(left)} kg are left in front for people and luggage" : "")}",
        });
        Table(ledger, input, mass, kerb, (front, rear, rearBefore));
    }

    private static double Rear(MassChange change, double wheelbase) => change.Place is not { } place ? 0
        : LoadFormulas.OnRear(change.After?.Si ?? 0, place.Si + change.Offset, wheelbase) - LoadFormulas.OnRear(change.Before?.Si ?? 0, place.Si, wheelbase);

    private static Figure Axle(string id, string title, double load, double before, Given? permitted, double reserve)
    {
        var left = permitted?.Si - load;
        return new Figure(id, title, load, "kg")
        {
            Decimals = 0,
            Formula = id == "rear" ? "F_r = F_r,before + Σ Δ(m x) ∕ L" : "F_f = m − F_r",
            Source = Levers,
            Remark = left switch
            {
                null => $"{Number(before)} kg before; no permitted load is stated",
                < 0 => $"{Number(before)} kg before; {Number(-left.Value)} kg above the {Number(permitted!.Si)} kg permitted, with nobody in the car",
                _ when left < reserve => $"{Number(before)} kg before; only {Number(left.Value)} kg are left of the {Number(permitted!.Si)} kg permitted, where {Number(reserve)} are wanted for people and luggage",
                _ => $"{Number(before)} kg before; {Number(left.Value)} kg are left of the {Number(permitted!.Si)} kg permitted",
            },
            Weight = left switch
            {
                null => FigureWeight.Plain,
                < 0 => FigureWeight.Bad,
                _ when left < reserve => FigureWeight.Caution,
                _ => FigureWeight.Good,
            },
        };
    }

    private static FigureInput? Titled(Given? given, string title) => given is null ? null : given.Input with { Title = title };

    private static IEnumerable<FigureInput> Permitted(Given? permitted) => permitted is null ? [] : [permitted.Input];

    private static void Table(LedgerBuilder ledger, LoadInput input, double mass, Given kerb, (double Front, double Rear, double RearBefore) axles)
    {
        ImmutableArray<LedgerCell> Row(string title, double? before, double? after, double? permitted = null) =>
            [LedgerCell.Words(title), LedgerCell.Number(before), LedgerCell.Number(after), LedgerCell.Number((after ?? 0) - (before ?? 0)), LedgerCell.Number(permitted)];
        ledger.Add(new LedgerTable(
            "masses",
            "Masses before and after",
            [new("what", "What"), new("before", "Before", "kg"), new("after", "After", "kg"), new("change", "Change", "kg"), new("permitted", "Permitted", "kg", 0)],
            [
                .. input.Changes.Where(change => change.Before is not null || change.After is not null).Select(change => Row(change.Title, change.Before?.Si, change.After?.Si)),
                Row("Front axle", kerb.Si - axles.RearBefore, axles.Front, input.PermittedFront?.Si),
                Row("Rear axle", axles.RearBefore, axles.Rear, input.PermittedRear?.Si),
                Row("Kerb mass", kerb.Si, mass),
            ]));
    }

    private static string Signed(double value) => Math.Round(value) switch
    {
        > 0 => $"+{Number(value)}",
        < 0 => $"−{Number(-value)}",
        _ => "±0",
    };
}
