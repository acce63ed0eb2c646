using System.Text.Json;
using System.Text.RegularExpressions;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Architecture;

/// <summary>DEVELOPERS.md names every package with why it is there, and no other; and each is used.</summary>
public sealed partial class DependenciesTests
{
    // What a build or `dotnet test` runs by itself: no source file calls it.
    private static readonly string[] s_neverCalled = ["Meziantou.Analyzer", "Microsoft.NET.Test.Sdk", "xunit.runner.visualstudio"];

    private static readonly string s_root = Reading.Repository();

    public static TheoryData<string> OfNuGet => [.. Versions().Matches(File.ReadAllText(Path.Combine(s_root, "Directory.Packages.props"))).Select(match => match.Groups["id"].Value)];

    public static TheoryData<string> OfNpm =>
        [.. JsonDocument.Parse(File.ReadAllText(Path.Combine(s_root, "tests", "npm", "package.json"))).RootElement.GetProperty("devDependencies").EnumerateObject().Select(member => member.Name)];

    [Fact]
    public void Section_OfDevelopers_NamesEveryPackageAndNoOther() => Assert.Equal(
        Names(OfNuGet).Concat(Names(OfNpm)).Order(StringComparer.Ordinal),
        Rows().Select(row => row.Package).Order(StringComparer.Ordinal));

    [Fact]
    public void Section_OfDevelopers_SaysWhyAndWhatElseThereIs() => Assert.All(Rows(), row =>
    {
        Assert.False(string.IsNullOrWhiteSpace(row.Why), row.Package);
        Assert.False(string.IsNullOrWhiteSpace(row.InItsPlace), row.Package);
    });

    [Theory]
    [MemberData(nameof(OfNuGet))]
    public void Package_OfNuGet_IsReferencedAndUsed(string package)
    {
        var reference = $"<PackageReference Include=\"{package}\"";
        Assert.Contains(Files("*.csproj").Append(Path.Combine(s_root, "Directory.Build.props")), file => File.ReadAllText(file).Contains(reference, StringComparison.Ordinal));
        if (!s_neverCalled.Contains(package))
        {
            // A package's namespace has its name, but for a word that says how it was built.
            var space = package.Replace(".Signed", "", StringComparison.Ordinal);
            Assert.Contains(Files("*.cs").Concat(Files("*.csproj")), file => Uses(File.ReadAllText(file)).Any(used =>
                string.Equals(used, space, StringComparison.OrdinalIgnoreCase) || used.StartsWith(space + ".", StringComparison.OrdinalIgnoreCase)));
        }
    }

    [Theory]
    [MemberData(nameof(OfNpm))]
    public void Package_OfNpm_IsUsed(string package)
    {
        var folder = package[(package.IndexOf('/', StringComparison.Ordinal) + 1)..];
        Assert.Contains(Files("*.cs").Where(file => !file.EndsWith("DependenciesTests.cs", StringComparison.Ordinal)), file => Regex.IsMatch(File.ReadAllText(file), $"[\"/]{Regex.Escape(folder)}[\"/]", RegexOptions.None, TimeSpan.FromSeconds(2)));
    }

    private static IEnumerable<string> Names(IEnumerable<object[]> rows) => rows.Select(row => (string)row[0]);

    private static IEnumerable<string> Uses(string text) => Using().Matches(Remark().Replace(text, "")).Select(match => match.Groups["space"].Value);

    private static IEnumerable<string> Files(string pattern) => new[] { "generator", "tests" }
        .SelectMany(part => Directory.EnumerateFiles(Path.Combine(s_root, part), pattern, SearchOption.AllDirectories))
        .Where(file => !Made().IsMatch(file));

    private static List<(string Package, string Why, string InItsPlace)> Rows() =>
    [
        .. Section().Match(File.ReadAllText(Path.Combine(s_root, "DEVELOPERS.md"))).Value.Split('\n')
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| package |", StringComparison.Ordinal) && !line.StartsWith("| ---", StringComparison.Ordinal))
            .Select(line => line.Trim('|', ' ').Split(" | "))
            .SelectMany(cells => cells[0].Split(", ").Select(package => (package.Replace(" (npm)", "", StringComparison.Ordinal), cells[1], cells[2]))),
    ];

    [GeneratedRegex("<PackageVersion Include=\"(?<id>[^\"]+)\"", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Versions();

    [GeneratedRegex("//[^\n]*", RegexOptions.CultureInvariant, 2000)]
    private static partial Regex Remark();

    [GeneratedRegex("(^using (static )?|Using Include=\"|[ (<])(?<space>[A-Za-z]+(\\.[A-Za-z]+)*)", RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Using();

    [GeneratedRegex("^## Dependencies\n.*?(?=^## )", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Section();

    [GeneratedRegex("/(bin|obj|node_modules)/", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Made();
}
