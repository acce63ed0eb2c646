using Swapwright.Sheets;

namespace Swapwright.Tests.Sheets;

public sealed class KnownResultsTests
{
    [Fact]
    public void Of_TheSameThings_GivesTheSameResult()
    {
        var (known, thing) = (new KnownResults<object>(10), new object());

        var first = known.Of(new MadeFrom([thing, "text"]), () => new object());

        Assert.Same(first, known.Of(new MadeFrom([thing, string.Concat("te", "xt")]), () => new object()));
        Assert.NotSame(first, known.Of(new MadeFrom([thing, "other"]), () => new object()));
        Assert.NotSame(first, known.Of(new MadeFrom([new object(), "text"]), () => new object()));
        Assert.NotSame(first, known.Of(new MadeFrom([thing]), () => new object()));
    }

    [Fact]
    public void Of_MoreThanIsKept_LetsEarlierResultsGoAndKeepsOn()
    {
        var known = new KnownResults<string>(3);

        string[] names = ["a", "b", "c", "d", "e", "f", "g", "h", "i", "j"];

        Assert.All(names, name => Assert.Equal($"made {name}", known.Of(new MadeFrom([name]), () => $"made {name}")));

        Assert.Equal("made anew", known.Of(new MadeFrom(["a"]), () => "made anew"));
        Assert.Equal("made j", known.Of(new MadeFrom(["j"]), () => "made anew"));
    }
}
