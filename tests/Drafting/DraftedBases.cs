using Swapwright.Drafting;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Drafting;

/// <summary>Copies of bases to draft in.</summary>
internal static class DraftedBases
{
    public static TemporaryFolder Copy(string which)
    {
        var copy = new TemporaryFolder();
        if (which == "new")
        {
            BaseDraft.Write(copy.Path, "Our swaps");
            return copy;
        }

        var shipped = Path.Combine(Reading.Repository(), "swap-kb");
        foreach (var file in Directory.EnumerateFiles(shipped, "*", SearchOption.AllDirectories))
        {
            copy.Write(Path.Combine("swap-kb", Path.GetRelativePath(shipped, file)), File.ReadAllText(file));
        }

        return copy;
    }
}
