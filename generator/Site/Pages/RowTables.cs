using System.Globalization;
using System.Text;
using System.Text.Json;
using Swapwright.Sheets;

namespace Swapwright.Site.Pages;

/// <summary>
/// Texts, rows of texts and blocks of rows, each kept once and called by its number, so that what hundreds of combinations
/// share is written once. A row that stands on the guide's own page is not written at all: it is called by its place there.
/// </summary>
internal sealed class RowTables
{
    private readonly Table _texts = new();
    private readonly Table _rows = new();
    private readonly Dictionary<string[], int> _rowNumbers = new(new SameTexts());
    private readonly SortedDictionary<string, Block> _blocks = new(StringComparer.Ordinal);

    public IEnumerable<string> Blocks => _blocks.Where(block => block.Value.Contents.Entries.Count > 0).Select(block => block.Key);

    /// <summary>Rows that a block has on the page, in the order in which they stand there.</summary>
    public void Shown(string block, IEnumerable<string[]> rows)
    {
        foreach (var (row, at) in rows.Select((row, at) => (row, at)))
        {
            Of(block).Shown.TryAdd(row, at);
        }
    }

    /// <summary>The number of a block's content.</summary>
    /// <param name="source">What the rows are made from, all of it: where that is known already, they are not made again. Null where looking would cost more.</param>
    public int Number(string name, MadeFrom? source, Func<IEnumerable<string[]>> rows)
    {
        var block = Of(name);
        if (source is not null && block.Known.TryGetValue(source, out var number))
        {
            return number;
        }

        number = block.Contents.NumberOf(Numbers(rows().Select(row => block.Shown.TryGetValue(row, out var at) ? -1 - at : Row(row))));
        if (source is not null)
        {
            block.Known.Add(source, number);
        }

        return number;
    }

    private Block Of(string name)
    {
        if (!_blocks.TryGetValue(name, out var block))
        {
            _blocks.Add(name, block = new Block());
        }

        return block;
    }

    /// <summary><c>texts</c>; <c>rows</c>: numbers of texts; <c>blocks</c>: each content as numbers of rows, -1 - n for the nth row of the page.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartArray("texts");
        _texts.Entries.ForEach(json.WriteStringValue);
        json.WriteEndArray();
        Raw(json, "rows", _rows);
        json.WriteStartObject("blocks");
        foreach (var name in Blocks)
        {
            Raw(json, name, _blocks[name].Contents);
        }

        json.WriteEndObject();
    }

    /// <summary>The number of a row that is no block's own.</summary>
    public int Row(string[] texts)
    {
        if (!_rowNumbers.TryGetValue(texts, out var number))
        {
            _rowNumbers.Add(texts, number = _rows.NumberOf(Numbers(texts.Select(_texts.NumberOf))));
        }

        return number;
    }

    public static string Numbers(IEnumerable<int> numbers)
    {
        var text = new StringBuilder("[");
        foreach (var number in numbers)
        {
            text.Append(CultureInfo.InvariantCulture, $"{(text.Length > 1 ? "," : "")}{number}");
        }

        return text.Append(']').ToString();
    }

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

    private sealed class Block
    {
        public Table Contents { get; } = new();

        public Dictionary<string[], int> Shown { get; } = new(new SameTexts());

        public Dictionary<MadeFrom, int> Known { get; } = [];
    }

    private sealed class SameTexts : EqualityComparer<string[]>
    {
        public override bool Equals(string[]? x, string[]? y) => x.AsSpan().SequenceEqual(y);

        public override int GetHashCode(string[] texts)
        {
            var hash = default(HashCode);
            foreach (var text in texts)
            {
                hash.Add(text, StringComparer.Ordinal);
            }

            return hash.ToHashCode();
        }
    }
}
