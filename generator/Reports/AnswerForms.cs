using System.Buffers;
using System.Collections.Concurrent;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>What the reports say of each answer, made once for all the sheets in which it stands. For any number of workers.</summary>
public sealed class AnswerForms
{
    // Where no two sheets say the same of an answer, what is kept is of no use.
    private const int Most = 20_000;

    // Answers are of one base: the same is the same object.
    private readonly ConcurrentDictionary<MadeFrom, byte[]> _objects = new();
    private readonly ConcurrentDictionary<StandingAnswer, string> _rows = new(ReferenceEqualityComparer.Instance);
    private int _count;

    /// <summary>What the sheets ask of the space alike.</summary>
    internal AlternativesMemory Memory { get; } = new();

    /// <summary>The object of an answer in the array of a whole sheet, with the white space before it.</summary>
    /// <param name="alternatives">Of the sheet.</param>
    internal ReadOnlySpan<byte> Object(SheetAnswer at, Alternatives alternatives)
    {
        var from = new MadeFrom([at.Standing[0], .. at.Overridden.Select(over => over.Rule), .. alternatives.GoesBy(at)]);
        if (_objects.TryGetValue(from, out var known))
        {
            return known;
        }

        // Written where a sheet has it, and cut out there.
        var buffer = new ArrayBufferWriter<byte>();
        JsonForm.Write(buffer, json => json.Objects("answers", [at], one => SheetJson.Answer(json, one, alternatives.At(one))));
        var before = "\"answers\": ["u8;
        var after = "\n  ]\n}\n"u8;
        var start = buffer.WrittenSpan.IndexOf(before) + before.Length;
        var made = buffer.WrittenSpan[start..^after.Length].ToArray();
        if (_count < Most && _objects.TryAdd(from, made))
        {
            Interlocked.Increment(ref _count);
        }

        return made;
    }

    /// <summary>The row of an answer in a table of answers.</summary>
    internal string Row(SheetAnswer at) => _rows.GetOrAdd(at.Standing[0], static (_, at) => SheetLines.Row(at), at);
}
