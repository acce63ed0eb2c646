using System.Collections.Immutable;

namespace Swapwright.Sheets.Questions;

/// <summary>
/// Divides items, given as ascending numbers, by their answer to one question. Every item is in exactly one part and no part is
/// empty; fewer than two parts say that the question cannot be put to these items or tells none of them apart.
/// </summary>
public delegate ImmutableArray<ImmutableArray<int>> Divide(ImmutableArray<int> items);

/// <summary>A place in the plan: a question with a branch for each answer, or the items that are left.</summary>
/// <param name="Items">What is still possible here, ascending.</param>
/// <param name="Question">Number of the question to ask; −1 where none tells these items apart.</param>
/// <param name="Same">Other questions that divide these items in the same way: one can be asked for the other.</param>
/// <param name="Branches">One a part, in the question's order of parts.</param>
public sealed record PlanNode(ImmutableArray<int> Items, int Question, ImmutableArray<int> Same, ImmutableArray<PlanNode> Branches)
{
    public bool IsLeaf => Question < 0;

    /// <summary>Questions asked over all items: the expected number times the number of items, each taken as equally likely.</summary>
    public int Asked => IsLeaf ? 0 : Items.Length + Branches.Sum(branch => branch.Asked);

    /// <summary>Questions asked at most.</summary>
    public int Deepest => IsLeaf ? 0 : 1 + Branches.Max(branch => branch.Deepest);
}

/// <summary>
/// The order in which to put questions so that the fewest are expected, every item being equally likely.
/// </summary>
/// <remarks>
/// Up to <see cref="MostExact"/> items the plan is the best there is: by dynamic programming over the sets of items that answers
/// can leave, cost(S) = |S| + min over questions of Σ cost(part), 0 where no question divides S. Of equal plans the one with the
/// fewest questions at most is taken, then the one whose questions come first. The problem is NP-hard in general (Hyafil and Rivest,
/// Constructing optimal binary decision trees is NP-complete, Information Processing Letters 5, 1976), so larger sets are first
/// divided by information: the question after which, with the best second question in each part, the entropy left is
/// least; as soon as a part is small enough it is planned exactly.
/// </remarks>
public sealed class QuestionPlan
{
    /// <summary>2^16 sets at most are looked at in the exact part.</summary>
    public const int MostExact = 16;

    private readonly ImmutableArray<Divide> _questions;
    private readonly int _mostExact;

    private QuestionPlan(ImmutableArray<Divide> questions, int mostExact)
    {
        _questions = questions;
        _mostExact = mostExact;
    }

    /// <param name="count">Items are numbered from 0.</param>
    /// <param name="questions">In order of preference among equals.</param>
    /// <param name="mostExact">Up to how many items the best plan is searched.</param>
    public static PlanNode Of(int count, ImmutableArray<Divide> questions, int mostExact = MostExact) =>
        new QuestionPlan(questions, Math.Min(mostExact, MostExact)).Plan([.. Enumerable.Range(0, count)]);

    private PlanNode Plan(ImmutableArray<int> items)
    {
        if (items.Length <= _mostExact)
        {
            return new ExactPlan(_questions, items).Plan(items);
        }

        var ways = Ways(_questions, items);
        return ways.IsEmpty ? Leaf(items) : Node(items, ways, ways.MinBy(way => (Ahead(way.Parts), Left(way.Parts), way.Question))!, Plan);
    }

    /// <summary>The questions that divide a set, with the parts.</summary>
    internal static ImmutableArray<Way> Ways(ImmutableArray<Divide> questions, ImmutableArray<int> items) => items.Length < 2
        ? []
        : [.. questions.Select((divide, at) => new Way(at, divide(items))).Where(way => way.Parts.Length > 1)];

    internal static PlanNode Leaf(ImmutableArray<int> items) => new(items, -1, [], []);

    internal static PlanNode Node(ImmutableArray<int> items, ImmutableArray<Way> ways, Way taken, Func<ImmutableArray<int>, PlanNode> plan) => new(
        items,
        taken.Question,
        [.. ways.Where(way => way.Question != taken.Question && way.DividesLike(taken)).Select(way => way.Question)],
        [.. taken.Parts.Select(plan)]);

    private long Ahead(ImmutableArray<ImmutableArray<int>> parts) =>
        parts.Sum(part => Ways(_questions, part).Select(way => Left(way.Parts)).DefaultIfEmpty(Weight(part.Length)).Min());

    private static long Left(ImmutableArray<ImmutableArray<int>> parts) => parts.Sum(part => Weight(part.Length));

    /// <summary>n·log₂ n in thousandths, a whole number so that equal is equal on every machine.</summary>
    private static long Weight(int count) => count < 2 ? 0 : (long)Math.Round(1000 * count * Math.Log2(count));

    internal sealed record Way(int Question, ImmutableArray<ImmutableArray<int>> Parts)
    {
        public bool DividesLike(Way other) => Parts.Length == other.Parts.Length
            && Ordered(Parts).Zip(Ordered(other.Parts)).All(pair => pair.First.AsSpan().SequenceEqual(pair.Second.AsSpan()));

        private static IEnumerable<ImmutableArray<int>> Ordered(ImmutableArray<ImmutableArray<int>> parts) => parts.OrderBy(part => part[0]);
    }
}
