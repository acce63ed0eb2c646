using Swapwright.Commands;
using Swapwright.Findings;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Reports;

/// <summary>A small sound base in a folder of its own, and spoilt copies of it.</summary>
internal static class SmallBase
{
    public static string Folder { get; } = Path.Combine(Reading.Repository(), "tests", "Reports", "small-base");

    public static Proof Proof { get; } = Swapwright.Findings.Proof.Of(Folder);

    public static Resolution Resolution => Proof.Resolution!;

    public static Sheet Sheet(string chassis, string donor, params string[] choices) =>
        new SheetBuilder(Resolution).Build(CombinationArguments.Read(Resolution, chassis, donor, choices));

    /// <summary>A copy with one more file, or with another text in the place of one.</summary>
    public static TemporaryFolder Copy(params (string Path, string Text)[] changes)
    {
        var copy = new TemporaryFolder();
        foreach (var file in Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories))
        {
            copy.Write(Path.GetRelativePath(Folder, file), File.ReadAllText(file));
        }

        foreach (var (path, text) in changes)
        {
            copy.Write(path, text);
        }

        return copy;
    }
}
