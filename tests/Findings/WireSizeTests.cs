using Swapwright.Diagnostics;

namespace Swapwright.Tests.Findings;

public sealed class WireSizeTests
{
    private const string Lamp = "charge-lamp: {title: Charge lamp, kind: switch, current: 0.2, size: 0.75";

    /// <summary>The limits are those of <c>ConductorSize.Table</c>: 0.85 mm² carries 7 A, 5 mm² carries 21 A, and beyond that more than 5 mm² is asked for.</summary>
    [Theory]
    [InlineData("7", "0.85", true)]
    [InlineData("7.01", "0.85", false)]
    [InlineData("21", "5", true)]
    [InlineData("21.1", "5", false)]
    [InlineData("21.1", "6", true)]
    [InlineData("0", "0.5", true)]
    public void Check_SignalAtTheTablesLimits_IsThinBeyondThem(string current, string size, bool does)
    {
        var proof = ChangedBase.Prove("workshop", ("vocabulary.yaml", Lamp, $"charge-lamp: {{title: Charge lamp, kind: switch, current: {current}, size: {size}"));

        // The pin of the engine's plug says a size of its own.
        Assert.Equal(does, !proof.Findings.Any(finding => finding.Kind == FindingKinds.WireSize && finding.Place.File == "vocabulary.yaml"));
    }

    [Theory]
    [InlineData("4", false)]
    [InlineData("200", true)]
    public void Check_DeviceBeyondItsPlug_IsFound(string current, bool found)
    {
        var proof = ChangedBase.Prove("workshop", ("chassis/quillet.yaml", "pins: {1: battery-feed, 2: charge-lamp}", $"pins: {{1: battery-feed, 2: charge-lamp}}\n    current: {current}"));

        Assert.Equal(found, proof.Findings.Any(finding => finding.Kind == FindingKinds.WireSize && finding.Message.Contains("draws", StringComparison.Ordinal)));
    }

    [Fact]
    public void Check_UnusedCavity_AsksForNoWire()
    {
        var proof = ChangedBase.Prove("workshop", ("connectors/four-way.yaml", "wire: {from: 0.5, to: 16}", "wire: {from: 0.75, to: 16}"), ("vocabulary.yaml", "size: 0.5", "size: 0.75"), ("chassis/quillet.yaml", "3: coolant-sender", "3: unused"));

        Assert.Empty(proof.Findings);
    }
}
