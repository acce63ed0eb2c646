using System.Collections.Immutable;

namespace Swapwright.Worksheets.Hoses;

/// <summary>
/// Which hose goes where: every fitted port ends in a hose, under a cap or plug, or open to the air on purpose. Lengths are
/// reckoned as the straight way times the routing factor, plus slack for every piece; hose is bought for pieces that are longer by a
/// share, since the last piece of a length leaves nothing for a second try (common practice, no source).
/// </summary>
public static class HoseWorksheet
{
    /// <summary>
    /// Lengths in millimetres, pressures in bar. A port that cannot be is left out and told as a problem, a length without both ends
    /// measured is null; nothing is thrown.
    /// </summary>
    public static HoseSheet Compute(HoseInput input)
    {
        var problems = new List<HoseProblem>();
        var ports = Usable(input.Ports, problems);
        var hoses = input.Hoses.Where(hose => hose.From != hose.To).OrderBy(hose => hose.Circuit).ToList();
        var joined = hoses.Where(hose => hose.Work is HoseWork.Keep or HoseWork.New && ports.ContainsKey(hose.From) && ports.ContainsKey(hose.To)).ToList();

        // Between pump and regulator the pressure is one, whatever a filter or a pipe was made for.
        var feedBar = joined.Where(hose => hose.Circuit == HoseCircuit.Fuel).SelectMany(hose => new[] { ports[hose.From].PressureBar, ports[hose.To].PressureBar })
            .Where(bar => bar >= input.Limits.InjectionBar).DefaultIfEmpty(null).Max();
        var runs = joined.Select(hose => HoseRouting.Run(hose, ports[hose.From], ports[hose.To], feedBar, input, problems)).ToImmutableArray();

        var blanked = ImmutableArray.CreateBuilder<BlankedPort>();
        var open = ImmutableArray.CreateBuilder<Port>();
        var tees = ImmutableArray.CreateBuilder<TeedPort>();
        foreach (var port in input.Ports.Where(port => ports.TryGetValue(port.Id, out var usable) && ReferenceEquals(usable, port)).OrderBy(port => port.Circuit))
        {
            var on = joined.Where(hose => hose.From == port.Id || hose.To == port.Id).ToList();
            if (on.Count == 0)
            {
                Unjoined(port, hoses, blanked, open, problems);
            }
            else if (on.Count > 1)
            {
                var ids = on.Select(hose => hose.Id).Order(StringComparer.Ordinal).ToImmutableArray();
                if (on.SelectMany(hose => hose.Tees).FirstOrDefault(tee => Serves(tee, port, on.Count, input.Limits)) is { } tee)
                {
                    tees.Add(new TeedPort(port, tee, ids));
                }
                else
                {
                    problems.Add(new PortUsedTwice(port.Id, ids));
                }
            }
        }

        return new HoseSheet(runs, blanked.ToImmutable(), open.ToImmutable(), tees.ToImmutable(), Totals(runs), Purchases(runs, input), Sorted(problems));
    }

    /// <summary>Whether a tee lets a port serve so many hoses: an end for the port and one for each of them.</summary>
    public static bool Serves(Tee tee, Port port, int hoses, HoseLimits limits) =>
        tee.SizesMm.Length > hoses && tee.SizesMm.Any(size => limits.Fits(size, port.SizeMm));

    private static Dictionary<string, Port> Usable(ImmutableArray<Port> ports, List<HoseProblem> problems)
    {
        var usable = new Dictionary<string, Port>(StringComparer.Ordinal);
        foreach (var port in ports)
        {
            if (!double.IsFinite(port.SizeMm) || port.SizeMm <= 0 || !(port.PressureBar is null or >= 0 and < double.PositiveInfinity) || !usable.TryAdd(port.Id, port))
            {
                problems.Add(new ImpossiblePort(port.Id));
            }
        }

        return usable;
    }

    private static void Unjoined(Port port, List<Hose> hoses, ImmutableArray<BlankedPort>.Builder blanked, ImmutableArray<Port>.Builder open, List<HoseProblem> problems)
    {
        var wanted = hoses.Where(hose => hose.From == port.Id || hose.To == port.Id).ToList();
        if (port.Open.Length > 0)
        {
            open.Add(port);
        }
        else if (port.Closed || wanted.Exists(hose => hose.Work == HoseWork.LeftOff) || (wanted.Count > 0 && wanted.TrueForAll(hose => hose.Optional)))
        {
            blanked.Add(new BlankedPort(port));
        }
        else
        {
            problems.Add(new PortLeftOpen(port.Id));
        }
    }

    private static ImmutableArray<HoseTotal> Totals(ImmutableArray<HoseRun> runs) =>
    [
        .. runs.SelectMany(run => run.Pieces.Select(piece => (run.Circuit, piece.BoreMm, run.LeastClass, piece.LengthMm)))
            .GroupBy(piece => (piece.Circuit, piece.BoreMm, piece.LeastClass))
            .OrderBy(group => group.Key.Circuit).ThenBy(group => group.Key.BoreMm).ThenBy(group => group.Key.LeastClass)
            .Select(group => new HoseTotal(group.Key.Circuit, group.Key.BoreMm, group.Key.LeastClass, group.Sum(piece => piece.LengthMm ?? 0), group.Count())),
    ];

    private static ImmutableArray<HosePurchase> Purchases(ImmutableArray<HoseRun> runs, HoseInput input)
    {
        var stock = input.Hoses.SelectMany(hose => hose.Stock).Concat(input.Shop).DistinctBy(one => one.Part, StringComparer.Ordinal).ToDictionary(one => one.Part, StringComparer.Ordinal);
        var cut = runs.SelectMany(run => run.Pieces).Where(piece => piece.Part is not null).GroupBy(piece => piece.Part!, StringComparer.Ordinal)
            .Select(group => Bought(group.Key, [.. group.Select(piece => piece.LengthMm ?? 0)], stock[group.Key].PieceMm, input.Limits));
        var sets = runs.Select(run => run.Set).OfType<string>().Distinct(StringComparer.Ordinal).Select(set => new HosePurchase(set, 1));
        var joiners = runs.Select(run => run.Joiner?.Part).OfType<string>().GroupBy(part => part, StringComparer.Ordinal).Select(group => new HosePurchase(group.Key, group.Count()));
        return [.. cut.Concat(sets).Concat(joiners).OrderBy(purchase => purchase.Part, StringComparer.Ordinal)];
    }

    private static HosePurchase Bought(string part, ImmutableArray<double> pieces, double? stockMm, HoseLimits limits)
    {
        var amount = Math.Max(1, StockCutting.Count(pieces.Select(limits.WithSpare), stockMm));
        var cut = pieces.Sum();
        return new(part, amount) { CutMm = cut, LeftMm = (amount * (stockMm is > 0 ? stockMm.Value : 1000)) - cut };
    }

    private static ImmutableArray<HoseProblem> Sorted(List<HoseProblem> problems) =>
        [.. problems.Distinct().OrderBy(problem => problem.GetType().Name, StringComparer.Ordinal).ThenBy(problem => problem.Subject, StringComparer.Ordinal)];
}
