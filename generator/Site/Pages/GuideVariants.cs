using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>
/// What a guide says for every combination that it covers, as a script that only sets one value: the switches of the guide
/// fetch it when they are first used. Each block (hours, belts, work …) is written once for all combinations that share it,
/// and a combination names its blocks by number.
/// </summary>
/// <remarks>
/// <c>choices</c>: ids in the order of a key. <c>combinations</c>: options joined by commas → <c>{lines, BLOCK: number}</c>;
/// <c>lines</c> says for each of <c>positions</c> which of its lines holds: 0 the recommended one, n its nth other, -1 none.
/// <c>rules</c>: position → rule of each line. <c>others</c>: the lines in full, by anchor.
/// </remarks>
internal sealed class GuideVariants(SiteKnowledge site, GuideEntry guide)
{
    // As for structured data: no character can end the text or the script.
    private static readonly JsonWriterOptions s_options = new() { Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    private readonly SortedDictionary<string, Block> _blocks = new(StringComparer.Ordinal);

    private readonly SheetMemory _memory = new();
    private readonly Dictionary<string, string> _inline = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Block, object Source), int> _numbers = [];

    public static string Path(GuideEntry guide) => System.IO.Path.ChangeExtension(SitePaths.Bench(guide.Path, "choices"), "js");

    public SiteFile File() => new(Path(guide), Encoding.UTF8.GetBytes($"globalThis.swapwrightChoices = {Json()};\n"));

    private string Json()
    {
        List<string> choices;
        List<int[]> combinations;
        ImmutableArray<VariantPosition> positions;
        lock (site.Store)
        {
            choices = [.. new GuideChoices(site, guide).Choices().Select(choice => choice.Id)];
            combinations = [.. Combinations(guide.Headline.Slice, choices.Select(site.Resolution.Space.LevelOf).ToArray())];
            positions = new GuideSystems(site, guide).Variable();
        }

        return Written(json =>
        {
            Texts(json, "choices", choices);
            json.WriteString("recommended", Key(guide.Recommended.AsSpan(), choices));
            Texts(json, "positions", positions.Select(position => position.Id));
            json.WriteStartObject("rules");
            foreach (var position in positions)
            {
                Texts(json, position.Id, position.Lines.Select(line => line.Rule));
            }

            json.WriteEndObject();
            json.WriteStartObject("combinations");
            foreach (var values in combinations)
            {
                json.WriteStartObject(Key(values, choices));
                Combination(json, values, positions);
                json.WriteEndObject();
            }

            json.WriteEndObject();
            json.WriteStartObject("blocks");
            foreach (var (name, block) in _blocks)
            {
                json.WriteStartArray(name);
                block.Texts.ForEach(text => json.WriteRawValue(text, skipInputValidation: true));
                json.WriteEndArray();
            }

            json.WriteEndObject();
            json.WriteStartObject("others");
            foreach (var line in positions.SelectMany(position => position.Lines).Where(line => line.Anchor.Length > 0))
            {
                Line(json, line);
            }

            json.WriteEndObject();
        });
    }

    private IEnumerable<int[]> Combinations(Region region, ReadOnlyMemory<int> levels)
    {
        if (levels.IsEmpty)
        {
            yield return site.Store.Witness(region);
            yield break;
        }

        var level = levels.Span[0];
        foreach (var value in site.Store.AllowedValues(region, level))
        {
            var part = site.Store.And(region, site.Store.Where(level, ValueSet.Of(site.Store.Variables[level].Size, value)));
            foreach (var found in Combinations(part, levels[1..]))
            {
                yield return found;
            }
        }
    }

    private string Key(ReadOnlySpan<int> values, List<string> choices)
    {
        var options = new List<string>();
        foreach (var choice in choices)
        {
            options.Add(site.Resolution.Space.OptionOf(values, choice));
        }

        return string.Join(',', options);
    }

    private void Combination(Utf8JsonWriter json, int[] values, ImmutableArray<VariantPosition> positions)
    {
        var sheet = site.Sheets.Build(values, _memory);
        json.WriteStartArray("lines");
        foreach (var position in positions)
        {
            var rule = sheet.At(position.Id)?.Rule?.Id;
            json.WriteNumberValue(rule is null ? -1 : position.Lines.First(line => line.Rule == rule).Number);
        }

        json.WriteEndArray();
        var work = new GuideWork(site, sheet, guide.Path, SitePaths.Bench(guide.Path, BenchSheets.Work));
        var summary = GuidePages.Summary(site, sheet, guide, values.AsSpan().SequenceEqual(guide.Recommended.AsSpan()) ? "the recommended choices" : "these choices");
        Share(json, "verdict", [summary.Verdict, ClassWord.Of(summary.VerdictWeight)]);
        Share(json, "work", Range(summary.Hours!));
        Share(json, "parts", Range(summary.Money!));
        Share(json, "skill", [summary.Skill, summary.People]);
        Share(json, "days", [summary.Figures[0].Value, summary.Figures[0].Detail ?? ""]);
        Share(json, "notes", [summary.BasedOn, summary.MoneyNote]);
        Share(json, "positions", summary.Positions.Select(item => new[] { ClassWord.Of(item.Verb), item.Words, Number(item.Count) }));
        Share(json, "plugs", sheet.Wiring, () => summary.Plugs.Select(item => new[] { item.Name, Number(item.Count) }));
        Share(json, "belts", sheet.Belts, () => GuideBelts.Of(sheet).Select(belt => new[] { belt.Title, belt.Designation, belt.Words, belt.Trim, belt.Drawing.ToString() }));
        Share(json, "wiring", sheet.Wiring, () => (GuideWirings.Of(site, sheet)?.Plugs ?? []).Select(plug => new[] { plug.Title, plug.Action, plug.Detail }));
        Share(json, "hoses", sheet.Hoses, () => GuideHoses.Sums(sheet).Select(sum => new[] { sum.Circuit, sum.Words }));
        Share(json, "ecu", sheet.Ecu is { } ecu ? [ecu.Title, site.Block(ecu.About, guide.Path).ToString()] : ["", ""]);
        Share(json, "shopping", work.Sums("").Select(sum => new[] { sum.Source.Text, sum.Count, sum.Total }));
        Share(json, "tasks", sheet.Effort.Times, () => work.Lines().SelectMany(phase => phase.Tasks.Select(task => new[] { phase.Phase.Text, task.Task.Text, task.Task.Href, task.Hours })));
        Share(json, "mistakes", SheetTexts.Mistakes(sheet).Where(mistake => mistake.Position is null).Select(mistake => new[] { Inline(mistake.Text) }));
        Share(json, "cautions", SheetTexts.Cautions(sheet, site.Base).Select(caution => new[] { ShopWords.CautionAbout(caution.Caution.About), Inline(caution.Caution.Text) }));
        foreach (var id in sheet.Ledgers.Select(ledger => ledger.Id).Where(id => id != "torques"))
        {
            Share(json, $"figures-{id}", sheet.Ledger(id), () => GuideLedgers.Short(sheet, id, "").SelectMany(ledger => ledger.Figures.Select(figure => new[] { figure.Name, figure.Value, figure.Detail ?? "", ClassWord.Of(figure.Weight) }).Append([ledger.Within])));
        }
    }

    private string Inline(string text)
    {
        if (!_inline.TryGetValue(text, out var html))
        {
            _inline.Add(text, html = site.Inline(text, guide.Path).ToString());
        }

        return html;
    }

    private static string[] Range(RangeText range) => [range.Likely, $"{range.Least} at least, {range.Most} at most"];

    private static void Line(Utf8JsonWriter json, VariantLine line)
    {
        var told = line.Told!;
        json.WriteStartObject(line.Anchor);
        json.WriteString("verb", ClassWord.Of(told.Verb));
        json.WriteString("verbWord", VerbWord.Of(told.Verb));
        json.WriteString("words", told.VerbText);
        Rows(json, "parts", told.Parts.Select(part => new[] { part.Part.Text, part.Price ?? "" }));
        Rows(json, "cautions", told.Cautions.Select(caution => new[] { caution.About, caution.Text.ToString() }));
        Texts(json, "steps", told.Steps.Select(step => step.ToString()));
        json.WriteString("notes", told.Notes.ToString());
        Texts(json, "mistakes", told.Mistakes.Select(mistake => mistake.ToString()));
        Rows(json, "read", told.Articles.Select(article => new[] { article.Text, article.Href }));
        json.WriteString("standing", ClassWord.Of(told.Reason.Standing));
        json.WriteString("standingWords", told.Reason.StandingText);
        json.WriteString("because", told.Reason.Because.ToString());
        json.WriteString("rule", line.Rule);
        json.WriteString("checked", told.Reason.Checked ?? "");
        Rows(json, "sources", line.Sources.Select(source => new[] { source.Title, SitePaths.Source(source.Id) }));
        json.WriteEndObject();
    }

    // Combinations that share a worksheet share what is written of it, without writing it again to find out.
    private void Share(Utf8JsonWriter json, string name, object? source, Func<IEnumerable<string[]>> rows)
    {
        if (source is null || !_numbers.TryGetValue((name, source), out var number))
        {
            number = Share(json, name, rows());
            if (source is not null)
            {
                _numbers.Add((name, source), number);
            }
        }
        else
        {
            json.WriteNumber(name, number);
        }
    }

    private void Share(Utf8JsonWriter json, string name, params string[] texts) => Share(json, name, part => All(part, texts));

    private int Share(Utf8JsonWriter json, string name, IEnumerable<string[]> rows) => Share(json, name, part =>
    {
        part.WriteStartArray();
        foreach (var row in rows)
        {
            All(part, row);
        }

        part.WriteEndArray();
    });

    private int Share(Utf8JsonWriter json, string name, Action<Utf8JsonWriter> write)
    {
        if (!_blocks.TryGetValue(name, out var block))
        {
            _blocks.Add(name, block = new Block([], new Dictionary<string, int>(StringComparer.Ordinal)));
        }

        using var stream = new MemoryStream();
        using (var part = new Utf8JsonWriter(stream, s_options))
        {
            write(part);
        }

        var number = block.NumberOf(Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length)));
        json.WriteNumber(name, number);
        return number;
    }

    private static void All(Utf8JsonWriter json, IEnumerable<string> texts)
    {
        json.WriteStartArray();
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WritePropertyName(name);
        All(json, texts);
    }

    private static void Rows(Utf8JsonWriter json, string name, IEnumerable<string[]> rows)
    {
        json.WriteStartArray(name);
        foreach (var row in rows)
        {
            All(json, row);
        }

        json.WriteEndArray();
    }

    private static string Written(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, s_options))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer().AsSpan(0, (int)stream.Length));
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>The different texts of one block, each with its number.</summary>
    private sealed record Block(List<string> Texts, Dictionary<string, int> Numbers)
    {
        public int NumberOf(string text)
        {
            if (!Numbers.TryGetValue(text, out var number))
            {
                number = Texts.Count;
                Numbers.Add(text, number);
                Texts.Add(text);
            }

            return number;
        }
    }
}

/// <summary>A position at which the choices of a guide make a difference.</summary>
internal sealed record VariantPosition(string Id, ImmutableArray<VariantLine> Lines);

/// <summary>A line of such a position.</summary>
/// <param name="Number">0 the recommended one, n the nth other.</param>
/// <param name="Anchor">Of another line, on the sheet that tells it; empty for the recommended one, which the page has.</param>
internal sealed record VariantLine(string Rule, int Number, string Anchor, GuideLine? Told, ImmutableArray<SourceEntry> Sources);
