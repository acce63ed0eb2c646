using System.Collections.Immutable;
using Swapwright.Worksheets.Effort;
using Xunit;

namespace Swapwright.Tests.Worksheets.Effort;

public sealed class NetworkTests
{
    // The example network of the PERT article of the OR-AS PM Knowledge Center, table 1.
    private static readonly ImmutableArray<Job> s_published =
    [
        One("A", 2, 5, 8), One("B", 1, 2, 9, "A"), One("C", 0.25, 0.5, 3.75, "A"), One("D", 1, 1, 7, "B"), One("E", 1, 2, 9, "B", "C"), One("F", 1, 3, 11, "D", "E"),
    ];

    [Fact]
    public void CriticalPath_PublishedExample_IsTheLongestChain()
    {
        var network = new Network(s_published);
        Assert.Equal(["A", "B", "E", "F"], network.CriticalPath().Select(job => job.Id));
        Assert.Equal(15, network.Length, 9);
    }

    // Early start, early finish and slack as printed in a worked fourteen-activity exercise, wizedu.com question 717873 (its first six activities).
    [Fact]
    public void Times_WorkedExercise_AgreeWithThePrintedTable()
    {
        var network = new Network([One("A", 5, 5, 7), One("B", 1, 2, 5), One("C", 5, 5, 5, "A"), One("D", 4, 8, 13, "A"), One("E", 1, 10, 17, "B", "C"), One("F", 1, 5, 7, "D"), One("H", 4, 4, 6, "E", "F")]);
        var times = network.Times.ToDictionary(one => one.Job.Id);
        (string Id, double Start, double End, double Slack)[] printed = [("A", 0, 5.33, 0), ("B", 0, 2.33, 8), ("C", 5.33, 10.33, 0), ("D", 5.33, 13.50, 1.83), ("E", 10.33, 20, 0), ("F", 13.50, 18.17, 1.83)];
        foreach (var (id, start, end, slack) in printed)
        {
            Assert.Equal(start, times[id].Start, 0.0051);
            Assert.Equal(end, times[id].End, 0.0051);
            Assert.Equal(slack, times[id].Slack, 0.0051);
        }
    }

    [Fact]
    public void Turns_OnePerson_DoesOneJobAtATime()
    {
        var turns = new Network(s_published).Turns(1);
        Assert.Equal(s_published.Sum(job => job.Hours.Mean), turns.Max(turn => turn.End), 9);
        Assert.All(turns.Zip(turns.Skip(1)), pair => Assert.True(pair.First.End <= pair.Second.Start + 1e-9));
    }

    /// <summary>Drawn networks: nothing begins before what it waits for, nobody is in two places, and more hands are never beaten by the critical path or beat it.</summary>
    [Fact]
    public void Turns_DrawnNetworks_KeepOrderHandsAndBounds()
    {
        var random = new Random(11);
        for (var round = 0; round < 300; round++)
        {
            var jobs = Enumerable.Range(0, random.Next(1, 15)).Select(at => new Job(
                Name(at), "Job", new Estimate(1, 1 + random.NextDouble(), 3), random.Next(1, 3), at / 5,
                [.. Enumerable.Range(0, at).Where(_ => random.Next(4) == 0).Select(Name)])).ToImmutableArray();
            var network = new Network(jobs);
            foreach (var people in new[] { 1, 2, 3 })
            {
                var turns = network.Turns(people);
                var byId = turns.ToDictionary(turn => turn.Job.Id);
                Assert.Equal(jobs.Length, turns.Length);
                Assert.All(jobs, job => Assert.All(job.After, before => Assert.True(byId[before].End <= byId[job.Id].Start + 1e-9)));
                Assert.All(turns, turn => Assert.True(turns.Where(other => other.Start <= turn.Start && other.End > turn.Start + 1e-9).Sum(other => Math.Min(other.Job.People, people)) <= people));
                Assert.InRange(turns.Max(turn => turn.End), network.Length - 1e-9, jobs.Sum(job => job.Hours.Mean) + 1e-9);
            }

            Assert.True(network.CriticalPath().Sum(job => job.Hours.Mean) >= network.Length - 1e-6);
        }
    }

    [Fact]
    public void Times_LoopAndUnknownIds_ArePassedOver()
    {
        var network = new Network([One("A", 1, 1, 1, "B", "gone"), One("B", 1, 1, 1, "A")]);
        Assert.Equal(2, network.Length, 9);
    }

    [Fact]
    public void Turns_Nobody_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => new Network(s_published).Turns(0));

    private static string Name(int at) => "j" + at.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static Job One(string id, double least, double likely, double most, params string[] after) => new(id, id, new Estimate(least, likely, most), 1, 0, [.. after]);
}
