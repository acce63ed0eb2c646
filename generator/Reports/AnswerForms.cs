using System.Buffers;
using System.Collections.Concurrent;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>What the reports say of each answer, made once for all the sheets in which it stands. For any number of workers.</summary>
public sealed class AnswerForms
{
    // Answers are of one base: the same is the same object.
    private readonly ConcurrentDictionary<StandingAnswer, byte[]> _members = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentDictionary<StandingAnswer, string> _rows = new(ReferenceEqualityComparer.Instance);

    /// <summary>The members of an answer's object from the value of the first, indented as in a whole sheet.</summary>
    internal ReadOnlySpan<byte> Members(SheetAnswer at) => _members.GetOrAdd(at.Standing[0], static (_, at) =>
    {
        // Written where a sheet has it, and cut out there.
        var buffer = new ArrayBufferWriter<byte>();
        JsonForm.Write(buffer, json => json.Objects("answers", [at], one => SheetJson.Everywhere(json, one)));
        var before = "\"position\": "u8;
        var after = "\n    }\n  ]\n}\n"u8;
        var start = buffer.WrittenSpan.IndexOf(before) + before.Length;
        return buffer.WrittenSpan[start..^after.Length].ToArray();
    }, at);

    /// <summary>The row of an answer in a table of answers.</summary>
    internal string Row(SheetAnswer at) => _rows.GetOrAdd(at.Standing[0], static (_, at) => SheetLines.Row(at), at);
}
