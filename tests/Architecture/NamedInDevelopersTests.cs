using System.Text.RegularExpressions;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Architecture;

/// <summary>Whoever follows DEVELOPERS.md finds what it names: files, folders and classes of tests. A name that is left behind sends a newcomer searching.</summary>
public sealed partial class NamedInDevelopersTests
{
    private static readonly string s_text = File.ReadAllText(Path.Combine(Reading.Repository(), "DEVELOPERS.md"));

    private static readonly List<string> s_kept =
    [
        .. new[] { "base-template", "generator", "schema", "site-template", "swap-kb", "tests" }
            .SelectMany(folder => Directory.EnumerateFileSystemEntries(Path.Combine(Reading.Repository(), folder), "*", SearchOption.AllDirectories).Prepend(Path.Combine(Reading.Repository(), folder)))
            .Select(path => "/" + Path.GetRelativePath(Reading.Repository(), path).Replace('\\', '/'))
            .Where(path => !Made().IsMatch(path)),
    ];

    [Fact]
    public void Paths_OfWhatIsKept_AreThere()
    {
        var paths = Paths().Matches(s_text).Select(match => match.Groups["path"].Value).Distinct(StringComparer.Ordinal).Where(path => !IsMadeUp(path)).ToList();
        Assert.True(paths.Count > 80, $"{paths.Count} paths were read");
        Assert.DoesNotContain(paths, path => !IsThere(path));
    }

    [Fact]
    public void TestClasses_AreThere()
    {
        var named = TestClasses().Matches(s_text).Select(match => match.Value).Distinct(StringComparer.Ordinal).ToList();
        Assert.True(named.Count > 20, $"{named.Count} classes were read");
        Assert.DoesNotContain(named, name => !IsThere(name));
    }

    // A place that the reader fills in, what a command writes, and an address that is refused.
    private static bool IsMadeUp(string path) => path.Contains("NAME", StringComparison.Ordinal) || path.Contains("ID", StringComparison.Ordinal)
        || path.StartsWith("out/", StringComparison.Ordinal) || path.StartsWith("//", StringComparison.Ordinal);

    // A path may begin at any folder, as people talk of them; a source is named without its ending.
    private static bool IsThere(string path) => s_kept.Exists(kept =>
        kept.EndsWith("/" + path.TrimEnd('/'), StringComparison.Ordinal) || kept.EndsWith($"/{path}.cs", StringComparison.Ordinal));

    [GeneratedRegex("`(?<path>[A-Za-z0-9_./-]*/[A-Za-z0-9_./-]*)`", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Paths();

    [GeneratedRegex(@"\b[A-Z]\w+Tests\b", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex TestClasses();

    [GeneratedRegex("/(bin|obj|node_modules)(/|$)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Made();
}
