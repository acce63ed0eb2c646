using System.Text;
using Swapwright.Source;

namespace Swapwright.Tests.Source;

public class SourceReaderFuzzTests
{
    private const string Valid = """
        # a rule as somebody would write it
        title: "Left mount \u00e9"
        when:
          donor.emission-level: [stage-2, stage-3]
          donor.year: { from: 1996, to: 2001 }
          not: { chassis.fuel-delivery: carburettor }
        then:
          - position: left-mount
            source: chassis
            treatment: as-is
            steps:
              - |
                Clean the *threads*.
                Fit it.
              - >-
                Torque it to 45 N·m,
                in two passes.
        because: 'It''s the same bracket'
        checked: 2024-05-31

        """;

    private static readonly string[] Pieces =
    [
        "[", "]", "{", "}", ":", ": ", "-", "- ", "\n", "\r", "\r\n", "\t", "&a ", "*a", "!!map ", "|", ">", "'", "\"", "\\", "\\uD800", "\\U00110000", "%", "@", "`", "#", "? ",
        "---\n", "...\n", "%YAML 9.9\n", "%TAG ! x\n", "\0", "\u202E", "\u2028", "\uFEFF", "😀", ",", "<<: *a", "!<", "|9", ">+-",
    ];

    [Theory]
    [InlineData("rule")]
    [InlineData("article")]
    public void ReadFile_MutatedFile_NeverThrowsAndPlacesEveryFinding(string kind)
    {
        var random = new Random(20240531);
        var start = Encoding.UTF8.GetBytes(kind == "article" ? $"---\n{Valid}---\n# Text\n" : Valid);
        for (var round = 0; round < 500; round++)
        {
            var bytes = Mutated(start, random);
            var (file, findings) = SourceReader.ReadFile(Reading.Path, kind, "one", bytes, SourceLimits.Default);

            Assert.True(file.Root is not null || findings.Length > 0, Encoding.UTF8.GetString(bytes));
            Assert.All(findings, finding =>
            {
                Assert.Equal(Reading.Path, finding.Place.File);
                Assert.InRange(finding.Place.Line, 1, finding.Place.EndLine);
                Assert.True(finding.Place.Column >= 1 && (finding.Place.EndLine, finding.Place.EndColumn).CompareTo((finding.Place.Line, finding.Place.Column)) >= 0, finding.ToString());
                Assert.True(file.Text.Length == 0 || file.Line(finding.Place.Line) is not null, finding.ToString());
            });
        }
    }

    private static byte[] Mutated(byte[] start, Random random)
    {
        var bytes = start.ToList();
        for (var times = random.Next(1, 4); times > 0; times--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(5))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 20), bytes.Count - at));
                    break;
                case 2:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 60), bytes.Count - at)));
                    break;
                default:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(Pieces[random.Next(Pieces.Length)]));
                    break;
            }

            if (bytes.Count == 0)
            {
                break;
            }
        }

        return [.. bytes];
    }
}
