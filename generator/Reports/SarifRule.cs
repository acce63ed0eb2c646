using System.Text;
using System.Text.Json;
using Swapwright.Diagnostics;

namespace Swapwright.Reports;

/// <summary>A kind of finding as SARIF describes a rule (§3.49), with the text of its page as help.</summary>
internal static class SarifRule
{
    /// <param name="address">Where the page is found; left out where null.</param>
    public static void Write(Utf8JsonWriter json, FindingKind kind, string? address)
    {
        json.WriteString("id", kind.Id);
        json.Object("shortDescription", () => json.WriteString("text", kind.Title + "."));
        if (FindingTexts.Embedded(kind) is { } page)
        {
            var texts = FindingTexts.Parse(page);
            json.Object("fullDescription", () => json.WriteString("text", texts.Meaning.Split("\n\n")[0]));
            json.Object("help", () =>
            {
                json.WriteString("text", Plain(texts));
                json.WriteString("markdown", page.TrimEnd('\n') + "\n");
            });
        }

        if (Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme == Uri.UriSchemeHttps)
        {
            json.WriteString("helpUri", uri.AbsoluteUri);
        }

        json.Object("defaultConfiguration", () => json.WriteString("level", SeverityWords.Of(kind.Severity)));
    }

    // For viewers that show no Markdown: samples are set in, headings are words of a paragraph.
    private static string Plain(FindingTexts texts)
    {
        var text = new StringBuilder(texts.Meaning).Append('\n');
        void Section(string title, string body, string indent)
        {
            if (body.Length > 0)
            {
                text.Append('\n').Append(title).Append(":\n").AppendJoin('\n', body.Split('\n').Select(line => line.Length == 0 ? "" : indent + line)).Append('\n');
            }
        }

        Section("Example", texts.Example, "    ");
        Section("Message", texts.Message, "    ");
        Section("How to mend it", texts.Mend, "");
        Section("Mended", texts.Mended, "    ");
        Section("When to accept it", texts.Accept, "");
        return text.ToString();
    }
}
