using System.Globalization;
using System.Text.Json;

namespace Swapwright.Site.Pages;

/// <summary>
/// Texts, rows of texts and blocks of rows, each kept once and called by its number, so that what hundreds of combinations
/// share is written once. A row that stands on the guide's own page is not written at all: it is called by its place there.
/// </summary>
internal sealed class RowTables
{
    private readonly Table _texts = new();
    private readonly Table _rows = new();
    private readonly SortedDictionary<string, Table> _blocks = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Block, string Row), int> _shown = [];
    private readonly Dictionary<(string Block, object Source), int> _known = [];

    public IEnumerable<string> Blocks => _blocks.Keys;

    /// <summary>Rows that a block has on the page, in the order in which they stand there.</summary>
    public void Shown(string block, IEnumerable<string[]> rows)
    {
        foreach (var (row, at) in rows.Select((row, at) => (row, at)))
        {
            _shown.TryAdd((block, Key(row)), at);
        }
    }

    /// <summary>The number of a block's content.</summary>
    /// <param name="source">What the rows are made from: where that is known already, they are not made again.</param>
    public int Number(string block, object? source, Func<IEnumerable<string[]>> rows)
    {
        if (source is not null && _known.TryGetValue((block, source), out var number))
        {
            return number;
        }

        if (!_blocks.TryGetValue(block, out var table))
        {
            _blocks.Add(block, table = new Table());
        }

        number = table.NumberOf(Numbers(rows().Select(row => _shown.TryGetValue((block, Key(row)), out var at) ? -1 - at : Row(row))));
        if (source is not null)
        {
            _known.Add((block, source), number);
        }

        return number;
    }

    /// <summary><c>texts</c>; <c>rows</c>: numbers of texts; <c>blocks</c>: each content as numbers of rows, -1 - n for the nth row of the page.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartArray("texts");
        _texts.Entries.ForEach(json.WriteStringValue);
        json.WriteEndArray();
        Raw(json, "rows", _rows);
        json.WriteStartObject("blocks");
        foreach (var (name, block) in _blocks)
        {
            Raw(json, name, block);
        }

        json.WriteEndObject();
    }

    /// <summary>The number of a row that is no block's own.</summary>
    public int Row(IEnumerable<string> texts) => _rows.NumberOf(Numbers(texts.Select(_texts.NumberOf)));

    public static string Numbers(IEnumerable<int> numbers) => $"[{string.Join(',', numbers.Select(number => number.ToString(CultureInfo.InvariantCulture)))}]";

    private static string Key(string[] row) => string.Join('\u001f', row);

    private static void Raw(Utf8JsonWriter json, string name, Table table)
    {
        json.WriteStartArray(name);
        table.Entries.ForEach(entry => json.WriteRawValue(entry, skipInputValidation: true));
        json.WriteEndArray();
    }

    /// <summary>Different entries in the order in which they came, each with its number.</summary>
    internal sealed class Table
    {
        private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

        public List<string> Entries { get; } = [];

        public int NumberOf(string entry)
        {
            if (!_numbers.TryGetValue(entry, out var number))
            {
                _numbers.Add(entry, number = Entries.Count);
                Entries.Add(entry);
            }

            return number;
        }
    }
}
