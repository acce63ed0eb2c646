using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>What became of the mutations of each class, as a Markdown table.</summary>
internal static class MutationTable
{
    public static string Of(ImmutableArray<Verdict> verdicts)
    {
        var table = new StringBuilder("| mutation | tried | must be reported | reported | recall | seen besides | no check can see | harmless | false alarms |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        foreach (var kind in MutationRun.Classes)
        {
            table.Append(Row(kind.Name, [.. verdicts.Where(verdict => verdict.Class.Name == kind.Name)]));
        }

        return table.Append(Row("**all**", verdicts)).ToString();
    }

    /// <summary>Every mutation of some outcomes, a line each.</summary>
    public static string List(ImmutableArray<Verdict> verdicts, params ReadOnlySpan<Outcome> outcomes)
    {
        var wanted = outcomes.ToArray();
        return string.Join('\n', verdicts.Where(verdict => wanted.Contains(verdict.Outcome))
            .Select(verdict => $"{verdict.Outcome}: {verdict.Class.Name}: {verdict.Mutation.What} ({verdict.Because}); found: {string.Join(" / ", verdict.Findings.Take(4).Select(finding => $"{finding.Id} {finding.Place} {finding.Message}"))}"));
    }

    private static string Row(string name, ImmutableArray<Verdict> verdicts)
    {
        int Count(Outcome outcome) => verdicts.Count(verdict => verdict.Outcome == outcome);
        var must = Count(Outcome.Reported) + Count(Outcome.Missed);
        var recall = must == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * Count(Outcome.Reported) / must:0} %");
        return string.Create(CultureInfo.InvariantCulture, $"| {name} | {verdicts.Length} | {must} | {Count(Outcome.Reported)} | {recall} | {Count(Outcome.Noticed)} | {Count(Outcome.Unseen)} | {Count(Outcome.Harmless)} | {Count(Outcome.FalseAlarm)} |\n");
    }
}
