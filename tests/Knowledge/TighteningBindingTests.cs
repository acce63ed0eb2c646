using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Knowledge;

/// <summary>Fasteners and fillings arrive as they are written, and what they name is looked up.</summary>
public sealed class TighteningBindingTests
{
    private const string Task = """

        fasteners:
          pulley-bolt: {title: Pulley bolt, thread: M14x1.5, class: "10.9", count: 2, nut-factor: 0.18, lubricated: true, stated: 90 lb ft, angle: 60, stated-by: bench, once: true, to-yield: true, into: iron}
        """;

    [Fact]
    public void Fastener_Written_Arrives()
    {
        var bolt = Assert.Single(With("tasks/fit-belt.yaml", Task).Base.Tasks["fit-belt"].Fasteners);

        Assert.Equal(("pulley-bolt", "Pulley bolt", "M14x1.5", "10.9", 2), (bolt.Id, bolt.Title, bolt.Thread, bolt.Class, bolt.Count));
        Assert.Equal((0.18m, true, 60m, "bench", true, true, "iron"), (bolt.NutFactor, bolt.Lubricated, bolt.AngleDeg, bolt.StatedBy, bolt.ToYield, bolt.Once, bolt.Into));
        Assert.Equal(122.02, (double)bolt.StatedNm!.Value, 0.01);
    }

    [Fact]
    public void Fastener_OfAnUnknownSource_IsAReferenceFinding() =>
        Assert.Contains(With("tasks/fit-belt.yaml", Task.Replace("stated-by: bench", "stated-by: bensh", StringComparison.Ordinal)).Findings, finding => finding.Id == "reference" && finding.Message.Contains("bensh", StringComparison.Ordinal));

    [Fact]
    public void Fastener_ThatSaysNothing_IsAFinding() =>
        Assert.Contains(With("tasks/fit-belt.yaml", "\nfasteners:\n  bolt: {title: Bolt, thread: M8}\n").Findings, finding => finding.Message == "nothing says how far `bolt` is tightened");

    [Theory]
    [InlineData("thread: W10, class: \"8.8\"")]
    [InlineData("thread: M10, class: \"8.9\"")]
    [InlineData("thread: M10, stated: 20 bar")]
    [InlineData("thread: M10, stated: 20, torque: 3")]
    public void Fastener_Malformed_IsAFinding(string odd) =>
        Assert.NotEmpty(With("tasks/fit-belt.yaml", $"\nfasteners:\n  bolt: {{title: Bolt, {odd}}}\n").Findings);

    [Fact]
    public void Fluids_Written_Arrive()
    {
        var proof = With("engines/marn.yaml", "\nfluids:\n  coolant: {grade: Glycol, amount: 500 mL, at: water-pump, needs: alternator}\n");
        var coolant = Assert.Single(proof.Base.Donors.All[0].Fluids);

        Assert.Equal(("coolant", "Glycol", 0.5m, "water-pump", "alternator"), (coolant.Kind, coolant.Grade, coolant.Amount, coolant.At, coolant.Needs));
    }

    [Fact]
    public void Fluids_AtAnUnknownPosition_IsAReferenceFinding() =>
        Assert.Contains(With("chassis/quillet.yaml", "\nfluids:\n  coolant: {grade: Glycol, at: radiador}\n").Findings, finding => finding.Id == "reference" && finding.Message.Contains("radiador", StringComparison.Ordinal));

    [Fact]
    public void Fluids_OfAnUnknownKind_IsAFinding() => Assert.NotEmpty(With("chassis/quillet.yaml", "\nfluids:\n  soup: {grade: Glycol}\n").Findings);

    [Fact]
    public void Settings_LeftOut_HaveThePublishedValues()
    {
        var settings = Proof.Of(KnowledgeBaseCase.GoodFolder("small")).Base.Settings;

        Assert.Equal((new FuelSettings(304, 0.72m, 85, 25, 14), new TighteningSettings(75, 0.20m, 0.15m, 20)), (settings.Fuel, settings.Tightening));
    }

    /// <summary>304 g/kWh is half a pound for a horsepower and an hour; 0.72 kg/L is 1.586 lb/L (sdsefi.com, carburetor-manual.com).</summary>
    [Fact]
    public void Settings_UsualFuel_IsThePublishedOneInSi()
    {
        var fuel = Proof.Of(KnowledgeBaseCase.GoodFolder("small")).Base.Settings.Fuel;

        Assert.Equal(0.5 * 453.59237 / 0.74569987158, (double)fuel.Consumption, 0.2);
        Assert.Equal(1.586 * 0.45359237, (double)fuel.DensityKgPerL, 0.001);
    }

    private static Proof With(string file, string text)
    {
        using var folder = KnowledgeBaseCase.CopyOf("workshop");
        File.AppendAllText(Path.Combine(folder.Path, file), text);
        return Proof.Of(folder.Path);
    }
}
