using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Rules;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Findings;

/// <summary>
/// A small knowledge base under <c>tests/knowledge-bases</c>. A good one is a folder. A broken one is a patch: its folder
/// holds the files that differ from a good base, and <c>case.txt</c> says which one that is, what is left out of it and what is found.
/// </summary>
internal sealed record KnowledgeBaseCase(string Name, string Base, ImmutableArray<string> Without, ImmutableArray<string> Expected)
{
    private const string CaseFile = "case.txt";

    private static readonly ConcurrentDictionary<string, Lazy<Proved>> s_proved = new(StringComparer.Ordinal);

    private static readonly string s_root = Path.Combine(Reading.Repository(), "tests", "knowledge-bases");

    public static IEnumerable<string> Good => Names("good");

    public static IEnumerable<string> Broken => Names("broken");

    public static string GoodFolder(string name) => Path.Combine(s_root, "good", name);

    /// <summary>Reads the case of a broken base: lines <c>base:</c>, <c>without:</c> and expected findings; <c>#</c> opens a remark.</summary>
    public static KnowledgeBaseCase Read(string name)
    {
        var lines = File.ReadAllLines(Path.Combine(s_root, "broken", name, CaseFile)).Where(line => line.Length > 0 && line[0] != '#').ToList();
        return new KnowledgeBaseCase(
            name,
            Assert.Single(Values(lines, "base: ")),
            [.. Values(lines, "without: ")],
            [.. lines.Where(line => !line.StartsWith("base: ", StringComparison.Ordinal) && !line.StartsWith("without: ", StringComparison.Ordinal))]);
    }

    /// <summary>A copy of a good base that a test may change, as a folder that goes when the test is done.</summary>
    public static TemporaryFolder CopyOf(string good)
    {
        var folder = new TemporaryFolder();
        Copy(GoodFolder(good), folder.Path);
        return folder;
    }

    /// <summary>The good base with the patch laid over it.</summary>
    public TemporaryFolder Laid()
    {
        var folder = CopyOf(Base);
        foreach (var gone in Without)
        {
            var file = Path.Combine(folder.Path, gone);
            Assert.True(File.Exists(file), $"`{Name}` leaves out `{gone}`, which `{Base}` does not have");
            File.Delete(file);
        }

        Copy(Path.Combine(s_root, "broken", Name), folder.Path);
        File.Delete(Path.Combine(folder.Path, CaseFile));
        return folder;
    }

    /// <summary>Proved once for all classes that ask; each gets a store of its own, since classes run beside each other.</summary>
    public Proof Prove() => s_proved.GetOrAdd(Name, static (_, one) => new Lazy<Proved>(() => new Proved(one)), this).Value.Copy();

    /// <summary>A finding as <c>case.txt</c> writes it: id, place, and the number of combinations it touches or a dash.</summary>
    public static string Line(Finding finding) =>
        $"{finding.Id} {finding.Place} {finding.Touches?.ToString(CultureInfo.InvariantCulture) ?? "-"}";

    private static IEnumerable<string> Values(IEnumerable<string> lines, string key) =>
        lines.Where(line => line.StartsWith(key, StringComparison.Ordinal)).Select(line => line[key.Length..]);

    private static IEnumerable<string> Names(string kind) =>
        Directory.EnumerateDirectories(Path.Combine(s_root, kind)).Select(folder => Path.GetFileName(folder)).Order(StringComparer.Ordinal);

    private sealed class Proved
    {
        private readonly Lock _copying = new();
        private readonly Proof _proof;

        public Proved(KnowledgeBaseCase one)
        {
            using var folder = one.Laid();
            _proof = Proof.Of(folder.Path);
        }

        public Proof Copy()
        {
            lock (_copying)
            {
                return _proof.Resolution?.Copy() is { } copy ? _proof with { Resolution = copy, Words = new RegionWords(copy) } : _proof;
            }
        }
    }

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target, overwrite: true);
        }
    }
}
