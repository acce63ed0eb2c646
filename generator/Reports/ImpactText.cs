using Spectre.Console;
using Swapwright.Impact;

namespace Swapwright.Reports;

/// <summary>An impact for a person at a terminal: what it comes to, then every change, set within the width of the window.</summary>
public sealed class ImpactText(IAnsiConsole console, KnowledgeImpact impact, ImpactNames names)
{
    // More than these of a kind are read in the JSON form.
    private const int MostItems = 200;
    private const int Indent = 2;
    private const int LabelWidth = 9;

    public void Write()
    {
        Line(0, "bold", "", ImpactSentence.Of(impact));
        Line(0, "", "", $"{names.Old} → {names.New}");
        foreach (var section in new ImpactSections(impact).All())
        {
            console.WriteLine();
            Line(0, "bold", section.Title, section.Summary.Length == 0 ? "" : $": {section.Summary}");
            foreach (var item in section.Items.Take(MostItems))
            {
                Line(Indent, "", "", item.Lead);
                foreach (var detail in item.Details.Where(detail => detail.Text.Length > 0))
                {
                    Line(Indent + 2, "grey", detail.Label.PadRight(LabelWidth), detail.Text);
                }
            }

            if (section.Items.Length > MostItems)
            {
                Line(Indent, "", "", $"and {CheckWords.Grouped(section.Items.Length - MostItems)} more, which `--as json` lists");
            }
        }
    }

    /// <summary>A line whose continuation stands under its own text, not under its label.</summary>
    private void Line(int indent, string style, string label, string text)
    {
        var hang = indent + (label.Length == LabelWidth ? LabelWidth : indent == 0 ? 0 : Indent);
        var first = new string(' ', indent) + (label.Length == 0 ? "" : $"[{style}]{PlainText.Markup(label)}[/]");
        var start = indent + label.Length;
        foreach (var part in Wrapped(PlainText.Tame(text), console.Profile.Width - start, console.Profile.Width - hang))
        {
            var shown = Markup.Escape(part);
            console.MarkupLine(first + (label.Length == 0 && style.Length > 0 ? $"[{style}]{shown}[/]" : shown));
            first = new string(' ', hang);
        }
    }

    private static IEnumerable<string> Wrapped(string text, int first, int next)
    {
        var room = first;
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.GetCellWidth() + 1 + word.GetCellWidth() > room)
            {
                yield return line;
                (line, room) = (word, next);
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        yield return line;
    }
}
