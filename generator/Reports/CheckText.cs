using System.Globalization;
using System.Numerics;
using Spectre.Console;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Source;

namespace Swapwright.Reports;

/// <summary>The check for a person at a terminal: each finding with the lines it speaks of, then the sums.</summary>
public sealed class CheckText(IAnsiConsole console, Proof proof, string folder)
{
    // Beyond this a quoted line is cut; the column still tells where to look.
    private const int MostOfALine = 160;

    private readonly BigInteger _buildable = proof.Resolution?.BuildableParts.Size ?? BigInteger.Zero;

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
        Line($"[{colour} bold]{SeverityWords.Of(finding.Severity)}[/] [bold]{Safe(finding.Id)}[/]  {Safe(finding.Message)}");
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
        Line($"  [grey]{Safe(CheckWords.At(place, folder))}[/]{(message is null ? "" : $"  {Safe(message)}")}");
        if (proof.Tree.Find(place.File)?.Line(place.Line) is not { Length: > 0 } line || place.Column > MostOfALine)
        {
            return;
        }

        var shown = line.Length > MostOfALine ? line[..MostOfALine] + "…" : line;
        var end = place.EndLine == place.Line ? Math.Max(place.EndColumn, place.Column + 1) : line.TrimEnd().Length + 1;
        var marks = Math.Clamp(Math.Min(end, MostOfALine) - place.Column, 1, MostOfALine);
        var number = place.Line.ToString(CultureInfo.InvariantCulture);
        Line($"  [grey]{number,5} |[/] {Safe(shown)}");
        Line($"  [grey]{"",5} |[/] {new string(' ', Math.Max(0, place.Column - 1))}[cyan]{new string('^', marks)}[/]");
    }

    private void Detail(string label, string text) => Line($"  [bold]{label,-8}[/] {Safe(text)}");

    private void Sums(Counts counts)
    {
        if (!counts.Proved)
        {
            Line($"[yellow]{CheckWords.NotProved}[/]");
        }
        else
        {
            Line(Safe($"{proof.Base.Settings.Title}: {CheckWords.Inventory(counts)}."));
            Line(CheckWords.Space(counts));
            if (counts.Errors == 0)
            {
                Line($"[green]{CheckWords.Answers(counts)}[/]");
            }
        }

        Line(CheckWords.Tally(counts));
    }

    private void Line(string markup) => console.MarkupLine(markup);

    private static string Safe(string text) => PlainText.Markup(text);
}
