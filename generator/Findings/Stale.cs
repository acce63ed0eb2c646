using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>Knowledge that was last held against the vehicle too long before the day that the base is judged by, or on no known day.</summary>
public static class Stale
{
    public static readonly EntityCheck Check = new(FindingKinds.Stale, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        var dated = kb.Rules.All.Select(rule => (rule.Id, rule.Place, rule.Standing, rule.Checked, rule.CheckedPlace))
            .Concat(kb.Articles.All.Select(article => (article.Id, article.Place, article.Standing, article.Checked, article.CheckedPlace)));
        foreach (var (id, place, standing, written, writtenPlace) in dated)
        {
            if (written is null)
            {
                if (standing is "measured" or "built")
                {
                    yield return new Finding(FindingKinds.Stale, $"`{id}` is {standing}, but nothing says when it was checked", place) { Mend = "Add `checked`, the day on which it was last held against a vehicle." };
                }
            }
            else if (Day(kb.Settings.AsOf) is { } judged && Day(written) is { } day && IsBefore(day, judged, kb.Settings.StaleAfterMonths))
            {
                yield return new Finding(FindingKinds.Stale, string.Create(CultureInfo.InvariantCulture, $"`{id}` was checked more than {kb.Settings.StaleAfterMonths} months before {kb.Settings.AsOf}"), writtenPlace)
                {
                    Mend = "Hold it against a vehicle or its source again, correct it where needed, and set `checked` to that day.",
                };
            }
        }
    }

    // The calendar begins in the year 1: of what would lie before it nothing is stale.
    internal static bool IsBefore(DateOnly day, DateOnly judged, int months) => (judged.Year * 12) + judged.Month - 1 - months >= 12 && day < judged.AddMonths(-months);

    private static DateOnly? Day(string text) => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
