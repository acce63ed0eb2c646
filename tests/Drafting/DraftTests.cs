using Swapwright.Diagnostics;
using Swapwright.Drafting;
using Swapwright.Findings;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Drafting;

public sealed class DraftTests
{
    private static readonly string[] s_form = ["schema", "reference", "vocabulary", "unit", "pin-clash", "pin-type", "wire-size"];

    [Theory]
    [InlineData("new")]
    [InlineData("shipped")]
    public void Of_EveryKind_IsValidInItsFile(string which)
    {
        using var copy = DraftedBases.Copy(which);
        var folder = Path.Combine(copy.Path, "swap-kb");
        var before = Proof.Of(folder, examine: false);
        var written = new List<string>();
        foreach (var kind in DraftKinds.All)
        {
            var request = new DraftRequest(kind, $"drafted-{kind}") { System = kind is "rule" or "position" ? before.Base.Systems[0].Id : null };
            var drafted = Draft.Of(before.Base, request);
            if (drafted.Under is { } under)
            {
                // As a contributor would: the lines go below the key, before the entries that are there.
                var file = Path.Combine(folder, drafted.Path);
                File.WriteAllText(file, File.ReadAllText(file).Replace($"\n{under}:\n", $"\n{under}:\n{drafted.Text}", StringComparison.Ordinal));
            }
            else
            {
                Assert.Empty(Draft.Faults(before.Tree, request, drafted));
                DraftFolder.Write(folder, drafted.Path, drafted.Text);
            }

            written.Add(drafted.Path);
        }

        var after = Proof.Of(folder, examine: false);
        Assert.Empty(after.Findings.Where(finding => finding.Severity == Severity.Error && s_form.Contains(finding.Id)).Select(finding => $"{finding.Place}: {finding.Message}"));
        Assert.All(DraftKinds.All, kind => Assert.Contains($"drafted-{kind}", Ids(after.Base, kind)));
        Assert.Equal(written.Distinct().Order(StringComparer.Ordinal), after.Findings.Where(finding => finding.Kind == FindingKinds.Unwritten).Select(finding => finding.Place.File).Distinct().Order(StringComparer.Ordinal));
        Assert.All(written.Where(path => path.EndsWith(".yaml", StringComparison.Ordinal)), path => Assert.StartsWith("# yaml-language-server: $schema=../", File.ReadAllText(Path.Combine(folder, path)), StringComparison.Ordinal));
    }

    [Fact]
    public void Of_LikeAVariant_IsShortAndBringsItsFacts()
    {
        using var copy = DraftedBases.Copy("shipped");
        var folder = Path.Combine(copy.Path, "swap-kb");
        var before = Proof.Of(folder, examine: false);
        var request = new DraftRequest("engine", "marn-16-95") { Like = "marn-16-92", Title = "Marn 16 manual 1995", Sets = [new("facts.emission-level", "stage-2"), new("years.from", "1995"), new("years.to", "1995")] };
        var drafted = Draft.Of(before.Base, request);
        Assert.InRange(drafted.Text.Count(c => c == '\n'), 1, 19);
        Assert.Empty(Draft.Faults(before.Tree, request, drafted));
        DraftFolder.Write(folder, drafted.Path, drafted.Text);

        var donor = Proof.Of(folder, examine: false).Base.Donors["marn-16-95"];
        Assert.Equal(("Marn 16 manual 1995", new YearSpan(1995, 1995)), (donor.Title, donor.Years));
        Assert.Equal("stage-2", donor.Fact("emission-level")!.Value.Text);
        Assert.Equal(before.Base.Donors["marn-16-92"].Fact("power")!.Value.Number, donor.Fact("power")!.Value.Number);
    }

    [Theory]
    [InlineData("enjine", "x", "no kind `enjine`; did you mean `engine`?")]
    [InlineData("engine", "../x", "`../x` is no id")]
    [InlineData("engine", "Marn 16", "`Marn 16` is no id")]
    [InlineData("engine", "first-engine", "there is a engine `first-engine` already; nothing is overwritten")]
    [InlineData("rule", "x", "say `--system SYSTEM`, one of: mounts, cooling")]
    public void Of_WhatCannotBe_SaysWhy(string kind, string id, string message)
    {
        using var copy = DraftedBases.Copy("new");
        var kb = Proof.Of(Path.Combine(copy.Path, "swap-kb"), examine: false).Base;
        Assert.StartsWith(message.Replace("a engine", "an engine", StringComparison.Ordinal), Assert.Throws<DraftProblemException>(() => Draft.Of(kb, new DraftRequest(kind, id))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AQuestionForEveryFact_TakesTheAnswers()
    {
        using var copy = DraftedBases.Copy("new");
        var kb = Proof.Of(Path.Combine(copy.Path, "swap-kb"), examine: false).Base;
        var asked = new List<string>();
        var drafted = Draft.Of(kb, new DraftRequest("engine", "second")
        {
            Ask = (question, otherwise) =>
            {
                asked.Add(question);
                return question.StartsWith("Power", StringComparison.Ordinal) ? "96" : otherwise;
            },
        });
        Assert.Equal(["Title", "Mount bolt spacing (from 40 to 200 mm)", "Power (from 20 to 400 kW)", "Emission level (stage-1, stage-2)"], asked);
        Assert.Contains("  power: 96  # ", drafted.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("facts.power", "9000", "unit")]
    [InlineData("facts.colour", "red", "vocabulary")]
    [InlineData("colour", "red", "schema")]
    [InlineData("facts.power", "{", "schema")]
    public void Faults_ASetThatDoesNotFit_AreFound(string key, string value, string finding)
    {
        using var copy = DraftedBases.Copy("new");
        var proof = Proof.Of(Path.Combine(copy.Path, "swap-kb"), examine: false);
        var request = new DraftRequest("engine", "second") { Sets = [new(key, value)] };
        Assert.Contains(finding, Draft.Faults(proof.Tree, request, Draft.Of(proof.Base, request)).Select(fault => fault.Id));
    }

    [Theory]
    [InlineData("a\nb: c")]
    [InlineData("")]
    public void Of_ATitleThatIsNoLine_IsRefused(string title)
    {
        using var copy = DraftedBases.Copy("new");
        var kb = Proof.Of(Path.Combine(copy.Path, "swap-kb"), examine: false).Base;
        Assert.Throws<DraftProblemException>(() => Draft.Of(kb, new DraftRequest("part", "x") { Title = title }));
    }

    [Theory]
    [InlineData("a: b # c")]
    [InlineData("- {x}")]
    [InlineData("\"quoted\" \\ back")]
    [InlineData("true")]
    [InlineData("1.5")]
    [InlineData("*alias &anchor !tag")]
    public void Of_AnyTitle_ComesBackAsWritten(string title)
    {
        using var copy = DraftedBases.Copy("new");
        var folder = Path.Combine(copy.Path, "swap-kb");
        var drafted = Draft.Of(Proof.Of(folder, examine: false).Base, new DraftRequest("part", "x") { Title = title });
        DraftFolder.Write(folder, drafted.Path, drafted.Text);
        Assert.Equal(title, Proof.Of(folder, examine: false).Base.Parts["x"].Title);
    }

    [Fact]
    public void Write_AFileThatIsThere_LeavesIt()
    {
        using var copy = DraftedBases.Copy("new");
        var folder = Path.Combine(copy.Path, "swap-kb");
        var text = File.ReadAllText(Path.Combine(folder, "parts/mount-plate.yaml"));
        Assert.Contains("nothing is overwritten", Assert.Throws<DraftProblemException>(() => DraftFolder.Write(folder, "parts/mount-plate.yaml", "x")).Message, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Path.Combine(folder, "parts/mount-plate.yaml")));
    }

    [Fact]
    public void Write_AFolderThatIsALink_WritesNothingElsewhere()
    {
        using var copy = DraftedBases.Copy("new");
        using var elsewhere = new TemporaryFolder();
        var folder = Path.Combine(copy.Path, "swap-kb");
        Directory.CreateSymbolicLink(Path.Combine(folder, "ecus"), elsewhere.Path);
        Assert.Throws<DraftProblemException>(() => DraftFolder.Write(folder, "ecus/x.yaml", "title: x\n"));
        Assert.Empty(Directory.EnumerateFileSystemEntries(elsewhere.Path));
    }

    private static IEnumerable<string> Ids(KnowledgeBase kb, string kind) => kind switch
    {
        "source" => kb.Sources.Ids,
        "term" => kb.Terms.Ids,
        "picture" => kb.Pictures.Ids,
        _ => IdRegister.Present(kb, kind),
    };
}
