using System.Diagnostics;
using System.Globalization;
using Swapwright.Benchmarks.Solving;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Benchmarks;

/// <summary>The same questions, whether two answers ever contradict each other, asked of the regions and of a constraint solver.</summary>
internal static class CompareSolver
{
    private const int Questions = 200;

    public static int Run(string folder)
    {
        var proof = Proof.Of(folder);
        if (proof.Resolution is null)
        {
            Console.Error.WriteLine($"`{folder}` cannot be read well enough");
            return 2;
        }

        var kb = proof.Base;
        var pairs = Pairs(kb).ToList();
        // An even sample: every n-th pair, in order of position and rule.
        var step = Math.Max(1, pairs.Count / Questions);
        var asked = pairs.Where((_, at) => at % step == 0).Take(Questions).ToList();

        // A fresh resolution, so that nothing asked by the check is remembered; making it counts as work of the regions.
        var watch = Stopwatch.StartNew();
        var resolution = Resolver.Resolve(kb);
        var made = watch.Elapsed;
        watch.Restart();
        var ours = asked.Select(pair => resolution.BuildableParts.Intersects(resolution.Store.And(Standing(resolution, pair.One), Standing(resolution, pair.Other)))).ToList();
        var byRegions = watch.Elapsed;
        watch.Restart();
        var solver = new SolverSpace(kb);
        var modelled = watch.Elapsed;
        watch.Restart();
        var theirs = asked.Select(pair => solver.Meet(pair.One, pair.Other)).ToList();
        var bySolver = watch.Elapsed;

        var same = ours.Zip(theirs).Count(pair => pair.First == pair.Second);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{asked.Count} of {pairs.Count} pairs, {ours.Count(meet => meet)} of them meet; {same} verdicts are the same"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"regions: {made.TotalMilliseconds:0} ms to make, {byRegions.TotalMilliseconds:0.0} ms to ask; solver: {modelled.TotalMilliseconds:0} ms to make, {bySolver.TotalMilliseconds:0.0} ms to ask"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"asking: {bySolver / byRegions:0} times faster; making and asking: {(modelled + bySolver) / (made + byRegions):0} times faster"));
        return same == asked.Count ? 0 : 1;
    }

    private static Space.Region Standing(Resolution resolution, (Rule Rule, Answer Answer) one) =>
        resolution.At(one.Answer.Position).First(standing => standing.Rule == one.Rule).Region;

    private static IEnumerable<((Rule Rule, Answer Answer) One, (Rule Rule, Answer Answer) Other)> Pairs(KnowledgeBase kb)
    {
        var at = kb.Rules.All.SelectMany(rule => rule.Answers.Select(answer => (rule, answer))).ToLookup(pair => pair.answer.Position, StringComparer.Ordinal);
        return from position in kb.PositionOrder
               let answers = at[position.Id].ToList()
               from second in Enumerable.Range(0, answers.Count)
               from first in Enumerable.Range(0, second)
               where !answers[first].answer.Agrees(answers[second].answer)
               select (answers[first], answers[second]);
    }
}
