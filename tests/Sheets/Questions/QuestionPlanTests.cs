using System.Collections.Immutable;
using Swapwright.Sheets.Questions;

namespace Swapwright.Tests.Sheets.Questions;

public sealed class QuestionPlanTests
{
    [Fact]
    public void Of_OneItem_AsksNothing()
    {
        var plan = QuestionPlan.Of(1, [By([0])]);

        Assert.True(plan.IsLeaf);
        Assert.Equal<IEnumerable<int>>([0], plan.Items);
    }

    [Fact]
    public void Of_NothingTellsApart_EndsInALeafWithAll()
    {
        var plan = QuestionPlan.Of(3, [By([7, 7, 7])]);

        Assert.Equal((true, 3, 0), (plan.IsLeaf, plan.Items.Length, plan.Asked));
    }

    [Fact]
    public void Of_QuestionThatDividesBest_ComesFirst()
    {
        var plan = QuestionPlan.Of(4, [By([0, 1, 1, 1]), By([0, 0, 1, 1]), By([0, 1, 0, 1])]);

        Assert.Equal((1, 8, 2), (plan.Question, plan.Asked, plan.Deepest));
    }

    [Fact]
    public void Of_QuestionsThatDivideAlike_AreNamedAsTheSame()
    {
        var plan = QuestionPlan.Of(2, [By([0, 1]), By([5, 4]), By([3, 3])]);

        Assert.Equal(0, plan.Question);
        Assert.Equal<IEnumerable<int>>([1], plan.Same);
    }

    [Fact]
    public void Of_SmallSetsDrawn_AskNoMoreThanTheBestOfAllTrees()
    {
        var draw = new Random(20260301);
        for (var round = 0; round < 300; round++)
        {
            var count = 1 + draw.Next(7);
            var questions = Drawn(draw, count, 1 + draw.Next(5));
            var plan = QuestionPlan.Of(count, questions);

            Assert.Equal(Brute(questions, [.. Enumerable.Range(0, count)]), plan.Asked);
            Sound(plan, questions);
        }
    }

    [Fact]
    public void Of_LargeSetsDrawn_ReachEveryItemAndStayNearTheExactPlan()
    {
        var draw = new Random(20260302);
        for (var round = 0; round < 40; round++)
        {
            var count = 8 + draw.Next(9);
            var questions = Drawn(draw, count, 4 + draw.Next(6));
            var greedy = QuestionPlan.Of(count, questions, mostExact: 0);
            var exact = QuestionPlan.Of(count, questions);

            Sound(greedy, questions);
            Assert.InRange(greedy.Asked, exact.Asked, exact.Asked * 5 / 4);
        }

        var many = Drawn(draw, 60, 14);
        Sound(QuestionPlan.Of(60, many), many);
    }

    /// <summary>Every item lies in one leaf; a question always divides; a leaf with several is one that no question divides.</summary>
    private static void Sound(PlanNode node, ImmutableArray<Divide> questions)
    {
        Assert.NotEmpty(node.Items);
        if (node.IsLeaf)
        {
            Assert.All(questions, question => Assert.True(node.Items.Length == 1 || question(node.Items).Length < 2));
            return;
        }

        Assert.True(node.Branches.Length > 1);
        Assert.Equal(node.Items, node.Branches.SelectMany(branch => branch.Items).Order());
        Assert.All(node.Branches, branch => Sound(branch, questions));
    }

    /// <summary>The fewest questions over all trees, by trying every one; nothing is kept between sets.</summary>
    private static int Brute(ImmutableArray<Divide> questions, ImmutableArray<int> items)
    {
        var dividing = questions.Select(question => question(items)).Where(parts => parts.Length > 1).ToList();
        return items.Length < 2 || dividing.Count == 0 ? 0 : items.Length + dividing.Min(parts => parts.Sum(part => Brute(questions, part)));
    }

    private static ImmutableArray<Divide> Drawn(Random draw, int count, int questions) =>
        [.. Enumerable.Range(0, questions).Select(_ => By([.. Enumerable.Range(0, count).Select(_ => draw.Next(2 + draw.Next(2)))]))];

    private static Divide By(int[] answers) => items => [.. items.GroupBy(item => answers[item]).OrderBy(group => group.Key).Select(group => (ImmutableArray<int>)[.. group])];
}
