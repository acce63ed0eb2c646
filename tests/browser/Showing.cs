using System.Text.Json;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>How a page came to be shown, by the browser's own entries (W3C Largest Contentful Paint, Layout Instability).</summary>
/// <param name="LargestMs">When the largest part was painted, in ms from the start; 0 where the browser tells of none.</param>
/// <param name="Shift">By how much parts moved afterwards: the sum of the scores of Layout Instability.</param>
/// <param name="Shifted">What moved.</param>
/// <param name="Errors">Errors of its scripts.</param>
internal sealed record Showing(double LargestMs, double Shift, string Shifted, IReadOnlyList<string> Errors)
{
    private const string Measure = """
        () => new Promise((done) => {
          const told = { largest: 0, shift: 0, shifted: [] };
          new PerformanceObserver((list) => { for (const one of list.getEntries()) told.largest = one.startTime; }).observe({ type: "largest-contentful-paint", buffered: true });
          new PerformanceObserver((list) => {
            for (const one of list.getEntries()) {
              told.shift += one.value;
              told.shifted.push(...one.sources.map((source) => (source.node?.outerHTML ?? "").slice(0, 80)));
            }
          }).observe({ type: "layout-shift", buffered: true });
          setTimeout(() => done(told), 400);
        })
        """;

    /// <summary>Goes to an address and watches the page for a while in which it does nothing.</summary>
    public static async Task<Showing> Of(IPage page, string address)
    {
        var errors = new List<string>();
        void Note(object? sender, string error) => errors.Add(error);
        page.PageError += Note;
        await page.GotoAsync(address);
        var told = await page.EvaluateAsync<JsonElement>(Measure);
        page.PageError -= Note;
        return new Showing(told.GetProperty("largest").GetDouble(), told.GetProperty("shift").GetDouble(), told.GetProperty("shifted").ToString(), errors);
    }
}
