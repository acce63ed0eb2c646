using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>New housings for plugs are bought, unless a harness that is cut up has them to give.</summary>
public sealed class HousingTests
{
    // One plug that does not mate, one that is missing, one that goes straight in.
    private static readonly WiringSheet s_sheet = WiringWorksheet.Compute(Bench.Empty
        .With(Bench.Device("coolant", "oval-2", Bench.Origin, "1:coolant"), Bench.Device("purge", "flat-3", Bench.Origin, "1:purge"), Bench.Device("knock", "square-2", Bench.Origin, "1:knock"))
        .WithPlug("coolant", Bench.Plug("square-2", Bench.Origin, "1:coolant"))
        .WithPlug("knock", Bench.Plug("square-2", Bench.Origin, "1:knock"))
        .WithEcus(Bench.Ecu("ecu", "ecu-8", "1:coolant", "2:purge", "3:knock"), Bench.Ecu("ecu", "ecu-8", "1:coolant", "2:purge", "3:knock")));

    private static readonly WiringStock s_housing = new("housing", WiringGood.Housing, null);

    [Fact]
    public void Of_ChangedAndAddedPlug_BuysAHousingForEach()
    {
        Assert.Equal((1, 1, 1), (s_sheet.Counts.Changed, s_sheet.Counts.Added, s_sheet.Counts.StraightIn));
        Assert.Equal(2, Bought());
    }

    [Theory]
    [InlineData(1, "oval-2")]
    [InlineData(0, "oval-2", "flat-3", "flat-3")]
    [InlineData(2, "square-2", "ecu-8")]
    [InlineData(1, "oval-2", "oval-2")]
    public void Of_HarnessThatIsCutUp_GivesThoseOfItsFamilies(int bought, params string[] spare) => Assert.Equal(bought, Bought(spare));

    [Fact]
    public void Of_NobodySellsOne_IsStillWanted() => Assert.Null(Assert.Single(WiringPurchases.Of(s_sheet, []), want => want.Good == WiringGood.Housing).Part);

    private static int Bought(params string[] spare) => WiringPurchases.Of(s_sheet, [s_housing], spare).Where(want => want.Good == WiringGood.Housing).Sum(want => want.Amount);
}
