using System.Collections.Immutable;
using Swapwright.Worksheets.Fuel;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Fuel;

/// <summary>The feed as it was bought, resistors that are not on sale, ECUs that say less or are programmed.</summary>
public sealed class FuelCornersTests
{
    private static readonly FuelInput s_usual = new()
    {
        Assumptions = new FuelAssumptions(304 / 3.6e9, 720, 0.85, 0.25, 14),
        Power = V(77000),
        PowerSpeed = V(6000 * Math.PI / 30),
        Cylinders = V(4),
        Family = "marn",
        Ecu = new EngineControl("ECU", InjectorDriver.Saturated, V(2), V(4), new FuelWord("marn", "Marn", "ecu x"), V(3e-6), null, V(1), null),
        Injectors = new InjectorSet(V(3e-6), V(2.8e5), V(2.4), V(4)),
        Ballast = BallastWork.Kept,
        BallastResistance = V(6.8),
        BallastPower = V(20),
        Line = new FuelLine(V(3e5), false, false, V(60e-3 / 3600), V(3e5), [], false, V(6e5), 0.5),
        Ignition = new IgnitionSet(new FuelWord("distributor", "Distributor", "donor x"), null, V(1), null, null, null, null, null),
    };

    [Theory]
    [InlineData(6e5, "6 bar")]
    [InlineData(2e5, "2 bar, too little")]
    [InlineData(null, "what stays: its marking decides")]
    public void Work_Filter_IsHeldAgainstTheRail(double? rating, string fitted) =>
        Assert.Equal(fitted, Line(s_usual.Line with { FilterRating = rating is { } most ? V(most) : null })["Filter"]);

    /// <summary>R6 is not made for injection (scope of SAE J30, June 1998); what stays has to be read on the hose.</summary>
    [Theory]
    [InlineData(FuelHoseClass.R9, false, "Hose: R9")]
    [InlineData(FuelHoseClass.R6, false, "Hose: R6, not for this pressure")]
    [InlineData(FuelHoseClass.R9, true, "Hose: R9; what stays: read the class printed on it")]
    [InlineData(null, true, "what stays: read the class printed on it")]
    [InlineData(null, false, "")]
    public void Work_HoseOfTheFeed_IsToldByItsClass(FuelHoseClass? bought, bool kept, string fitted) =>
        Assert.Equal(fitted, Line(s_usual.Line with { HoseClasses = bought is { } known ? [("Hose", known)] : [], HoseKept = kept })["Fuel hose outside the tank"]);

    /// <summary>No base says what the hose in the tank and the clips are: an empty cell would read as none fitted (common practice, no source).</summary>
    [Fact]
    public void Work_WhatNoBaseSaysOfTheLine_IsToBeLookedAt()
    {
        var fitted = Line(s_usual.Line);

        Assert.Equal(("look at it: the class is printed on it", "look at each of them"), (fitted["Hose inside the tank"], fitted["Clips"]));
    }

    /// <summary>P = I² Rₛ with I = 14 V ∕ 9.2 Ω: 15.7 W, by hand. Bought with a quarter to spare, 19.7 W.</summary>
    [Theory]
    [InlineData(null, FigureWeight.Plain)]
    [InlineData(15.0, FigureWeight.Bad)]
    [InlineData(18.0, FigureWeight.Caution)]
    [InlineData(20.0, FigureWeight.Good)]
    public void Work_BallastThatIsKept_IsHeldAgainstItsRating(double? watts, FigureWeight weight)
    {
        var figure = FuelWorksheet.Work(s_usual with { BallastPower = watts is { } most ? V(most) : null }).Figure("ballast-heat")!;

        Assert.Equal(14 / 9.2 * (14 / 9.2) * 6.8, figure.Value, 9);
        Assert.Equal((weight, watts is null), (figure.Weight, figure.Remark.Contains("rating is not known", StringComparison.Ordinal)));
    }

    /// <summary>14 V over 0.1 Ω may drive 30 A where 0.367 Ω stand before it; the next of E24 is 0.39 Ω and dissipates 318 W, more than one resistor on sale stands.</summary>
    [Fact]
    public void Work_MoreHeatThanAResistorStands_WantsSeveral()
    {
        var figure = FuelWorksheet.Work(s_usual with { Ecu = s_usual.Ecu with { DriverCurrent = V(30) }, Injectors = s_usual.Injectors with { Resistance = V(0.1) }, Ballast = BallastWork.Added, BallastResistance = V(0.39) }).Figure("ballast-made")!;

        Assert.Equal(0.39, figure.Value, 9);
        Assert.StartsWith("wire-wound, in several pieces; it dissipates 318", figure.Remark, StringComparison.Ordinal);
        Assert.False(figure.IsStep);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-6.8)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void AtLeast_NoResistance_IsNone(double ohms) => Assert.Null(PreferredValues.AtLeast(ohms));

    [Theory]
    [InlineData(1, "has 1 injector driver for 4")]
    [InlineData(2, "has 2 injector drivers for 4")]
    [InlineData(4, null)]
    public void Work_FewerDriversThanInjectors_AreCounted(double channels, string? words)
    {
        var notes = FuelWorksheet.Work(s_usual with { Ecu = s_usual.Ecu with { Channels = V(channels) } }).Notes.Where(note => note.Contains("injector driver", StringComparison.Ordinal)).ToList();

        Assert.Equal(words is null, notes.Count == 0);
        Assert.All(notes, note => Assert.Contains(words!, note, StringComparison.Ordinal));
    }

    [Fact]
    public void Work_EcuThatDoesNotCountItsOutputs_SaysNothingOfSparks()
    {
        Assert.Contains("Sparks", Items(s_usual));
        Assert.DoesNotContain("Sparks", Items(s_usual with { Ecu = s_usual.Ecu with { SparkOutputs = null } }));
    }

    [Fact]
    public void Work_EcuThatIsProgrammed_IsMappedAndTaughtItsSensors()
    {
        var table = FuelWorksheet.Work(s_usual with { Ecu = s_usual.Ecu with { MadeFor = new FuelWord("any", "Any engine", "ecu x") } }).Tables.Single(table => table.Id == "tuning");

        Assert.Equal(["Fuel, ignition, idle and warm-up", "Curves of the sensors"], table.Rows.Select(row => row[0].Text));
    }

    /// <summary>Two measurements at one pressure: the lesser flow is believed; below the first nothing more is promised than it gave.</summary>
    [Theory]
    [InlineData(3, 60, 3, 55, 3, 55)]
    [InlineData(3, 55, 3, 60, 3, 55)]
    [InlineData(3, 60, 4, 50, 2, 60)]
    [InlineData(3, 60, 4, 50, 3.5, 55)]
    public void On_PointsOfOnePressureOrAbove_GiveNoMoreThanWasMeasured(double one, double flow, double other, double less, double bar, double wanted) =>
        Assert.Equal(wanted, PumpDelivery.On((new PumpFlowPoint(one, flow), new PumpFlowPoint(other, less)), bar), 9);

    private static Dictionary<string, string> Line(FuelLine line) =>
        FuelWorksheet.Work(s_usual with { Line = line }).Tables.Single(table => table.Id == "line").Rows.ToDictionary(row => row[0].Text, row => row[2].Text, StringComparer.Ordinal);

    private static IEnumerable<string> Items(FuelInput input) => FuelWorksheet.Work(input).Tables.Where(table => table.Id == "ignition").SelectMany(table => table.Rows).Select(row => row[0].Text);

    private static FuelValue V(double si) => new(si, new FigureInput("Given", si, "", "test"));
}
