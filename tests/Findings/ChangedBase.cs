using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings;

/// <summary>A good base in which a few words are changed.</summary>
internal static class ChangedBase
{
    /// <summary>The proof of a good base after each change; the words that are replaced must stand in the file.</summary>
    public static Proof Prove(string good, params ReadOnlySpan<(string File, string Old, string New)> changes)
    {
        using var folder = KnowledgeBaseCase.CopyOf(good);
        foreach (var (file, old, changed) in changes)
        {
            var path = Path.Combine(folder.Path, file);
            var text = File.Exists(path) ? File.ReadAllText(path) : "";
            Assert.Contains(old, text, StringComparison.Ordinal);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, old.Length == 0 ? text + changed : text.Replace(old, changed, StringComparison.Ordinal));
        }

        return Proof.Of(folder.Path);
    }

    public static string[] Messages(this Proof proof, FindingKind kind) =>
        [.. proof.Findings.Where(finding => finding.Kind == kind).Select(finding => finding.Message)];
}
