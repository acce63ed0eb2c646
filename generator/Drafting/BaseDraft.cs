using System.Reflection;
using System.Text;

namespace Swapwright.Drafting;

/// <summary>A new community's base: one car, one engine and what belongs around them, which checks and renders at once.</summary>
public static class BaseDraft
{
    private const string Root = "base-template/";

    /// <summary>Writes the files of a new base into a folder that is not there yet or empty.</summary>
    /// <exception cref="DraftProblemException">The folder holds something, or cannot be written.</exception>
    public static void Write(string folder, string title)
    {
        if (title.Length == 0 || title.Any(char.IsControl) || title.AsSpan().IndexOfAny('"', '\\') >= 0)
        {
            throw new DraftProblemException("a title is one line of text without quotes");
        }

        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            throw new DraftProblemException($"`{folder}` is there already and not empty; nothing is overwritten");
        }

        foreach (var (path, text) in Files())
        {
            DraftFolder.Write(folder, path, text.Replace("@TITLE@", title, StringComparison.Ordinal));
        }
    }

    private static IEnumerable<(string Path, string Text)> Files()
    {
        var assembly = Assembly.GetExecutingAssembly();
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Root, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!, Encoding.UTF8);
            yield return (name[Root.Length..].Replace('\\', '/'), reader.ReadToEnd());
        }
    }
}
