using System.Reflection;
using System.Text.RegularExpressions;
using Swapwright.Diagnostics;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Architecture;

/// <summary>The account in DEVELOPERS.md of how a text and a number come to the page names what there is.</summary>
public sealed partial class WaysThroughTests
{
    private const BindingFlags Any = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static;

    private static readonly List<Match> s_rows = Row().Matches(Account()).ToList<Match>();

    [Fact]
    public void Account_OfBothWays_HasItsRows() => Assert.InRange(s_rows.Count, 12, 20);

    [Fact]
    public void Account_Members_StandInTheirFiles() => Assert.All(s_rows, row =>
    {
        var (file, name, member) = (row.Groups["file"].Value, row.Groups["type"].Value, row.Groups["member"].Value);
        var type = Assert.Single(typeof(Finding).Assembly.GetTypes(), type => type.Name == name && type.Namespace == $"Swapwright.{Path.GetDirectoryName(file)!.Replace('/', '.')}");
        Assert.NotEmpty(type.GetMember(member, Any));
        Assert.Matches($@"\b(class|record|struct)\s+{name}\b", GeneratorFiles.Code(file));
    });

    [Fact]
    public void Account_Templates_AreThere()
    {
        var named = Template().Matches(Account()).Select(match => match.Groups["name"].Value).ToList();
        Assert.NotEmpty(named);
        Assert.All(named, name => Assert.True(File.Exists(Path.Combine(Reading.Repository(), "site-template", "partials", $"{name}.sbn-html")), name));
    }

    private static string Account()
    {
        var text = File.ReadAllText(Path.Combine(Reading.Repository(), "DEVELOPERS.md"));
        var from = text.IndexOf("## Two ways through the program", StringComparison.Ordinal);
        return text[from..text.IndexOf("\n## ", from + 1, StringComparison.Ordinal)];
    }

    [GeneratedRegex(@"\| `(?<file>[A-Za-z/]+\.cs)` \| `(?<type>\w+)\.(?<member>\w+)` \|", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Row();

    [GeneratedRegex(@"template `(?<name>[a-z-]+)`", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Template();
}
