using Swapwright.Worksheets.Torques;

namespace Swapwright.Tests.Worksheets.Torques;

/// <summary>Formulas of tightening against published numbers, each with its source.</summary>
public sealed class PublishedTorquesTests
{
    private const double Inch = 0.0254;
    private const double PoundForce = 4.4482216152605;
    private const double PoundInch = PoundForce * Inch;
    private const double PoundFoot = 12 * PoundInch;

    /// <summary>Jindal, Machine Design, example 9-1, page 266: stress areas of M16 × 2 and M16 × 1.5.</summary>
    [Theory]
    [InlineData("M16x2", 156.7)]
    [InlineData("M16x1.5", 167.2)]
    [InlineData("M16", 156.7)]
    public void StressArea_SixteenMillimetres_IsThePublishedOne(string thread, double area) =>
        Assert.Equal(area, MetricThread.Read(thread)!.Value.StressArea * 1e6, 0.1);

    /// <summary>Mechanical Fastening, Joining and Assembly, page 85: 0.190 in, 1275 lb, torque by K.</summary>
    [Theory]
    [InlineData(0.30, 72.7)]
    [InlineData(0.25, 60.6)]
    [InlineData(0.20, 48.5)]
    [InlineData(0.15, 36.3)]
    [InlineData(0.10, 24.2)]
    public void Torque_NumberTenScrew_IsThePublishedTable(double factor, double poundInches) =>
        Assert.Equal(poundInches, TighteningTorque.Torque(factor, 1275 * PoundForce, 0.190 * Inch) / PoundInch, 0.06);

    /// <summary>Torque guide of Martin, page 10: grade 5, 75 % of yield, K 0.20; stress areas and 92 ksi from memory.</summary>
    [Theory]
    [InlineData(0.5, 0.1419, 82)]
    [InlineData(0.75, 0.373, 322)]
    public void Torque_InchBolts_IsTheMartinTable(double diameter, double area, double poundFeet)
    {
        var preload = 0.75 * 92000 * area * PoundForce;

        Assert.Equal(poundFeet, TighteningTorque.Torque(0.2, preload, diameter * Inch) / PoundFoot, 0.5);
    }

    /// <summary>cncexpo.com, torques for class 8.8 dry, 75 % of the proof load of ISO 898-1, K 0.20: M8 in pound inches, the others in pound feet.</summary>
    [Theory]
    [InlineData("M8", 225, PoundInch, 1)]
    [InlineData("M10", 37, PoundFoot, 0.5)]
    [InlineData("M12", 65, PoundFoot, 0.5)]
    public void Torque_MetricBolts_IsThePublishedTable(string text, double torque, double unit, double within)
    {
        var thread = MetricThread.Read(text)!.Value;
        var preload = TighteningTorque.Preload(thread, StrengthClass.Proof("8.8", thread.Diameter)!.Value, 0.75);

        Assert.Equal(torque, TighteningTorque.Torque(0.2, preload, thread.Diameter) / unit, within);
    }

    /// <summary>Shigley, Mechanical Engineering Design, example 8-3, from memory: 25 kip on 3/4 in with K 0.2 take 3750 lbf in.</summary>
    [Fact]
    public void Torque_ShigleyExample_Is3750PoundInches() => Assert.Equal(3750, TighteningTorque.Torque(0.2, 25000 * PoundForce, 0.75 * Inch) / PoundInch, 6);

    /// <summary>ISO 261, from memory: coarse pitches.</summary>
    [Theory]
    [InlineData("M6", 1)]
    [InlineData("M8", 1.25)]
    [InlineData("M10", 1.5)]
    [InlineData("M12", 1.75)]
    public void Read_CoarseThread_KnowsItsPitch(string text, double pitch) => Assert.Equal(pitch, MetricThread.Read(text)!.Value.Pitch * 1000, 9);

    [Theory]
    [InlineData("M13")]
    [InlineData("M10x8")]
    [InlineData("M10x")]
    [InlineData("10x1.5")]
    [InlineData("M10x1.25x2")]
    [InlineData("M-8")]
    [InlineData("")]
    public void Read_NoSuchThread_IsNothing(string text) => Assert.Null(MetricThread.Read(text));

    /// <summary>ISO 898-1 table 3, from memory: a class of a higher number is never weaker.</summary>
    [Fact]
    public void Proof_RisingClass_Rises()
    {
        var proofs = new[] { "4.6", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9" }.Select(name => StrengthClass.Proof(name, 0.010)!.Value).ToList();

        Assert.Equal(proofs.Order(), proofs);
        Assert.Equal((600e6, null), (StrengthClass.Proof("8.8", 0.020)!.Value, StrengthClass.Proof("9.8", 0.020)));
    }

    /// <summary>
    /// The designation tells the nominal yield: the first number times 100 MPa is the strength, the second a tenth of the share at which it yields
    /// (ISO 898-1, clause 5, from memory). Stress under proof load is a little less: 0.89 to 0.97 of it.
    /// </summary>
    [Theory]
    [InlineData("4.6", 240)]
    [InlineData("4.8", 320)]
    [InlineData("5.6", 300)]
    [InlineData("5.8", 400)]
    [InlineData("6.8", 480)]
    [InlineData("8.8", 640)]
    [InlineData("9.8", 720)]
    [InlineData("10.9", 900)]
    [InlineData("12.9", 1080)]
    public void Proof_EveryClass_LiesALittleBelowTheNominalYield(string name, double yield) =>
        Assert.InRange(StrengthClass.Proof(name, 0.010)!.Value / 1e6, 0.89 * yield, 0.97 * yield);

    [Theory]
    [InlineData("8")]
    [InlineData("3.6")]
    [InlineData("A2-70")]
    [InlineData("")]
    public void Proof_NoSuchClass_IsNothing(string name) => Assert.Null(StrengthClass.Proof(name, 0.010));
}
