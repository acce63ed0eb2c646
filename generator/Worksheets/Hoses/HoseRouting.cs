using System.Collections.Immutable;

namespace Swapwright.Worksheets.Hoses;

/// <summary>One hose between two ports: its length, its pieces and what they are cut from.</summary>
internal static class HoseRouting
{
    /// <param name="feedBar">What the pump holds before the regulator, gauge; null where nothing is under pressure.</param>
    public static HoseRun Run(Hose hose, Port from, Port to, double? feedBar, HoseInput input, List<HoseProblem> problems)
    {
        var limits = input.Limits;
        var named = hose.Stock.Where(stock => stock.Circuits.Contains(hose.Circuit)).ToList();
        var set = named.Find(stock => stock.IsSet && (stock.BoreMm is not { } bore || limits.Fits(bore, from.SizeMm) || limits.Fits(bore, to.SizeMm)));
        var cutFrom = named.Where(stock => stock is { IsSet: false, BoreMm: not null }).ToList();
        var own = Higher(from.PressureBar, to.PressureBar);
        var pressure = hose.Circuit == HoseCircuit.Fuel && own >= limits.InjectionBar ? Higher(own, feedBar) : own;
        var action = cutFrom.Count > 0 ? HoseAction.Cut : set is not null ? HoseAction.Set : hose.Work == HoseWork.Keep ? HoseAction.Keep : HoseAction.Cut;

        var isStepped = !limits.Fits(from.SizeMm, to.SizeMm);
        var joiner = isStepped ? hose.Joiners.FirstOrDefault(one => limits.Joins(one, from.SizeMm, to.SizeMm)) : null;
        if (isStepped && joiner is null)
        {
            problems.Add(new SizesDiffer(hose.Id, from.SizeMm, to.SizeMm));
        }

        var along = Along(from, to, limits);
        if (along is null)
        {
            problems.Add(new LengthUnknown(hose.Id));
        }

        var run = new HoseRun(hose.Id, hose.Title, hose.Circuit, from, to, action, null, pressure, hose.Circuit == HoseCircuit.Fuel ? FuelHoseClasses.Least(pressure, limits.InjectionBar) : null, action == HoseAction.Set ? set!.Part : null, joiner, []) { CutIn = hose.CutIn };
        if (action != HoseAction.Cut)
        {
            // A hose that stays is as long as it is, whatever is cut into it.
            var reckoned = action == HoseAction.Set ? Parted(along, hose, limits) : along;
            return run with { LengthMm = reckoned is { } whole ? Whole(whole + (limits.SlackMm * (joiner is null ? 1 : 2))) : null };
        }

        var pieces = Pieces(hose, from, to, along, joiner, cutFrom, pressure, input, problems);
        return run with { Pieces = pieces, LengthMm = pieces.All(piece => piece.LengthMm is not null) ? pieces.Sum(piece => piece.LengthMm) : null };
    }

    private static ImmutableArray<HosePiece> Pieces(Hose hose, Port from, Port to, double? along, StepJoiner? joiner, List<StockHose> cutFrom, double? pressure, HoseInput input, List<HoseProblem> problems)
    {
        var limits = input.Limits;
        var fitting = cutFrom.Where(stock => limits.Fits(stock.BoreMm!.Value, from.SizeMm) || limits.Fits(stock.BoreMm!.Value, to.SizeMm)).ToList();
        if (cutFrom.Count > 0 && fitting.Count == 0)
        {
            problems.Add(new StockDoesNotFit(hose.Id, cutFrom[0].Part, cutFrom[0].BoreMm!.Value));
        }

        HosePiece Piece(double size, double? length)
        {
            var own = fitting.Find(stock => limits.Fits(stock.BoreMm!.Value, size));
            if (own is not null && hose.Circuit == HoseCircuit.Fuel && !Suits(own, pressure, limits))
            {
                problems.Add(new ClassTooLow(hose.Id, own.Part, own.Class, pressure));
            }

            own ??= input.Shop.FirstOrDefault(stock => stock is { IsSet: false, BoreMm: { } bore } && limits.Fits(bore, size) && stock.Circuits.Contains(hose.Circuit) && (hose.Circuit != HoseCircuit.Fuel || Suits(stock, pressure, limits)));
            return new HosePiece(own?.BoreMm ?? size, length, own?.Part);
        }

        if (joiner is null)
        {
            return [Piece(from.SizeMm, Parted(along, hose, limits) is { } whole ? Whole(whole + limits.SlackMm) : null)];
        }

        // The joiner sits near the engine, where it can be seen, unless the hose that is named fits the engine's end: then it is the long one.
        var isNearFrom = fitting.Count == 0 || !limits.Fits(fitting[0].BoreMm!.Value, from.SizeMm);
        var step = along is { } way ? Math.Min(limits.StepMm, way / 2) : (double?)null;
        var near = step is { } part ? Whole(part + limits.SlackMm) : (double?)null;
        var far = Parted(along - step, hose, limits) is { } rest ? Whole(rest + limits.SlackMm) : (double?)null;
        return [Piece(from.SizeMm, isNearFrom ? near : far), Piece(to.SizeMm, isNearFrom ? far : near)];
    }

    /// <summary>A fuel hose without a printed class is taken for one that may not be used.</summary>
    private static bool Suits(StockHose stock, double? pressure, HoseLimits limits) => stock.Class is { } known && FuelHoseClasses.Suits(known, pressure, limits.InjectionBar);

    private static double? Higher(double? one, double? other) => one is { } a && other is { } b ? Math.Max(a, b) : one ?? other;

    private static double? Along(Port from, Port to, HoseLimits limits) =>
        from.Location is { IsFinite: true } a && to.Location is { IsFinite: true } b && limits.RoutingFactor * a.DistanceTo(b) is var along && double.IsFinite(along) ? along : null;

    /// <summary>
    /// What is cut into a hose takes the place of as much of it as it is long, and two more ends are pushed over it (common practice, no source). Where along the
    /// hose that is no base says, so the hose stays one piece of the list; of a stepped one it is the longer piece.
    /// </summary>
    private static double? Parted(double? along, Hose hose, HoseLimits limits) =>
        along is { } way ? Math.Max(0, way - hose.CutIn.Sum(part => part.LengthMm ?? 0)) + (limits.SlackMm * hose.CutIn.Length) : null;

    // The nudge keeps 1.25 × 400 + 60 at 560, whatever the last bit of the product.
    private static double Whole(double length) => Math.Ceiling(length - 1e-6);
}
