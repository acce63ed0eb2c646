using System.Globalization;
using System.Numerics;
using System.Text;
using Spectre.Console;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Source;

namespace Swapwright.Reports;

/// <summary>The check for a person at a terminal: each finding with the lines it speaks of, then the sums.</summary>
public sealed class CheckText(IAnsiConsole console, Proof proof, string folder)
{
    // A quoted line is cut to what fits beside its number, but to no more and no less than these.
    private const int MostOfALine = 160;
    private const int LeastOfALine = 20;

    // Before a quoted line stand its number and a bar; before a detail its label.
    private const int Gutter = 10;
    private const int Indent = 11;

    private readonly BigInteger _buildable = proof.Resolution?.BuildableParts.Size ?? BigInteger.Zero;

    // A full line makes some terminals begin another.
    private int Width => console.Profile.Width - 1;

    public void Write()
    {
        foreach (var finding in proof.Findings)
        {
            Finding(finding);
        }

        Sums(Counts.Of(proof));
    }

    private void Finding(Finding finding)
    {
        var colour = finding.Severity switch
        {
            Severity.Error => "red",
            Severity.Warning => "yellow",
            _ => "blue",
        };
        var severity = SeverityWords.Of(finding.Severity);
        Wrapped($"[{colour} bold]{severity}[/] [bold]{Safe(finding.Id)}[/]  ", severity.Length + 1 + finding.Id.Length + 2, finding.Message, indent: 2);
        Quote(finding.Place, finding.Related.IsEmpty ? null : "here");
        foreach (var related in finding.Related)
        {
            Quote(related.Place, related.Message);
        }

        if (CheckWords.Extent(finding, _buildable) is { } extent)
        {
            Detail("touches", extent);
        }

        if (finding.Witness is { } witness)
        {
            Detail("seen in", CheckWords.Combination(witness));
        }

        if (finding.Mend is { } mend)
        {
            Detail("mend", mend);
        }

        console.WriteLine();
    }

    private void Quote(Place place, string? message)
    {
        var at = PlainText.Tame(CheckWords.At(place, folder));
        Wrapped($"  [grey]{Markup.Escape(at)}[/]{(message is null ? "" : "  ")}", at.GetCellWidth() + 4, message ?? "", indent: 4);
        if (proof.Tree.Find(place.File)?.Line(place.Line) is not { Length: > 0 } line
            || QuotedLine.At(line, place, Math.Clamp(Width - Gutter, LeastOfALine, MostOfALine)) is not { } quote)
        {
            return;
        }

        var number = place.Line.ToString(CultureInfo.InvariantCulture);
        Line($"  [grey]{number,5} |[/] {Markup.Escape(quote.Text)}");
        Line($"  [grey]{"",5} |[/] {new string(' ', quote.Before)}[cyan]{new string('^', quote.Marks)}[/]");
    }

    private void Detail(string label, string text) => Wrapped($"  [bold]{label,-8}[/] ", Indent, text, Indent);

    /// <summary>A line that goes on below its own beginning where the terminal is too narrow for it.</summary>
    /// <param name="head">Markup before the text, <paramref name="headWidth"/> cells wide.</param>
    private void Wrapped(string head, int headWidth, string text, int indent)
    {
        var line = new StringBuilder(head);
        var used = headWidth;
        var first = true;
        foreach (var word in PlainText.Tame(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var width = word.GetCellWidth();
            if (used + width + (first ? 0 : 1) > Width && used > indent)
            {
                Line(line.ToString().TrimEnd());
                line.Clear().Append(' ', indent);
                used = indent;
                first = true;
            }

            line.Append(first ? "" : " ").Append(Markup.Escape(word));
            used += width + (first ? 0 : 1);
            first = false;
        }

        Line(line.ToString());
    }

    private void Sums(Counts counts)
    {
        if (!counts.Proved)
        {
            Coloured("yellow", CheckWords.NotProved);
        }
        else
        {
            Wrapped("", 0, $"{proof.Base.Settings.Title}: {CheckWords.Inventory(counts)}.", indent: 0);
            Wrapped("", 0, CheckWords.Space(counts), indent: 0);
            if (counts.Errors == 0)
            {
                Coloured("green", CheckWords.Answers(counts));
            }
        }

        Wrapped("", 0, CheckWords.Tally(counts), indent: 0);
    }

    // The console wraps between words by itself; only what is set in has to be wrapped here.
    private void Coloured(string colour, string text) => Line($"[{colour}]{Markup.Escape(text)}[/]");

    private void Line(string markup) => console.MarkupLine(markup);

    private static string Safe(string text) => PlainText.Markup(text);
}
