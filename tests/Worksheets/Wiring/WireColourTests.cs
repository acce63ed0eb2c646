using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class WireColourTests
{
    [Theory]
    [InlineData("GN", "green", "swatch base-gn")]
    [InlineData("GN/YE", "green with yellow tracer", "swatch base-gn tracer-ye")]
    [InlineData("TQ/SR", "turquoise with silver tracer", "swatch base-tq tracer-sr")]
    public void TryParse_CodeOrPair_NamesIt(string text, string name, string swatch)
    {
        Assert.True(WireColour.TryParse(text, out var colour));
        Assert.Equal((name, swatch, text), (colour.Name, colour.Swatch, colour.Code));
    }

    [Theory]
    [InlineData("GNYE")]
    [InlineData("gn")]
    [InlineData("GN/")]
    [InlineData("GN/GN")]
    [InlineData("GN/YE/BK")]
    [InlineData("GN-YE")]
    [InlineData("XX")]
    [InlineData("")]
    [InlineData(null)]
    public void TryParse_AnythingElse_IsRefused(string? text) => Assert.False(WireColour.TryParse(text, out _));

    [Fact]
    public void Codes_OfTheStandard_AreFourteen() => Assert.Equal(14, WireColour.Codes.Count());
}
