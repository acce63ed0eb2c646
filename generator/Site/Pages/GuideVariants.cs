using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
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
/// fetch it when they are first used.
/// </summary>
/// <remarks>
/// <c>choices</c> and <c>options</c>: ids, the options by choice. <c>combinations</c>: the number of each choice's option, of its
/// <c>lines</c>, and of its content of each block of <c>names</c> (-1: it has none); <c>recommended</c> says which is the page's own.
/// <c>lines</c>: for each of <c>positions</c> which of its lines holds: 0 the recommended one, n its nth other, -1 none.
/// <c>rules</c>: position → rule of each line by that number. <c>others</c>: the lines in full, by anchor. The rest: <see cref="RowTables"/>.
/// </remarks>
internal sealed class GuideVariants(SiteKnowledge site, GuideEntry guide)
{
    // As for structured data: no character can end the text or the script.
    private static readonly JsonWriterOptions s_options = new() { Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    private readonly RowTables _tables = new();
    private readonly RowTables.Table _lines = new();
    private readonly Dictionary<string, string> _inline = new(StringComparer.Ordinal);

    public static string Path(GuideEntry guide) => System.IO.Path.ChangeExtension(SitePaths.Bench(guide.Path, "choices"), "js");

    public SiteFile File() => new(Path(guide), Encoding.UTF8.GetBytes($"globalThis.swapwrightChoices = {Json()};\n"));

    private string Json()
    {
        List<Choice> choices;
        List<int[]> combinations;
        ImmutableArray<VariantPosition> positions;
        lock (site.Store)
        {
            var conditions = GuideConditions.Within(site, guide);
            choices = [.. new GuideChoices(site, guide, conditions).Choices().Select(choice => site.Base.Choices[choice.Id])];
            combinations = [.. Combinations(guide.Headline.Slice, choices.Select(choice => site.Resolution.Space.LevelOf(choice.Id)).ToArray())];
            positions = new GuideSystems(site, guide, conditions).Variable();
        }

        var memory = site.Sheets.Remember(guide.Recommended.AsSpan());
        var recommended = site.Sheets.Build(guide.Recommended.AsSpan(), memory);
        foreach (var (name, rows) in OnPage(recommended))
        {
            _tables.Shown(name, rows());
        }

        var told = combinations.ConvertAll(values => Combination(values, site.Sheets.Build(values, memory), recommended, positions));
        site.Sheets.LetGo(guide.Recommended.AsSpan(), memory);
        var options = choices.ConvertAll(choice => choice.Options.Select(option => option.Id).Append(Choice.None).ToList());
        return Written(json =>
        {
            Texts(json, "choices", choices.Select(choice => choice.Id));
            json.WriteStartArray("options");
            options.ForEach(ids => All(json, ids));
            json.WriteEndArray();
            json.WriteNumber("recommended", combinations.FindIndex(values => choices.TrueForAll(choice => OptionOf(values, choice) == OptionOf(guide.Recommended.AsSpan(), choice))));
            Texts(json, "positions", positions.Select(position => position.Id));
            json.WriteStartObject("rules");
            foreach (var position in positions)
            {
                Texts(json, position.Id, Enumerable.Range(0, position.Lines.Max(line => line.Number) + 1).Select(number => position.Lines.FirstOrDefault(line => line.Number == number)?.Rule ?? ""));
            }

            json.WriteEndObject();
            json.WriteStartArray("lines");
            _lines.Entries.ForEach(entry => json.WriteRawValue(entry, skipInputValidation: true));
            json.WriteEndArray();
            json.WriteStartObject("others");
            foreach (var line in positions.SelectMany(position => position.Lines).Where(line => line.Anchor.Length > 0))
            {
                Line(json, line);
            }

            json.WriteEndObject();
            Texts(json, "names", _tables.Blocks);
            json.WriteStartArray("combinations");
            foreach (var (values, (lines, blocks)) in combinations.Zip(told))
            {
                json.WriteRawValue(
                    RowTables.Numbers(choices.Select((choice, at) => options[at].IndexOf(OptionOf(values, choice))).Append(lines).Concat(_tables.Blocks.Select(name => blocks.GetValueOrDefault(name, -1)))),
                    skipInputValidation: true);
            }

            json.WriteEndArray();
            _tables.Write(json);
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

    private string OptionOf(ReadOnlySpan<int> values, Choice choice) => site.Resolution.Space.OptionOf(values, choice.Id);

    private (int Lines, Dictionary<string, int> Blocks) Combination(int[] values, Sheet sheet, Sheet recommended, ImmutableArray<VariantPosition> positions)
    {
        var rules = sheet.Answers.ToDictionary(answer => answer.Position.Id, answer => answer.Rule?.Id, StringComparer.Ordinal);
        var lines = positions.Select(position => rules.GetValueOrDefault(position.Id) is { } rule ? position.Lines.First(line => line.Rule == rule).Number : -1);
        var summary = GuidePages.Summary(site, sheet, guide, values.AsSpan().SequenceEqual(guide.Recommended.AsSpan()) ? "the recommended choices" : "these choices");
        var blocks = new Dictionary<string, int>(StringComparer.Ordinal);
        void Share(string name, MadeFrom? source, Func<IEnumerable<string[]>> rows) => blocks.Add(name, _tables.Number(name, source, rows));
        void One(string name, params string[] row) => Share(name, null, () => [row]);

        One("verdict", summary.Verdict, ClassWord.Of(summary.VerdictWeight));
        One("work", Range(summary.Hours!));
        One("parts", Range(summary.Money!));
        One("skill", summary.Skill, summary.People);
        One("days", summary.Figures[0].Value, summary.Figures[0].Detail ?? "");
        One("sheets", [.. BenchSheets.Same(sheet, recommended)]);
        Share("notes", null, () => [Pieces(summary.BasedOn), Pieces(summary.MoneyNote)]);
        Share("positions", null, () => summary.Positions.Select(item => new[] { ClassWord.Of(item.Verb), item.Words, Number(item.Count) }));
        Share("plugs", new MadeFrom([sheet.Wiring]), () => summary.Plugs.Select(item => new[] { item.Name, Number(item.Count) }));
        Share("belts", Array(sheet.Belts), () => GuideBelts.Of(sheet).Select(belt => new[] { belt.Title, belt.Designation, belt.Words, belt.Trim }));
        Share("hoses", new MadeFrom([sheet.Hoses]), () => GuideHoses.Sums(sheet).Select(sum => new[] { sum.Circuit, sum.Words }));
        Share("ecu", new MadeFrom([sheet.Ecu]), () => sheet.Ecu is { } ecu ? [[ecu.Title, site.Block(ecu.About, guide.Path).ToString()]] : []);
        Share("shopping", null, () => Work(sheet).Sums("").Select(sum => new[] { sum.Source.Text, sum.Count, sum.Total }));
        foreach (var (name, rows) in OnPage(sheet))
        {
            Share(name, name switch { "drawings" => Array(sheet.Belts), "wiring" => new MadeFrom([sheet.Wiring]), "tasks" => Array(sheet.Tasks), "mistakes" => new MadeFrom(SheetTexts.MistakesFrom(sheet)), _ => new MadeFrom(SheetTexts.PlacedFrom(sheet)) }, rows);
        }

        foreach (var id in sheet.Ledgers.Select(ledger => ledger.Id).Where(id => id != "torques"))
        {
            Share($"figures-{id}", new MadeFrom([sheet.Ledger(id)]), () => GuideLedgers.Short(sheet, id, "").SelectMany(ledger => ledger.Figures.Select(figure => new[] { figure.Name, figure.Value, figure.Detail ?? "", ClassWord.Of(figure.Weight) }).Append([ledger.Within])));
        }

        return (_lines.NumberOf(RowTables.Numbers(lines)), blocks);
    }

    // The long blocks, row by row as they stand on the page.
    private IEnumerable<(string Name, Func<IEnumerable<string[]>> Rows)> OnPage(Sheet sheet) =>
    [
        ("drawings", () => GuideBelts.Of(sheet).Select(belt => new[] { belt.Drawing.ToString() })),
        ("wiring", () => (GuideWirings.Of(site, sheet)?.Plugs ?? []).Select(plug => new[] { plug.Title, plug.Action, plug.Detail })),
        ("tasks", () => Work(sheet).Lines().SelectMany(phase => phase.Tasks.Select(task => new[] { phase.Phase.Text, task.Task.Text, task.Task.Href, task.Hours }))),
        ("mistakes", () => SheetTexts.Mistakes(sheet).Where(mistake => mistake.Position is null).Select(mistake => new[] { Inline(mistake.Text) })),
        ("cautions", () => GuideCautions.Of(site, sheet, Inline).SelectMany(group => group.Whole.Select(text => new[] { group.About, text.ToString(), "" })
            .Concat(group.Placed.Select(one => new[] { group.About, one.Text.ToString(), one.Where })))),
    ];

    // Combinations of a guide share what was worked out for them, so the same array has the same in it.
    private static MadeFrom Array<T>(ImmutableArray<T> shared)
        where T : class => new([ImmutableCollectionsMarshal.AsArray(shared)]);

    private GuideWork Work(Sheet sheet) => new(site, sheet, guide.Path, SitePaths.Bench(guide.Path, BenchSheets.Work));

    // Sentences of two combinations differ in a few words: cut where a clause ends, what is the same is kept once.
    private static string[] Pieces(string text)
    {
        var pieces = new List<string>();
        var from = 0;
        for (var at = 1; at < text.Length; at++)
        {
            if (text[at - 1] == ' ' && at - 2 > from && text[at - 2] is ';' or ':' or ',' or '.')
            {
                pieces.Add(text[from..at]);
                from = at;
            }
        }

        return [.. pieces, text[from..]];
    }

    private string Inline(string text)
    {
        if (!_inline.TryGetValue(text, out var html))
        {
            _inline.Add(text, html = site.Inline(text, guide.Path).ToString());
        }

        return html;
    }

    private static string[] Range(RangeText range) => [range.Likely, $"on average, {range.Least}–{range.Most}"];

    private void Line(Utf8JsonWriter json, VariantLine line)
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

    /// <summary>Rows by their numbers.</summary>
    private void Rows(Utf8JsonWriter json, string name, IEnumerable<string[]> rows)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(RowTables.Numbers(rows.Select(_tables.Row)), skipInputValidation: true);
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
}

/// <summary>A position at which the choices of a guide make a difference.</summary>
internal sealed record VariantPosition(string Id, ImmutableArray<VariantLine> Lines);

/// <summary>A line of such a position.</summary>
/// <param name="Number">0 the recommended one, n the nth other. A position that the recommended choices leave out has none of number 0.</param>
/// <param name="Anchor">Of another line, on the sheet that tells it; empty for the recommended one, which the page has.</param>
internal sealed record VariantLine(string Rule, int Number, string Anchor, GuideLine? Told, ImmutableArray<SourceEntry> Sources);
