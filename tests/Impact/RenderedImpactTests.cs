using Swapwright.Findings;
using Swapwright.Impact;
using Swapwright.Site;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Impact;

/// <summary>One answer of one rule of the shipped base is changed: the guides that then read otherwise are those that the impact names.</summary>
public class RenderedImpactTests
{
    // Every so many guides are rendered on both sides, with all that lies beside them.
    private const int Step = 10;

    [Fact]
    public void Between_OneAnswerOfOneRule_NamesTheGuidesThatRenderOtherwise()
    {
        var old = ShippedImpactTests.Shipped();
        var @new = ShippedImpactTests.Resolved(ShippedImpactTests.With("rules/cooling/radiator-of-quillet-m.yaml", "source: new", "source: other"));
        var impact = KnowledgeImpact.Between(old, @new);
        Assert.Empty(impact.Guides.Gained);
        Assert.Empty(impact.Guides.Lost);
        var (before, now) = (Rendered(old), Rendered(@new));
        Assert.Equal(before.Keys, now.Keys);
        var differing = before.Keys.Where(path => before[path] != now[path]).ToList();

        // The sample has to hold guides of both sorts.
        Assert.InRange(differing.Count, 2, before.Count - 2);
        var told = impact.Guides.Changed.Select(changed => changed.Guide.Id).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(before.Keys.Where(path => told.Contains(Id(path))), differing);
    }

    /// <summary>The guide that stands at a path: <c>guide/chassis/donor--option.html</c> is <c>chassis/donor/option</c>; an id has no two hyphens in a row.</summary>
    private static string Id(string path) => path["guide/".Length..^".html".Length].Replace("--", "/", StringComparison.Ordinal);

    /// <summary>Path of a guide → all its pages.</summary>
    private static OrderedDictionary<string, string> Rendered(Proof proof)
    {
        var templates = Templates.Embedded();
        var rendered = new OrderedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var guide in new SitePlan(proof, templates).Guides.Where((_, at) => at % Step == 0))
        {
            var pages = guide.Pages.Select(page => (page.Path, Html: templates.Render(page.Build()))).ToList();
            rendered.Add(pages[0].Path, string.Concat(pages.Select(page => page.Html)));
            guide.Done!();
        }

        return rendered;
    }
}
