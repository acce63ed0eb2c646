using System.Globalization;
using System.Text.RegularExpressions;
using Swapwright.Benchmarks.Bases;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site;
using Swapwright.Site.Output;
using Swapwright.Site.Pages;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;
using Swapwright.Tests.Findings;
using Swapwright.Tests.Hostile;

namespace Swapwright.Tests.Site.Reuse;

/// <summary>A site that is rendered over an earlier one, against the same site rendered anew: the bytes are the same, whatever was kept.</summary>
public sealed partial class SiteReuseTests : IDisposable
{
    // As if these sites were few files, or as many as those whose previous tree the next run begins with.
    private const int Few = int.MaxValue;
    private const int Many = 0;

    private readonly TemporaryFolder _folder = new();

    private string Target => Path.Combine(_folder.Path, "site");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Render_NothingChanged_MakesNoPage()
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("workshop"));
        var first = Render(proof);
        Assert.Equal(first.Pages, first.Made);
        var files = Tree(Target);
        var times = files.Keys.ToDictionary(path => path, path => File.GetLastWriteTimeUtc(Path.Combine(Target, path)), StringComparer.Ordinal);

        var second = Render(proof);

        Assert.Equal((first.Guides, first.Pages, 0), second);
        AssertSame(files, Tree(Target));
        Assert.All(times.Where(time => time.Key != SiteFolder.Mark), time => Assert.Equal(time.Value, File.GetLastWriteTimeUtc(Path.Combine(Target, time.Key))));
    }

    [Fact]
    public void Render_Anew_MakesEveryPage()
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("workshop"));
        Render(proof);

        var again = Render(proof, anew: true);

        Assert.Equal(again.Pages, again.Made);
        Assert.Equal(0, Render(proof).Made);
    }

    /// <summary>One sentence of one rule: the guides of the pairs that the rule meets are made, the others are kept.</summary>
    [Fact]
    public void Render_OneRuleChanged_MakesTheGuidesThatItTouches()
    {
        var files = Drawn(1);
        var proof = Prove(files);
        Render(proof);
        var plan = new SiteKnowledge(proof).Guides;
        var store = proof.Resolution!.Store;
        List<string> Touched(Rule rule) => [.. plan.Where(guide => store.Intersects(PairSpace.Domain(proof.Resolution, guide.Headline.Chassis.Id, guide.Headline.Donor.Id), proof.Resolution.When(rule))).Select(guide => guide.Path).Order(StringComparer.Ordinal)];
        var (rule, touched) = proof.Base.Rules.All.Where(rule => !rule.Answers.IsEmpty).Select(rule => (rule, Touched(rule))).First(pair => pair.Item2.Count > 0 && pair.Item2.Count < plan.Length / 3);
        var before = Inputs(proof);
        files[rule.Place.File] = Because().Replace(files[rule.Place.File], "because: Told in other words.\n");
        proof = Prove(files);
        var now = Inputs(proof);
        Assert.Equal(touched, before.Keys.Where(path => now[path] != before[path]).Order(StringComparer.Ordinal));

        var (_, pages, made) = Render(proof);
        Assert.InRange(made, touched.Count, pages / 2);
    }

    /// <summary>Edits at random, one after the other over the same site: after each, what was kept and what was made are what a fresh render makes.</summary>
    [Theory]
    [InlineData(1, Few)]
    [InlineData(2, Many)]
    [InlineData(3, Many)]
    public void Render_AfterRandomEdits_IsTheSiteThatIsRenderedAnew(int seed, int many)
    {
        var edits = LongRun.Times("SWAPWRIGHT_EDITS", 6, 100);
        var random = new Random(seed);
        var files = Drawn(seed);
        Render(Prove(files), many: many);
        var (kept, done) = (0, 0);
        for (var tries = 0; done < edits && tries < 20 * edits; tries++)
        {
            var (path, text) = Edit(files, random);
            var before = files[path];
            SetOrRemove(files, path, text);
            var proof = Prove(files);
            if (proof.HasErrors || proof.Resolution is null)
            {
                files[path] = before;
                continue;
            }

            var (_, pages, made) = Render(proof, many: many);
            var fresh = Path.Combine(_folder.Path, string.Create(CultureInfo.InvariantCulture, $"fresh-{tries}"));
            SiteBuilder.Render(proof, fresh, BuiltIn.Templates, anew: true);
            AssertSame(Tree(fresh), Tree(Target), $"after {path}:\n{text}");
            Directory.Delete(fresh, recursive: true);
            kept += pages - made;
            done++;
        }

        Assert.Equal(edits, done);
        Assert.True(kept > 0, "nothing was ever kept");
    }

    [Theory]
    [InlineData(Few)]
    [InlineData(Many)]
    public void Render_FilesThatSomebodyChangedOrTookAway_ArePutRight(int many)
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("workshop"));
        Render(proof, many: many);
        Render(proof, many: many);
        var files = Tree(Target);
        var guide = Guides().First();
        var whole = File.ReadAllText(Path.Combine(Target, guide));
        File.WriteAllText(Path.Combine(Target, guide), whole.Replace('e', 'a'));
        File.Delete(Path.Combine(Target, "rules.html"));

        Render(proof, many: many);

        AssertSame(files, Tree(Target));
    }

    /// <summary>A link in the place of a file is not followed, though what it leads to be the right page.</summary>
    [Theory]
    [InlineData(Few)]
    [InlineData(Many)]
    public void Render_LinkInThePlaceOfAFile_IsReplaced(int many)
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("small"));
        Render(proof, many: many);
        Render(proof, many: many);
        var page = Path.Combine(Target, "rules.html");
        var elsewhere = Path.Combine(_folder.Path, "elsewhere.html");
        File.Move(page, elsewhere);
        File.CreateSymbolicLink(page, elsewhere);

        Render(proof, many: many);

        Assert.Null(new FileInfo(page).LinkTarget);
        Assert.Equal(File.ReadAllText(elsewhere), File.ReadAllText(page));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(200)]
    [InlineData(-1)]
    public void Render_RecordThatIsDamaged_IsAsGoodAsNone(int length)
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("small"));
        Render(proof);
        var files = Tree(Target);
        var record = SiteRecord.PathOf(Target);
        var bytes = File.ReadAllBytes(record);
        Array.Fill(bytes, (byte)0xFF, Math.Min(30, bytes.Length), bytes.Length - Math.Min(30, bytes.Length));
        File.WriteAllBytes(record, length < 0 ? bytes : File.ReadAllBytes(record)[..Math.Min(length, bytes.Length)]);

        var again = Render(proof);

        Assert.Equal(again.Pages, again.Made);
        AssertSame(files, Tree(Target));
    }

    [Fact]
    public void Render_TemplateOfTheBaseChanged_MakesEveryPage()
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("small"));
        Render(proof);
        _folder.Write("kb/site-template/partials/label.sbn-html", "<p>other words</p>\n");
        _folder.Write("kb/site-template/note.css", "p { color: black }\n");

        var (_, pages, made) = SiteBuilder.Render(proof, Target, BuiltIn.Templates.Over(TemplateFolder.Of(Path.Combine(_folder.Path, "kb"))));

        Assert.Equal(pages, made);
    }

    private static SortedDictionary<string, string> Drawn(int seed) => new(LargeBase.Of(new BaseSize(4, 6, 4, 20, 60, seed)).Files.ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal);

    private static Dictionary<string, Digest> Inputs(Proof proof) =>
        new SitePlan(proof, BuiltIn.Templates, SiteRecord.None).Guides.ToDictionary(guide => guide.Name, guide => guide.Inputs!.Value, StringComparer.Ordinal);

    private static (string Path, string? Text) Edit(SortedDictionary<string, string> files, Random random)
    {
        var others = random.Next(5) == 0;
        var paths = files.Keys.Where(path => path.EndsWith(".yaml", StringComparison.Ordinal) && path.StartsWith("rules/", StringComparison.Ordinal) != others).ToList();
        var path = paths[random.Next(paths.Count)];
        var text = files[path];
        return (path, random.Next(8) switch
        {
            0 when !others => null,
            1 => Title().Replace(text, string.Create(CultureInfo.InvariantCulture, $"title: Another title {random.Next(100)}"), 1),
            2 => text.Replace("source: made", "source: new", StringComparison.Ordinal),
            3 => text.Replace("treatment: as-is", "treatment: modify", StringComparison.Ordinal),
            4 => Number().Replace(text, match => string.Create(CultureInfo.InvariantCulture, $"{int.Parse(match.Value, CultureInfo.InvariantCulture) + (10 * random.Next(-3, 4))}"), 1, random.Next(text.Length)),
            5 => Option().Replace(text, string.Create(CultureInfo.InvariantCulture, $"o{random.Next(3)}"), 1, random.Next(text.Length)),
            6 => text.Replace("true", "false", StringComparison.Ordinal),
            _ => Because().Replace(text, string.Create(CultureInfo.InvariantCulture, $"because: For another reason, number {random.Next(100)}.\n")),
        });
    }

    private static void SetOrRemove(SortedDictionary<string, string> files, string path, string? text)
    {
        if (text is null)
        {
            files.Remove(path);
        }
        else
        {
            files[path] = text;
        }
    }

    private Proof Prove(SortedDictionary<string, string> files)
    {
        var place = Path.Combine(_folder.Path, "drawn");
        if (Directory.Exists(place))
        {
            Directory.Delete(place, recursive: true);
        }

        foreach (var (path, text) in files)
        {
            _folder.Write(Path.Combine("drawn", path), text);
        }

        return Proof.Of(place);
    }

    private (int Guides, int Pages, int Made) Render(Proof proof, bool anew = false, int many = Few) => SiteBuilder.Render(proof, Target, BuiltIn.Templates, anew: anew, many: many);

    private IEnumerable<string> Guides() =>
        Directory.EnumerateFiles(Path.Combine(Target, "guide"), "*.html", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(Target, path)).Order(StringComparer.Ordinal);

    private static SortedDictionary<string, byte[]> Tree(string folder) =>
        new(Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).ToDictionary(path => Path.GetRelativePath(folder, path), File.ReadAllBytes, StringComparer.Ordinal), StringComparer.Ordinal);

    private static void AssertSame(SortedDictionary<string, byte[]> expected, SortedDictionary<string, byte[]> found, string what = "")
    {
        Assert.Equal(expected.Keys, found.Keys);
        var differing = expected.Where(file => !file.Value.AsSpan().SequenceEqual(found[file.Key])).Select(file => file.Key).ToList();
        Assert.True(differing.Count == 0, $"{string.Join(", ", differing.Take(10))} differ {what}");
    }

    [GeneratedRegex("because: .*\n", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Because();

    [GeneratedRegex("title: [^,}\n]*", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Title();

    [GeneratedRegex("[0-9]{2,3}", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Number();

    [GeneratedRegex(@"\bo[0-9]\b", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Option();
}
