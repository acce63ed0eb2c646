using System.Globalization;
using System.Text;
using Swapwright.Commands;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Reports;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Tests.Reports;

/// <summary>What is printed: nothing that a terminal obeys, the same bytes every time and under every culture.</summary>
public class TextReportsTests
{
    // Escape sequence, bell, turn of direction, isolate, C1 control, line separator, a tag character, console markup.
    private const string Hostile = "\u001B[31mred\a \u202Eright to left\u2066 \u009B1m \u2028 \U000E0041 [bold]x[/] [/red] \t\r\n end";

    [Theory]
    [InlineData("plain ünïcode 漢字 👩\u200D🔧", "plain ünïcode 漢字 👩\u200D🔧")]
    [InlineData("\u001B[31mred", "\uFFFD[31mred")]
    [InlineData("a\r\nb\tc", "a  b c")]
    [InlineData("\u202Eabc\u2066\u200F", "\uFFFDabc\uFFFD\uFFFD")]
    [InlineData("a\u2028b\u2029c\u0085d", "a b c d")]
    [InlineData("x\U000E0041y", "x\uFFFDy")]
    public void Tame_Text_LosesWhatATerminalObeys(string text, string wanted) => Assert.Equal(wanted, PlainText.Tame(text));

    [Fact]
    public void Reports_HostileTexts_HoldNoControlOrDirection()
    {
        foreach (var (name, text) in Printed(HostileProof()))
        {
            Assert.Contains("right to left", text, StringComparison.Ordinal);
            var unruly = name.EndsWith("json", StringComparison.Ordinal) ? text.Where(character => char.IsControl(character) || Turns(character)) : Unruly(text);
            Assert.True(unruly.All(character => character == '\n'), name);
        }
    }

    [Fact]
    public void CheckText_FileWithSuchCharacters_QuotesItTamed()
    {
        using var spoilt = SmallBase.Copy(("parts/mount-plate.yaml", "title: \u001B[31mred \u202E [/red]\n"), ("parts/wide-radiator.yaml", "tittle: \"\\e[31mred\" # \u2066\n"));
        var text = Check(Proof.Of(spoilt.Path));
        Assert.Contains("red", text, StringComparison.Ordinal);
        Assert.DoesNotContain(Unruly(text), character => character != '\n');
    }

    [Fact]
    public void Reports_SameBase_AreTheSameEveryTime() => Assert.Equal(Printed(Proof.Of(SmallBase.Folder)), Printed(Proof.Of(SmallBase.Folder)));

    [Theory]
    [InlineData("sv-SE")]
    [InlineData("tr-TR")]
    public void Reports_AnotherCulture_AreTheSame(string culture)
    {
        using var clashing = Clashing();
        var wanted = Printed(SmallBase.Proof).Concat(Printed(Proof.Of(clashing.Path)));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = Culture(culture);
            Assert.Equal("−1,5", (-1.5).ToString(CultureInfo.CurrentCulture));
            Assert.Equal(wanted, Printed(Proof.Of(SmallBase.Folder)).Concat(Printed(Proof.Of(clashing.Path))));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void CheckText_Contradiction_ShowsLinesWitnessAndWayOut()
    {
        using var clashing = Clashing();
        var text = Check(Proof.Of(clashing.Path));
        Assert.Contains("error contradiction  `clash` and `front-mount` give `front-mount` different answers", text, StringComparison.Ordinal);
        Assert.Contains("  base/rules/front/clash.yaml:4:5  here\n", text, StringComparison.Ordinal);
        Assert.Contains("      4 |     front-mount:", text, StringComparison.Ordinal);
        Assert.Contains("|     ^^^^^^^^^^^\n", text, StringComparison.Ordinal);
        Assert.Contains("touches  3 of 9 buildable combinations: ", text, StringComparison.Ordinal);
        Assert.Contains("seen in  hazel-90 alder-14 gearbox=keep\n", text, StringComparison.Ordinal);
        Assert.EndsWith("2 errors, 0 warnings, 0 notes.\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void CheckText_SoundBase_SaysWhatIsProved() => Assert.Equal(
        """
        Alder engines in the Hazel: 2 chassis variants and 2 donor variants, 2 choices, 5 positions, 9 rules, 3 connectors.
        12 combinations, 9 of them buildable, in 6 guides.
        Every position that applies has exactly one answer in all 9 buildable combinations.
        0 errors, 0 warnings, 0 notes.

        """,
        Check(SmallBase.Proof));

    [Fact]
    public void Text_Sheet_ReadsAsAGuide()
    {
        var text = new SheetLines(SmallBase.Sheet("hazel-90", "alder-14"), SmallBase.Resolution).Text();
        Assert.StartsWith("Alder 14 into Hazel 1990–92\n\nGearbox: Keep the car's\n\nMOUNTS AND BELTS\n  Front mount: make one (Mount plate, 8 mm)\n      Cut the plate.\n", text, StringComparison.Ordinal);
        Assert.Contains("\nORDER OF WORK\n3 to 5 hours of work, 4 on average; 1 day for one person, 1 for two; parts ", text, StringComparison.Ordinal);
        Assert.EndsWith("  Make the mount plate\n  Lift the engine in\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Markdown_Sheet_HasHeadingsAndLists()
    {
        var lines = new SheetLines(SmallBase.Sheet("hazel-90", "alder-14"), SmallBase.Resolution).Markdown().Split('\n');
        Assert.Equal("# Alder 14 into Hazel 1990–92", lines[0]);
        Assert.Contains("## Cooling", lines);
        Assert.Contains("- Radiator: keep the chassis's own and renew its wear parts", lines);
        Assert.All(lines.Index().Where(line => line.Item.StartsWith("## ", StringComparison.Ordinal)), heading => Assert.Equal(("", ""), (lines[heading.Index - 1], lines[heading.Index + 1])));
    }

    [Fact]
    public void Markdown_SheetOfHostileTitles_ShowsThemAsWritten()
    {
        const string Markup = "<script>x</script> **b** [l](https://bad.example/) `c` # @everyone";
        var sheet = SmallBase.Sheet("hazel-90", "alder-14");
        sheet = sheet with
        {
            Donor = sheet.Donor with { Title = Markup },
            Tasks = [.. sheet.Tasks.Select(task => task with { Title = "1. " + Markup })],
            Answers = [.. sheet.Answers.Select(answer => answer with { Position = answer.Position with { Title = "- " + Markup } })],
        };
        var page = new AngleSharp.Html.Parser.HtmlParser().ParseDocument(Markdig.Markdown.ToHtml(new SheetLines(sheet, SmallBase.Resolution).Markdown()));

        Assert.Empty(page.QuerySelectorAll("script, strong, a, ol, ul ul ul, h3"));
        Assert.Equal("<script>x</script> **b** [l](https://bad.example/) `c` # @everyone into Hazel 1990–92", page.QuerySelector("h1")!.TextContent);
        Assert.Contains(page.QuerySelectorAll("li"), item => item.TextContent.StartsWith("1. <script>x</script> **b** [l](https://bad.example/)", StringComparison.Ordinal));
        Assert.Contains(page.QuerySelectorAll("li"), item => item.TextContent.StartsWith("- <script>", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Open **two** bolts, see [x](https://a.example/).", "Open **two** bolts, see [x](https://a.example/).")]
    [InlineData("<b>x</b> & `a < b`\nthen @all", "&lt;b>x&lt;/b> &amp; `a < b` then &#64;all")]
    public void Written_Markdown_StaysButForHtml(string text, string wanted) => Assert.Equal(wanted, MarkdownForm.Written(text));

    [Fact]
    public void Text_Why_NamesTheOverridingRuleAndTheReason()
    {
        var text = JsonReportsTests.Why("hazel-93", "front-mount").Text();
        Assert.StartsWith("Front mount: keep the chassis's own and adapt it.\n\nfront-mount-late stands (rules/front/front-mount-late.yaml:", text, StringComparison.Ordinal);
        Assert.Contains("\nfront-mount is overridden by front-mount-late (rules/front/front-mount.yaml:", text, StringComparison.Ordinal);
        Assert.Contains("  because: The late bracket reaches the block.\n", text, StringComparison.Ordinal);
        Assert.Contains("standing: measured, checked 2025-05-02; sources: bench\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_WhyOfAPositionThatDoesNotApply_SaysWhereItDoes() =>
        Assert.Equal("Fuel pump does not apply in this combination: it applies where chassis of 1992 or earlier.\n", JsonReportsTests.Why("hazel-93", "fuel-pump").Text());

    private static TemporaryFolder Clashing() =>
        SmallBase.Copy(("rules/front/clash.yaml", "title: Clash\nthen:\n  answers:\n    front-mount: {source: new, treatment: as-is}\nsources: [bench]\n"));

    /// <summary>The reader refuses such characters in files. The reports do not lean on that: here they are put in behind it.</summary>
    private static Proof HostileProof()
    {
        using var clashing = Clashing();
        var proof = Proof.Of(clashing.Path);
        var kb = proof.Base with
        {
            Settings = proof.Base.Settings with { Title = Hostile, Currency = Hostile, Cautions = [new Caution("general", Hostile, default)] },
            Systems = [.. proof.Base.Systems.Select(system => system with { Title = Hostile })],
            Positions = new(proof.Base.Positions.All.Select(position => position with { Title = Hostile }), position => position.Id),
            PositionOrder = [.. proof.Base.PositionOrder.Select(position => position with { Title = Hostile })],
            Chassis = new(proof.Base.Chassis.All.Select(chassis => chassis with { Title = Hostile }), chassis => chassis.Id),
            Donors = new(proof.Base.Donors.All.Select(donor => donor with { Title = Hostile, BeltDrives = [.. donor.BeltDrives.Select(drive => drive with { Title = Hostile, Profile = Hostile })] }), donor => donor.Id),
            Parts = new(proof.Base.Parts.All.Select(part => part with { Title = Hostile }), part => part.Id),
            Tasks = new(proof.Base.Tasks.All.Select(task => task with { Title = Hostile }), task => task.Id),
            Choices = new(proof.Base.Choices.All.Select(choice => choice with { Title = Hostile, Options = [.. choice.Options.Select(option => option with { Title = Hostile })] }), choice => choice.Id),
            Rules = new(proof.Base.Rules.All.Select(Hostilely), rule => rule.Id),
        };
        var resolution = Resolver.Resolve(kb);
        var words = new RegionWords(resolution);
        var findings = Checks.OfSpace.SelectMany(check => check.Run(new Examination(kb, resolution, words)))
            .Select(finding => finding with { Message = finding.Message + Hostile, Mend = Hostile, Related = [.. finding.Related.Select(related => related with { Message = Hostile })] });
        return new Proof(proof.Tree, kb, resolution, words, [.. findings], []);
    }

    private static Rule Hostilely(Rule rule) => rule with
    {
        Title = Hostile,
        Because = Hostile,
        ExcludeText = rule.Excludes ? Hostile : "",
        Standing = Hostile,
        Checked = Hostile,
        Sources = [Hostile],
        Answers = [.. rule.Answers.Select(answer => answer with { Steps = [Hostile], Notes = Hostile, Mistakes = [Hostile] })],
    };

    private static List<(string Name, string Text)> Printed(Proof proof)
    {
        var resolution = proof.Resolution!;
        var builder = new SheetBuilder(resolution);
        var printed = new List<(string, string)> { ("check json", CheckJson.Write(proof)), ("check sarif json", CheckSarif.Write(proof, "kb")), ("check text", Check(proof)), ("check markdown", new CheckMarkdown(proof, "kb").Write()) };
        foreach (var choice in new[] { "gearbox=keep", "gearbox=donor" })
        {
            var sheet = builder.Build(CombinationArguments.Read(resolution, "hazel-90", "alder-16", [choice]));
            var lines = new SheetLines(sheet, resolution);
            printed.Add(("sheet json", new SheetJson(sheet, resolution).Write()));
            printed.Add(("sheet text", lines.Text()));
            printed.Add(("sheet markdown", lines.Markdown()));
            printed.Add(("sheet csv", lines.Csv()));
            var why = new WhyReport(sheet, resolution, proof.Words!, "fuel-pump");
            printed.Add(("why json", why.Json()));
            printed.Add(("why text", why.Text()));
        }

        return printed;
    }

    private static string Check(Proof proof)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        new CheckText(Terminal.Plain(text), proof, "base").Write();
        return text.ToString();
    }

    private static bool Turns(char character) => character is '\u200E' or '\u200F' or '\u061C' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    private static IEnumerable<char> Unruly(string text) => text.EnumerateRunes()
        .Where(rune => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
        .SelectMany(rune => rune.ToString());

    /// <summary>The program runs without culture data, so the habits of these cultures are written down here.</summary>
    private static CultureInfo Culture(string name)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = name == "tr-TR" ? "." : "\u00A0";
        culture.NumberFormat.NegativeSign = "−";
        culture.DateTimeFormat.DateSeparator = name == "tr-TR" ? "." : "-";
        culture.DateTimeFormat.ShortDatePattern = name == "tr-TR" ? "d.MM.yyyy" : "yyyy-MM-dd";
        return culture;
    }
}
