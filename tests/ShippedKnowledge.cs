using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Source;
using Swapwright.Tests.Source;

namespace Swapwright.Tests;

/// <summary>The base that is shipped, read and proved once for all classes that look at it. Whoever changes it has to read it for themselves.</summary>
internal static class ShippedKnowledge
{
    private static readonly Lock s_copying = new();

    private static readonly Lazy<Proof> s_proof = new(() => Swapwright.Findings.Proof.Of(Folder));

    public static string Folder => Path.Combine(Reading.Repository(), "swap-kb");

    public static SourceTree Tree => s_proof.Value.Tree;

    public static KnowledgeBase Base => s_proof.Value.Base;

    /// <summary>The proof over a store of its own: test classes run beside each other, and a store of regions is used by one worker at a time.</summary>
    public static Proof Proof()
    {
        lock (s_copying)
        {
            var proof = s_proof.Value;
            var copy = proof.Resolution!.Copy();
            return proof with { Resolution = copy, Words = new RegionWords(copy) };
        }
    }
}
