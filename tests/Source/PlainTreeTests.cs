using System.Globalization;
using System.Text;
using Swapwright.Benchmarks.Bases;
using Swapwright.Source;

namespace Swapwright.Tests.Source;

/// <summary>Where the plain reader does not give up, its tree is the YAML parser's in every place, text and kind, and the parser has no fault to find.</summary>
public sealed class PlainTreeTests
{
    private static readonly string[] Pieces =
    [
        "[", "]", "{", "}", "[]", "{}", ":", ": ", "-", "- ", "\n", "\n  ", "\n    ", "\n\n", "\t", "\r\n", "&a ", "*a", "!!map ", "|", ">", "|\n", ">-\n", "'", "\"", "''", "\\", "%", "@", "`", "#", " # remark", "\n# remark\n", "? ",
        "---\n", "...\n", "~", "null", "yes", "0x1F", "0o17", "-1", "- 1", ".5", "1e3", "1e99", "\u00A0", "😀", "Ω", ",", ", ", "<<: *a", " ", "  ", "key: ", "key: value\n", "a.b-c_d: ", "- a: b\n", "=", "<", "“", "$", "it's", "a:b", "a#b",
    ];

    [Fact]
    public void Read_BasesOfTheRepository_IsTheParsersTree()
    {
        var (taken, all) = (0, 0);
        foreach (var file in Files())
        {
            all++;
            taken += Same(file, File.ReadAllText(file)) ? 1 : 0;
        }

        Assert.True(taken > all * 9 / 10, string.Create(CultureInfo.InvariantCulture, $"only {taken} of {all} files are read without the parser"));
    }

    [Fact]
    public void Read_DrawnBase_IsTheParsersTreeAndNeverGivesUp() =>
        Assert.All(LargeBase.Of(new BaseSize(8, 12, 10, 40, 200, 4, Faults: 8)).Files, file => Assert.True(Same(file.Key, file.Value), file.Key));

    [Fact]
    public void Read_MutatedFiles_IsTheParsersTreeWhereItDoesNotGiveUp()
    {
        var random = new Random(20260301);
        var texts = Files().Select(File.ReadAllText).Where(text => text.Length < 3000).ToList();
        var taken = 0;
        for (var round = 0; round < 10_000; round++)
        {
            var text = texts[random.Next(texts.Count)];
            for (var times = random.Next(1, 4); times > 0; times--)
            {
                text = Mutated(text, random);
            }

            taken += Same("rules/one.yaml", text) ? 1 : 0;
        }

        Assert.True(taken > 2000, string.Create(CultureInfo.InvariantCulture, $"only {taken} mutated texts were read without the parser"));
    }

    [Fact]
    public void Read_PiecesInARow_IsTheParsersTreeWhereItDoesNotGiveUp()
    {
        var random = new Random(20260302);
        var taken = 0;
        for (var round = 0; round < 30_000; round++)
        {
            var text = new StringBuilder(random.Next(2) == 0 ? "a: " : "a:\n  b: c\n  d: ");
            for (var times = random.Next(1, 6); times > 0; times--)
            {
                text.Append(random.Next(3) == 0 ? "word" : Pieces[random.Next(Pieces.Length)]);
            }

            taken += Same("rules/one.yaml", text.ToString()) ? 1 : 0;
        }

        Assert.True(taken > 2000, string.Create(CultureInfo.InvariantCulture, $"only {taken} rows of pieces were read without the parser"));
    }

    [Theory]
    [InlineData("a: b\n c\n")]
    [InlineData("a:\n")]
    [InlineData("a: |\n  b\n\n  c\n")]
    [InlineData("a: \"b\\n\"\n")]
    [InlineData("a: b\na: c\n")]
    [InlineData("a: &x b\n")]
    [InlineData("a: [b,\n  c]\n")]
    [InlineData("- a\n")]
    [InlineData("a: 1e99\n")]
    public void Read_WhatIsNotPlain_GivesUp(string text) => Assert.Null(Plain("rules/one.yaml", text, SourceLimits.Default));

    [Fact]
    public void Read_BeyondALimit_GivesUp()
    {
        const string Text = "a: [b, c, {d: e}]\nlong: value\n";
        Assert.NotNull(Plain("rules/one.yaml", Text, SourceLimits.Default));
        Assert.Null(Plain("rules/one.yaml", Text, SourceLimits.Default with { MaxDepth = 2 }));
        Assert.Null(Plain("rules/one.yaml", Text, SourceLimits.Default with { MaxItemsPerList = 2 }));
        Assert.Null(Plain("rules/one.yaml", Text, SourceLimits.Default with { MaxNodesPerFile = 9 }));
        Assert.Null(Plain("rules/one.yaml", Text, SourceLimits.Default with { MaxScalarLength = 4 }));
    }

    private static IEnumerable<string> Files() => new[] { "swap-kb", "tests/knowledge-bases" }
        .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Reading.Repository(), folder), "*.yaml", SearchOption.AllDirectories))
        .Order(StringComparer.Ordinal);

    private static MappingNode? Plain(string path, string text, SourceLimits limits) => PlainTree.Read(path, text, new LineIndex(text), limits);

    /// <summary>Whether the plain reader took the text; fails where it took it and the parser reads something else.</summary>
    private static bool Same(string path, string text)
    {
        var lines = new LineIndex(text);
        var findings = new FindingList(path, 100);
        if (!SourceDecoder.Accepts(path, text, lines, findings) || PlainTree.Read(path, text, lines, SourceLimits.Default) is not { } plain)
        {
            return false;
        }

        var parsed = new TreeBuilder(path, text, lines, SourceLimits.Default, findings).Build();
        Assert.True(findings.Count == 0 && parsed is not null, $"taken, though the parser finds: {string.Join("; ", findings.ToImmutable())}\n{text}");
        Assert.True(Written(parsed) == Written(plain), $"{Written(parsed)}\nis not\n{Written(plain)}\nin\n{text}");
        return true;
    }

    private static string Mutated(string text, Random random)
    {
        if (text.Length == 0)
        {
            return Pieces[random.Next(Pieces.Length)];
        }

        var at = random.Next(text.Length);
        var length = Math.Min(random.Next(1, 40), text.Length - at);
        return random.Next(5) switch
        {
            0 => text.Remove(at, Math.Min(length, 3)),
            1 => text.Remove(at, length),
            2 => text.Insert(at, text.Substring(at, length)),
            _ => text.Insert(at, Pieces[random.Next(Pieces.Length)]),
        };
    }

    private static string Written(SourceNode node) => node switch
    {
        ScalarNode scalar => $"{Reading.Span(node.Place)} {scalar.Kind} {scalar.IsQuoted} {scalar.IsBlock} `{scalar.Text}`",
        SequenceNode sequence => $"{Reading.Span(node.Place)} [{string.Join(", ", sequence.Items.Select(Written))}]",
        MappingNode mapping => $"{Reading.Span(node.Place)} {{{string.Join(", ", mapping.Entries.Select(entry => $"{Written(entry.Key)} = {Written(entry.Value)}, {ReferenceEquals(mapping[entry.Key.Text], entry.Value)}"))}}}",
        _ => throw new InvalidOperationException("no such node"),
    };
}
