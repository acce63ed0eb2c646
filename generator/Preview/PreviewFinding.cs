using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Reports;
using Swapwright.Site.Rendering;
using Swapwright.Source;

namespace Swapwright.Preview;

/// <summary>A finding as the bar shows it.</summary>
/// <param name="Place">file:line:column as an editor opens it.</param>
/// <param name="Quote">The line that it points at, with marks below; empty where there is none.</param>
internal sealed record PreviewFinding(string Severity, string Id, string Message, string Place, string Quote, string Mend)
{
    // About what a telephone held upright shows of a fixed pitch; a longer line is cut around its mark.
    private const int MostOfALine = 100;

    public static PreviewFinding Of(Finding finding, string folder, SourceTree tree) => new(
        SeverityWords.Of(finding.Severity),
        finding.Id,
        finding.Message,
        $"{folder.TrimEnd('/')}/{finding.Place}",
        QuoteOf(finding.Place, tree),
        finding.Mend ?? "");

    public static PreviewFinding Of(TemplateException problem) =>
        new("error", "template", problem.Fault, string.Create(CultureInfo.InvariantCulture, $"{problem.File}:{problem.Line}:{problem.Column}"), "", "");

    private static string QuoteOf(Place place, SourceTree tree) =>
        tree.Find(place.File)?.Line(place.Line) is { Length: > 0 } line && QuotedLine.At(line, place, MostOfALine) is { } quote
            ? string.Create(CultureInfo.InvariantCulture, $"{place.Line,5} | {quote.Text}\n{"",5} | {new string(' ', quote.Before)}{new string('^', quote.Marks)}")
            : "";
}
