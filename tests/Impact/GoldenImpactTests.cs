using System.Globalization;
using Spectre.Console;
using Swapwright.Commands;
using Swapwright.Impact;
using Swapwright.Reports;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Impact;

/// <summary>The forms for reading, kept whole: what a reviewer gets to see. Files lie under <c>tests/Impact/golden</c>.</summary>
public class GoldenImpactTests
{
    private static readonly ImpactNames s_names = new(new BaseName("main", "0123456789abcdef0123456789abcdef01234567"), new BaseName("swap-kb"));

    private static readonly Lazy<KnowledgeImpact> s_edited = new(() => SmallImpactTests.Impact(
        SmallImpactTests.Edit("rules/cooling/radiator-wide.yaml", "{source: new, treatment: as-is, part: wide-radiator}", "{source: other, treatment: refresh, part: wide-radiator, notes: Ask for *one* with a <cap>}"),
        SmallImpactTests.Edit("rules/front/no-donor-box-early.yaml", "chassis.variant: hazel-90, ", ""),
        SmallImpactTests.Edit("rules/front/alternator.yaml", "Disconnect the battery first.", "'Disconnect the battery first; see #12 or ask @someone.'"),
        SmallImpactTests.Edit("rules/fuel/fuel-pump.yaml", "standing: measured", "standing: reported"),
        SmallImpactTests.Edit("tasks/make-plate.yaml", "likely: 2", "likely: 3")));

    [Fact]
    public void Text_EditedBase_IsTheGoldenOne() => Golden("impact.txt", Text(null));

    [Fact]
    public void Markdown_EditedBase_IsTheGoldenOne() => Golden("impact.md", ImpactMarkdown.Write(s_edited.Value, s_names));

    [Fact]
    public void Text_NarrowWindow_SaysTheSameInsideIt()
    {
        Assert.All(Text(60).Split('\n'), line => Assert.InRange(line.Length, 0, 60));
        Assert.Equal(Words(Text(null)), Words(Text(60)));
        Assert.Contains("\n             ", Text(60), StringComparison.Ordinal);
    }

    [Fact]
    public void Text_NothingChanged_IsOneSentence() =>
        Assert.Equal("Nothing changes for readers: 9 combinations in 6 guides are told the same.\nmain (0123456789) → swap-kb\n", Text(null, SmallImpactTests.Impact()));

    private static string Text(int? width, KnowledgeImpact? impact = null)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var console = Terminal.Plain(text);
        console.Profile.Width = width ?? console.Profile.Width;
        new ImpactText(console, impact ?? s_edited.Value, s_names).Write();
        return text.ToString();
    }

    private static string[] Words(string text) => text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries);

    private static void Golden(string name, string text) =>
        Assert.Equal(File.ReadAllText(Path.Combine(Reading.Repository(), "tests", "Impact", "golden", name)), text);
}
