using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings;

/// <summary>Every finding of every broken base: can it be read, found and mended, and does its witness show it?</summary>
public sealed class FindingMessagesTests
{
    public static TheoryData<string> Broken => [.. KnowledgeBaseCase.Broken];

    [Theory]
    [MemberData(nameof(Broken))]
    public void Message_OfAFinding_IsASentenceInLowerCaseWithAMend(string name) => Assert.All(KnowledgeBaseCase.Read(name).Prove().Findings, finding =>
    {
        Assert.All(finding.Related.Select(related => related.Message).Append(finding.Message), message =>
        {
            Assert.True(char.IsLower(message[0]) || message[0] == '`', message);
            Assert.DoesNotMatch(@"[.!\s]$", message);
            Assert.Equal(0, message.Count(sign => sign == '`') % 2);
            Assert.DoesNotContain('\n', message);
        });
        Assert.False(string.IsNullOrEmpty(finding.Mend), $"no mend: {finding.Message}");
        Assert.EndsWith(".", finding.Mend, StringComparison.Ordinal);
        Assert.True(char.IsUpper(finding.Mend![0]), finding.Mend);
    });

    [Theory]
    [MemberData(nameof(Broken))]
    public void Place_OfAFinding_LiesInsideItsFile(string name)
    {
        using var folder = KnowledgeBaseCase.Read(name).Laid();
        foreach (var finding in KnowledgeBaseCase.Read(name).Prove().Findings)
        {
            Assert.All(finding.Related.Select(related => related.Place).Append(finding.Place), place => LiesInside(folder.Path, place, finding));
        }
    }

    [Theory]
    [MemberData(nameof(Broken))]
    public void Witness_OfAFinding_ShowsIt(string name)
    {
        var proof = KnowledgeBaseCase.Read(name).Prove();
        foreach (var finding in proof.Findings)
        {
            // Only findings of the space speak of combinations, and those say all three.
            Assert.Equal(finding.Witness is not null, finding.Touches is not null);
            Assert.Equal(finding.Witness is not null, finding.Region is not null);
            if (finding.Witness is not null)
            {
                Assert.True(finding.Touches > 0);
                Assert.False(string.IsNullOrWhiteSpace(finding.Region));
            }

            WitnessWalk.Confirm(proof.Base, finding);
        }
    }

    private static void LiesInside(string folder, Place place, Finding finding)
    {
        Assert.False(Path.IsPathRooted(place.File), place.File);
        var path = Path.Combine(folder, place.File);
        if (!File.Exists(path))
        {
            // A file that is missing, or a folder that should not be there, is pointed at as a whole.
            Assert.True(Directory.Exists(path) || finding.Message.EndsWith("is missing", StringComparison.Ordinal), $"{finding.Message}: {place}");
            Assert.Equal(Place.Of(place.File), place);
            return;
        }

        var lines = File.ReadAllText(path).Split('\n');
        Assert.InRange(place.Line, 1, lines.Length);
        Assert.InRange(place.Column, 1, lines[place.Line - 1].Length + 1);
        Assert.InRange(place.EndLine, place.Line, lines.Length);
        Assert.InRange(place.EndColumn, 1, lines[place.EndLine - 1].Length + 1);
        Assert.True(place.EndLine > place.Line || place.EndColumn >= place.Column, $"{place} ends before it begins");
    }
}
