using System.Text.RegularExpressions;
using Swapwright.Tests.Source;

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

    /// <summary>One namespace for a file, and what it uses stands above it, as <c>.editorconfig</c> asks of an editor.</summary>
    [Fact]
    public void Files_NamespaceAndUses_StandInOrder()
    {
        var root = Reading.Repository();
        var files = GeneratorFiles.All.Select(file => $"generator/{file}").Concat(Directory.EnumerateFiles(Path.Combine(root, "tests"), "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(root, file)).Where(file => !Made().IsMatch(file))).ToList();
        Assert.Contains("tests/browser/Tabs.cs", files);

        Assert.DoesNotContain(files, file => OutOfOrder().IsMatch(File.ReadAllText(Path.Combine(root, file))));
    }

    [Theory]
    [InlineData("using System;\n\nnamespace A.B;\n\nclass C;\n", false)]
    [InlineData("namespace A.B\n{\n}\n", true)]
    [InlineData("namespace A.B {\n}\n", true)]
    [InlineData("namespace A.B;\n\nusing System;\n\nclass C;\n", true)]
    [InlineData("namespace A.B;\n\nusing static System.Math;\n", true)]
    public void OutOfOrder_OfAFile_IsTold(string text, bool told) => Assert.Equal(told, OutOfOrder().IsMatch(text));

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

    [GeneratedRegex(@"^namespace [\w.]+ *(?:\{|$)|^namespace [^{}]*?^using [\w. ]+;", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.Multiline, 2000)]
    private static partial Regex OutOfOrder();

    [GeneratedRegex("/(bin|obj|node_modules)/", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Made();
}
