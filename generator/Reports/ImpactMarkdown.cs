using System.Text;
using Swapwright.Impact;

namespace Swapwright.Reports;

/// <summary>An impact as a comment on a pull request: one sentence, and details that unfold.</summary>
public static class ImpactMarkdown
{
    // Places where comments are posted take about 65,000 characters; details beyond this are only summed up.
    private const int MostCharacters = 60_000;
    private const int MostItems = 40;

    public static string Write(KnowledgeImpact impact, ImpactNames names)
    {
        var text = new StringBuilder();
        text.Append("**").Append(ImpactSentence.Of(impact)).Append("**\n\n");
        text.Append("From ").Append(MarkdownForm.Code(names.Old.ToString())).Append(" to ").Append(MarkdownForm.Code(names.New.ToString())).Append(".\n");
        foreach (var section in new ImpactSections(impact).All())
        {
            var details = Section(section);
            text.Append('\n').Append(text.Length + details.Length <= MostCharacters
                ? details
                : $"{section.Title}: {section.Summary} (too long for a comment; `--as json` lists them).\n");
        }

        return text.ToString();
    }

    private static string Section(ImpactSection section)
    {
        var text = new StringBuilder();
        // Up to the empty line this is HTML. Title and summary are words of ours and numbers: nothing in them is to be escaped.
        text.Append("<details><summary>").Append(section.Title).Append(": ").Append(section.Summary).Append("</summary>\n");
        foreach (var item in section.Items.Take(MostItems))
        {
            text.Append("\n- ").Append(MarkdownForm.Sentence(item.Lead));
            foreach (var detail in item.Details.Where(detail => detail.Text.Length > 0))
            {
                text.Append("\n  - ").Append(detail.Label).Append(": ").Append(detail.IsCode ? MarkdownForm.Code(detail.Text) : MarkdownForm.Sentence(detail.Text));
            }
        }

        text.Append(section.Items.IsEmpty ? "" : "\n");
        if (section.Items.Length > MostItems)
        {
            text.Append("\nAnd ").Append(CheckWords.Grouped(section.Items.Length - MostItems)).Append(" more, which `--as json` lists.\n");
        }

        return text.Append("\n</details>\n").ToString();
    }
}
