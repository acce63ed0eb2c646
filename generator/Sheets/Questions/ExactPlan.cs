using System.Collections.Immutable;

namespace Swapwright.Sheets.Questions;

/// <summary>The best plan for a small set, see <see cref="QuestionPlan"/>: sets are masks over the items, each is solved once.</summary>
internal sealed class ExactPlan(ImmutableArray<Divide> questions, ImmutableArray<int> all)
{
    private readonly Dictionary<int, Best> _solved = [];

    public PlanNode Plan(ImmutableArray<int> items)
    {
        var taken = Solve(items).Taken;
        return taken is null ? QuestionPlan.Leaf(items) : QuestionPlan.Node(items, QuestionPlan.Ways(questions, items), taken, Plan);
    }

    private Best Solve(ImmutableArray<int> items)
    {
        if (items.Length < 2)
        {
            return new Best(0, 0, null);
        }

        var mask = items.Sum(item => 1 << all.IndexOf(item));
        if (!_solved.TryGetValue(mask, out var best))
        {
            best = QuestionPlan.Ways(questions, items)
                .Select(way =>
                {
                    var parts = way.Parts.Select(Solve).ToList();
                    return new Best(items.Length + parts.Sum(part => part.Asked), 1 + parts.Max(part => part.Deepest), way);
                })
                .DefaultIfEmpty(new Best(0, 0, null))
                .MinBy(one => (one.Asked, one.Deepest, one.Taken?.Question ?? 0))!;
            _solved.Add(mask, best);
        }

        return best;
    }

    private sealed record Best(int Asked, int Deepest, QuestionPlan.Way? Taken);
}
