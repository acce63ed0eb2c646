using System.Text.Json;
using Swapwright.Tests.Source;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class SignalKindsTests
{
    /// <summary>The words that the published schema lets somebody write: each is a kind of its own, and there is a word for every kind.</summary>
    [Fact]
    public void Parse_EveryWordOfTheSchema_IsAKindOfItsOwn()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Path.Combine(Reading.Repository(), "schema", "vocabulary.schema.json")));
        var words = schema.RootElement.GetProperty("properties").GetProperty("signals").GetProperty("patternProperties").EnumerateObject().Single().Value
            .GetProperty("properties").GetProperty("kind").GetProperty("enum").EnumerateArray().Select(word => word.GetString()!).ToList();

        // As the word reads without its hyphens: `low-side` is LowSide.
        Assert.All(words, word => Assert.Equal(word.Replace("-", "", StringComparison.Ordinal), SignalKinds.Parse(word).ToString(), ignoreCase: true));
        Assert.Equal(Enum.GetValues<SignalKind>().Length, words.Count);
    }

    /// <summary>
    /// What happens at a joint, by the circuits on either side of it (common practice, no source): a live wire on a ground is a short circuit,
    /// on an input it puts battery voltage where 5 V are expected; a coil's pulse does the same with 300 V. Two feeds, or a feed on the
    /// driven side of a load, do nothing that a fuse or an idle load would not bear.
    /// </summary>
    [Theory]
    [InlineData(SignalKind.Power, SignalKind.Ground, true)]
    [InlineData(SignalKind.Power, SignalKind.SensorGround, true)]
    [InlineData(SignalKind.Power, SignalKind.Analogue, true)]
    [InlineData(SignalKind.Power, SignalKind.SensorSupply, true)]
    [InlineData(SignalKind.Power, SignalKind.Data, true)]
    [InlineData(SignalKind.Power, SignalKind.LowSide, false)]
    [InlineData(SignalKind.Power, SignalKind.Power, false)]
    [InlineData(SignalKind.Power, SignalKind.Ignition, false)]
    [InlineData(SignalKind.Ignition, SignalKind.Frequency, true)]
    [InlineData(SignalKind.Ignition, SignalKind.LowSide, false)]
    [InlineData(SignalKind.SensorSupply, SignalKind.Ground, true)]
    [InlineData(SignalKind.SensorSupply, SignalKind.Shield, true)]
    [InlineData(SignalKind.SensorSupply, SignalKind.Analogue, false)]
    [InlineData(SignalKind.Ground, SignalKind.SensorGround, false)]
    [InlineData(SignalKind.Analogue, SignalKind.Frequency, false)]
    [InlineData(SignalKind.Switch, SignalKind.Logic, false)]
    public void DoesHarm_TwoKinds_IsAShortCircuitOrAnOverload(SignalKind one, SignalKind other, bool harm)
    {
        Assert.Equal(harm, SignalKinds.DoesHarm(one, other));
        Assert.Equal(harm, SignalKinds.DoesHarm(other, one));
    }

    /// <summary>Measured, timed and driven circuits belong to one device each; what only has a potential may serve several (common practice, no source).</summary>
    [Fact]
    public void MayShare_Kinds_AreThoseThatNothingIsMeasuredOrDrivenBy() => Assert.Equal(
        [SignalKind.Analogue, SignalKind.LowSide, SignalKind.Frequency, SignalKind.Logic, SignalKind.Ignition],
        Enum.GetValues<SignalKind>().Where(kind => !SignalKinds.MayShare(kind)));

    /// <summary>Current of a load flows in by its feed and out by its ground or its driver; signals carry milliamperes (common practice, no source).</summary>
    [Fact]
    public void CarriesLoad_Kinds_AreFeedGroundAndWhatADriverSwitches() => Assert.Equal(
        [SignalKind.Power, SignalKind.Ground, SignalKind.LowSide, SignalKind.Ignition],
        Enum.GetValues<SignalKind>().Where(SignalKinds.CarriesLoad));
}
