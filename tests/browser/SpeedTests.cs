using System.Text.Json;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>How soon a guide is there and whether it then keeps still, by the browser's own entries (W3C Largest Contentful Paint, Layout Instability).</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class SpeedTests(RenderedSite site)
{
    // The best of a few loads, and of a few more where none was soon: what the machine does besides may slow one, and cannot hasten any.
    private const int Loads = 4;
    private const int MostLoads = 12;
    private const int Together = 6;
    private const double MostMs = 1000;

    // "To provide a good user experience, sites should strive to have a CLS score of 0.1 or less" (web.dev, Cumulative Layout Shift; from memory).
    private const double GoodShift = 0.1;

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

    [Theory]
    [InlineData(390)]
    [InlineData(1440)]
    public async Task HeaviestGuide_FromDisk_IsPaintedWithinASecondAndKeepsStill(int width)
    {
        var path = PageKinds.Of(site).Single(one => one.StartsWith("guide/", StringComparison.Ordinal));
        var painted = new List<double>();
        for (var load = 0; load < Loads || (load < MostLoads && painted.Min() >= MostMs); load++)
        {
            var told = await Load(path, width);
            painted.Add(told.GetProperty("largest").GetDouble());
            Assert.True(told.GetProperty("shift").GetDouble() == 0, $"{path} moves after it is shown: {told.GetProperty("shifted")}");
        }

        Assert.All(painted, one => Assert.True(one > 0, "the browser tells no largest paint"));
        Assert.True(painted.Min() < MostMs, $"{path}: {string.Join(", ", painted)} ms");
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1440)]
    public async Task EveryKindOfPage_IsSteadyAfterItIsShown(int width)
    {
        // Several at a time: each is watched for a while in which it does nothing.
        var paths = PageKinds.Of(site);
        Assert.InRange(paths.Count, 30, 100);
        var seen = await Tabs.Visit(Together, paths, () => Open(width), Watched);
        foreach (var (path, told) in paths.Zip(seen))
        {
            Assert.True(told.GetProperty("shift").GetDouble() <= GoodShift, $"{path} moves by {told.GetProperty("shift")} after it is shown: {told.GetProperty("shifted")}");
        }
    }

    private async Task<JsonElement> Load(string path, int width)
    {
        var page = await Open(width);
        var told = await Watched(page, path);
        await page.Context.CloseAsync();
        return told;
    }

    private async Task<IPage> Open(int width) =>
        await (await site.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 900 } })).NewPageAsync();

    private async Task<JsonElement> Watched(IPage page, string path)
    {
        var problems = new List<string>();
        void Note(object? sender, string error) => problems.Add(error);
        page.PageError += Note;
        await page.GotoAsync(site.AddressOf(path));
        var told = (await page.EvaluateAsync<JsonElement>(Measure)).Clone();
        page.PageError -= Note;
        Assert.Empty(problems);
        return told;
    }
}
