using Xunit.Abstractions;

[assembly: TestCollectionOrderer("Swapwright.Tests.LongestFirst", "Swapwright.Tests")]

namespace Swapwright.Tests;

/// <summary>
/// What takes longest begins first, so that nothing long is left for the end, when all other threads are done. Before it comes what waits for
/// most of its time: then there is other work for the processor, of the tests in the browser as well.
/// </summary>
public sealed class LongestFirst : ITestCollectionOrderer
{
    // The preview that follows edits waits; the others are by what they took on two cores. A class that is missing here only comes after these.
    private static readonly string[] s_longest =
    [
        "SoakTests", "shipped site", "MutationTests", "ContributingTests", "FaultTests", "ReadmeTests", "ShippedImpactTests", "HostileFilesTests", "ImpactCommandTests", "FuzzTests",
        "ProgramTests", "ReuseOfMutationsTests", "SiteReuseTests", "SheetMemoryTests", "WorkflowTests", "shipped sheets", "SolverOracleTests", "DeterminismTests", "RenderedImpactTests", "DrawnImpactTests", "ResolutionTests",
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
