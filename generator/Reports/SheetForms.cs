using System.Buffers;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>What the reports say of answers, of the work and of what it warns of, made once for all the sheets that have the same. For any number of workers.</summary>
public sealed class SheetForms
{
    private readonly KnownResults<byte[]> _answers = new(5_000);
    private readonly KnownResults<byte[]> _rows = new(5_000);

    // Of a long job they take some ten kilobytes each.
    private readonly KnownResults<byte[]> _members = new(500);
    private readonly KnownResults<string> _effortTables = new(500);

    /// <summary>What the sheets ask of the space alike.</summary>
    internal AlternativesMemory Memory { get; } = new();

    /// <summary>The object of an answer in the array of a whole sheet, with the white space before it.</summary>
    /// <param name="alternatives">Of the sheet.</param>
    internal ReadOnlySpan<byte> Object(SheetAnswer at, Alternatives alternatives) => _answers.Of(
        new MadeFrom([at.Standing[0], .. at.Overridden.Select(over => over.Rule), .. alternatives.GoesBy(at)]),
        () => JsonForm.Piece("answers", json => json.Objects("answers", [at], one => SheetJson.Answer(json, one, alternatives.At(one))))["[".Length..^"\n  ]".Length]);

    /// <summary>The row of an answer in a table of answers.</summary>
    internal ReadOnlySpan<byte> Row(SheetAnswer at) => _rows.Of(new MadeFrom([at.Standing[0]]), () => Encoding.UTF8.GetBytes(SheetLines.Row(at)));

    /// <summary>The value of a member of a whole sheet.</summary>
    /// <param name="from">All that it goes by.</param>
    internal ReadOnlySpan<byte> Member(string name, object?[] from, Action<Utf8JsonWriter> write) => _members.Of(new MadeFrom([name, .. from]), () => JsonForm.Piece(name, write));

    /// <summary>The effort as a table.</summary>
    internal string EffortTable(Sheet sheet, string currency) => _effortTables.Of(new MadeFrom(EffortFrom(sheet)), () => SheetWork.Csv(sheet, currency));

    /// <summary>All that the effort of a sheet goes by: sheets of the same work have the same tasks, and those of the same shopping the same lines.</summary>
    internal static object?[] EffortFrom(Sheet sheet) => [ImmutableCollectionsMarshal.AsArray(sheet.Tasks), ImmutableCollectionsMarshal.AsArray(sheet.Shopping), .. sheet.Tools];
}
