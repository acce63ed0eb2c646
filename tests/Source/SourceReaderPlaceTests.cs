using Swapwright.Source;

namespace Swapwright.Tests.Source;

public class SourceReaderPlaceTests
{
    [Fact]
    public void Place_KeysAndValues_AreExact()
    {
        var root = Reading.Root("title: Left mount\nthen:\n  - position: 'left'\n    steps: [one, two]\n");

        Assert.Equal("1:1-4:22", Reading.Span(root.Place));
        Assert.True(root.TryGet("title", out var title));
        Assert.Equal("1:1-1:6", Reading.Span(title.Key.Place));
        Assert.Equal("1:8-1:18", Reading.Span(title.Value.Place));
        var then = Assert.IsType<SequenceNode>(root["then"]);
        Assert.Equal("3:3-4:22", Reading.Span(then.Place));
        var first = Assert.IsType<MappingNode>(Assert.Single(then.Items));
        Assert.Equal("3:5-4:22", Reading.Span(first.Place));
        Assert.Equal("3:15-3:21", Reading.Span(first["position"]!.Place));
        Assert.Equal("4:12-4:22", Reading.Span(first["steps"]!.Place));
        Assert.Equal(Reading.Path, first.Place.File);
    }

    [Fact]
    public void Place_FlowMapping_IncludesBraces() => Assert.Equal("1:7-1:19", Reading.Span(Reading.Root("when: {year: 1996}\nb: 1\n")["when"]!.Place));

    [Fact]
    public void Place_EmptyValue_IsAfterColon() => Assert.Equal("1:3-1:3", Reading.Span(Reading.Root("a:\nb: 1\n")["a"]!.Place));

    [Theory]
    [InlineData("a: |\n  one\n  two\n\n\nb: 1\n", "1:4-3:6")]
    [InlineData("a: >-\n  one\n", "1:4-2:6")]
    [InlineData("a: |\n  one", "1:4-2:6")]
    [InlineData("a: |\nb: 1\n", "1:4-1:5")]
    public void Place_BlockText_EndsWithItsLastLetter(string yaml, string span) => Assert.Equal(span, Reading.Span(Reading.Root(yaml)["a"]!.Place));

    [Fact]
    public void Place_Columns_CountCodeUnits() => Assert.Equal("1:8-1:9", Reading.Span(Reading.Root("'😀é': b\n")["😀é"]!.Place));

    [Fact]
    public void Place_CarriageReturns_CountAsOneLineEnd()
    {
        var root = Reading.Root("a: 1\r\nb: |\r\n  x\r\n  y\r\nc: 3\r\n");

        Assert.Equal("2:4-4:4", Reading.Span(root["b"]!.Place));
        Assert.Equal("5:4-5:5", Reading.Span(root["c"]!.Place));
    }

    [Fact]
    public void Parse_ByteOrderMark_IsSkipped()
    {
        var (root, findings) = SourceReader.Parse(Reading.Path, [0xEF, 0xBB, 0xBF, (byte)'a', (byte)':', (byte)' ', (byte)'1']);

        Assert.Empty(findings);
        Assert.Equal("1:4-1:5", Reading.Span(root!["a"]!.Place));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(500)]
    public void TryGet_AnySize_FindsEveryKey(int keys)
    {
        var root = Reading.Root(string.Concat(Enumerable.Range(0, keys).Select(i => FormattableString.Invariant($"key-{i}: value-{i}\n"))));

        Assert.Equal(keys, root.Entries.Length);
        Assert.All(Enumerable.Range(0, keys), i => Assert.Equal(FormattableString.Invariant($"value-{i}"), ((ScalarNode)root[FormattableString.Invariant($"key-{i}")]!).Text));
        Assert.False(root.TryGet("key", out _));
        Assert.Null(root["key"]);
    }
}
