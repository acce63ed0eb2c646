using Markdig.Extensions.Tables;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;

namespace Swapwright.Site.Texts;

/// <summary>
/// Says a table's alignment with classes: the engine writes style attributes, which the pages' content policy refuses.
/// Header cells get their scope.
/// </summary>
internal static class MarkdownTables
{
    public static void Apply(MarkdownDocument document)
    {
        foreach (var table in document.Descendants<Table>())
        {
            foreach (var row in table.OfType<TableRow>())
            {
                for (var column = 0; column < row.Count; column++)
                {
                    Mark((TableCell)row[column], row.IsHeader, table, column);
                }
            }

            foreach (var definition in table.ColumnDefinitions)
            {
                definition.Alignment = null;
            }
        }
    }

    private static void Mark(TableCell cell, bool isHeader, Table table, int column)
    {
        if (isHeader)
        {
            cell.GetAttributes().AddProperty("scope", "col");
        }

        var alignment = column < table.ColumnDefinitions.Count ? table.ColumnDefinitions[column].Alignment : null;
        if (alignment is TableColumnAlign.Right or TableColumnAlign.Center)
        {
            cell.GetAttributes().AddClass(alignment == TableColumnAlign.Right ? "to-right" : "to-middle");
        }
    }
}

/// <summary>Puts a table where it can be scrolled sideways without moving the page.</summary>
internal sealed class ScrollingTableRenderer : HtmlTableRenderer
{
    protected override void Write(HtmlRenderer renderer, Table table)
    {
        renderer.EnsureLine();
        renderer.WriteLine("<div class=\"scroll\" role=\"group\" aria-label=\"Table\" tabindex=\"0\">");
        base.Write(renderer, table);
        renderer.WriteLine("</div>");
    }
}

/// <summary>Keeps a short text's headings out of the page's own order of headings.</summary>
internal sealed class EmphasisedHeadingRenderer : HtmlObjectRenderer<HeadingBlock>
{
    protected override void Write(HtmlRenderer renderer, HeadingBlock obj)
    {
        renderer.EnsureLine();
        renderer.Write("<p><strong>").WriteLeafInline(obj).WriteLine("</strong></p>");
    }
}
