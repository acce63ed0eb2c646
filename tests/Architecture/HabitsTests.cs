using System.Text.RegularExpressions;

namespace Swapwright.Tests.Architecture;

/// <summary>What keeps the generator readable and its output a function of its input.</summary>
public sealed partial class HabitsTests
{
    private const int LongestFile = 400;

    [Fact]
    public void Files_Length_StaysReadable() =>
        Assert.All(GeneratorFiles.All, file => Assert.InRange(GeneratorFiles.Lines(file).Length, 1, LongestFile));

    [Fact]
    public void Files_Code_AsksNeitherClockNorChance() =>
        Assert.Empty(
            from file in GeneratorFiles.All
            from match in Chance().Matches(GeneratorFiles.Code(file))
            select $"{file}: {match.Value}");

    /// <summary>The reader of code must see code, and neither remarks nor texts.</summary>
    [Fact]
    public void Code_OfAFile_LeavesOutRemarksAndTexts()
    {
        var code = GeneratorFiles.Code("Diagnostics/FindingKinds.cs");

        Assert.Contains("namespace Swapwright.Diagnostics;", code, StringComparison.Ordinal);
        Assert.Contains("Schema, Reference, Vocabulary", code, StringComparison.Ordinal);
        Assert.DoesNotContain("pin-clash", code, StringComparison.Ordinal);
        Assert.DoesNotContain("never re-used", code, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\bDateTime(?:Offset)?\.(?:Now|UtcNow|Today)\b|\bTimeProvider\b|\bStopwatch\b|\bTickCount(?:64)?\b|\bnew Random\s*\(|\bRandom\.Shared\b|\bGuid\.NewGuid\b|\bThread\.Sleep\b", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Chance();
}
