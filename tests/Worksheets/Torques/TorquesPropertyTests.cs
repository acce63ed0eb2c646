using System.Globalization;
using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Torques;

namespace Swapwright.Tests.Worksheets.Torques;

/// <summary>What must hold for any bolt and any filling, tried on ones drawn from a seeded generator.</summary>
public sealed class TorquesPropertyTests
{
    private const int Bolts = 200;

    private static readonly TighteningAssumptions s_usual = new(0.75, 0.2, 0.15, 0.25);
    private static readonly string[] s_classes = ["8.8", "10.9", "12.9"];

    [Fact]
    public void Work_MoreFrictionMorePreloadStrongerClass_TakeMoreTorque()
    {
        var random = new Random(1);
        for (var round = 0; round < Bolts; round++)
        {
            var (bolt, more) = (Bolt(random), random.Between(1.01, 1.3));
            var torque = Torque(s_usual, bolt);
            Assert.Equal(torque * more, Torque(s_usual with { NutFactor = s_usual.NutFactor * more }, bolt), 1e-9 * torque);
            Assert.Equal(torque * more, Torque(s_usual with { ProofShare = s_usual.ProofShare * more }, bolt), 1e-9 * torque);
            Assert.True(Torque(s_usual, bolt with { Class = "8.8" }) < Torque(s_usual, bolt with { Class = "10.9" }));
            Assert.True(Torque(s_usual, bolt with { Class = "10.9" }) < Torque(s_usual, bolt with { Class = "12.9" }));
            Assert.True(Torque(s_usual, bolt with { Lubricated = true }) < torque);
        }
    }

    /// <summary>Diameter and pitch twice as large: the stress area is four times, the torque eight times as large. Sizes on either side of no limit of a class's proof strength.</summary>
    [Theory]
    [InlineData("M4x0.7", "M8x1.4")]
    [InlineData("M5x0.8", "M10x1.6")]
    [InlineData("M6x1", "M12x2")]
    public void Work_ThreadScaled_ScalesByTheCube(string small, string large)
    {
        var bolt = Bolt(new Random(2)) with { Class = "10.9" };
        Assert.Equal(8 * Torque(s_usual, bolt with { Thread = small }), Torque(s_usual, bolt with { Thread = large }), 1e-6);
    }

    [Fact]
    public void Work_FinerPitch_TakesMore()
    {
        var bolt = Bolt(new Random(3));
        Assert.True(Torque(s_usual, bolt with { Thread = "M10x1.5" }) < Torque(s_usual, bolt with { Thread = "M10x1.25" }));
        Assert.True(Torque(s_usual, bolt with { Thread = "M10x1.25" }) < Torque(s_usual, bolt with { Thread = "M10x1" }));
    }

    [Fact]
    public void Work_AnotherOrder_GivesTheSame()
    {
        var random = new Random(4);
        for (var round = 0; round < 50; round++)
        {
            var input = new TorquesInput(s_usual, [.. Enumerable.Range(0, 12).Select(at => Bolt(random, at))], [.. Enumerable.Range(0, 6).Select(_ => Filling(random))], []);
            Drawn.AreTheSame(TorquesWorksheet.Work(input), TorquesWorksheet.Work(input with { Fasteners = [.. input.Fasteners.Reverse()], Fillings = [.. input.Fillings.Reverse()] }));
            Drawn.HasNumbersOnly(TorquesWorksheet.Work(input));
        }
    }

    /// <summary>A figure that a manual states is never touched by what is reckoned with.</summary>
    [Fact]
    public void Work_StatedTorque_StaysWhateverIsAssumed()
    {
        var random = new Random(5);
        for (var round = 0; round < Bolts; round++)
        {
            var stated = random.Between(5, 200);
            Assert.Equal(stated, Torque(new TighteningAssumptions(random.NextDouble(), random.NextDouble(), random.NextDouble(), random.NextDouble()), Bolt(random) with { Stated = stated }));
        }
    }

    [Fact]
    public void Work_ImpossibleInput_IsAGapAndNoNumber()
    {
        var random = new Random(6);
        foreach (var odd in Drawn.Impossible)
        {
            var bolt = Bolt(random);
            Drawn.HasNumbersOnly(Work(s_usual with { NutFactor = odd }, bolt));
            Drawn.HasNumbersOnly(Work(s_usual with { ProofShare = odd }, bolt));
            Drawn.HasNumbersOnly(Work(s_usual with { Scatter = odd }, bolt));
            Drawn.HasNumbersOnly(Work(s_usual, bolt with { Stated = odd }));
            var filled = TorquesWorksheet.Work(new TorquesInput(s_usual, [], [Filling(random) with { Amount = odd }], []));
            Drawn.HasNumbersOnly(filled);
            Assert.DoesNotContain(filled.Tables.SelectMany(table => table.Rows).SelectMany(row => row), cell => cell.Text.Contains("NaN", StringComparison.Ordinal) || cell.Text.Contains('∞', StringComparison.Ordinal) || cell.Text.Contains("Infinity", StringComparison.Ordinal));
            if (!double.IsFinite(odd) || odd <= 0)
            {
                Assert.NotEmpty(Work(s_usual with { NutFactor = odd }, bolt).Gaps);
                Assert.Contains("no positive number", Assert.Single(filled.Gaps).Reason, StringComparison.Ordinal);
            }
        }

        Assert.All(["", "M", "M10x", "M10x20", "10", "MNaN", "M-8", "M8x1x1", "M1e9"], thread => Assert.NotEmpty(Work(s_usual, Bolt(random) with { Thread = thread }).Gaps));
    }

    private static Ledger Work(TighteningAssumptions assumptions, Fastener bolt) => TorquesWorksheet.Work(new TorquesInput(assumptions, [bolt], [], []));

    private static double Torque(TighteningAssumptions assumptions, Fastener bolt) => Work(assumptions, bolt).Value($"bolt-{bolt.Id}");

    private static Fastener Bolt(Random random, int at = 0) => new(
        "b" + at.ToString(CultureInfo.InvariantCulture), "Bolt", "Task", "task t", random.Next(3) switch { 0 => "M8", 1 => "M10x1.25", _ => "M12" }, s_classes[random.Next(3)], random.Next(1, 9), null, false, null, null, "", false, false, "");

    private static Filling Filling(Random random) => new(random.Next(2) == 0 ? "engine-oil" : "coolant", "Fluid", "10W-40", random.Between(0.1, 8), "the engine", "donor d", false);
}
