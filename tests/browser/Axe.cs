using System.Text.Json;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>A page as axe-core judges it: the rules of WCAG 2.0 to 2.2, levels A and AA, and its good practices.</summary>
internal static class Axe
{
    private const string Run = """
        async () => {
          const told = await axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"], resultTypes: ["violations"] });
          return told.violations.map((one) => `${one.id} at ${one.nodes.length}: ${one.nodes[0].target.join(" ")}: ${one.nodes[0].failureSummary}`);
        }
        """;

    private static readonly string s_axe = File.ReadAllText(NodeTools.PathOf("axe-core", "axe.min.js"));

    /// <returns>The rules that the page breaks, each with the first place where it does.</returns>
    public static async Task<IReadOnlyList<string>> Violations(IPage page)
    {
        await page.EvaluateAsync(s_axe);
        return [.. (await page.EvaluateAsync<JsonElement>(Run)).EnumerateArray().Select(one => one.GetString()!)];
    }
}
