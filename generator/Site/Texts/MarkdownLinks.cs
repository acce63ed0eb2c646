using System.Text;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Site.Rendering;

namespace Swapwright.Site.Texts;

/// <summary>
/// Goes over every link and picture of a parsed text. The check is made on the tree, where entities and escapes are
/// resolved already: on the written text "java&amp;#115;cript:" would get by.
/// </summary>
internal sealed class MarkdownLinks(Func<string, string, string?> resolve, string prefix, List<MarkdownProblem> problems)
{
    private static readonly HashSet<string> OwnKinds =
        ["article", "position", "connector", "part", "rule", "task", "source", "chassis", "donor"];

    public void Apply(MarkdownDocument document)
    {
        foreach (var link in document.Descendants<LinkInline>().ToList())
        {
            var written = link.GetDynamicUrl?.Invoke() ?? link.Url ?? "";
            link.GetDynamicUrl = null;
            var address = link.IsImage ? SafeUrl.Picture(written, prefix) : Address(written, link.Line);
            if (address is not null)
            {
                link.Url = address;
                continue;
            }

            if (link.IsImage)
            {
                problems.Add(new MarkdownProblem(written, $"picture `{written}` is not in the folder `pictures/`", link.Line + 1));
            }

            Replace(link, link.IsImage ? new LiteralInline(PlainText(link)) : null);
        }

        foreach (var link in document.Descendants<AutolinkInline>().Where(link => !link.IsEmail).ToList())
        {
            if (Address(link.Url, link.Line) is { } address)
            {
                link.Url = address;
            }
            else
            {
                link.ReplaceBy(new LiteralInline(link.Url));
            }
        }
    }

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

    /// <summary>Keeps a refused link's words and drops the link around them.</summary>
    private static void Replace(LinkInline link, LiteralInline? words)
    {
        if (words is not null)
        {
            link.ReplaceBy(words, copyChildren: false);
        }
        else
        {
            link.ReplaceBy(new ContainerInline());
        }
    }

    private string? Address(string written, int line)
    {
        var mark = written.AsSpan().IndexOfAny(":/?#");
        if (mark > 0 && written[mark] == ':' && OwnKinds.Contains(written[..mark]))
        {
            return OwnAddress(written, mark, line);
        }

        var address = SafeUrl.Resolve(written, prefix);
        if (address is null)
        {
            problems.Add(new MarkdownProblem(
                written, $"link to `{written}`: only http, https, mailto, paths inside the site and the knowledge base's own kinds are followed", line + 1));
        }

        return address;
    }

    private string? OwnAddress(string written, int mark, int line)
    {
        var anchor = written.IndexOf('#', StringComparison.Ordinal);
        var kind = written[..mark];
        var id = anchor < 0 ? written[(mark + 1)..] : written[(mark + 1)..anchor];
        var path = resolve(kind, id);
        if (path is null)
        {
            problems.Add(new MarkdownProblem(written, $"there is no {kind} `{id}`", line + 1));
            return null;
        }

        // A path that has its own anchor (a part in the list of parts) keeps it.
        var target = anchor < 0 || path.Contains('#', StringComparison.Ordinal) ? path : path + written[anchor..];
        return SafeUrl.Resolve(target, prefix);
    }
}
