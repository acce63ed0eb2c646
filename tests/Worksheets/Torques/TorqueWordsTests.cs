using System.Collections.Immutable;
using Swapwright.Worksheets.Torques;

namespace Swapwright.Tests.Worksheets.Torques;

/// <summary>What stands beside a torque, and the work that is done while something is within reach.</summary>
public sealed class TorqueWordsTests
{
    private static readonly TighteningAssumptions s_usual = new(0.75, 0.20, 0.15, 0.2);
    private static readonly Fastener s_bolt = new("bolt", "Bolt", "Fit it", "task fit", "M10x1.5", "8.8", 4, null, false, null, null, "", false, false, "");

    [Theory]
    [InlineData(false, false, "", "dry")]
    [InlineData(true, false, "", "oiled")]
    [InlineData(false, true, "steel", "dry; new ones")]
    [InlineData(false, false, "aluminium", "dry; into aluminium: this is the bolt's limit, the thread may stand less; ask the manual")]
    [InlineData(true, true, "plastic", "oiled; new ones; into plastic: this is the bolt's limit, the thread may stand less; ask the manual")]
    public void Work_ComputedTorque_SaysHowTheBoltGoesIn(bool oiled, bool once, string into, string how) =>
        Assert.Equal(how, Row(s_bolt with { Lubricated = oiled, Once = once, Into = into })[6]);

    [Theory]
    [InlineData(false, false, "", "")]
    [InlineData(true, true, "aluminium", "new ones; oiled; into aluminium")]
    [InlineData(false, false, "plastic", "")]
    public void Work_StatedTorque_SaysWhatGoesWithIt(bool oiled, bool once, string into, string then) =>
        Assert.Equal(then, Row(s_bolt with { Stated = 61, Lubricated = oiled, Once = once, Into = into })[4]);

    /// <summary>A thread that is no metric one is told as it was written, with its class where that is known.</summary>
    [Theory]
    [InlineData("M10x1.50", "8.8", "M10×1.5, 8.8")]
    [InlineData("M10", "", "M10×1.5")]
    [InlineData("1/2-20 UNF", "", "1/2-20 UNF")]
    [InlineData("1/2-20 UNF", "grade 5", "1/2-20 UNF, grade 5")]
    public void Work_Thread_IsToldAsItIsKnown(string thread, string grade, string words) => Assert.Equal(words, Row(s_bolt with { Thread = thread, Class = grade, Stated = 61 })[2]);

    [Theory]
    [InlineData(1, "Bolt")]
    [InlineData(4, "Bolt, 4")]
    public void Work_SeveralOfAKind_AreCounted(int count, string name) => Assert.Equal(name, Row(s_bolt with { Count = count })[0]);

    [Theory]
    [InlineData(false, "", "the torque that the manual of what the bolt goes into gives; a figure from a table will not do here")]
    [InlineData(true, "A manual", "new ones, to the torque that A manual gives; a figure from a table will not do here")]
    public void Work_TorqueToLookUp_NamesWhereItStands(bool once, string by, string what) => Assert.Equal(what, Row(s_bolt with { LookUp = true, Once = once, StatedBy = by })[3]);

    [Fact]
    public void Work_WithinReach_IsATableOfWorkAndReason()
    {
        var input = new TorquesInput(s_usual, [], [], [new Refresh("Water pump", "the belt is off")]);
        var table = Assert.Single(TorquesWorksheet.Work(input).Tables);

        Assert.Equal("refresh", table.Id);
        Assert.Equal(["Water pump", "the belt is off"], Assert.Single(table.Rows).Select(cell => cell.Text));
        Assert.True(TorquesWorksheet.Work(input with { Refreshes = [] }).IsEmpty);
    }

    /// <summary>Where one filling of a fluid is not known, what is bought is at least what the others take.</summary>
    [Theory]
    [InlineData(3.2, 0.3, "3.5 L", "4 L")]
    [InlineData(3.2, null, "3.2 L and what is not known", "4 L or more")]
    [InlineData(null, null, "not known", "as the manual says")]
    public void Work_FillingsOfOneFluid_AreBoughtTogether(double? one, double? other, string amount, string buy)
    {
        var oil = new Filling("oil", "Engine oil", "5W-30", one, "Engine", "donor one", false);
        var row = Assert.Single(Assert.Single(TorquesWorksheet.Work(new TorquesInput(s_usual, [], [oil, oil with { Holder = "Cooler", Amount = other }], [])).Tables).Rows);

        Assert.Equal((amount, buy), (row[2].Text, row[4].Text));
    }

    private static ImmutableArray<string> Row(Fastener one) =>
        [.. Assert.Single(Assert.Single(TorquesWorksheet.Work(new TorquesInput(s_usual, [one], [], [])).Tables).Rows).Select(cell => cell.Text)];
}
