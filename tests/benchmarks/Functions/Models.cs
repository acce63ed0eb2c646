using BenchmarkDotNet.Attributes;
using Swapwright.Site.Pages;

namespace Swapwright.Benchmarks.Functions;

/// <summary>Guides in an even sample of the shipped base, each made once, as in a run of <c>site</c>: what they share is made for the first that asks.</summary>
public class Models
{
    private const int Guides = 25;
    private SiteKnowledge _site = null!;
    private GuideEntry[] _guides = [];

    [IterationSetup]
    public void Setup()
    {
        _site = ShippedBase.Fresh();
        _guides = [.. Enumerable.Range(0, Guides).Select(at => _site.Guides[at * _site.Guides.Length / Guides])];
        foreach (var guide in _guides)
        {
            _ = _site.SheetOf(guide);
        }
    }

    [Benchmark(Description = "model of a guide page, its sheet made before", OperationsPerInvoke = Guides)]
    public int Model() => _guides.Sum(guide => GuidePages.Build(_site, guide).Systems.Count);
}
