using System.Collections.Immutable;
using Swapwright.Impact;
using Swapwright.Knowledge;

namespace Swapwright.Reports;

/// <summary>Guides as a few lines: by chassis, each with its donors.</summary>
internal static class GuideLines
{
    // Who needs every name reads the JSON form.
    private const int MostChassis = 12;
    private const int MostDonors = 12;

    /// <param name="state">What is so with all of them, as in <c>new</c>.</param>
    public static IEnumerable<ImpactItem> Of(KnowledgeBase kb, ImmutableArray<GuideName> guides, string state)
    {
        if (guides.IsEmpty)
        {
            yield break;
        }

        var chassis = guides.GroupBy(guide => guide.Chassis, StringComparer.Ordinal).ToList();
        var details = chassis.Take(MostChassis).Select(of => new ImpactDetail("in", $"{kb.Chassis[of.Key].Title}: {Donors(kb, [.. of])}")).ToList();
        if (chassis.Count > MostChassis)
        {
            details.Add(new ImpactDetail("in", $"{CheckWords.Grouped(chassis.Count - MostChassis)} more chassis"));
        }

        yield return new ImpactItem($"{CheckWords.Many(guides.Length, "guide")} {state}", [.. details]);
    }

    private static string Donors(KnowledgeBase kb, ImmutableArray<GuideName> guides)
    {
        var donors = guides.GroupBy(guide => guide.Donor, StringComparer.Ordinal).ToList();
        var names = donors.Take(MostDonors).Select(of => kb.Donors[of.Key].Title + Options(kb, [.. of])).ToList();
        if (donors.Count > MostDonors)
        {
            names.Add($"{CheckWords.Grouped(donors.Count - MostDonors)} more donors");
        }

        return string.Join("; ", names);
    }

    private static string Options(KnowledgeBase kb, ImmutableArray<GuideName> guides)
    {
        var options = guides.Select(guide => string.Join(", ", guide.Options.Where(option => option.Value != Choice.None)
            .Select(option => InSentence.Lower(kb.Choices[option.Key].Option(option.Value)?.Title ?? option.Value)))).Where(text => text.Length > 0).ToList();
        return options.Count == 0 ? "" : $" ({string.Join(" / ", options)})";
    }
}
