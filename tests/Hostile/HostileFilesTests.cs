using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Source;
using Swapwright.Tests.Commands;
using Swapwright.Tests.Drafting;
using Swapwright.Tests.Reports;
using Swapwright.Tests.Rules;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Hostile;

/// <summary>Files made to exhaust or to lead astray, in a whole base: a finding, soon, and nothing is rendered.</summary>
public sealed class HostileFilesTests
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(5);

    public static TheoryData<string, string> Exhausting => new()
    {
        { "a million keys", "larger than" },
        { "as many keys as a file may hold", "more than" },
        { "a hundred megabytes", "larger than" },
        { "nested without end", "deep" },
        { "mappings nested without end", "deep" },
        { "aliases of aliases", "alias" },
        { "one endless word", "longer" },
        { "nothing but opened quotes", "" },
    };

    [Theory]
    [MemberData(nameof(Exhausting))]
    public void Check_ExhaustingFile_IsAFindingSoon(string what, string words)
    {
        using var folder = SmallBase.Copy();
        var file = Path.Combine(folder.Path, "rules", "front", "huge.yaml");
        if (what == "a hundred megabytes")
        {
            using var huge = File.Create(file);
            huge.SetLength(100L * 1024 * 1024);
        }
        else
        {
            File.WriteAllText(file, Text(what));
        }

        var (proof, time) = Measured(folder.Path);
        Assert.Contains(proof.Findings, finding => finding.Place.File == "rules/front/huge.yaml" && finding.Message.Contains(words, StringComparison.Ordinal));
        Assert.True(time < s_patience, string.Create(CultureInfo.InvariantCulture, $"{time}"));
        Assert.True(proof.HasErrors);
    }

    [Fact]
    public void Program_ExhaustingFilesTogether_KeepsWithinAQuarterOfAGigabyte()
    {
        using var folder = SmallBase.Copy();
        foreach (var (what, at) in Exhausting.Select(row => (string)row[0]).Where(what => what != "a hundred megabytes").Select((what, at) => (what, at)))
        {
            folder.Write(string.Create(CultureInfo.InvariantCulture, $"rules/front/huge-{at}.yaml"), Text(what));
        }

        using (var huge = File.Create(Path.Combine(folder.Path, "rules", "front", "huge.yaml")))
        {
            huge.SetLength(100L * 1024 * 1024);
        }

        // Beyond this the runtime ends the program.
        var run = BuiltProgram.Run(folder.Path, new Dictionary<string, string>(StringComparer.Ordinal) { ["DOTNET_GCHeapHardLimit"] = "0x10000000" }, "check", ".");
        Assert.True(run.Exit == 1, run.Error);
        Assert.Contains("rules/front/huge.yaml:1:1", run.Output, StringComparison.Ordinal);
    }

    /// <summary>Whatever may name another of its kind, or itself, in a circle: all at once and each by itself.</summary>
    [Fact]
    public void Check_CirclesOfEveryKind_AreFindingsSoon()
    {
        (string Path, string Text, string Kind)[] circles =
        [
            ("chassis/round.yaml", "title: Round\nlike: square\n", "reference"),
            ("chassis/square.yaml", "title: Square\nlike: round\n", "reference"),
            ("parts/egg.yaml", "title: Egg\nlike: hen\n", "reference"),
            ("parts/hen.yaml", "title: Hen\nlike: egg\n", "reference"),
            ("rules/all/a.yaml", "title: A\nwhen: {answer.b: {source: new}}\nthen: {answers: {a: {source: new, treatment: as-is}}}\n", "answer-cycle"),
            ("rules/all/b.yaml", "title: B\nwhen: {answer.a: {source: new}}\nthen: {answers: {b: {source: new, treatment: as-is}}}\n", "answer-cycle"),
            ("rules/all/c.yaml", "title: C\noverrides: [d]\nthen: {answers: {c: {source: new, treatment: as-is}}}\n", "override-cycle"),
            ("rules/all/d.yaml", "title: D\noverrides: [c]\nthen: {answers: {c: {source: made, treatment: as-is}}}\n", "override-cycle"),
            ("tasks/first.yaml", "title: First\nphase: fit\nafter: [second]\nsteps: [Do it.]\n", "task-cycle"),
            ("tasks/second.yaml", "title: Second\nphase: fit\nafter: [first]\nsteps: [Do it.]\n", "task-cycle"),
            ("choices/left.yaml", "title: Left\napplies: {choice.right: r}\noptions: {l: {title: L}, o: {title: O}}\n", ""),
            ("choices/right.yaml", "title: Right\napplies: {choice.left: l}\noptions: {r: {title: R}, o: {title: O}}\n", ""),
            ("articles/to.md", "---\ntitle: To\n---\nSee [fro](article:fro).\n", ""),
            ("articles/fro.md", "---\ntitle: Fro\n---\nSee [to](article:to).\n", ""),
        ];
        foreach (var pair in circles.Chunk(2).Append(circles))
        {
            using var folder = new TemporaryFolder();
            TinyBase.With([.. pair.Select(one => (one.Path, one.Text))]).WriteTo(folder.Path);
            var (proof, time) = Measured(folder.Path);
            Assert.True(time < s_patience, $"{pair[0].Path}: {time}");
            if (pair.Length == 2 && pair[0].Kind.Length > 0)
            {
                Assert.True(proof.Findings.Any(finding => finding.Id == pair[0].Kind && pair.Select(one => one.Path).Contains(finding.Place.File)), $"{pair[0].Path}: {string.Join("; ", proof.Findings.Select(finding => $"{finding.Id} {finding.Place}"))}");
            }
        }
    }

    /// <summary>Found by spoiling bases at random: the form was refused, and the names were asked for all the same.</summary>
    [Fact]
    public void Check_OptionThatBindsNoKindThereIs_IsAFinding()
    {
        using var folder = SmallBase.Copy(("choices/gearbox.yaml", "title: Gearbox\noptions: {donor: {title: The donor's, binds: {immobiliser: one}}, keep: {title: Kept}}\n"));
        Assert.Contains(Proof.Of(folder.Path).Findings, finding => finding.Id == "schema" && finding.Place.File == "choices/gearbox.yaml");
    }

    [Theory]
    [InlineData("chassis")]
    [InlineData("engines")]
    public void Check_NoVariantAtAll_IsAFinding(string folder)
    {
        using var copy = DraftedBases.Copy("new");
        var kb = Path.Combine(copy.Path, "swap-kb");
        Directory.Delete(Path.Combine(kb, folder), recursive: true);
        Assert.Contains(Proof.Of(kb).Findings, finding => finding is { Id: "schema", Severity: Severity.Error } && finding.Place.File == folder);
    }

    [Fact]
    public void CheckText_FindingInALineAsLongAsAFile_IsQuotedSoon()
    {
        var watch = Stopwatch.StartNew();
        var quote = QuotedLine.Of(new string('[', 1_900_000), 1_000_000, 800_000, 120);
        Assert.True(watch.Elapsed < s_patience);
        Assert.InRange(quote.Text.Length, 60, 120);
        Assert.Equal((41, true), (quote.Before, quote.Marks > 20));
    }

    /// <summary>Exclusions that tie many choices together, each with many: no order of them keeps the space small.</summary>
    [Fact]
    public void Program_ConditionsThatTangleTheSpace_EndsAndSaysSo()
    {
        const int choices = 60;
        var random = new Random(8_200);
        var tangled = TinyBase.With([.. Enumerable.Range(0, choices).Select(at => (string.Create(CultureInfo.InvariantCulture, $"choices/c{at}.yaml"), "title: C\noptions: {y: {title: Y}, n: {title: N}}\n"))]);
        for (var rule = 0; rule < 220; rule++)
        {
            var terms = Enumerable.Range(0, choices).OrderBy(_ => random.Next()).Take(3).Select(at => string.Create(CultureInfo.InvariantCulture, $"choice.c{at}: {(random.Next(2) == 0 ? "y" : "n")}"));
            tangled[string.Create(CultureInfo.InvariantCulture, $"rules/all/x{rule}.yaml")] = $"title: X\nwhen: {{{string.Join(", ", terms)}}}\nthen: {{exclude: true}}\n";
        }

        using var folder = new TemporaryFolder();
        tangled.WriteTo(folder.Path);
        var run = BuiltProgram.Run(folder.Path, "check", ".");
        Assert.Equal(2, run.Exit);
        Assert.Contains("the conditions need more than", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("a fault of the program", run.Error, StringComparison.Ordinal);
    }

    /// <summary>A pattern that goes back and forth over a text would take longer than anybody waits.</summary>
    [Fact]
    public void Patterns_OfTheSchemas_DecideAnyTextSoon()
    {
        string[] parts = ["a", "a-", "-", "1", "1.", ".", "a.", "a-a.", "/", "BK/", "M1x", " ", "1 ", "+1 a", "a b ", "https://a", "https://a.", "x:", "é", "\n"];
        var patterns = Directory.EnumerateFiles(Path.Combine(Reading.Repository(), "schema"), "*.schema.json")
            .SelectMany(file => Pattern(File.ReadAllText(file)))
            .Distinct(StringComparer.Ordinal).ToList();
        Assert.True(patterns.Count > 10);
        var longest = SourceLimits.Default.MaxScalarLength;
        foreach (var pattern in patterns)
        {
            // As the validator runs them: backtracking, and without a time of their own.
            var regex = new Regex(SchemaLoader.AnchorPattern(pattern), RegexOptions.None, TimeSpan.FromSeconds(2));
            foreach (var part in parts)
            {
                var text = string.Concat(Enumerable.Repeat(part, longest / part.Length));
                _ = regex.IsMatch(text);
                _ = regex.IsMatch(text + "!");
                _ = regex.IsMatch(text[..^1] + "\n");
            }
        }

        static IEnumerable<string> Pattern(string json)
        {
            using var document = System.Text.Json.JsonDocument.Parse(json);
            var found = new List<string>();
            Walk(document.RootElement);
            return found;

            void Walk(System.Text.Json.JsonElement at)
            {
                if (at.ValueKind == System.Text.Json.JsonValueKind.Array)
                {
                    foreach (var item in at.EnumerateArray())
                    {
                        Walk(item);
                    }
                }
                else if (at.ValueKind == System.Text.Json.JsonValueKind.Object)
                {
                    foreach (var member in at.EnumerateObject())
                    {
                        if (member.Name == "pattern" && member.Value.ValueKind == System.Text.Json.JsonValueKind.String)
                        {
                            found.Add(member.Value.GetString()!);
                        }

                        if (member.Name == "patternProperties")
                        {
                            found.AddRange(member.Value.EnumerateObject().Select(one => one.Name));
                        }

                        Walk(member.Value);
                    }
                }
            }
        }
    }

    [Theory]
    [InlineData("rules/front/a%2f..%2f..%2fevil.yaml")]
    [InlineData("rules/front/Evil.yaml")]
    [InlineData("rules/front/-.yaml")]
    [InlineData("rules/front/a\\..\\b.yaml")]
    [InlineData("rules/front/a\nb.yaml")]
    [InlineData("rules/front/con .yaml")]
    [InlineData("chassis/\u202Eevil.yaml")]
    public void Check_NameThatIsNoId_IsRefused(string path)
    {
        using var folder = SmallBase.Copy((path, "title: Evil\n"));
        Assert.Contains(Proof.Of(folder.Path).Findings, finding => finding.Id == "schema" && finding.Place.File == path);
    }

    [Theory]
    [InlineData("articles/look.md", "---\ntitle: A look\n---\nSee [it](article:../../../etc/passwd) and [that](../../secret.html).\n", "article")]
    [InlineData("articles/look.md", "---\ntitle: A look\nimages: [../../../etc/passwd]\n---\nText.\n", "schema")]
    [InlineData("articles/look.md", "---\ntitle: A look\n---\n![a](picture:../../secret)\n", "article")]
    [InlineData("parts/mount-plate.yaml", "title: Plate\nlike: ../../etc/passwd\n", "schema")]
    [InlineData("tasks/make-plate.yaml", "title: Make the plate\nphase: fit\nafter: [../lift-in]\nsteps: [Do it.]\n", "schema")]
    public void Check_ReferenceThatClimbs_IsRefused(string path, string text, string kind)
    {
        using var folder = SmallBase.Copy((path, text));
        var proof = Proof.Of(folder.Path);
        Assert.Contains(proof.Findings, finding => finding.Id == kind && finding.Place.File == path);
        if (!proof.HasErrors)
        {
            // A link that leads nowhere is a warning, and no link in the page.
            using var target = new TemporaryFolder();
            SmallRuns.Render(folder.Path, Path.Combine(target.Path, "site"));
            Assert.DoesNotMatch("(href|src)=\"[^\"]*(passwd|secret)", File.ReadAllText(Path.Combine(target.Path, "site", "article", "look.html")));
        }
    }

    /// <summary>A link out of the base would be read by a check, and shown to everybody by a site.</summary>
    [Theory]
    [InlineData("rules/front/link.yaml")]
    [InlineData("articles/link.md")]
    [InlineData("pictures/link.svg")]
    [InlineData("rules/outside")]
    [InlineData("site-template/layout.sbn-html")]
    [InlineData("site-template/partials")]
    public void Site_LinkOutOfTheBase_IsRefusedAndReadNowhere(string path)
    {
        using var secret = new TemporaryFolder();
        secret.Write("secret.yaml", "title: The secret\n");
        using var folder = DraftedBases.Copy("new");
        var link = Path.Combine(folder.Path, "swap-kb", path);
        Directory.CreateDirectory(Path.GetDirectoryName(link)!);
        if (path.Contains('.', StringComparison.Ordinal))
        {
            File.CreateSymbolicLink(link, Path.Combine(secret.Path, "secret.yaml"));
        }
        else
        {
            Directory.CreateSymbolicLink(link, secret.Path);
        }

        var run = BuiltProgram.Run(folder.Path, "site");
        Assert.Equal(1, run.Exit);
        Assert.Contains("symbolic link", run.Output + run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("The secret", run.Output + run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(folder.Path, "out")));
    }

    private static string Text(string what)
    {
        static string Keys(int count) => string.Concat(Enumerable.Range(0, count).Select(at => string.Create(CultureInfo.InvariantCulture, $"k{at}: 1\n")));
        return what switch
        {
            "a million keys" => Keys(1_000_000),
            "as many keys as a file may hold" => Keys(190_000),
            "nested without end" => "a: " + new string('[', 900_000),
            "mappings nested without end" => string.Concat(Enumerable.Repeat("{a: ", 400_000)),
            "aliases of aliases" => "a: &a [x, x]\n" + string.Concat("bcdefghijklmnopqrstuvwxyz".Select(name => $"{name}: &{name} [*{(char)(name - 1)}, *{(char)(name - 1)}]\n")),
            "one endless word" => "title: " + new string('a', 1_900_000),
            _ => new StringBuilder().Insert(0, "a: \"x\n", 300_000).ToString(),
        };
    }

    private static (Proof Proof, TimeSpan Time) Measured(string folder)
    {
        // What is loaded once for all reading is no part of it.
        _ = Proof.Of(SmallBase.Folder);
        var watch = Stopwatch.StartNew();
        return (Proof.Of(folder), watch.Elapsed);
    }
}
