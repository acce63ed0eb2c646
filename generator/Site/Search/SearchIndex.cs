using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace Swapwright.Site.Search;

/// <summary>
/// Writes the index that the search page's script reads. It is a script that sets one value: a page opened from disk may
/// load scripts from its own folder, but no data.
/// </summary>
internal static class SearchIndex
{
    public const string Path = "assets/search-index.js";

    private const string Name = "globalThis.swapwrightIndex=";

    // Lines stay apart so that a change of one entry is a change of one line; escaping keeps titles from ending the script.
    private static readonly JsonWriterOptions s_options = new() { Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    public static SiteFile File(IReadOnlyList<SearchKind> kinds, SearchGuides guides) => new(Path, Encoding.UTF8.GetBytes(Text(kinds, guides)));

    private static string Text(IReadOnlyList<SearchKind> kinds, SearchGuides guides)
    {
        var text = new StringBuilder(Name).Append("{\"kinds\":[\n");
        text.AppendJoin(",\n", kinds.Select(kind => Json(json =>
        {
            json.WriteStartObject();
            json.WriteString("title", kind.Title);
            json.WriteString("before", kind.Before);
            json.WriteString("after", kind.After);
            json.WriteEndObject();
        })));
        text.Append("],\n\"guides\":{\"chassis\":[").AppendJoin(",\n", guides.Chassis.Select(Named));
        text.Append("],\n\"donors\":[").AppendJoin(",\n", guides.Donors.Select(Named));
        text.Append("],\n\"options\":[").AppendJoin(",\n", guides.Options.Select(Named));
        text.Append("],\n\"rows\":[").AppendJoin(',', guides.Rows.Select(row => $"[{string.Join(',', row)}]"));
        text.Append("]},\n\"entries\":[\n").AppendJoin(",\n", kinds.SelectMany((kind, number) => kind.Entries.Select(entry => Entry(number, entry))));
        return text.Append("]};\n").ToString();
    }

    private static string Named(SearchEntry entry) => Json(json =>
    {
        json.WriteStartArray();
        json.WriteStringValue(entry.Id);
        json.WriteStringValue(entry.Title);
        json.WriteStringValue(entry.Words);
        json.WriteEndArray();
    });

    private static string Entry(int kind, SearchEntry entry) => Json(json =>
    {
        json.WriteStartArray();
        json.WriteNumberValue(kind);
        json.WriteStringValue(entry.Title);
        json.WriteStringValue(entry.Id);
        if (entry.Words.Length + entry.Detail.Length > 0)
        {
            json.WriteStringValue(entry.Words);
        }

        if (entry.Detail.Length > 0)
        {
            json.WriteStringValue(entry.Detail);
        }

        json.WriteEndArray();
    });

    private static string Json(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_options))
        {
            write(json);
        }

        return Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length));
    }
}
