using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>
/// Many pages looked at in a few tabs at a time. A tab goes from page to page: opening one for each takes longer than most pages do. What is
/// looked for among many is asked of the page itself: the driver's own way of finding elements is a script that it gives to each page first.
/// </summary>
internal static class Tabs
{
    /// <returns>What was seen of each page, in the order of <paramref name="paths"/>.</returns>
    public static async Task<IReadOnlyList<T>> Visit<T>(int tabs, IReadOnlyList<string> paths, Func<Task<IPage>> open, Func<IPage, string, Task<T>> look)
    {
        var seen = new T[paths.Count];
        var next = -1;
        await Task.WhenAll(Enumerable.Range(0, tabs).Select(async _ =>
        {
            var page = await open();
            for (var at = Interlocked.Increment(ref next); at < paths.Count; at = Interlocked.Increment(ref next))
            {
                seen[at] = await look(page, paths[at]);
            }

            await page.Context.CloseAsync();
        }));
        return seen;
    }
}
