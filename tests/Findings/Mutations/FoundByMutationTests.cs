using Swapwright.Findings;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Mistakes that went unseen until mutations showed them, each kept by itself.</summary>
public sealed class FoundByMutationTests
{
    /// <summary>The vehicle takes the connector from the one that it is like and writes the pins anew.</summary>
    [Fact]
    public void PinType_InheritedConnectorWithOwnPins_IsTold() =>
        Finds("chassis/quillet-s-89.yaml", "{3: ignition-trigger-1, 4: power-ground}", "{3: power-ground, 4: ignition-trigger-1}", "pin-type");

    [Fact]
    public void PinClash_InheritedConnectorWithOwnPins_IsTold() =>
        Finds("chassis/quillet-s-89.yaml", "{3: ignition-trigger-1, 4: power-ground}", "{3: ignition-trigger-1, 99: power-ground}", "pin-clash");

    /// <summary>A kept sender that moves lies where the donor's lay; one that stays is out of reach of the donor's plug.</summary>
    [Fact]
    public void StatedValue_KeptDeviceThatNoLongerMoves_IsTold() =>
        Finds("rules/instruments/gauge-sender-moves.yaml", "treatment: move", "treatment: modify", "stated-value");

    [Fact]
    public void Reference_DeviceWithoutConnector_IsTold() =>
        Finds("engines/orrel-18-95.yaml", "injector-3: {connector: injector-2-slim, ", "injector-3: {", "reference");

    private static void Finds(string path, string old, string by, string kind)
    {
        var shipped = new ShippedBase();
        var text = shipped.File(path).Text;
        Assert.Contains(old, text, StringComparison.Ordinal);

        var proof = Proof.Of(shipped.With(Mutation.Of("", path, text.Replace(old, by, StringComparison.Ordinal))));

        Assert.Contains(kind, proof.Findings.Select(finding => finding.Id));
    }
}
