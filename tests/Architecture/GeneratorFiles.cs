using System.Text;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Architecture;

/// <summary>The C# files of the generator, read as text.</summary>
internal static class GeneratorFiles
{
    private static readonly string s_root = Path.Combine(Reading.Repository(), "generator");

    /// <summary>Paths relative to the generator's folder, with forward slashes.</summary>
    public static IEnumerable<string> All => Directory.EnumerateFiles(s_root, "*.cs", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(s_root, file).Replace('\\', '/'))
        .Where(file => !file.StartsWith("bin/", StringComparison.Ordinal) && !file.StartsWith("obj/", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    public static string[] Lines(string file) => File.ReadAllLines(Path.Combine(s_root, file));

    /// <summary>The text of a file without its remarks and without what stands in quotes, so that words in it are code.</summary>
    public static string Code(string file)
    {
        var text = File.ReadAllText(Path.Combine(s_root, file));
        var code = new StringBuilder(text.Length);
        for (var at = 0; at < text.Length; at++)
        {
            var end = text[at] switch
            {
                '/' when Follows(text, at, "//") => EndOf(text, at, "\n") - 1,
                '/' when Follows(text, at, "/*") => EndOf(text, at + 2, "*/"),
                '"' when Follows(text, at, "\"\"\"") => EndOf(text, at + 3, "\"\"\""),
                '"' when at > 0 && text[at - 1] == '@' => EndOf(text, at + 1, "\""),
                '"' => EndOfText(text, at + 1),
                '\'' => EndOfCharacter(text, at + 1),
                _ => at,
            };
            if (end == at)
            {
                code.Append(text[at]);
            }
            else
            {
                code.Append(' ');
                at = end - 1;
            }
        }

        return code.ToString();
    }

    private static bool Follows(string text, int at, string what) => string.CompareOrdinal(text, at, what, 0, what.Length) == 0;

    private static int EndOf(string text, int from, string what) =>
        text.IndexOf(what, Math.Min(from, text.Length), StringComparison.Ordinal) is var at and >= 0 ? at + what.Length : text.Length;

    // What stands between braces of an interpolated text is left out too; names of stages do not occur there without a `using`.
    private static int EndOfText(string text, int from)
    {
        while (from < text.Length && text[from] is not ('"' or '\n'))
        {
            from += text[from] == '\\' ? 2 : 1;
        }

        return from + 1;
    }

    private static int EndOfCharacter(string text, int from) => text[from] == '\\' ? EndOf(text, from + 2, "'") : from + 2;
}
