using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>Guides side by side: table, chart, and which of them no other beats.</summary>
internal static class Comparisons
{
    /// <summary>Tasks named under "what is hard" before the rest is only counted.</summary>
    private const int MostNamed = 2;

    /// <param name="other">What the guides of the page differ in: their donor or their chassis.</param>
    public static Comparison? Of(SiteKnowledge site, IReadOnlyList<GuideEntry> guides, Func<GuideEntry, Variant> other)
    {
        if (guides.Count == 0)
        {
            return null;
        }

        // By family, as the start page leads here; a family's guides stay together.
        var ordered = guides.OrderBy(guide => other(guide).Family, StringComparer.Ordinal).ThenBy(guide => other(guide).Years.From).ThenBy(guide => guide.Path, StringComparer.Ordinal).ToList();
        var counts = ordered.ConvertAll(guide => site.BriefOf(guide).Counts);
        var byMass = counts.TrueForAll(count => count.PowerToMass is not null);
        var unbeaten = Unbeaten.Of([.. counts.Select(count => (ImmutableArray<decimal?>)[count.Money.Likely, count.Hours.Likely, -(byMass ? count.PowerToMass : count.Power)])]);
        var shared = counts.Select(count => count.Hardest.AsEnumerable()).Aggregate((one, next) => one.Intersect(next, StringComparer.Ordinal)).ToList();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var rows = ordered.Select((guide, at) => Row(site, guide, other(guide), counts[at], byMass, ordered.Count > 1 ? shared : []) with
        {
            Number = Number(at),
            Family = seen.Add(other(guide).Family) ? SitePaths.With(other(guide).Family) : null,
            IsUnbeaten = unbeaten[at],
        }).ToList();
        var hasHard = rows.Count < 2 || rows.Exists(row => row.Hard.Text != rows[0].Hard.Text);
        return new Comparison(
            rows.Count < 2 ? HtmlString.Empty : new HtmlString(CompareChart.Svg(
                [.. counts.Select((count, at) => new ComparePoint(Number(at), Title(guides: ordered, at, other), (double)count.Money.Likely, (double)count.Hours.Likely, unbeaten[at]))],
                site.Base.Settings.Currency,
                "compare-chart")),
            $"Worked out for each guide's recommended choices: the likely sum of parts and hours, and the {(byMass ? "power to mass of the finished car" : "power of the engine")}. A filled square marks a guide that no other on this page beats; to beat it, another would have to be as good in all three and better in one.{(rows.Count > 1 && shared.Count > 0 ? $" Hard in all of them ({ShopWords.Skill(counts[0].Skill)}): {Named(shared)}." : hasHard ? "" : $" All ask for {InSentence.Lower(rows[0].Hard.Text)}.")}",
            rows)
        {
            HasHard = hasHard,
        };
    }

    private static string Number(int at) => (at + 1).ToString(CultureInfo.InvariantCulture);

    private static string Title(List<GuideEntry> guides, int at, Func<GuideEntry, Variant> other) =>
        other(guides[at]).Title + (guides[at].Options.Length > 0 ? $", {InSentence.Lower(guides[at].Options)}" : "");

    private static ComparisonRow Row(SiteKnowledge site, GuideEntry guide, Variant other, GuideCounts counts, bool byMass, List<string> shared) => new()
    {
        Number = "",
        Other = other is DonorVariant donor ? SiteKnowledge.Link(donor) : SiteKnowledge.Link((ChassisVariant)other),
        Guide = new PageLink(guide.Options.Length > 0 ? guide.Options : "Guide", guide.Path),
        Money = Cell($"{SiteKnowledge.Number(counts.Money.Likely)} {site.Base.Settings.Currency} ({SiteKnowledge.Span(counts.Money)})", counts.Money.Likely),
        Hours = Cell($"{SiteKnowledge.Number(counts.Hours.Likely)} h ({SiteKnowledge.Span(counts.Hours)})", counts.Hours.Likely),
        Power = Cell(
            string.Join(", ", new[] { counts.Power is { } power ? $"{SiteKnowledge.Number(power)} kW" : "", counts.PowerToMass is { } ratio ? $"{SiteKnowledge.Number(Math.Round(ratio))} W/kg" : "" }.Where(text => text.Length > 0)),
            byMass ? counts.PowerToMass : counts.Power),
        Plugs = counts.Plugs == 0 ? Cell("", null) : Cell($"{SiteKnowledge.Number(counts.PlugsChanged)} of {SiteKnowledge.Number(counts.Plugs)}", counts.PlugsChanged),
        Wires = Cell(SiteKnowledge.Number(counts.WiresAdded), counts.WiresAdded),
        Parts = Cell(SiteKnowledge.Number(counts.PartsBought), counts.PartsBought),
        Standing = Cell(counts.BuiltShare is { } built ? $"{SiteKnowledge.Number(Math.Round(built))} % built" : "", counts.BuiltShare),
        Hard = Cell(Hard(counts, shared), ShopWords.SkillRank(counts.Skill)),
    };

    // What every guide of the page asks for is said once, above the table.
    private static string Hard(GuideCounts counts, List<string> shared)
    {
        var own = counts.Hardest.Except(shared, StringComparer.Ordinal).ToList();
        return ShopWords.Capital(ShopWords.Skill(counts.Skill)) + (counts.Skill == "plain" || own.Count == 0 ? "" : $": {Named(own)}");
    }

    private static string Named(List<string> tasks) =>
        string.Join("; ", tasks.Take(MostNamed).Select(InSentence.Lower)) + (tasks.Count > MostNamed ? $"; {SiteKnowledge.Number(tasks.Count - MostNamed)} more" : "");

    private static ComparedCell Cell(string text, decimal? sort) => new(text, sort is { } number ? number.ToString("0.##", CultureInfo.InvariantCulture) : "");
}
