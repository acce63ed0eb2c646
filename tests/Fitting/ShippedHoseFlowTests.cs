using Swapwright.Knowledge;

namespace Swapwright.Tests.Fitting;

/// <summary>Hoses are told and drawn from `from` to `to`: for liquids that is the way it flows. (Common practice, no source: a pump takes from its inlet.)</summary>
public sealed class ShippedHoseFlowTests
{
    [Theory]
    [InlineData("engine-water-out", "radiator-lower", "engine-water-in")]
    [InlineData("engine-water-out", "pipe-to-engine", "engine-water-in")]
    [InlineData("engine-heater-out", "heater-return", "engine-heater-back")]
    [InlineData("engine-heater-out", "heater-pipe-return", "engine-heater-back")]
    [InlineData("tank-feed", "rail-to-return", "return-pipe-front")]
    [InlineData("tank-feed", "return-to-tank", "tank-return")]
    public void Hoses_OfLiquids_RunFromTheOutletAndEndAtTheInlet(string outlet, string last, string inlet)
    {
        var hoses = ShippedKnowledge.Base.Vocabulary.Hoses;
        Assert.Equal(inlet, hoses[last].To);
        Assert.Contains(hoses.All, hose => hose.From == outlet);
        Assert.DoesNotContain(hoses.All, hose => hose.To == outlet || hose.From == inlet);
    }
}
