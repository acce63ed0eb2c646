using Swapwright.Source;

namespace Swapwright.Tests.Source;

public class ScalarNodeTests
{
    [Theory]
    [InlineData("", ScalarKind.Null)]
    [InlineData("~", ScalarKind.Null)]
    [InlineData("null", ScalarKind.Null)]
    [InlineData("true", ScalarKind.Flag)]
    [InlineData("TRUE", ScalarKind.Flag)]
    [InlineData("False", ScalarKind.Flag)]
    [InlineData("yes", ScalarKind.Text)]
    [InlineData("no", ScalarKind.Text)]
    [InlineData("on", ScalarKind.Text)]
    [InlineData("off", ScalarKind.Text)]
    [InlineData("nULL", ScalarKind.Text)]
    [InlineData("12", ScalarKind.Integer)]
    [InlineData("-12", ScalarKind.Integer)]
    [InlineData("+012", ScalarKind.Integer)]
    [InlineData("0o17", ScalarKind.Integer)]
    [InlineData("0o18", ScalarKind.Text)]
    [InlineData("0x1F", ScalarKind.Integer)]
    [InlineData("-0x1F", ScalarKind.Text)]
    [InlineData("1.5", ScalarKind.Number)]
    [InlineData("1.", ScalarKind.Number)]
    [InlineData(".5", ScalarKind.Number)]
    [InlineData("-.5e-3", ScalarKind.Number)]
    [InlineData("1e3", ScalarKind.Number)]
    [InlineData(".", ScalarKind.Text)]
    [InlineData("1e", ScalarKind.Text)]
    [InlineData("+e5", ScalarKind.Text)]
    [InlineData("1_000", ScalarKind.Text)]
    [InlineData("12:30", ScalarKind.Text)]
    [InlineData("2024-05-31", ScalarKind.Text)]
    [InlineData("12.5 mm", ScalarKind.Text)]
    [InlineData("1.2.3", ScalarKind.Text)]
    public void Kind_PlainScalar_FollowsCoreSchema(string written, ScalarKind kind)
    {
        var scalar = Assert.IsType<ScalarNode>(Reading.Root($"a: {written}\nb: 1\n")["a"]);

        Assert.Equal(kind, scalar.Kind);
        Assert.False(scalar.IsQuoted);
    }

    [Theory]
    [InlineData("'12'", "12")]
    [InlineData("\"true\"", "true")]
    [InlineData("''", "")]
    [InlineData("\"a\\nb\"", "a\nb")]
    public void Kind_QuotedScalar_StaysText(string written, string text)
    {
        var scalar = Assert.IsType<ScalarNode>(Reading.Root($"a: {written}\n")["a"]);

        Assert.Equal((ScalarKind.Text, true, text), (scalar.Kind, scalar.IsQuoted, scalar.Text));
    }

    [Fact]
    public void Kind_BlockScalar_StaysText()
    {
        var scalar = Assert.IsType<ScalarNode>(Reading.Root("a: |\n  12\n")["a"]);

        Assert.Equal((ScalarKind.Text, true, "12\n"), (scalar.Kind, scalar.IsBlock, scalar.Text));
    }

    [Theory]
    [InlineData("785", 785)]
    [InlineData("-1.25", -1.25)]
    [InlineData("1e3", 1000)]
    [InlineData("0x1F", 31)]
    [InlineData("0o17", 15)]
    [InlineData("1.", 1)]
    public void TryGetDecimal_Number_IsExact(string written, double expected)
    {
        var scalar = Assert.IsType<ScalarNode>(Reading.Root($"a: {written}\n")["a"]);

        Assert.True(scalar.TryGetDecimal(out var value));
        Assert.Equal((decimal)expected, value);
    }

    [Theory]
    [InlineData("'785'")]
    [InlineData("text")]
    [InlineData("true")]
    public void TryGetDecimal_NoNumber_IsFalse(string written) =>
        Assert.False(Assert.IsType<ScalarNode>(Reading.Root($"a: {written}\n")["a"]).TryGetDecimal(out _));

    [Theory]
    [InlineData("1e99")]
    [InlineData(".inf")]
    [InlineData("-.INF")]
    [InlineData(".nan")]
    [InlineData("99999999999999999999999999999999")]
    [InlineData("0xFFFFFFFFFFFFFFFFFF")]
    [InlineData("0o7777777777777777777777777")]
    public void Parse_NumberBeyondDecimal_IsFinding(string written)
    {
        var finding = Reading.Single($"a: {written}\n");

        Assert.Contains($"`{written}`", finding.Message, StringComparison.Ordinal);
        Assert.Equal((1, 4), (finding.Place.Line, finding.Place.Column));
    }
}
