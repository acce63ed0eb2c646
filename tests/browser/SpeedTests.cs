using System.Globalization;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>How soon a guide is there, and whether pages then keep still.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class SpeedTests(RenderedSite site)
{
    // The best of a few loads, and of a few more where none was soon: what the machine does besides may slow one, and cannot hasten any.
    private const int Loads = 4;
    private const int MostLoads = 12;
    private const double MostMs = 1000;

    // "To provide a good user experience, sites should strive to have a CLS score of 0.1 or less" (web.dev, Cumulative Layout Shift; from memory).
    private const double GoodShift = 0.1;

    [Theory]
    [InlineData(PageVisits.Narrow)]
    [InlineData(PageVisits.Wide)]
    public async Task HeaviestGuide_FromDisk_IsPaintedWithinASecondAndKeepsStill(int width)
    {
        var path = PageKinds.Of(site).Single(one => one.StartsWith("guide/", StringComparison.Ordinal));
        var painted = new List<double>();
        for (var load = 0; load < Loads || (load < MostLoads && painted.Min() >= MostMs); load++)
        {
            var page = await site.Open(width, ColorScheme.Light);
            var showing = await Showing.Of(page, site.AddressOf(path));
            await page.Context.CloseAsync();
            Assert.Empty(showing.Errors);
            Assert.True(showing.Shift == 0, $"{path} moves after it is shown: {showing.Shifted}");
            painted.Add(showing.LargestMs);
        }

        Assert.All(painted, one => Assert.True(one > 0, "the browser tells no largest paint"));
        Assert.True(painted.Min() < MostMs, $"{path}: {string.Join(", ", painted)} ms");
    }

    [Fact]
    public async Task Showing_OfAPageThatMoves_TellsOfIt()
    {
        // A part that comes above all others as soon as they are painted. What is painted late is not seen: then the page is loaded again.
        const string mover = "() => document.body.prepend(Object.assign(document.createElement('div'), { style: 'height: 400px' }))";
        var page = await site.Open(PageVisits.Narrow, ColorScheme.Light);
        await page.AddInitScriptAsync($"new PerformanceObserver({mover}).observe({{ type: 'largest-contentful-paint', buffered: true }})");
        var showing = await Showing.Of(page, site.AddressOf("about.html"));
        for (var load = 1; load < MostLoads && showing.Shift == 0; load++)
        {
            showing = await Showing.Of(page, site.AddressOf("about.html"));
        }

        Assert.True(showing is { LargestMs: > 0, Shift: > GoodShift }, showing.ToString());
        Assert.NotEqual("[]", showing.Shifted);
    }

    [Theory]
    [InlineData(PageVisits.Narrow)]
    [InlineData(PageVisits.Wide)]
    public async Task EveryKindOfPage_IsSteadyAfterItIsShown(int width)
    {
        foreach (var (path, showing, _) in await site.Visits.At(width))
        {
            Assert.Empty(showing.Errors);
            Assert.True(showing.Shift <= GoodShift, string.Create(CultureInfo.InvariantCulture, $"{path} moves by {showing.Shift} after it is shown: {showing.Shifted}"));
        }
    }
}
