using BenchmarkDotNet.Attributes;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Binding;
using Swapwright.Rules;
using Swapwright.Source;

namespace Swapwright.Benchmarks.Functions;

/// <summary>The drawn base, read before: what stands where, and everything that <c>check</c> asks.</summary>
public class Proving
{
    private SourceTree _tree = null!;
    private KnowledgeBase _base = null!;

    [GlobalSetup]
    public void Setup()
    {
        _tree = SmallBase.Read();
        _base = KnowledgeBinder.Bind(_tree).Base;
        if (Proof.Of(_tree) is not { Resolution: not null, HasErrors: false })
        {
            throw new InvalidOperationException("the drawn base is not sound");
        }
    }

    [Benchmark(Description = "resolve a base of 200 rules")]
    public object Resolve()
    {
        var resolution = Resolver.Resolve(_base);
        resolution.Complete();
        return resolution;
    }

    [Benchmark(Description = "prove a base of 200 rules")]
    public object Prove() => Proof.Of(_tree);
}
