using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Site.Pages;

/// <summary>The hoses of a guide's recommended combination.</summary>
internal static class GuideHoses
{
    public static ImmutableArray<GuideHose> Of(SiteKnowledge site, Sheet sheet) => sheet.Hoses is not { } hoses
        ? []
        :
        [
            .. hoses.Runs.Select(run => new GuideHose(
                ShopWords.Capital(HoseWords.Circuit(run.Circuit)),
                End(run.From),
                End(run.To),
                HoseWords.Size(run),
                HoseWords.Length(run.LengthMm),
                string.Join(" ", Action(site, hoses, run)),
                Class(run))),
            .. hoses.Blanked.Select(blank => new GuideHose(ShopWords.Capital(HoseWords.Circuit(blank.Port.Circuit)), End(blank.Port), "nothing", $"{HoseWords.Number(blank.Port.SizeMm)} mm", "", $"Close it: {HoseWords.Blank(blank.Port)}.")),
            .. hoses.Open.Select(port => new GuideHose(ShopWords.Capital(HoseWords.Circuit(port.Circuit)), End(port), "the air", $"{HoseWords.Number(port.SizeMm)} mm", "", $"Leave it open. {port.Open}")),
        ];

    /// <summary>Circuit by circuit what there is to do.</summary>
    public static ImmutableArray<GuideHoseSum> Sums(Sheet sheet) => sheet.Hoses is not { } hoses
        ? []
        :
        [
            .. HoseDrawing.Circuits(hoses).Select(circuit => new GuideHoseSum(ShopWords.Capital(HoseWords.Circuit(circuit)), ShopWords.Capital(string.Join(", ", InShort(hoses, circuit))))),
        ];

    private static IEnumerable<string> InShort(HoseSheet hoses, HoseCircuit circuit)
    {
        var runs = hoses.Runs.Where(run => run.Circuit == circuit).ToList();
        string? Count(int count, string words) => count == 0 ? null : $"{SiteKnowledge.Number(count)} {words}";
        return new[]
        {
            Count(runs.Count(run => run.Action is not (HoseAction.Keep or HoseAction.Set)), "cut to length"),
            Count(runs.Count(run => run.Action == HoseAction.Set), "from a set"),
            Count(runs.Count(run => run.Action == HoseAction.Keep), "kept"),
            Count(hoses.Blanked.Count(blank => blank.Port.Circuit == circuit), "closed"),
            Count(hoses.Open.Count(port => port.Circuit == circuit), "left open"),
        }.OfType<string>();
    }

    public static ImmutableArray<GuideHoseCircuit> Circuits(Sheet sheet) => sheet.Hoses is not { } hoses
        ? []
        :
        [
            .. HoseDrawing.Circuits(hoses).Select(circuit => new GuideHoseCircuit
            {
                Title = ShopWords.Capital(HoseWords.Circuit(circuit)),
                Drawing = new HtmlString(HoseDrawing.Svg(hoses, circuit, $"hoses-{circuit.ToString().ToLowerInvariant()}")),
                Totals =
                [
                    .. hoses.Totals.Where(total => total.Circuit == circuit).Select(total => new NamedValue(
                        $"{HoseWords.Number(total.BoreMm)} mm{(total.LeastClass is { } known ? $", {HoseWords.Class(known)}" : "")}",
                        $"{SiteKnowledge.Number(total.LengthMm / 1000, "0.00")} m",
                        total.Pieces == 1 ? "one piece" : $"{SiteKnowledge.Number(total.Pieces)} pieces")),
                ],
            }),
        ];

    /// <summary>Hose that is cut, by what is bought: how many lengths, and what is over.</summary>
    public static ImmutableArray<NamedValue> Bought(SiteKnowledge site, Sheet sheet) =>
    [
        .. from purchase in sheet.Hoses?.Purchases ?? []
           where purchase.CutMm is not null
           select new NamedValue(site.Base.Parts.Find(purchase.Part)?.Title ?? purchase.Part, SiteKnowledge.Number(purchase.Amount), $"{HoseWords.Length(purchase.CutMm)} to cut, {HoseWords.Length(purchase.LeftMm)} left over"),
    ];

    private static string End(Port port) => $"{InSentence.Lower(port.Title)} ({port.Owner})";

    private static string Class(HoseRun run) => run.LeastClass is not { } known ? "" : $"{HoseWords.Class(known)}{(run.PressureBar is { } bar ? $", {SiteKnowledge.Number(bar, "0.##")} bar" : "")}";

    private static IEnumerable<string> Action(SiteKnowledge site, HoseSheet hoses, HoseRun run)
    {
        string Title(string part) => InSentence.Lower(site.Base.Parts.Find(part)?.Title ?? part);
        yield return run.Action switch
        {
            HoseAction.Keep => run.LeastClass is { } least ? $"Keep the hose that is there if it is marked {HoseWords.Class(least)} and not hard." : "Keep the hose that is there.",
            HoseAction.Set => $"Take it from the set: {Title(run.Set!)}.",
            _ => string.Join(" ", run.Pieces.Select(piece => $"Cut {HoseWords.Length(piece.LengthMm)} of {HoseWords.Number(piece.BoreMm)} mm hose{(piece.Part is { } part ? $" ({Title(part)})" : "")}.")),
        };
        if (run.Joiner is { } joiner)
        {
            yield return $"Join the two sizes with: {Title(joiner.Part)}.";
        }

        if (!run.CutIn.IsEmpty)
        {
            yield return $"Cut into it: {string.Join("; ", run.CutIn.Select(one => Title(one.Part)))}. That takes {SiteKnowledge.Number(run.MoreClips)} more clips.";
        }

        foreach (var teed in hoses.Tees.Where(teed => teed.Hoses.Contains(run.Id)))
        {
            yield return $"It shares {InSentence.Lower(teed.Port.Title)} by a tee: {Title(teed.Tee.Part)}.";
        }
    }
}
