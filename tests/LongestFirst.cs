using Xunit.Abstractions;

[assembly: TestCollectionOrderer("Swapwright.Tests.LongestFirst", "Swapwright.Tests")]

namespace Swapwright.Tests;

/// <summary>What takes longest begins first, so that nothing long is left for the end, when all other threads are done.</summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    // By what they took on two cores; a class that is missing here only comes after these.
    private static readonly string[] s_longest =
    [
        "shipped site", "MutationTests", "FaultTests", "SiteReuseTests", "ContributingTests", "ReadmeTests", "FuzzTests", "ShippedImpactTests", "ReuseOfMutationsTests", "ImpactCommandTests",
        "HostileFilesTests", "ProgramTests", "SoakTests", "shipped sheets", "SolverOracleTests", "DeterminismTests", "WorkflowTests", "RenderedImpactTests", "DrawnImpactTests", "ResolutionTests",
    ];

    public IEnumerable<ITestCollection> OrderTestCollections(IEnumerable<ITestCollection> testCollections) =>
        testCollections.OrderBy(Place).ThenBy(collection => collection.DisplayName, StringComparer.Ordinal);

    // A class without a collection of its own is called "Test collection for" and its full name.
    private static int Place(ITestCollection collection)
    {
        var place = Array.FindIndex(s_longest, name => collection.DisplayName == name || collection.DisplayName.EndsWith("." + name, StringComparison.Ordinal));
        return place < 0 ? s_longest.Length : place;
    }
}
