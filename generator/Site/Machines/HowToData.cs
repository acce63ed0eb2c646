using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Machines;

/// <summary>A guide's work as schema.org's HowTo, in JSON-LD: what it takes, in which order, how long, how much.</summary>
internal static class HowToData
{
    // The encoder keeps <, > and & out of the text, so that no title can end the element it stands in.
    private static readonly JsonWriterOptions s_options = new() { Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    /// <summary>What a guide says of the work: how long, how much, and its phases, which lead to the steps.</summary>
    /// <param name="address">Of the guide's page; null where the site is not published.</param>
    /// <param name="picture">Address of its picture; null where there is none.</param>
    public static HtmlString InShort(GuidePage page, Sheet sheet, Settings settings, string? address, string? picture) => Written(json =>
    {
        Head(json, page.Title, page.Frame.Description, sheet, settings, address);
        Address(json, "image", picture);
        json.WriteStartArray("step");
        foreach (var phase in page.Work)
        {
            Step(json, phase.Phase.Text, SitePaths.Address(settings.BaseAddress, phase.Phase.Href));
        }

        json.WriteEndArray();
    });

    /// <summary>The whole of the work, with tools, parts and every step's heading.</summary>
    /// <param name="address">Of the page; null where the site is not published, and the steps' addresses are anchors.</param>
    public static HtmlString Whole(WorkPage page, Sheet sheet, Settings settings, string? address) => Written(json =>
    {
        Head(json, page.Title, page.Frame.Description, sheet, settings, address);
        Things(json, "tool", "HowToTool", page.Tools.Select(tool => (tool, (string?)null)));
        Things(json, "supply", "HowToSupply", sheet.Shopping.Select(line => (line.Part.Title, line.Amount == 1 ? null : line.Amount.ToString(System.Globalization.CultureInfo.InvariantCulture))).Concat(page.Consumables.Select(thing => (thing, (string?)null))));
        json.WriteStartArray("step");
        foreach (var phase in page.Work)
        {
            json.WriteStartObject();
            json.WriteString("@type", "HowToSection");
            json.WriteString("name", phase.Title);
            json.WriteStartArray("itemListElement");
            foreach (var task in phase.Tasks)
            {
                Step(json, task.Title, $"{address}#task-{task.Id}");
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    private static HtmlString Written(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("@context", "https://schema.org");
            json.WriteString("@type", "HowTo");
            write(json);
            json.WriteEndObject();
        }

        return new HtmlString(Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length)));
    }

    private static void Head(Utf8JsonWriter json, string name, string description, Sheet sheet, Settings settings, string? address)
    {
        json.WriteString("name", name);
        json.WriteString("description", description);
        json.WriteString("inLanguage", settings.Language);
        Address(json, "url", address);
        json.WriteString("totalTime", Duration(sheet.Hours.Likely));
        Cost(json, sheet.Money, settings.Currency);
    }

    private static void Step(Utf8JsonWriter json, string name, string? address)
    {
        json.WriteStartObject();
        json.WriteString("@type", "HowToStep");
        json.WriteString("name", name);
        Address(json, "url", address);
        json.WriteEndObject();
    }

    /// <summary>ISO 8601, in whole hours as the page says them, since days of work are not days of the calendar.</summary>
    private static string Duration(decimal hours) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"PT{Math.Round(hours):0}H");

    private static void Cost(Utf8JsonWriter json, Range3 money, string currency)
    {
        var whole = new Range3(Math.Round(money.Least), Math.Round(money.Likely), Math.Round(money.Most));
        json.WriteStartObject("estimatedCost");
        json.WriteString("@type", "MonetaryAmount");
        json.WriteString("currency", currency);
        json.WriteNumber("minValue", whole.Least);
        json.WriteNumber("value", whole.Likely);
        json.WriteNumber("maxValue", whole.Most);
        json.WriteEndObject();
    }

    private static void Things(Utf8JsonWriter json, string name, string type, IEnumerable<(string Name, string? Amount)> things)
    {
        json.WriteStartArray(name);
        foreach (var thing in things)
        {
            json.WriteStartObject();
            json.WriteString("@type", type);
            json.WriteString("name", thing.Name);
            if (thing.Amount is not null)
            {
                json.WriteString("requiredQuantity", thing.Amount);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Address(Utf8JsonWriter json, string name, string? address)
    {
        if (address is not null)
        {
            json.WriteString(name, address);
        }
    }
}
