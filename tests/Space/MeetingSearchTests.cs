using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>Questions of meeting that make no regions, against plain lists of assignments.</summary>
public class MeetingSearchTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(7000, 150)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Intersects_SomeWithinSomeOutside_AsListed(int seed)
    {
        var space = new SmallSpace(seed);
        var within = Enumerable.Range(0, space.Next(4)).Select(_ => space.NextRegion()).ToList();
        var outside = Enumerable.Range(0, space.Next(4)).Select(_ => space.NextRegion()).ToList();
        var listed = Enumerable.Range(0, space.Assignments.Count).Any(at => within.TrueForAll(one => one.Truth[at]) && outside.TrueForAll(one => !one.Truth[at]));
        var nodes = space.Store.NodeCount;
        Assert.Equal(listed, space.Store.Intersects([.. within.Select(one => one.Region)], (ReadOnlySpan<Region>)[.. outside.Select(one => one.Region)]));
        Assert.Equal(nodes, space.Store.NodeCount);
    }

    /// <summary>Points of a plane, one by one, on a thread of the usual room: an answer or a sentence, never the end of the process.</summary>
    [Fact]
    public void Intersects_MoreRegionsThanAThreadHasRoomFor_SaysSo()
    {
        const int Side = 200;
        ImmutableArray<string> values = [.. Enumerable.Range(0, Side).Select(value => value.ToString(CultureInfo.InvariantCulture))];
        var store = new RegionStore([new Variable("x", values), new Variable("y", values)]);
        Region[] points =
        [
            .. from x in Enumerable.Range(0, Side)
               from y in Enumerable.Range(0, Side)
               select store.And(store.Where(0, ValueSet.Of(Side, x)), store.Where(1, ValueSet.Of(Side, y))),
        ];

        var fault = Record.Exception(() => store.Intersects([Region.All], points.AsSpan(0, points.Length - 1)));

        Assert.Contains("divide the rule that they are exceptions to", Assert.IsType<SpaceLimitException>(fault).Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void BoundsOf_AnyRegion_AreTheValuesItTakes(int seed)
    {
        var space = new SmallSpace(seed);
        var ((a, truthA), (b, truthB)) = (space.NextRegion(), space.NextRegion());
        var boxesMeet = Enumerable.Range(0, space.Store.Variables.Length).All(variable => Values(truthA, variable).Overlaps(Values(truthB, variable)));
        Assert.Equal(boxesMeet, space.Store.BoundsOf(a).Meet(space.Store.BoundsOf(b)));

        HashSet<int> Values(bool[] truth, int variable) => [.. space.Members(truth).Select(assignment => assignment[variable])];
    }
}
