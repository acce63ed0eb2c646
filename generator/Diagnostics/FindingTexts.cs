using System.Text;

namespace Swapwright.Diagnostics;

/// <summary>What a finding's page says, read from findings/ID.md among the templates.</summary>
/// <param name="Meaning">Markdown.</param>
/// <param name="Example">Knowledge that has the fault, as written.</param>
/// <param name="Message">What the check prints for it.</param>
/// <param name="Mend">Markdown.</param>
/// <param name="Mended">The example, mended.</param>
/// <param name="Accept">Markdown: when it is right to let it stand; empty where never.</param>
public sealed record FindingTexts(string Meaning, string Example, string Message, string Mend, string Mended, string Accept)
{
    /// <summary>Parses the sections of a finding's text; a section that is missing is empty.</summary>
    public static FindingTexts Parse(string text)
    {
        var sections = new Dictionary<string, string>(StringComparer.Ordinal);
        var name = "";
        foreach (var line in text.ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith("## ", StringComparison.Ordinal))
            {
                name = line[3..].Trim();
            }
            else
            {
                sections[name] = sections.GetValueOrDefault(name, "") + line + "\n";
            }
        }

        string Section(string wanted) => sections.GetValueOrDefault(wanted, "").Trim('\n');
        return new FindingTexts(Section("Meaning"), Code(Section("Example")), Code(Section("Message")), Section("Mend"), Code(Section("Mended")), Section("When to accept"));
    }

    /// <summary>The file inside the program, as written; null where a kind has none.</summary>
    public static string? Embedded(FindingKind kind)
    {
        using var stream = typeof(FindingTexts).Assembly.GetManifestResourceStream($"site-template/findings/{kind.Id}.md");
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    // Samples stand in fenced blocks, so that the text reads well in any Markdown viewer too.
    private static string Code(string section) =>
        string.Join('\n', section.Split('\n').Where(line => !line.StartsWith("```", StringComparison.Ordinal))).Trim('\n');
}
