using System.Globalization;
using Spectre.Console;
using Swapwright.Findings;
using Swapwright.Reports;

namespace Swapwright.Tests.Reports;

/// <summary>The check on terminals of some width: nothing beyond the edge, nothing lost, marks below what they mean.</summary>
public class NarrowTerminalTests
{
    private const string Clash = "title: Clash\nthen:\n  answers:\n    front-mount: {source: new, treatment: as-is, notes: \"Longer than a narrow terminal is wide, and than a wide one is, so that the line has to be cut.\"}\nsources: [bench]\nbecause: None.\n";

    [Theory]
    [InlineData(40)]
    [InlineData(60)]
    [InlineData(120)]
    public void Write_Width_IsKeptAndNothingIsLost(int width)
    {
        using var spoilt = SmallBase.Copy(("rules/front/clash.yaml", Clash));
        var proof = Proof.Of(spoilt.Path);
        var wide = Lines(proof, 100_000);
        var narrow = Lines(proof, width);

        Assert.All(narrow, line => Assert.InRange(line.GetCellWidth(), 0, width));
        Assert.Equal(Words(wide), Words(narrow));
    }

    [Theory]
    [InlineData(60)]
    [InlineData(120)]
    public void Write_LongerMessage_GoesOnSetIn(int width)
    {
        using var spoilt = SmallBase.Copy(("rules/front/clash.yaml", Clash));
        var lines = Lines(Proof.Of(spoilt.Path), width);
        var mend = lines.FindIndex(line => line.StartsWith("  mend     ", StringComparison.Ordinal));

        Assert.StartsWith("error contradiction  ", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("  ", lines[1], StringComparison.Ordinal);
        Assert.StartsWith(new string(' ', 11), lines[mend + 1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("title: x", 0, 5, 40, "title: x", 0, 5)]
    [InlineData("title: x", 8, 1, 40, "title: x", 8, 1)]
    [InlineData("abcdefghijklmnopqrstuvwxyz", 0, 3, 10, "abcdefghi…", 0, 3)]
    [InlineData("abcdefghijklmnopqrstuvwxyz", 20, 3, 10, "…rstuvwxyz", 4, 3)]
    [InlineData("abcdefghijklmnopqrstuvwxyz", 13, 3, 10, "…klmnopqr…", 4, 3)]
    [InlineData("漢字: 漢字", 4, 2, 40, "漢字: 漢字", 6, 4)]
    [InlineData("a\tb\u001Bc", 4, 1, 40, "a b\uFFFDc", 4, 1)]
    public void Of_Line_ShowsWhatIsMeant(string line, int from, int length, int room, string text, int before, int marks) =>
        Assert.Equal(new QuotedLine(text, before, marks), QuotedLine.Of(line, from, length, room));

    [Fact]
    public void Of_AnyPlaceInAnyLine_FitsWithItsMarks()
    {
        const string Line = "then: {answers: {front-mount: {source: chassis, treatment: 漢字漢字漢字 \u202E modify}}}";
        for (var from = 0; from <= Line.Length; from++)
        {
            foreach (var (length, room) in new[] { (1, 20), (8, 20), (60, 20), (8, 45), (8, 160) })
            {
                var quote = QuotedLine.Of(Line, from, length, room);
                Assert.InRange(quote.Text.GetCellWidth(), 0, room + 1);
                Assert.InRange(quote.Before + quote.Marks, 1, room + 2);
                Assert.DoesNotContain('\u202E', quote.Text);
            }
        }
    }

    private static List<string> Lines(Proof proof, int width)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(text), Ansi = AnsiSupport.No, ColorSystem = ColorSystemSupport.NoColors });
        console.Profile.Width = width;
        new CheckText(console, proof, "base").Write();
        return [.. text.ToString().TrimEnd('\n').Split('\n').Select(line => line.TrimEnd())];
    }

    // Quoted lines and marks are cut to the width; everything else has to be there whole, a path that is wider than the terminal in two.
    private static string Words(IEnumerable<string> lines) =>
        string.Concat(lines.Where(line => !line.Contains(" | ", StringComparison.Ordinal)).SelectMany(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)));
}
