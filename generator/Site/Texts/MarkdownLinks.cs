using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Knowledge.Texts;

namespace Swapwright.Site.Texts;

/// <summary>
/// Goes over every link and picture of a parsed text. The check is made on the tree, where entities and escapes are
/// resolved already: on the written text "java&amp;#115;cript:" would get by.
/// </summary>
/// <param name="resolve">Path from the site's root for a kind and an id.</param>
/// <param name="explain">A line about a term of the glossary; null where there is none.</param>
internal sealed class MarkdownLinks(Func<string, string, string?> resolve, Func<string, string?> explain, string prefix, List<MarkdownProblem> problems)
{
    public void Apply(MarkdownDocument document)
    {
        foreach (var link in document.Descendants<LinkInline>().ToList())
        {
            var written = MarkdownForm.AddressOf(link);
            link.GetDynamicUrl = null;
            if (link.IsImage)
            {
                // Pictures that can be shown have become figures before.
                problems.Add(new MarkdownProblem(written, $"picture `{written}` cannot be shown here", link.Line + 1));
                Replace(link, new LiteralInline(MarkdownForm.PlainText(link)));
            }
            else if (Address(written, link.Line) is { } address)
            {
                link.Url = address;
                if (OwnLink.Parse(written) is { Kind: "term" } term)
                {
                    link.GetAttributes().AddClass("term");
                    link.Title = explain(term.Id);
                }
            }
            else
            {
                Replace(link, null);
            }
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
        if (OwnLink.Parse(written) is { } own)
        {
            return OwnAddress(written, own, line);
        }

        var address = SafeUrl.Resolve(written, prefix);
        if (address is null)
        {
            problems.Add(new MarkdownProblem(
                written, $"link to `{written}`: only http, https, mailto, paths inside the site and the knowledge base's own kinds are followed", line + 1));
        }

        return address;
    }

    private string? OwnAddress(string written, OwnLink own, int line)
    {
        if (resolve(own.Kind, own.Id) is not { } path)
        {
            problems.Add(new MarkdownProblem(written, $"there is no {own.Kind} `{own.Id}`", line + 1));
            return null;
        }

        // A path that has its own anchor (a part in the list of parts) keeps it.
        var target = own.Anchor is null || path.Contains('#', StringComparison.Ordinal) ? path : $"{path}#{own.Anchor}";
        return SafeUrl.Resolve(target, prefix);
    }
}
