using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Rules;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Findings;

/// <summary>Rules beside each other: doubles that speak, values that another states, conditions that never hold, words that point nowhere.</summary>
public sealed class RuleFindingsTests
{
    private const string Speech = """
          cautions: [{about: electric, text: The cable is live.}]
          mistakes: [Forgetting the strap.]
          advise: [{text: Take a photograph.}]

        """;

    /// <summary>A double is redundant with all that it says; with one word of its own it is not.</summary>
    [Theory]
    [InlineData("The cable is live.", "The cable is live.", true)]
    [InlineData("The cable is live.", "The cable is hot.", false)]
    [InlineData("about: electric", "about: lifting", false)]
    [InlineData("Forgetting the strap.", "Forgetting the bolt.", false)]
    [InlineData("Take a photograph.", "Take a drawing.", false)]
    public void RedundantRule_DoubleThatSpeaks_IsOneWhereItSaysNothingOfItsOwn(string old, string changed, bool redundant)
    {
        var found = Prove(
            ("rules/all/one.yaml", Rule("a: {source: donor, treatment: as-is}", Speech)),
            ("rules/all/two.yaml", Rule("a: {source: donor, treatment: as-is}", Speech.Replace(old, changed, StringComparison.Ordinal)))).Messages(FindingKinds.RedundantRule);

        Assert.Equal(redundant ? ["without `one` every reader would be told the same", "without `two` every reader would be told the same"] : [], found);
    }

    /// <summary>
    /// Four conditions each leave out another donor of four, any three of them leave one: no fewer than the four clash. A fifth that has nothing to do with it
    /// is left out.
    /// </summary>
    [Fact]
    public void ClashingTerms_FourThatOnlyTogetherNeverHold_AreAllOfThem()
    {
        string[] donors = ["large", "small", "third", "fourth"];
        var kb = TinyBase.With(
            ("engines/third.yaml", "title: Third\nyears: {from: 1995, to: 1995}\nfacts: {power: 70}\n"),
            ("engines/fourth.yaml", "title: Fourth\nyears: {from: 1995, to: 1995}\nfacts: {power: 80}\n"),
            ("rules/all/never.yaml", $"title: Never\nwhen:\n  all:\n    - donor.power: {{to: 200}}\n{string.Concat(donors.Select(donor => $"    - not: {{donor.variant: {donor}}}\n"))}then: {{answers: {{a: {{source: donor, treatment: as-is}}}}}}\n")).Bind();
        var terms = ClashingTerms.Of(Resolver.Resolve(kb), kb.Rules["never"].When);

        Assert.Equal(["not", "not", "not", "not"], terms.Select(ClashingTerms.Name));
    }

    /// <summary>
    /// `two` repeats what `one` answers, and keeps it from stating its number; `three` states another in place of both. Without `two` nobody hears `one` only where
    /// `three` silences it as well.
    /// </summary>
    [Theory]
    [InlineData("[one, two]", true)]
    [InlineData("[two]", false)]
    public void RedundantRule_RuleThatSilencesANumber_IsOneWhereAnotherSilencesItToo(string overrides, bool redundant)
    {
        static string States(int number) => FormattableString.Invariant($"  values: {{wiring.splices: {{value: {number}, written-down: true}}}}\n");
        var found = Prove(
            ("rules/all/one.yaml", Rule("a: {source: donor, treatment: as-is}", States(1))),
            ("rules/all/two.yaml", Rule("a: {source: donor, treatment: as-is}", States(1)) + "overrides: [one]\n"),
            ("rules/all/three.yaml", Rule("b: {source: donor, treatment: as-is}", States(2)) + $"overrides: {overrides}\n")).Messages(FindingKinds.RedundantRule);

        Assert.Equal(redundant, found.Contains("without `two` every reader would be told the same"));
    }

    [Fact]
    public void Acceptance_OfSomethingThatIsLikeNoFinding_SuggestsNone()
    {
        var finding = Assert.Single(
            Prove(("rules/all/one.yaml", Rule("a: {source: donor, treatment: as-is}", "") + "accept: [{finding: qqqqqqqqqqqqqq, because: None.}]\n")).Findings, finding => finding.Kind == FindingKinds.IdleAccept);

        Assert.Equal("no finding is called `qqqqqqqqqqqqqq`", finding.Message);
        Assert.StartsWith("Write the id of a warning", finding.Mend, StringComparison.Ordinal);
    }

    /// <summary>What stands behind a word of the glossary names a kind and an id of this base, and nothing outside of it.</summary>
    [Theory]
    [InlineData("nonsense")]
    [InlineData("https://example.org")]
    public void Article_SeeOfAWordThatIsNoName_IsTold(string see)
    {
        var proof = ChangedBase.Prove("workshop", ("glossary.yaml", "", $"terms:\n  splice: {{term: splice, short: Where two wires meet., see: ['{see}']}}\n"));

        Assert.Contains($"`{see}` names nothing of this base", proof.Messages(FindingKinds.Article));
    }

    /// <summary>Headings that are like nothing that was asked for are listed; an article without any is said to have none.</summary>
    [Theory]
    [InlineData("## Round the crank\n\n", "Its headings are `#round-the-crank`.")]
    [InlineData("", "Take what follows `#` out: the article has no headings.")]
    public void Article_AnchorLikeNoHeading_SaysWhichThereAre(string heading, string mend)
    {
        var proof = ChangedBase.Prove(
            "workshop", ("articles/plain.md", "", $"---\ntitle: Plain\nsummary: Plain.\nsources: [bench]\n---\n{heading}Nothing.\n"), (WaterPump, "because: It is part of the block.", "because: See [it](article:plain#zzzzzzzzzzzz)."));

        Assert.Contains(mend, proof.Findings.Where(finding => finding.Kind == FindingKinds.Article).Select(finding => finding.Mend));
    }

    /// <summary>Quotes within quotes beyond any use: told, and not rendered.</summary>
    [Fact]
    public void Article_TextNestedTooDeeply_IsTold()
    {
        var deep = string.Concat(Enumerable.Repeat("> ", 300)) + "[it](article:belts)";
        var proof = ChangedBase.Prove("workshop", (WaterPump, "because: It is part of the block.", $"because: '{deep}'"));

        Assert.Contains("the text is nested too deeply to be rendered", proof.Messages(FindingKinds.Article));
    }

    /// <summary>A day that the calendar has not is told as what it is, and nothing is reckoned from it.</summary>
    [Theory]
    [InlineData("0001-01-01", 24, false)]
    [InlineData("0003-01-01", 24, false)]
    [InlineData("0003-01-02", 24, true)]
    [InlineData("2026-03-01", 1_000_000, false)]
    public void IsBefore_AtTheBeginningOfTheCalendar_IsReckonedAllTheSame(string judged, int months, bool stale) =>
        Assert.Equal(stale, Stale.IsBefore(DateOnly.MinValue, DateOnly.ParseExact(judged, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), months));

    [Theory]
    [InlineData("2019-02-28", true)]
    [InlineData("2019-02-30", false)]
    public void Stale_DayOfTheCalendar_IsReckonedFrom(string day, bool stale)
    {
        var proof = Prove(("rules/all/one.yaml", Rule("a: {source: donor, treatment: as-is}", "") + $"standing: built\nchecked: {day}\n"));

        Assert.Equal(stale, proof.Findings.Any(finding => finding.Kind == FindingKinds.Stale));
        Assert.Equal(stale, proof.Findings.All(finding => finding.Severity != Severity.Error || finding.Place.File == "positions.yaml"));
    }

    /// <summary>Beside a file that cannot be read, a name that stands nowhere is told all the same, though one engine takes after another in a circle.</summary>
    [Theory]
    [InlineData("ghost", "small", true)]
    [InlineData("broken", "small", false)]
    [InlineData("large", "broken", false)]
    public void Echoes_LikeOfAnEngine_IsAnEchoOfTheFileThatCannotBeRead(string ofSmall, string ofLarge, bool told)
    {
        var proof = Prove(
            ("engines/broken.yaml", "x: [\n"),
            ("engines/small.yaml", $"title: Small\nyears: {{from: 1995, to: 1995}}\nfacts: {{power: 60}}\nlike: {ofSmall}\n"),
            ("engines/large.yaml", $"title: Large\nyears: {{from: 1995, to: 1995}}\nfacts: {{power: 90}}\nlike: {ofLarge}\n"));

        Assert.Contains(proof.Findings, finding => finding.Place.File == "engines/broken.yaml");
        Assert.Equal(told, proof.Findings.Any(finding => finding.Kind == FindingKinds.Reference && finding.Message.Contains("ghost", StringComparison.Ordinal)));
        Assert.DoesNotContain(proof.Findings, finding => finding.Kind == FindingKinds.Reference && finding.Message.Contains("broken", StringComparison.Ordinal));
    }

    private const string WaterPump = "rules/charging/water-pump.yaml";

    private static string Rule(string answers, string more) =>
        $"title: A rule\nthen:\n  answers:\n    {answers}\n{more}because: So it was found.\n";

    private static Proof Prove(params (string Path, string Text)[] files) => Proof.Of(TinyBase.With(files).Tree());
}
