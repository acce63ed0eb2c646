using System.Globalization;
using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Tests.Source;

public class SourceReaderFaultTests
{
    [Theory]
    [InlineData("a: *other\n", "1:4-1:10", "alias `*other`")]
    [InlineData("a: &name 1\n", "1:4-1:9", "anchor `&name`")]
    [InlineData("a: !!str 1\n", "1:4-1:5", "tag")]
    [InlineData("a: !local {b: 1}\n", "1:4-1:5", "tag")]
    [InlineData("a: ! b\n", "1:4-1:5", "tag")]
    [InlineData("a: 1\nb: 2\na: 3\n", "3:1-3:2", "key `a` stands twice")]
    [InlineData("\ta: 1\n", "1:1-1:2", "tab")]
    [InlineData("a:\n\tb: 1\n", "2:1-2:2", "tab")]
    [InlineData("a:\n  - b\n \t- c\n", "3:2-3:3", "tab")]
    [InlineData("a:\n  -\tb: 1\n", "2:4-2:5", "tab")]
    [InlineData("a: |\n\tx\n", "2:1-2:2", "tab")]
    [InlineData("a: 1\n\t# remark\nb: 2\n", "2:1-2:2", "tab")]
    [InlineData("a: 1\n\t\nb: 2\n", "2:1-2:2", "tab")]
    [InlineData("a: 1\n---\nb: 2\n", "2:1-2:4", "second document")]
    [InlineData("? [a]\n: 1\n", "1:3-1:6", "key must be")]
    [InlineData(": 1\n", "1:1-1:1", "key is empty")]
    [InlineData("", "1:1-1:1", "empty")]
    [InlineData("# only a remark\n", "1:1-1:1", "empty")]
    [InlineData("---\n", "1:1-1:1", "empty")]
    [InlineData("- a\n- b\n", "1:1-2:4", "must hold a mapping")]
    [InlineData("text\n", "1:1-1:5", "must hold a mapping")]
    [InlineData("a: [1, 2\nc: 3\n", "1:4-1:5", "`[` is not closed")]
    [InlineData("a: {b\nc: 1\n", "1:4-1:5", "`{` is not closed")]
    [InlineData("a: [1, [2, 3]\n", "1:4-1:5", "`[` is not closed")]
    [InlineData("a: b: c\n", "1:5-1:6", "colon")]
    [InlineData("a: @x\n", "1:4-1:5", "cannot begin")]
    [InlineData("a: 'x\n", "1:4-2:1", "quoted text is not closed")]
    [InlineData("a: \"x\ny: 1\n", "1:4-2:1", "quoted text is not closed")]
    [InlineData("a: \"\\q\"\n", "1:4-1:5", "`\\` that means nothing")]
    [InlineData("a:\n  b: 1\n c: 2\n", "3:2-3:3", "does not fit the mapping")]
    [InlineData("a: - 1\n", "1:4-1:5", "list cannot begin")]
    [InlineData("a: *\n", "1:4-1:5", "`*` or `&`")]
    [InlineData("a: }\n", "1:4-1:5", "value is missing")]
    [InlineData("a: \"\\0\"\n", "1:4-1:8", "U+0000")]
    [InlineData("a: \"\\u202E\"\n", "1:4-1:12", "U+202E")]
    [InlineData("a: 1\nb: \u202Ex\n", "2:4-2:5", "U+202E")]
    [InlineData("a: \u2066x\n", "1:4-1:5", "U+2066")]
    [InlineData("a: \0\n", "1:4-1:5", "U+0000")]
    [InlineData("a: \u0007\n", "1:4-1:5", "U+0007")]
    [InlineData("a: x\u2028y\n", "1:5-1:6", "U+2028")]
    [InlineData("a: \uFEFFx\n", "1:4-1:5", "U+FEFF")]
    public void Parse_RefusedText_IsOneFindingAtItsPlace(string yaml, string span, string message)
    {
        var finding = Reading.Single(yaml);

        Assert.Equal(FindingKinds.Schema, finding.Kind);
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.Equal(span, Reading.Span(finding.Place));
        Assert.False(string.IsNullOrEmpty(finding.Mend));
    }

    [Fact]
    public void Parse_DoubleKey_PointsAtTheFirst()
    {
        var related = Assert.Single(Reading.Single("a: 1\nb: 2\na: 3\n").Related);

        Assert.Equal("1:1-1:2", Reading.Span(related.Place));
    }

    [Fact]
    public void Parse_DoubleKeyInLargeMapping_IsFound()
    {
        var yaml = string.Concat(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"k{i}: 1\n"))) + "k30: 2\n";

        Assert.Equal("41:1-41:4", Reading.Span(Reading.Single(yaml).Place));
    }

    [Fact]
    public void Parse_SeveralFaults_AreAllReported()
    {
        var (root, findings) = Reading.Parse("a: &x 1\nb: *x\nc: !t 2\na: 3\n");

        Assert.NotNull(root);
        Assert.Equal([1, 2, 3, 4], findings.Select(finding => finding.Place.Line));
    }

    [Theory]
    [InlineData("a: |\n  \tx\n   \ty\n")]
    [InlineData("a: 'one\n\ttwo'\n")]
    [InlineData("a: 1\t# remark\n  \nb: {c: 1,\t d: 2}\n")]
    public void Parse_TabThatIndentsNothing_IsAccepted(string yaml) => Assert.Empty(Reading.Parse(yaml).Findings);

    [Fact]
    public void Parse_Utf16_IsFinding()
    {
        foreach (var encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes("a: 1\n")];

            Assert.Contains("UTF-16", Assert.Single(SourceReader.Parse(Reading.Path, bytes).Findings).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Parse_InvalidUtf8_IsFindingAtTheByte()
    {
        var finding = Assert.Single(SourceReader.Parse(Reading.Path, [(byte)'a', (byte)':', (byte)'\n', (byte)'b', 0xC3, (byte)'x']).Findings);

        Assert.Contains("C3", finding.Message, StringComparison.Ordinal);
        Assert.Equal((2, 2), (finding.Place.Line, finding.Place.Column));
    }

    [Fact]
    public void Parse_EveryMessage_FollowsTheForm()
    {
        string[] broken = ["a: *b", "a: [1", "a: b: c", "", "- a", "a: @", "\ta: 1", "a: 1\na: 2"];

        Assert.All(broken.SelectMany(yaml => Reading.Parse(yaml).Findings), finding =>
        {
            Assert.False(char.IsUpper(finding.Message[0]));
            Assert.DoesNotMatch(@"\.\z", finding.Message);
            Assert.EndsWith(".", finding.Mend, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData(64, false)]
    [InlineData(65, true)]
    public void Parse_Depth_IsBounded(int depth, bool refused)
    {
        var yaml = "a: " + new string('[', depth - 1) + new string(']', depth - 1) + "\n";
        var (root, findings) = Reading.Parse(yaml);

        Assert.Equal(refused, root is null);
        Assert.Equal(refused ? ["lists and mappings are nested deeper than 64"] : [], findings.Select(finding => finding.Message));
    }

    [Fact]
    public void Parse_VeryDeep_IsRefusedEarly() =>
        Assert.Equal((1, 67), (Reading.Single("a: " + new string('[', 500_000)).Place.Line, Reading.Single("a: " + new string('[', 500_000)).Place.Column));

    [Theory]
    [InlineData(7, false)]
    [InlineData(6, true)]
    public void Parse_Nodes_AreBounded(int most, bool refused)
    {
        var findings = Reading.Parse("a: 1\nb: 2\nc: 3\n", new SourceLimits { MaxNodesPerFile = most }).Findings; // 1 mapping, 3 keys, 3 values

        Assert.Equal(refused ? ["the file holds more than 6 values"] : [], findings.Select(finding => finding.Message));
    }

    [Fact]
    public void Parse_FileTooLarge_IsFinding() =>
        Assert.Equal("the file is larger than 10 bytes", Reading.Single("a: 1234567890\n", new SourceLimits { MaxFileBytes = 10 }).Message);

    [Fact]
    public void Parse_ScalarTooLong_IsFindingAtTheScalar()
    {
        var finding = Reading.Single("a: 1\nb: 12345\n", new SourceLimits { MaxScalarLength = 4 });

        Assert.Equal(("the text is longer than 4 characters", "2:4-2:9"), (finding.Message, Reading.Span(finding.Place)));
    }

    [Fact]
    public void Parse_ListTooLong_IsFindingAtTheFirstItemBeyond()
    {
        var finding = Reading.Single("a: [1, 2, 3]\n", new SourceLimits { MaxItemsPerList = 2 });

        Assert.Equal(("the list has more than 2 items", 11), (finding.Message, finding.Place.Column));
    }

    [Fact]
    public void Parse_ManyFaults_AreBounded()
    {
        var yaml = string.Concat(Enumerable.Range(0, 1_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"k{i}: *x\n")));
        var findings = Reading.Parse(yaml).Findings;

        Assert.Equal(100, findings.Length);
        Assert.Contains("more findings than are listed", findings[^1].Message, StringComparison.Ordinal);
    }
}
