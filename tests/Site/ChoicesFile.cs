using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;

namespace Swapwright.Tests.Site;

/// <summary>Reads what lies beside a guide for its switches, as the page's script does: what has a negative number is looked up on the page.</summary>
internal sealed class ChoicesFile : IDisposable
{
    private readonly JsonDocument _json;
    private readonly IHtmlDocument _page;

    public ChoicesFile(string script, string guide)
    {
        _json = JsonDocument.Parse(File.ReadAllText(script)["globalThis.swapwrightChoices = ".Length..].TrimEnd().TrimEnd(';'));
        _page = ParsedPage.Of(File.ReadAllText(guide)).Document;
    }

    public int Combinations => Member("combinations").GetArrayLength();

    public int Recommended => Member("recommended").GetInt32();

    public IEnumerable<(string Choice, string Option)> Options(int combination) =>
        Texts("choices").Select((choice, at) => (choice, Member("options")[at][Member("combinations")[combination][at].GetInt32()].GetString()!));

    /// <summary>For each position the rule whose line holds; null where there is nothing to settle.</summary>
    public IEnumerable<(string Position, string? Rule)> Lines(int combination)
    {
        var lines = Member("lines")[Member("combinations")[combination][Texts("choices").Count].GetInt32()];
        return Texts("positions").Select((position, at) => (position, lines[at].GetInt32() < 0 ? null : Member("rules").GetProperty(position)[lines[at].GetInt32()].GetString()));
    }

    public IReadOnlyList<IReadOnlyList<string>> Rows(int combination, string block)
    {
        var number = Member("combinations")[combination][Texts("choices").Count + 1 + Texts("names").IndexOf(block)].GetInt32();
        return number < 0 ? [] : [.. Member("blocks").GetProperty(block)[number].EnumerateArray().Select(row => Row(block, row.GetInt32()))];
    }

    public void Dispose()
    {
        _json.Dispose();
        _page.Dispose();
    }

    private IReadOnlyList<string> Row(string block, int number) => number < 0
        ? [_page.QuerySelectorAll($"[data-block={block}] li")[-1 - number].TextContent]
        : [.. Member("rows")[number].EnumerateArray().Select(text => Member("texts")[text.GetInt32()].GetString()!)];

    private List<string> Texts(string member) => [.. Member(member).EnumerateArray().Select(text => text.GetString()!)];

    private JsonElement Member(string name) => _json.RootElement.GetProperty(name);
}
