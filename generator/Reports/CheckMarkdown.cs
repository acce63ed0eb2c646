using System.Collections.Immutable;
using System.Numerics;
using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Reports;

/// <summary>The check as a comment on a proposed change: the sums, then the findings by severity, the many folded away.</summary>
/// <param name="folder">Path of the knowledge base from where the comment is read, put before every file.</param>
public sealed class CheckMarkdown(Proof proof, string folder)
{
    // More than these of one severity are folded: a comment is read from its top.
    private const int Open = 20;

    // Code hosts refuse long comments; the common limit is 65,536 characters (from memory).
    private const int MostCharacters = 60_000;

    private readonly StringBuilder _text = new();
    private readonly BigInteger _buildable = proof.Resolution?.BuildableParts.Size ?? BigInteger.Zero;

    public string Write()
    {
        var counts = Counts.Of(proof);
        _text.Append("## ").Append(MarkdownForm.Escape(proof.Base.Settings.Title)).Append("\n\n");
        _text.Append("**").Append(CheckWords.Tally(counts)).Append("**\n\n");
        if (counts.Proved)
        {
            _text.Append(CheckWords.Inventory(counts)).Append(". ").Append(CheckWords.Space(counts)).Append('\n');
            _text.Append(counts.Errors == 0 ? $"\n{CheckWords.Answers(counts)}\n" : "");
        }
        else
        {
            _text.Append(CheckWords.NotProved).Append('\n');
        }

        foreach (var group in proof.Findings.GroupBy(finding => finding.Severity).OrderByDescending(group => group.Key))
        {
            Group(SeverityWords.Of(group.Key), [.. group]);
        }

        return _text.ToString();
    }

    private void Group(string severity, ImmutableArray<Finding> findings)
    {
        _text.Append("\n### ").Append(CheckWords.Many(findings.Length, severity)).Append("\n\n");
        var shown = Items(findings.Take(Open));
        if (shown < Math.Min(Open, findings.Length) || findings.Length <= Open)
        {
            Unlisted(findings.Length - shown);
            return;
        }

        _text.Append("\n<details>\n<summary>").Append(CheckWords.Many(findings.Length - Open, "more " + severity)).Append("</summary>\n\n");
        shown += Items(findings.Skip(Open));
        Unlisted(findings.Length - shown);
        _text.Append("\n</details>\n");
    }

    /// <summary>Writes findings as long as there is room.</summary>
    /// <returns>How many were written.</returns>
    private int Items(IEnumerable<Finding> findings)
    {
        var written = 0;
        foreach (var item in findings.Select(Item).TakeWhile(item => _text.Length + item.Length <= MostCharacters))
        {
            _text.Append(item);
            written++;
        }

        return written;
    }

    private void Unlisted(int count) =>
        _text.Append(count == 0 ? "" : $"\n{CheckWords.Many(count, "finding")} more than a comment can hold: `swapwright check` lists every one.\n");

    private string Item(Finding finding)
    {
        var item = new StringBuilder();
        void Line(string label, string? text)
        {
            if (text is { Length: > 0 })
            {
                item.Append("  - ").Append(label).Append(text).Append('\n');
            }
        }

        item.Append("- **").Append(finding.Id).Append("** ").Append(MarkdownForm.Sentence(finding.Message)).Append("  \n  ").Append(Place(finding.Place)).Append('\n');
        foreach (var related in finding.Related)
        {
            Line("", $"{Place(related.Place)} {MarkdownForm.Sentence(related.Message)}");
        }

        Line("Touches ", CheckWords.Extent(finding, _buildable) is { } extent ? MarkdownForm.Sentence(extent) : null);
        Line("Seen in ", finding.Witness is { } witness ? MarkdownForm.Code(CheckWords.Combination(witness)) : null);
        Line("Mend: ", finding.Mend is { } mend ? MarkdownForm.Sentence(mend) : null);
        return item.ToString();
    }

    private string Place(Place place) => MarkdownForm.Code(CheckWords.At(place, folder));
}
