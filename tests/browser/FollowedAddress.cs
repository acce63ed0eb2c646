using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>Pages that show what their address says hear of a new one in a task of their own, which may come after the next question to the page.</summary>
internal static class FollowedAddress
{
    /// <summary>Does what changes the part of the address after `#`, and comes back when the page's own listener has heard of it.</summary>
    public static async Task FollowAsync(this IPage page, Func<Task> act)
    {
        // Listeners are called in the order in which they came: the page's own before this one.
        await page.EvaluateAsync("() => { window.heard = new Promise((done) => addEventListener('hashchange', () => done(), { once: true })); }");
        await act();
        await page.EvaluateAsync("() => window.heard");
    }
}
