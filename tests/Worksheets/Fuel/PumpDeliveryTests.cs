using System.Collections.Immutable;
using Swapwright.Worksheets.Fuel;

namespace Swapwright.Tests.Worksheets.Fuel;

public sealed class PumpDeliveryTests
{
    private static readonly ImmutableArray<PumpFlowPoint> s_curve = [new(2e5, 70), new(3e5, 60), new(4e5, 48)];

    [Theory]
    [InlineData(0.5, 70)]
    [InlineData(2, 70)]
    [InlineData(2.5, 65)]
    [InlineData(3, 60)]
    [InlineData(3.5, 54)]
    [InlineData(4, 48)]
    public void On_Curve_IsOnTheLineBetweenTwoPoints(double bar, double flow) => Assert.Equal(flow, PumpDelivery.On(PumpDelivery.Between(s_curve, bar * 1e5)!.Value, bar * 1e5), 9);

    [Theory]
    [InlineData(4.01)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Between_BeyondTheLastPoint_IsNothing(double bar) => Assert.Null(PumpDelivery.Between(s_curve, bar * 1e5));

    [Fact]
    public void Between_NoCurve_IsNothing()
    {
        Assert.Null(PumpDelivery.Between([], 3e5));
        Assert.Null(PumpDelivery.Between([new(1e5, 0)], 1e5));
        Assert.Null(PumpDelivery.Between([new(-1, 50)], 1e5));
    }

    // 60 L/h at 3 bar, a tenth less for each bar more: 57 at 3.5 bar. Common practice, no source.
    [Theory]
    [InlineData(3, 2, 60)]
    [InlineData(3, 3, 60)]
    [InlineData(3, 3.5, 57)]
    [InlineData(3, 4.5, 51)]
    public void Falling_OnePoint_FallsByTheUsualShare(double measured, double bar, double flow) => Assert.Equal(flow, PumpDelivery.Falling(60, measured * 1e5, 1e-6, bar * 1e5)!.Value, 9);

    /// <summary>A pump that was measured at a carburettor's pressure says nothing of a rail's.</summary>
    [Theory]
    [InlineData(0.3, 3)]
    [InlineData(1, 2.5)]
    [InlineData(3, 4.6)]
    public void Falling_TooFarBeyond_IsNothing(double measured, double bar) => Assert.Null(PumpDelivery.Falling(60, measured * 1e5, 1e-6, bar * 1e5));
}
