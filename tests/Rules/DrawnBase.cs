using System.Collections.Immutable;
using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Tests.Rules;

/// <summary>A drawn base with both views of it: over regions, and combination by combination.</summary>
internal sealed class DrawnBase
{
    public DrawnBase(int seed)
    {
        Files = RandomBase.Draw(seed);
        Base = Files.Bind();
        Truth = new Exhaustive(Base);
        Resolution = Resolver.Resolve(Base);
        Words = new RegionWords(Resolution);
    }

    public MemoryBase Files { get; }

    public KnowledgeBase Base { get; }

    public Exhaustive Truth { get; }

    public Resolution Resolution { get; }

    public RegionWords Words { get; }

    public ImmutableArray<Finding> Found(SpaceCheck check) => [.. check.Run(new Examination(Base, Resolution, Words))];

    public int[] Values(Exhaustive.Case at) => at.In(Resolution.Space);

    /// <summary>The smallest of some combinations in the order of the space's variables, as its ids.</summary>
    public string Smallest(IEnumerable<Exhaustive.Case> cases)
    {
        var all = cases.ToList();
        return all.Count == 0 ? "" : Name(all.Select(Values).Aggregate((least, next) => least.AsSpan().SequenceCompareTo(next) <= 0 ? least : next));
    }

    public string Name(ReadOnlySpan<int> values) => Name(Resolution.Space.Witness(values));

    public static string Name(Witness? witness) => witness is null ? "" : string.Join(' ', witness.Choices.Select(choice => $"{choice.Key}={choice.Value}").Prepend(witness.Donor).Prepend(witness.Chassis));
}

/// <summary>How often a finding touches the space, and where first.</summary>
internal sealed record Extent(BigInteger Count, string Smallest)
{
    public static Extent Of(Finding finding) => new(finding.Touches ?? 0, DrawnBase.Name(finding.Witness));
}
