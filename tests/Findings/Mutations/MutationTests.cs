using System.Collections.Immutable;
using System.Globalization;
using Xunit.Abstractions;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>
/// Mistakes made on purpose in the shipped base, one at a time. Each that breaks something has to be found where it was made;
/// each that changes nothing must not be. A test run tries one mistake of every sixth class, for each takes a whole check.
/// <c>SWAPWRIGHT_MUTATIONS=all</c> tries many of every class and prints the table of DEVELOPERS.md; a number in its place is another seed,
/// words are the classes to try, parted by "|", by a part of their names.
/// </summary>
public sealed class MutationTests(ITestOutputHelper output, MutationTests.OneOfEach mistakes) : IClassFixture<MutationTests.OneOfEach>
{
    private const int Seed = 20260301;

    [Fact]
    public void Prove_OneMistakeInTheShippedBase_IsFoundWhereItWasMade()
    {
        var wanted = Environment.GetEnvironmentVariable("SWAPWRIGHT_MUTATIONS");
        var seed = int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out var other) ? other : Seed;
        var shipped = mistakes.Shipped;
        var drawn = string.IsNullOrEmpty(wanted) ? [.. mistakes.Drawn.Where((_, at) => at % 6 == 0)] : MutationRun.Draw(shipped, seed, 6, 12);
        if (!string.IsNullOrEmpty(wanted) && wanted != "all" && seed == Seed)
        {
            drawn = [.. drawn.Where(one => wanted.Split('|').Any(word => one.Class.Name.Contains(word, StringComparison.Ordinal)))];
        }

        var verdicts = MutationRun.Judge(shipped, drawn);

        output.WriteLine(MutationTable.Of(verdicts));
        output.WriteLine(MutationTable.List(verdicts, Outcome.Unseen));
        var wrong = MutationTable.List(verdicts, Outcome.Missed, Outcome.FalseAlarm);
        Assert.True(wrong.Length == 0, wrong);
    }

    [Fact]
    public void Draw_EveryClass_HasMistakesToMake()
    {
        var drawn = mistakes.Drawn.Select(one => one.Class.Name).Distinct();

        Assert.Equal(MutationRun.Classes.Select(kind => kind.Name), drawn);
    }

    /// <summary>
    /// One mistake of every class. Looking for what can be mistaken takes as long as proving a good part of it, so both tests ask what was
    /// drawn once; they let go of it when they are done, for the collector walks through whatever is kept.
    /// </summary>
    public sealed class OneOfEach
    {
        internal ShippedBase Shipped { get; } = new();

        internal ImmutableArray<(MutationClass Class, Mutation Mutation)> Drawn => field.IsDefault ? field = MutationRun.Draw(Shipped, Seed, 1, 1) : field;
    }
}
