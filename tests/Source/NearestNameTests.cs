using Swapwright.Source;

namespace Swapwright.Tests.Source;

public class NearestNameTests
{
    [Theory]
    [InlineData("tittle", "title")]
    [InlineData("tilte", "title")]
    [InlineData("Title", "title")]
    [InlineData("treatmen", "treatment")]
    [InlineData("sorces", "sources")]
    [InlineData("asis", "as-is")]
    [InlineData("position", null)]
    [InlineData("x", null)]
    [InlineData("", null)]
    public void Of_Mistyped_IsNearest(string mistyped, string? expected) =>
        Assert.Equal(expected, NearestName.Of(mistyped, ["title", "treatment", "sources", "as-is"]));

    [Fact]
    public void Of_EquallyNear_IsFirstInOrdinalOrder()
    {
        Assert.Equal("bat", NearestName.Of("bct", ["bet", "bit", "bat"]));
        Assert.Equal("bat", NearestName.Of("bct", ["bat", "bit", "bet"]));
    }

    [Fact]
    public void Of_VeryLongName_IsNotCompared() => Assert.Null(NearestName.Of(new string('a', 100), [new string('a', 99)]));
}
