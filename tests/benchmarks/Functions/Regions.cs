using System.Collections.Immutable;
using System.Numerics;
using BenchmarkDotNet.Attributes;
using Swapwright.Benchmarks.Bases;
using Swapwright.Space;

namespace Swapwright.Benchmarks.Functions;

/// <summary>Questions to a store that was never asked them: it remembers answers, so each round asks a copy.</summary>
public class Regions
{
    private const int Drawn = 400;
    private const int Pairs = 2 * Drawn;
    private static readonly ImmutableArray<int> s_sizes = [60, 200, 2, 3, 4, 5, 6, 2, 3, 4, 5, 6];
    private readonly RegionStore _asked = new(
        [.. s_sizes.Select((size, at) => new Variable(Draw.Text($"v{at}"), [.. Enumerable.Range(0, size).Select(value => Draw.Text($"{value}"))]))]);
    private readonly Region[] _regions = new Region[Drawn];
    private RegionStore _store = null!;

    [GlobalSetup]
    public void Setup()
    {
        var random = new Random(1);
        ValueSet Values(int variable)
        {
            var kept = Enumerable.Range(0, s_sizes[variable]).Select(_ => random.Next(2) == 0).ToArray();
            return ValueSet.Where(kept.Length, value => kept[value] || value == 0);
        }

        Region Term() => _asked.Product(Enumerable.Range(0, 3).Select(_ => random.Next(s_sizes.Length)).Select(variable => new Constraint(variable, Values(variable))));
        for (var at = 0; at < Drawn; at++)
        {
            _regions[at] = _asked.OrAll(Enumerable.Range(0, 3).Select(_ => Term()));
        }
    }

    [IterationSetup]
    public void Forget() => _store = _asked.Copy();

    [Benchmark(Description = "regions: and", OperationsPerInvoke = Pairs)]
    public int And() => OverPairs((a, b) => _store.And(a, b).Id);

    [Benchmark(Description = "regions: or", OperationsPerInvoke = Pairs)]
    public int Or() => OverPairs((a, b) => _store.Or(a, b).Id);

    [Benchmark(Description = "regions: do two meet", OperationsPerInvoke = Pairs)]
    public int Intersects() => OverPairs((a, b) => _store.Intersects(a, b) ? 1 : 0);

    [Benchmark(Description = "regions: count", OperationsPerInvoke = Drawn)]
    public BigInteger Count() => _regions.Aggregate(BigInteger.Zero, (sum, region) => sum + _store.Count(region));

    private int OverPairs(Func<Region, Region, int> ask)
    {
        var sum = 0;
        for (var pair = 0; pair < Pairs; pair++)
        {
            sum ^= ask(_regions[pair % Drawn], _regions[(pair + 1 + (pair / Drawn)) % Drawn]);
        }

        return sum;
    }
}
