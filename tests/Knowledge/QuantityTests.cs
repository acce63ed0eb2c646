using System.Globalization;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Knowledge;

public sealed class QuantityTests
{
    [Theory]
    [InlineData("12.5", "mm", "12.5")]
    [InlineData("12.5 mm", "mm", "12.5")]
    [InlineData("12.5mm", "mm", "12.5")]
    [InlineData(" 12.5  mm ", "mm", "12.5")]
    [InlineData("0.5 in", "mm", "12.7")]
    [InlineData("-20", "mm", "-20")]
    [InlineData("+20 cm", "mm", "200")]
    [InlineData("90 PS", "kW", "66.1948875")]
    [InlineData("100 lb ft", "N m", "135.58179483314")]
    [InlineData("150 Nm", "N m", "150")]
    [InlineData("32 °F", "°C", "0")]
    [InlineData("-40 °F", "°C", "-40")]
    [InlineData("300 kPa", "bar", "3")]
    [InlineData("500 mA", "A", "0.5")]
    [InlineData("1 ms", "h", "0.00000027777777777778")]
    [InlineData("0", "mm", "0")]
    [InlineData("0 in", "mm", "0")]
    [InlineData("4.06", "", "4.06")]
    public void Read_Quantity_IsInTheUnitThatIsWanted(string text, string unit, string expected)
    {
        Assert.Null(Quantity.Read(text, Unit.Find(unit)!, out var value));
        Assert.Equal(expected, value.ToString(CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("", "mm", "`` is not a number")]
    [InlineData("mm", "mm", "`mm` is not a number")]
    [InlineData("1-2 mm", "mm", "`1-2 mm` is not a number")]
    [InlineData("1,5 mm", "mm", "`,5 mm` is not a unit that is known here")]
    [InlineData("1.2.3", "mm", "`1.2.3` is not a number")]
    [InlineData("--1", "mm", "`--1` is not a number")]
    [InlineData("1e3", "mm", "`e3` is not a unit that is known here")]
    [InlineData("12 MM", "mm", "`MM` is not a unit that is known here")]
    [InlineData("12 mm mm", "mm", "`mm mm` is not a unit that is known here")]
    [InlineData("12 kg", "mm", "`12 kg` is of the wrong dimension: a quantity in mm is wanted")]
    [InlineData("12 N", "N m", "`12 N` is of the wrong dimension: a quantity in N m is wanted")]
    [InlineData("12 mm", "", "`12 mm` carries a unit where a plain number is wanted")]
    [InlineData("99999999999999999999999999999", "mm", "`99999999999999999999999999999` is not a number")]
    [InlineData("79000000000000000000000000000 km", "mm", "`79000000000000000000000000000 km` is too large a number")]
    public void Read_NoSuchQuantity_IsRefusedInWords(string text, string unit, string expected) =>
        Assert.Equal(expected, Quantity.Read(text, Unit.Find(unit)!, out _));

    [Fact]
    public void ToString_UnderAnotherCulture_KeepsThePoint()
    {
        var culture = CultureInfo.CurrentCulture;
        try
        {
            var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            comma.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture = comma;

            Assert.Equal("12.5 mm", new Quantity(12.5m, Unit.Millimetre).ToString());
            Assert.Null(Quantity.Read("12.5 mm", Unit.Millimetre, out var value));
            Assert.Equal(12.5m, value);
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }
}
