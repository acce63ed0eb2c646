using Swapwright.Sheets;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Fitting;

/// <summary>A pipe that is out of use and stays in the car: its ends are closed, and the hose card has a row for each.</summary>
public sealed class IdlePipeTests
{
    private const string Closed = "rules/fuel/no-return.yaml";
    private const string Idle = "return: {source: none, treatment: blank}";

    [Theory]
    [InlineData(Idle, false)]
    [InlineData("return: {source: none, treatment: blank, closes: [return-pipe]}", true)]
    [InlineData("return: {source: none, treatment: as-is, closes: [return-pipe]}", true)]
    [InlineData("return: {source: none, treatment: blank, closes: [rail-outlet]}", false)]
    public void Sheet_EndOfAPipeThatStays_IsClosedWhereTheAnswerSaysSo(string answer, bool closed)
    {
        var resolution = ChangedBase.Prove("plumbing", (Closed, Idle, answer)).Resolution!;
        var values = resolution.Store.Witness(resolution.Store.AndAll([resolution.Buildable, resolution.Space.WhereChoice("return", ["closed"]), resolution.Space.WhereChassis(chassis => chassis.Port("return-pipe") is not null)]));
        var hoses = new SheetBuilder(resolution).Build(values).Hoses!;

        Assert.Equal(closed, hoses.Blanked.Any(blank => blank.Port is { Id: "return-pipe", Owner: "chassis" }));
        Assert.Contains(hoses.Blanked, blank => blank.Port.Id == "rail-outlet");
        Assert.DoesNotContain(hoses.Runs, run => run.Id == "return");
        Assert.Empty(hoses.Problems);
    }

    [Fact]
    public void Check_EndOfAPipeThatStays_IsNoFinding() =>
        Assert.Empty(ChangedBase.Prove("plumbing", (Closed, Idle, "return: {source: none, treatment: blank, closes: [return-pipe]}")).Findings);
}
