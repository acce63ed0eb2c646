using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings;

/// <summary>Facts of gearboxes that the load worksheet wants, and where in the space; held against a walk through every combination.</summary>
public sealed class MissingInputTests
{
    private const string Vocabulary = "vocabulary.yaml";
    private const string Torque = "torque: {title: Torque that it carries, type: number, unit: N m, min: 50, max: 600";
    private const string OptionalTorque = Torque + ", means: gearbox-torque, optional: true";

    [Theory]
    [InlineData("marn-cable", "{control: cable, torque: 200}", "{control: cable}", "donor")]
    [InlineData("quillet-five", "{control: rod, torque: 150}", "{control: rod}", "chassis")]
    public void Check_GearboxThatAFactBinds_IsWantedWhereItIsTaken(string gearbox, string facts, string without, string option)
    {
        var proof = ChangedBase.Prove("crossings", (Vocabulary, Torque + "}\n", OptionalTorque + "}\n"), ($"gearboxes/{gearbox}.yaml", facts, without));

        var finding = Assert.Single(proof.Findings, finding => finding.Kind == FindingKinds.MissingInput);
        Assert.Equal($"`{gearbox}` leaves out `torque`, which the load worksheet wants", finding.Message);
        Assert.Equal($"gearboxes/{gearbox}.yaml", finding.Place.File);
        Assert.Contains("`torque` (torque that it carries, N m)", finding.Mend, StringComparison.Ordinal);
        Assert.Equal(Buildable(proof, one => one.Options["gearbox"] == option), finding.Touches);
    }

    /// <summary>A choice whose option names the gearbox itself.</summary>
    [Fact]
    public void Check_GearboxThatAnOptionNames_IsWantedWhereItIsTaken()
    {
        var proof = ChangedBase.Prove("likes", (Vocabulary, "  gearbox:\n", "  gearbox:\n    carries: {title: Carries, type: number, unit: N m, means: gearbox-torque, optional: true}\n"));

        Assert.All(["four", "five"], gearbox =>
        {
            var finding = Assert.Single(proof.Findings, finding => finding.Kind == FindingKinds.MissingInput && finding.Place.File == $"gearboxes/{gearbox}.yaml");
            Assert.Equal(Buildable(proof, one => one.Options["gearbox"] == gearbox), finding.Touches);
        });
    }

    /// <summary>Behind a converter there are no splines of a clutch: an automatic gearbox leaves out nothing by leaving them out.</summary>
    [Theory]
    [InlineData("automatic", false)]
    [InlineData("manual", true)]
    public void Check_SplinesOfAGearbox_AreWantedOfOneWithAClutch(string kind, bool wanted)
    {
        var proof = ChangedBase.Prove(
            "crossings",
            (Vocabulary, Torque + "}\n", Torque + "}\n    kind: {title: Kind, type: one-of, values: {manual: Manual, automatic: Automatic}, means: gearbox-kind}\n    splines: {title: Splines, type: number, means: spline-teeth, optional: true}\n"),
            ("gearboxes/marn-cable.yaml", "torque: 200", $"torque: 200, kind: {kind}"),
            ("gearboxes/quillet-five.yaml", "torque: 150", "torque: 150, kind: manual, splines: 20"));

        Assert.Equal(wanted ? ["`marn-cable` leaves out `splines`, which the load worksheet wants"] : [], proof.Messages(FindingKinds.MissingInput));
    }

    private static BigInteger Buildable(Proof proof, Func<OneCombination, bool> takes)
    {
        var count = OneCombination.Every(proof.Base).Count(one => one.IsBuildable && takes(one));
        Assert.True(count > 0);
        return count;
    }
}
