using System.Collections.Immutable;
using Swapwright.Source;

namespace Swapwright.Tests.Source;

/// <summary>What is accepted without the validator, the validator accepts.</summary>
public sealed class QuickFormTests
{
    private static readonly ImmutableArray<string> s_odd =
    [
        "''", "~", "true", "1", "-1", "1.5", "1e30", "word", "Word", "two words", "trailing-", "a--b", "2025-02-30", "2025-2-3", "2025-02-03", "[a, a]", "[1, 1.0]", "[]", "{}",
        "{a: 1}", "[a, 2, true]", "false", "'False'", "\"a\\n\"", "'1'", "ü", "[none, none-]", "{from: 1, to: 2}", "'" + new string('x', 130) + "'", "'" + new string('x', 21000) + "'",
    ];

    [Fact]
    public void Accepts_ShippedKnowledge_AcceptsAlmostAll()
    {
        var files = KnowledgeFolder.Read(Path.Combine(Reading.Repository(), "swap-kb")).Files;

        Assert.True(files.Count(SchemaSet.Embedded.Accepts) * 100 >= files.Length * 95);
    }

    [Fact]
    public void Accepts_EveryTestBase_OnlyWhatTheValidatorAccepts()
    {
        foreach (var folder in Directory.EnumerateDirectories(Path.Combine(Reading.Repository(), "tests", "knowledge-bases")).SelectMany(Directory.EnumerateDirectories))
        {
            Assert.All(KnowledgeFolder.Read(folder).Files.Where(SchemaSet.Embedded.Accepts), file => Assert.Empty(SchemaSet.Embedded.Judge(file)));
        }
    }

    /// <summary>Files of every kind with one value after the other replaced by something odd, or one key renamed.</summary>
    [Fact]
    public void Accepts_ChangedFiles_OnlyWhatTheValidatorAccepts()
    {
        var random = new Random(7);
        var (accepted, refused) = (0, 0);
        foreach (var kind in KnowledgeFolder.Read(Path.Combine(Reading.Repository(), "swap-kb")).Files.Where(file => file.Kind != "article").GroupBy(file => file.Kind, StringComparer.Ordinal))
        {
            foreach (var file in kind.Where((_, at) => at % 9 == 0).Take(12))
            {
                for (var change = 0; change < 25; change++)
                {
                    var changed = Reading.File(file.Kind, Changed(file.Text, random));
                    if (changed.Root is null)
                    {
                        continue;
                    }

                    var quick = SchemaSet.Embedded.Accepts(changed);
                    (accepted, refused) = quick ? (accepted + 1, refused) : (accepted, refused + 1);
                    Assert.True(!quick || SchemaSet.Embedded.Judge(changed).IsEmpty, changed.Text);
                }
            }
        }

        Assert.True(accepted > 200 && refused > 200);
    }

    private static string Changed(string text, Random random)
    {
        var lines = text.Split('\n');
        var at = random.Next(lines.Length);
        var colon = lines[at].IndexOf(": ", StringComparison.Ordinal);
        lines[at] = colon < 0 || random.Next(6) == 0
            ? lines[at].Replace("e:", "E:", StringComparison.Ordinal)
            : $"{lines[at][..colon]}: {s_odd[random.Next(s_odd.Length)]}";
        return string.Join('\n', lines);
    }
}
