using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using AngleSharp.Html.Parser;
using Markdig;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;

namespace Swapwright.Tests.Reports;

/// <summary>The comment on a proposed change, read through a Markdown renderer that lets HTML pass, as code hosts do.</summary>
public class CheckMarkdownTests
{
    private static readonly MarkdownPipeline s_pipeline = new MarkdownPipelineBuilder().UseAutoLinks().UseEmphasisExtras().UsePipeTables().UseTaskLists().UseMathematics().Build();

    private static readonly string[] s_own = ["html", "head", "body", "h2", "h3", "p", "ul", "li", "br", "strong", "code"];

    public static TheoryData<string> HostileTexts() =>
    [
        "</summary></details><script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "<!-- everything after this is gone",
        "[click](https://bad.example/) ![seen](https://bad.example/x.png)",
        "https://bad.example/ and www.bad.example and WWW.bad.example",
        "` <b>x</b> ` ``` ```` `",
        "`<b>x</b>",
        "**bold** __bold__ _it_ *it* ~~gone~~ $x$ | a | b |",
        "# heading",
        "- [ ] task",
        "1. list\n2. list\n\n> quoted\n\n    code\n---\n===",
        "&lt;script&gt; &#60;script&#62;",
        "@everyone #12 &amp; \\@everyone",
        "\\[click](https://bad.example/)",
        "[ref]: https://bad.example/",
        "\u001B[31mred \u202E turned",
        "```\n</code>",
    ];

    [Theory]
    [MemberData(nameof(HostileTexts))]
    public void Write_HostileTexts_ShowAsTheyAreWritten(string hostile)
    {
        var proof = SmallBase.Proof with
        {
            Base = SmallBase.Proof.Base with { Settings = SmallBase.Proof.Base.Settings with { Title = hostile } },
            Findings = [Hostile(hostile)],
        };
        var page = new HtmlParser().ParseDocument(Markdown.ToHtml(new CheckMarkdown(proof, "kb").Write(), s_pipeline));

        Assert.All(page.All, element => Assert.Contains(element.LocalName, s_own));
        Assert.All(page.All.Where(element => element.LocalName is not "html"), element => Assert.Empty(element.Attributes));
        Assert.Equal(Plain(hostile), Plain(page.QuerySelector("h2")!.TextContent));
        Assert.Equal(1, page.QuerySelectorAll("h2").Length);
        Assert.Contains(Plain(hostile), Plain(page.Body!.TextContent), StringComparison.Ordinal);
        Assert.Contains("Mend: " + Plain(hostile), Plain(page.Body.TextContent), StringComparison.Ordinal);
        Assert.DoesNotContain(page.All.Where(element => element.TagName != "CODE").SelectMany(element => element.ChildNodes.OfType<AngleSharp.Dom.IText>()), text => text.Data.AsSpan().IndexOfAny("@#") >= 0);
    }

    [Fact]
    public void Write_SoundBase_SaysWhatIsProvedAndNothingElse() => Assert.Equal(
        """
        ## Alder engines in the Hazel

        **0 errors, 0 warnings, 0 notes.**

        2 chassis variants and 2 donor variants, 2 choices, 5 positions, 9 rules, 3 connectors. 12 combinations, 9 of them buildable, in 6 guides.

        Every position that applies has exactly one answer in all 9 buildable combinations.

        """,
        new CheckMarkdown(SmallBase.Proof, "kb").Write());

    [Fact]
    public void Write_Contradiction_GivesPlaceExtentAndMend()
    {
        using var spoilt = SmallBase.Copy(("rules/front/clash.yaml", "title: Clash\nthen:\n  answers:\n    front-mount: {source: new, treatment: as-is}\nsources: [bench]\n"));
        var text = new CheckMarkdown(Proof.Of(spoilt.Path), "kb").Write();

        Assert.Contains("\n### 2 errors\n\n- **contradiction** ", text, StringComparison.Ordinal);
        Assert.Contains("- **contradiction** `clash` and `front-mount` give `front-mount` different answers", text, StringComparison.Ordinal);
        Assert.Contains("  \n  `kb/rules/front/clash.yaml:4:5`\n", text, StringComparison.Ordinal);
        Assert.Contains("\n  - Touches 3 of 9 buildable combinations: ", text, StringComparison.Ordinal);
        Assert.Contains("\n  - Seen in `hazel-90 alder-14 gearbox=keep`\n", text, StringComparison.Ordinal);
        Assert.Contains("\n  - Mend: ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("exactly one answer", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_FilesThatCannotBeRead_SaysThatNothingWasProved()
    {
        using var spoilt = SmallBase.Copy(("choices/gearbox.yaml", "title: [\n"));
        var text = new CheckMarkdown(Proof.Of(spoilt.Path), "").Write();

        Assert.Contains("\nThe space of combinations was not examined: mend the files first.\n", text, StringComparison.Ordinal);
        Assert.Contains("`choices/gearbox.yaml:", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, 20, 0)]
    [InlineData(21, 20, 1)]
    [InlineData(60, 20, 40)]
    public void Write_LongList_IsFoldedAfterTheFirstTwenty(int findings, int open, int folded)
    {
        var page = new HtmlParser().ParseDocument(Markdown.ToHtml(new CheckMarkdown(Many(findings, 10), "kb").Write(), s_pipeline));

        Assert.Equal(open, page.QuerySelectorAll("body > ul > li").Length);
        Assert.Equal(folded, page.QuerySelectorAll("details > ul > li").Length);
        if (folded > 0)
        {
            Assert.Equal(folded == 1 ? "1 more warning" : $"{folded.ToString(CultureInfo.InvariantCulture)} more warnings", page.QuerySelector("summary")!.TextContent);
        }
    }

    [Theory]
    [InlineData(500, 300)]
    [InlineData(30, 20_000)]
    public void Write_MoreThanACommentHolds_SaysHowManyAreLeftOut(int findings, int length)
    {
        var text = new CheckMarkdown(Many(findings, length), "kb").Write();
        var page = new HtmlParser().ParseDocument(Markdown.ToHtml(text, s_pipeline));
        var listed = page.QuerySelectorAll("li").Count(item => item.TextContent.Contains("rule-", StringComparison.Ordinal));

        Assert.InRange(text.Length, 1, 65_000);
        Assert.InRange(listed, 1, findings - 1);
        Assert.Contains($"{CheckWords.Many(findings - listed, "finding")} more than a comment can hold", page.Body!.TextContent, StringComparison.Ordinal);
    }

    private static Proof Many(int findings, int length) => SmallBase.Proof with
    {
        Findings = [.. Enumerable.Range(0, findings).Select(at => new Finding(FindingKinds.Stale, $"`rule-{at.ToString(CultureInfo.InvariantCulture)}` {new string('x', length)}", Place.Of("rules/a.yaml")))],
    };

    private static Finding Hostile(string text) => new(FindingKinds.Gap, text, Place.Of($"rules/{text}.yaml"))
    {
        Related = [new RelatedPlace(text, Place.Of("kb.yaml"))],
        Mend = text,
        Region = text,
        Touches = BigInteger.One,
        Witness = new Witness(text, text, ImmutableArray.Create(KeyValuePair.Create(text, text))),
    };

    // Back-ticks mark names and white space folds: neither is what these tests ask about.
    private static string Plain(string text) => string.Join(' ', PlainText.Tame(text).Replace("`", "", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
