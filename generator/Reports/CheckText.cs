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

        if (finding.Touches is { } touches)
        {
            var all = proof.Resolution?.BuildableParts.Size ?? BigInteger.Zero;
            Detail("touches", $"{Grouped(touches)} of {Grouped(all)} buildable combinations{(finding.Region is { } region ? $": {region}" : "")}");
        }

        if (finding.Witness is { } witness)
        {
            var choices = witness.Choices.Where(choice => choice.Value != Knowledge.Choice.None).Select(choice => $"{choice.Key}={choice.Value}");
            Detail("seen in", string.Join(' ', choices.Prepend(witness.Donor).Prepend(witness.Chassis)));
        }

        if (finding.Mend is { } mend)
        {
            Detail("mend", mend);
        }

        console.WriteLine();
    }

    private void Quote(Place place, string? message)
    {
        Line($"  [grey]{Safe(Prefixed(place))}[/]{(message is null ? "" : $"  {Safe(message)}")}");
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
            Line("[yellow]The space of combinations was not examined: mend the files above first.[/]");
        }
        else
        {
            Line($"{Safe(proof.Base.Settings.Title)}: {Grouped(counts.ChassisVariants)} chassis and {Grouped(counts.DonorVariants)} donor variants, {Grouped(counts.Choices)} choices, {Grouped(counts.Positions)} positions, {Grouped(counts.Rules)} rules, {Grouped(counts.Connectors)} connectors.");
            Line($"{Grouped(counts.Combinations)} combinations, {Grouped(counts.Buildable)} of them buildable, in {Grouped(counts.Guides)} guides.");
            if (counts.Errors == 0)
            {
                Line($"[green]Every position that applies has exactly one answer in all {Grouped(counts.Buildable)} buildable combinations.[/]");
            }
        }

        Line($"{Plural(counts.Errors, "error")}, {Plural(counts.Warnings, "warning")}, {Plural(counts.Notes, "note")}{(counts.Accepted == 0 ? "" : $"; {Grouped(counts.Accepted)} accepted with a reason")}.");
    }

    private void Line(string markup) => console.MarkupLine(markup);

    private string Prefixed(Place place) => folder is "" or "." ? place.ToString() : $"{folder.TrimEnd('/')}/{place}";

    private static string Plural(int count, string noun) => Grouped(count) + (count == 1 ? $" {noun}" : $" {noun}s");

    private static string Grouped(BigInteger number) => number.ToString("N0", CultureInfo.InvariantCulture);

    private static string Safe(string text) => PlainText.Markup(text);
}
