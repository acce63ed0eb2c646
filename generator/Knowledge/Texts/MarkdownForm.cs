using System.Text;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Swapwright.Knowledge.Texts;

/// <summary>The Markdown that texts of a knowledge base are written in, parsed in one way by all who look at it.</summary>
public static class MarkdownForm
{
    /// <summary>Extensions are added one by one; the engine's bundle of them would let a text set attributes of its own.</summary>
    public static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables()
        .UseAutoIdentifiers(AutoIdentifierOptions.GitHub)
        .UsePreciseSourceLocation()
        .DisableHtml()
        .Build();

    /// <summary>Null for quotes in quotes in quotes, where the engine's own limit on nesting is met.</summary>
    public static MarkdownDocument? Parse(string text)
    {
        try
        {
            return Markdig.Markdown.Parse(text, Pipeline);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    /// <summary>The name by which a link reaches a heading of an article.</summary>
    public static string? AnchorOf(HeadingBlock heading) => heading.TryGetAttributes()?.Id is { Length: > 0 } id ? id : null;

    /// <summary>The address of a link as written.</summary>
    public static string AddressOf(LinkInline link) => link.GetDynamicUrl?.Invoke() ?? link.Url ?? "";

    /// <summary>The words of an inline tree without any marks.</summary>
    public static string PlainText(ContainerInline? container)
    {
        var text = new StringBuilder();
        foreach (var inline in container?.Descendants() ?? [])
        {
            switch (inline)
            {
                case LiteralInline literal:
                    text.Append(literal.Content.AsSpan());
                    break;
                case CodeInline code:
                    text.Append(code.Content);
                    break;
                case HtmlEntityInline entity:
                    text.Append(entity.Transcoded.AsSpan());
                    break;
                case LineBreakInline:
                    text.Append(' ');
                    break;
                default:
                    break;
            }
        }

        return text.ToString();
    }
}
