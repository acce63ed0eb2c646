using System.Numerics;
using Swapwright.Findings;
using Swapwright.Impact;
using Swapwright.Reports;
using Swapwright.Source;
using Swapwright.Tests.Findings;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Impact;

/// <summary>One change after the other to a small base: what is said of it, and that nothing else is.</summary>
public class SmallImpactTests
{
    [Fact]
    public void Between_SameBase_ChangesNothing()
    {
        var impact = KnowledgeImpact.Between(Base(), Proof.Of(SmallBase.Folder));
        Assert.False(impact.Changed);
        Assert.Equal("Nothing changes for readers: 9 combinations in 6 guides are told the same.", ImpactSentence.Of(impact));
        Assert.Empty(new ImpactSections(impact).All());
    }

    [Fact]
    public void Between_OtherOrderOfKeysAndRemarks_ChangesNothing()
    {
        var impact = Impact(
            ("rules/front/front-mount.yaml", "# moved\n" + Reversed("rules/front/front-mount.yaml")),
            ("positions.yaml", Text("positions.yaml").Replace("  radiator: {system: cooling, title: Radiator}\n", "", StringComparison.Ordinal)
                .Replace("positions:\n", "positions:\n  # first now\n  radiator: {title: Radiator, system: cooling}\n", StringComparison.Ordinal)),
            ("chassis/hazel-90.yaml", Text("chassis/hazel-90.yaml").Replace("{1: feed, 2: lamp}", "{2: lamp, 1: feed}", StringComparison.Ordinal)));
        Assert.False(impact.Changed, string.Join('\n', new ImpactSections(impact).All().SelectMany(section => section.Items).Select(item => item.Lead)));
    }

    [Fact]
    public void Between_OtherReason_ChangesWordsAndTheRule()
    {
        var impact = Impact(Edit("rules/front/front-mount.yaml", "ends 40 mm short", "ends 45 mm short"));
        var word = Assert.Single(impact.Words);
        Assert.Equal(("front-mount", "because", (BigInteger)3), (word.Position.Id, word.What, word.Extent.Combinations));
        Assert.Equal("The donor's bracket ends 45 mm short.", word.To);
        Assert.Equal("chassis of 1992 or earlier", word.Extent.Where);
        Assert.Equal(["words"], impact.Guides.Changed.SelectMany(guide => guide.Kinds).Distinct(StringComparer.Ordinal));
        Assert.All(impact.Guides.Changed, guide => Assert.Equal("hazel-90", guide.Guide.Chassis));
        Assert.Equal("because", Assert.Single(Assert.Single(impact.Entries.Changed).What));
        Assert.Empty(impact.Answers);
        Assert.Empty(impact.Numbers.Moved);
    }

    [Theory]
    [InlineData("standing: measured", "standing: built", true)]
    [InlineData("standing: measured", "standing: reported", false)]
    public void Between_OtherStanding_IsRaisedOrLowered(string old, string @new, bool raised)
    {
        var impact = Impact(Edit("rules/fuel/fuel-pump.yaml", old, @new));
        var word = Assert.Single(impact.Words);
        Assert.Equal((raised, !raised), (StandingOrder.Raised(word), StandingOrder.Lowered(word)));
        Assert.Equal(3, word.Extent.Combinations);
    }

    [Fact]
    public void Between_StepsNotesAndSources_AreToldApart()
    {
        var impact = Impact(
            ("sources.yaml", Text("sources.yaml") + "  drive: {title: Driven, kind: build-log, date: 2025-06-01, invented: true}\n"),
            ("rules/front/front-mount.yaml", Text("rules/front/front-mount.yaml").Replace("Drill it.]", "Drill it twice.], notes: Use oil", StringComparison.Ordinal).Replace("[bench]", "[bench, drive]", StringComparison.Ordinal)));
        Assert.Equal(["notes", "sources", "steps"], impact.Words.Select(word => word.What).Order(StringComparer.Ordinal));
        Assert.Equal(("bench", "bench, drive"), impact.Words.Where(word => word.What == "sources").Select(word => (word.From, word.To)).Single());
        Assert.Equal("source drive", Assert.Single(impact.Entries.Gained) is var entry ? $"{entry.Kind} {entry.Id}" : "");
    }

    [Fact]
    public void Between_PagesOfTheBasesOwn_AreGainedChangedAndLost()
    {
        const string meet = "---\ntitle: Where we meet\n---\nEvery first Sunday.\n";
        using var with = SmallBase.Copy(("pages/meet.md", meet));
        using var other = SmallBase.Copy(("pages/meet.md", meet.Replace("first", "second", StringComparison.Ordinal)));
        var came = KnowledgeImpact.Between(Base(), Proof.Of(with.Path));
        Assert.True(came.Changed);
        Assert.Equal(new Entry("page", "meet", "Where we meet"), Assert.Single(came.Entries.Gained));
        Assert.Equal(new Entry("page", "meet", "Where we meet"), Assert.Single(KnowledgeImpact.Between(Proof.Of(with.Path), Base()).Entries.Lost));
        var changed = Assert.Single(KnowledgeImpact.Between(Proof.Of(with.Path), Proof.Of(other.Path)).Entries.Changed);
        Assert.Equal(("page", "meet", "body"), (changed.Entry.Kind, changed.Entry.Id, Assert.Single(changed.What)));
        Assert.False(KnowledgeImpact.Between(Proof.Of(with.Path), Proof.Of(with.Path)).Changed);
    }

    [Fact]
    public void Between_EveryKindOfFile_IsLookedAt()
    {
        // A kind that is added to the layout later has to be looked at as well; the two names of a donor and of single files are the base's own.
        var looked = EntryChanges.LookedAt(Base().Base).ToHashSet(StringComparer.Ordinal);
        Assert.All(KnowledgeLayout.Folders.Values, kind => Assert.Contains(kind, looked));
    }

    [Fact]
    public void Between_RulesOfTheSameAnswer_ChangeNoAnswer()
    {
        var impact = Impact(("rules/front/alternator-again.yaml", Text("rules/front/alternator.yaml")));
        Assert.Empty(impact.Answers);
        Assert.Empty(impact.Words);
        Assert.Equal("alternator-again", Assert.Single(impact.Entries.Gained).Id);
    }

    [Fact]
    public void Between_HoursAndPrices_MoveNumbersOfTheGuidesThatHaveThem()
    {
        var impact = Impact(
            Edit("tasks/make-plate.yaml", "likely: 2", "likely: 3"),
            Edit("parts/wide-radiator.yaml", "140.50", "150.50"));
        var hours = impact.Numbers.Moved.Where(change => change.Name == "hours.likely").ToList();
        Assert.All(hours, change => Assert.Equal(("hazel-90", 0.67m, "h"), (change.Guide.Chassis, (change.New - change.Old)!.Value, change.Unit)));
        Assert.Equal(2, hours.Count);
        var money = impact.Numbers.Moved.Where(change => change.Name == "money.likely").ToList();
        Assert.All(money, change => Assert.Equal(("alder-16", 10m, "EUR"), (change.Guide.Donor, (change.New - change.Old)!.Value, change.Unit)));
        Assert.Equal(3, money.Count);
        Assert.Equal(["hours", "price"], impact.Entries.Changed.SelectMany(entry => entry.What).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Between_RecommendationAlone_MovesTheDefault()
    {
        var impact = Impact(("choices/cooling.yaml", Text("choices/cooling.yaml") + "recommend:\n  - {option: donor, because: It is there.}\n"));
        Assert.Equal(3, impact.Numbers.Defaults.Length);
        Assert.All(impact.Numbers.Defaults, change => Assert.Equal(("cooling", "wide", "donor"), (change.Old[0].Key, change.Old[0].Value, change.New[0].Value)));
        Assert.All(impact.Numbers.Moved, change => Assert.Equal((-140.50m, "alder-16"), ((change.New - change.Old)!.Value, change.Guide.Donor)));
        Assert.Empty(impact.Answers);
    }

    [Fact]
    public void Between_ChassisAdded_GainsItsGuidesAndKeepsTheRest()
    {
        var impact = Impact(("chassis/hazel-95.yaml", Text("chassis/hazel-93.yaml").Replace("years:", "trim: Late\nyears:", StringComparison.Ordinal)));
        Assert.Equal((9, 6, 0), ((int)impact.Compared, (int)impact.Gained.All, (int)impact.Lost.All));
        Assert.Equal((BigInteger)0, impact.Gained.ByRules);
        Assert.All(impact.Guides.Gained, guide => Assert.Equal("hazel-95", guide.Chassis));
        Assert.Equal(4, impact.Guides.Gained.Length);
        Assert.Empty(impact.Guides.Changed);
        Assert.Empty(impact.Answers);
    }

    [Fact]
    public void Between_ExclusionLifted_NamesTheRuleAndWhatItKeptAway()
    {
        var impact = Impact(Edit("rules/front/no-donor-box-early.yaml", "choice.gearbox: donor", "choice.gearbox: donor, donor.variant: alder-14"));
        var lifted = Assert.Single(impact.Gained.Exclusions);
        Assert.Equal(("no-donor-box-early", (BigInteger)2, (BigInteger)2), (lifted.Rule.Id, lifted.Extent.Combinations, impact.Gained.ByRules));
        Assert.Empty(impact.Lost.Exclusions);
        Assert.Equal("hazel-90/alder-16/donor", Assert.Single(impact.Guides.Gained).Id);
        Assert.Equal("hazel-90 alder-16 cooling=wide gearbox=donor", Rules.DrawnBase.Name(lifted.Extent.Witness));
    }

    [Fact]
    public void Between_BasesWithNothingInCommon_LosesAndGainsEverything()
    {
        using var other = KnowledgeBaseCase.CopyOf("crossings");
        var impact = KnowledgeImpact.Between(Base(), Proof.Of(other.Path));
        Assert.Equal((BigInteger)0, impact.Compared);
        Assert.Equal((BigInteger)9, impact.Lost.All);
        Assert.Equal(impact.New.Resolution!.BuildableParts.Size, impact.Gained.All);
        Assert.Equal(6, impact.Guides.Lost.Length);
        Assert.Empty(impact.Answers);
    }

    [Fact]
    public void Between_FindingThatMovedDownTheFile_StaysTheSame()
    {
        const string clash = "title: Clash\nthen: {answers: {front-mount: {source: new, treatment: as-is}}}\nsources: [bench]\n";
        using var old = SmallBase.Copy(("rules/front/clash.yaml", clash));
        using var moved = SmallBase.Copy(("rules/front/clash.yaml", "# a remark\n\n" + clash));
        var same = KnowledgeImpact.Between(Proof.Of(old.Path), Proof.Of(moved.Path));
        Assert.False(same.Changed);
        Assert.Empty(same.Findings.Introduced);
        Assert.Empty(same.Findings.Mended);

        var introduced = KnowledgeImpact.Between(Base(), Proof.Of(old.Path));
        Assert.Equal(["contradiction", "contradiction"], introduced.Findings.Introduced.Select(finding => finding.Id));
        Assert.All(introduced.Answers, change => Assert.Equal((1, 2), (change.From.Answers.Length, change.To.Answers.Length)));
        Assert.Equal(9, introduced.Answered);
        Assert.Equal(2, KnowledgeImpact.Between(Proof.Of(old.Path), Base()).Findings.Mended.Length);
    }

    [Fact]
    public void Between_BaseThatWasNotExamined_IsRefused()
    {
        using var broken = SmallBase.Copy(("choices/gearbox.yaml", "title: [\n"));
        Assert.Throws<ArgumentException>(() => KnowledgeImpact.Between(Base(), Proof.Of(broken.Path)));
    }

    [Theory]
    [InlineData("Because", "because")]
    [InlineData("PriceDate", "price-date")]
    [InlineData("MassKg", "mass")]
    [InlineData("WireFromMm2", "wire-from")]
    public void Spelled_Member_ReadsAsInFiles(string member, string wanted) => Assert.Equal(wanted, EntryChanges.Spelled(member));

    internal static KnowledgeImpact Impact(params (string Path, string Text)[] changes)
    {
        using var changed = SmallBase.Copy(changes);
        return KnowledgeImpact.Between(Base(), Proof.Of(changed.Path));
    }

    /// <summary>Read anew: a store of regions is no thing for several tests at once.</summary>
    internal static Proof Base() => Proof.Of(SmallBase.Folder);

    internal static (string Path, string Text) Edit(string path, string old, string @new)
    {
        Assert.Contains(old, Text(path), StringComparison.Ordinal);
        return (path, Text(path).Replace(old, @new, StringComparison.Ordinal));
    }

    internal static string Text(string path) => File.ReadAllText(Path.Combine(SmallBase.Folder, path));

    /// <summary>The top-level keys of a file, last first.</summary>
    private static string Reversed(string path)
    {
        var blocks = new List<string>();
        foreach (var line in Text(path).Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(line => line[0] != '#'))
        {
            if (line[0] == ' ')
            {
                blocks[^1] += line + "\n";
            }
            else
            {
                blocks.Add(line + "\n");
            }
        }

        blocks.Reverse();
        return string.Concat(blocks);
    }
}
