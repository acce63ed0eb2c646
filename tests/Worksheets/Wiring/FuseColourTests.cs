using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class FuseColourTests
{
    /// <summary>
    /// Blade fuses by rating. 10 red, 15 blue and 20 yellow as printed at engineerfix.com, 1 black, 2 grey and 3 violet at
    /// circflow.com; the others are the colours of ISO 8820-3 from memory. Beside each the code of IEC 60757 that comes nearest.
    /// </summary>
    [Theory]
    [InlineData(1, "black", "BK")]
    [InlineData(2, "grey", "GY")]
    [InlineData(3, "violet", "VT")]
    [InlineData(4, "pink", "PK")]
    [InlineData(5, "tan", "GD")]
    [InlineData(7.5, "brown", "BN")]
    [InlineData(10, "red", "RD")]
    [InlineData(15, "blue", "BU")]
    [InlineData(20, "yellow", "YE")]
    [InlineData(25, "clear", "WH")]
    [InlineData(30, "green", "GN")]
    [InlineData(35, "blue-green", "TQ")]
    [InlineData(40, "orange", "OG")]
    public void Of_Rating_HasThePublishedColour(double amps, string name, string code) => Assert.Equal(new FuseColour(name, code), FuseColour.Of(amps));

    /// <summary>Ratings that no blade fuse has: two beside one that is made, a main fuse, none at all.</summary>
    [Theory]
    [InlineData(7.0)]
    [InlineData(12.0)]
    [InlineData(60.0)]
    [InlineData(double.NaN)]
    [InlineData(null)]
    public void Of_NoSuchRating_HasNone(double? amps) => Assert.Null(FuseColour.Of(amps));
}
