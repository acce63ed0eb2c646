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

    /// <param name="address">Of the guide's page; null where the site is not published.</param>
    /// <param name="picture">Address of its picture; null where there is none.</param>
    public static HtmlString Of(GuidePage page, Sheet sheet, Settings settings, string? address, string? picture)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_options))
        {
            json.WriteStartObject();
            json.WriteString("@context", "https://schema.org");
            json.WriteString("@type", "HowTo");
            json.WriteString("name", page.Title);
            json.WriteString("description", $"{page.Frame.Description} {page.Summary.Verdict}");
            json.WriteString("inLanguage", settings.Language);
            Address(json, "url", address);
            Address(json, "image", picture);
            json.WriteString("totalTime", Duration(sheet.Hours.Likely));
            Cost(json, sheet.Money, settings.Currency);
            Things(json, "tool", "HowToTool", page.Tools.Select(tool => (tool, (string?)null)));
            Things(json, "supply", "HowToSupply", page.Shopping.SelectMany(group => group.Items).Select(item => (item.Part.Text, item.Amount)).Concat(page.Consumables.Select(thing => (thing, (string?)null))));
            Steps(json, page, address);
            json.WriteEndObject();
        }

        return new HtmlString(Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length)));
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

    private static void Steps(Utf8JsonWriter json, GuidePage page, string? address)
    {
        // The page shows the two last phases under headings of their own; they come when the car is together and before the road.
        var apart = new[] { ("What to check before the first start", page.Checks), ("The first start", page.FirstStart) };
        var before = page.Work.TakeWhile(phase => phase.Id is not ("road-test" or "paper")).ToList();
        var sections = before.Select(phase => (phase.Title, phase.Tasks)).Concat(apart).Concat(page.Work.Skip(before.Count).Select(phase => (phase.Title, phase.Tasks)));
        json.WriteStartArray("step");
        foreach (var (title, tasks) in sections.Where(section => section.Item2.Count > 0))
        {
            json.WriteStartObject();
            json.WriteString("@type", "HowToSection");
            json.WriteString("name", title);
            json.WriteStartArray("itemListElement");
            foreach (var task in tasks)
            {
                json.WriteStartObject();
                json.WriteString("@type", "HowToStep");
                json.WriteString("name", task.Title);
                Address(json, "url", $"{address}#task-{task.Id}");
                json.WriteEndObject();
            }

            json.WriteEndArray();
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
