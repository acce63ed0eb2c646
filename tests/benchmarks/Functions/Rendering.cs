using BenchmarkDotNet.Attributes;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Site.Rendering;

namespace Swapwright.Benchmarks.Functions;

/// <summary>The page of the shipped base's middle guide by the built-in templates.</summary>
public class Rendering
{
    private readonly Templates _templates = Templates.Embedded();
    private Page _page = null!;
    private int _length;

    [GlobalSetup]
    public void Setup()
    {
        var site = ShippedBase.Fresh();
        _page = GuidePages.Build(site, site.Guides[site.Guides.Length / 2]);
        if (!_templates.TryCompiled(_page, Take))
        {
            throw new InvalidOperationException("a guide takes the engine");
        }
    }

    [Benchmark(Description = "render a guide by compiled templates")]
    public int Compiled()
    {
        _templates.TryCompiled(_page, Take);
        return _length;
    }

    [Benchmark(Description = "render the same guide by the engine")]
    public int Engine()
    {
        _templates.RenderByEngine(_page, Take);
        return _length;
    }

    private void Take(ReadOnlySpan<char> html) => _length = html.Length;
}
