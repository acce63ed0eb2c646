using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Findings;

/// <summary>Regions that no short condition says, facts that a part says in a vehicle's place, and names that look like numbers.</summary>
public sealed class ScatteredFindingsTests
{
    private const string Vocabulary = "vocabulary.yaml";
    private const string Power = "    radiator-power: {title: Power that the radiator carries, type: number, unit: kW, min: 20, max: 400}\n";
    private const string Heat = "    heat: {title: Heat it gives off, type: number, unit: kW, means: radiator-heat, at: radiator, optional: true}\n";
    private const string Own = "rules/cooling/radiator-own.yaml";

    private static readonly string[] s_first = ["c1", "c2", "c3", "c4"];
    private static readonly string[] s_second = ["d1", "d2", "d3", "d4"];

    /// <summary>The half of sixteen combinations in which an odd number of four questions is answered with no: eight single ones, which no condition gathers.</summary>
    [Fact]
    public void Gap_RegionThatNoShortConditionSays_SuggestsNone()
    {
        var finding = Assert.Single(Prove(s_first, ("rules/all/even.yaml", Rule("donor", Even(s_first)))).Findings, finding => finding.Kind == FindingKinds.Gap && finding.Message.StartsWith("`a` has", StringComparison.Ordinal));

        Assert.Equal("Add a rule for these combinations, widen one that nearly reaches them, or narrow where the position `applies`.", finding.Mend);
        Assert.Equal(16, finding.Touches); // eight of sixteen, for each of two donors
    }

    /// <summary>Two rules that meet in every second combination of either: no condition keeps them apart in a line, so the override is told.</summary>
    [Fact]
    public void Contradiction_OverlapThatNoShortConditionSays_SuggestsTheOverride()
    {
        var finding = Assert.Single(
            Prove([.. s_first, .. s_second], ("rules/all/one.yaml", Rule("donor", Even(s_first))), ("rules/all/two.yaml", Rule("made", Even(s_second)))).Findings, finding => finding.Kind == FindingKinds.Contradiction);

        Assert.Equal("If one is the exception, let it say so (`overrides: [two]` in `rules/all/one.yaml`, or the other way round); else narrow one `when`, so that they no longer meet.", finding.Mend);
    }

    /// <summary>A car's own radiator is asked for its heat, unless the answer brings a part that says it; the new one is asked itself.</summary>
    [Theory]
    [InlineData("", "", new[] { "quillet-early", "quillet-late", "wide-radiator" })]
    [InlineData(", also: [thread-plug]", "", new[] { "quillet-early", "quillet-late", "wide-radiator" })]
    [InlineData(", also: [thread-plug]", "facts: {heat: 70}\n", new[] { "wide-radiator" })]
    public void MissingInput_PartThatSaysIt_SparesTheVehicle(string also, string facts, string[] asked)
    {
        var proof = ChangedBase.Prove(
            "crossings",
            (Vocabulary, Power, Power + Heat),
            (Vocabulary, "  gearbox:\n    control:", "  part:\n" + Heat + "  gearbox:\n    control:"),
            (Own, "treatment: refresh}", $"treatment: refresh{also}}}"),
            ("parts/thread-plug.yaml", "price: 4\n", "price: 4\n" + facts));

        Assert.Equal(asked, proof.Messages(FindingKinds.MissingInput).Select(message => message.Split('`')[1]).Order(StringComparer.Ordinal));
    }

    /// <summary>A part that says it is asked for nothing more.</summary>
    [Fact]
    public void MissingInput_NewPartThatSaysIt_IsNotAsked()
    {
        var proof = ChangedBase.Prove(
            "crossings", (Vocabulary, "  gearbox:\n    control:", "  part:\n" + Heat + "  gearbox:\n    control:"), ("parts/wide-radiator.yaml", "price: {least: 120", "facts: {heat: 95}\nprice: {least: 120"));

        Assert.Empty(proof.Messages(FindingKinds.MissingInput));
    }

    /// <summary>The id of a family may look like a number or like a word of YAML; a condition that names it reads back as it was meant.</summary>
    [Theory]
    [InlineData("two-litre")]
    [InlineData("2-litre")]
    [InlineData("1990")]
    [InlineData("1e3")]
    [InlineData("0x1f")]
    [InlineData("null")]
    [InlineData("true")]
    [InlineData("no")]
    public void Gap_FamilyThatLooksLikeSomethingElse_IsSuggestedSoThatItReadsBack(string family)
    {
        var engine = $"title: Large\nfamily: \"{family}\"\nyears: {{from: 1995, to: 1995}}\nfacts: {{power: 90}}\n";
        (string, string) small = ("engines/small.yaml", "title: Small\nfamily: small\nyears: {from: 1995, to: 1995}\nfacts: {power: 90}\n");
        (string, string) rule = ("rules/all/small.yaml", Rule("donor", "{donor.family: small}"));
        var mend = Assert.Single(Proof.Of(TinyBase.With(("engines/large.yaml", engine), ("engines/other.yaml", engine.Replace("Large", "Other", StringComparison.Ordinal)), small, rule).Tree()).Findings, IsGapOfA).Mend!;
        var when = mend[(mend.IndexOf("`when: ", StringComparison.Ordinal) + 7)..mend.IndexOf("`, widen", StringComparison.Ordinal)];

        // An editor would read a number where the schema asks for a text.
        Assert.Contains(char.IsAsciiDigit(family[0]) ? $"\"{family}\"" : family, when, StringComparison.Ordinal);
        Assert.DoesNotContain(Proof.Of(TinyBase.With(("engines/large.yaml", engine), ("engines/other.yaml", engine.Replace("Large", "Other", StringComparison.Ordinal)), small, rule, ("rules/all/large.yaml", Rule("made", when))).Tree()).Findings, IsGapOfA);
    }

    private static bool IsGapOfA(Finding finding) => finding.Kind == FindingKinds.Gap && finding.Message.StartsWith("`a` has", StringComparison.Ordinal);

    private static string Rule(string source, string when) => $"title: A rule\nwhen: {when}\nthen: {{answers: {{a: {{source: {source}, treatment: as-is}}}}}}\nbecause: So it was found.\n";

    /// <summary>Where an even number of the questions is answered with no.</summary>
    private static string Even(string[] choices) => $"{{any: [{string.Join(", ", Enumerable.Range(0, 1 << choices.Length)
        .Where(at => int.PopCount(at) % 2 == 0)
        .Select(at => $"{{{string.Join(", ", choices.Select((choice, bit) => $"choice.{choice}: {((at >> bit) & 1) switch { 0 => "yes-it-is", _ => "no-it-is-not" }}"))}}}"))}]}}";

    private static Proof Prove(string[] choices, params (string Path, string Text)[] files) => Proof.Of(TinyBase.With(
        [.. choices.Select((choice, at) => ($"choices/{choice}.yaml", FormattableString.Invariant($"title: {choice}\nquestion: Is it?\norder: {at + 1}\noptions: {{yes-it-is: {{title: It is}}, no-it-is-not: {{title: It is not}}}}\n"))), .. files]).Tree());
}
