using System.Text.RegularExpressions;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Hostile;

/// <summary>The list of threats in DEVELOPERS.md names tests that there are.</summary>
public sealed partial class ThreatTests
{
    [Fact]
    public void Security_EveryThreat_NamesTestsThatAreThere()
    {
        var section = Section().Match(File.ReadAllText(Path.Combine(Reading.Repository(), "DEVELOPERS.md"))).Value;
        var threats = section.Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(2).ToList();
        Assert.True(threats.Count > 15);

        // Tests of the browser lie in an assembly of their own: they are looked up in their files.
        var browser = string.Concat(Directory.EnumerateFiles(Path.Combine(Reading.Repository(), "tests", "browser"), "*.cs").Select(File.ReadAllText));
        Assert.All(threats, threat =>
        {
            var named = Test().Matches(threat.Split(" | ")[^1]);
            Assert.NotEmpty(named);
            Assert.All(named, test => Assert.True(
                typeof(ThreatTests).Assembly.GetTypes().Any(type => type.Name == test.Groups["type"].Value && type.GetMethod(test.Groups["method"].Value) is not null)
                || (browser.Contains($"class {test.Groups["type"].Value}", StringComparison.Ordinal) && browser.Contains($" {test.Groups["method"].Value}(", StringComparison.Ordinal)),
                test.Value));
        });
    }

    [GeneratedRegex("^## Security\n.*?(?=^## )", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Section();

    [GeneratedRegex("`(?<type>[A-Za-z]+Tests)\\.(?<method>[A-Za-z0-9_]+)`", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Test();
}
