using System.Buffers;
using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>What the reports say of answers and of the work, made once for all the sheets that have the same. For any number of workers.</summary>
public sealed class SheetForms
{
    private readonly KnownResults<byte[]> _answers = new(20_000);
    private readonly KnownResults<string> _rows = new(20_000);

    // Of a long job they take some ten kilobytes each.
    private readonly KnownResults<byte[]> _efforts = new(1_000);
    private readonly KnownResults<string> _effortTables = new(1_000);

    /// <summary>What the sheets ask of the space alike.</summary>
    internal AlternativesMemory Memory { get; } = new();

    /// <summary>The object of an answer in the array of a whole sheet, with the white space before it.</summary>
    /// <param name="alternatives">Of the sheet.</param>
    internal ReadOnlySpan<byte> Object(SheetAnswer at, Alternatives alternatives) => _answers.Of(
        new MadeFrom([at.Standing[0], .. at.Overridden.Select(over => over.Rule), .. alternatives.GoesBy(at)]),
        () => JsonForm.Piece("answers", json => json.Objects("answers", [at], one => SheetJson.Answer(json, one, alternatives.At(one))))["[".Length..^"\n  ]".Length]);

    /// <summary>The row of an answer in a table of answers.</summary>
    internal string Row(SheetAnswer at) => _rows.Of(new MadeFrom([at.Standing[0]]), () => SheetLines.Row(at));

    /// <summary>The object of the effort in a whole sheet.</summary>
    internal ReadOnlySpan<byte> Effort(Sheet sheet, string currency) => _efforts.Of(
        WorkOf(sheet), () => JsonForm.Piece("effort", json => json.Object("effort", () => SheetWork.Write(json, sheet, currency))));

    /// <summary>The effort as a table.</summary>
    internal string EffortTable(Sheet sheet, string currency) => _effortTables.Of(WorkOf(sheet), () => SheetWork.Csv(sheet, currency));

    // Sheets of the same work have the same tasks, and those of the same shopping the same lines; hours and money go by these.
    private static MadeFrom WorkOf(Sheet sheet) => new([ImmutableCollectionsMarshal.AsArray(sheet.Tasks), ImmutableCollectionsMarshal.AsArray(sheet.Shopping), .. sheet.Tools]);
}
