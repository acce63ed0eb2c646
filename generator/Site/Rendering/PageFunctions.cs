using System.Collections;
using Scriban;
using Scriban.Runtime;
using Swapwright.Knowledge.Texts;
using Swapwright.Site.Models;

namespace Swapwright.Site.Rendering;

/// <summary>
/// All that a template can call. The engine's own functions are not offered: none of them is needed, and some would
/// read the clock, evaluate text or take an escape off.
/// </summary>
internal sealed class PageFunctions : ScriptObject
{
    private static readonly object s_true = true;
    private static readonly object s_false = false;

    public PageFunctions(Func<string, Template?> find)
    {
        SetValue("include", new Include(find), readOnly: true);
        Add<PageLink>("link", static (context, link) => Link(context.Prefix, link));
        Add<string>("href", static (context, address) => Href(context.Prefix, address));
        Add<object>("has", static (_, value) => Has(value) ? s_true : s_false);
        Add<object>("css", static (_, value) => ClassWord.Of(value));
        Add<Verb?>("verb", static (_, verb) => VerbWord.Of(verb ?? default));
    }

    private void Add<T>(string name, Func<PageContext, T?, object?> function) => SetValue(name, new PageFunction<T>(name, function), readOnly: true);

    /// <summary>An anchor element, or the words alone where the address is refused.</summary>
    public static HtmlString Link(string prefix, PageLink? link)
    {
        if (link is null)
        {
            return HtmlString.Empty;
        }

        var text = HtmlText.Escape(link.Text);
        var address = SafeUrl.Resolve(link.Href, prefix);
        return new HtmlString(address is null ? text : $"<a href=\"{HtmlText.Escape(address)}\">{text}</a>");
    }

    /// <summary>An address for an attribute; one that leads nowhere where it is refused.</summary>
    public static string Href(string prefix, string? address) =>
        SafeUrl.Resolve(address, prefix) ?? "#";

    /// <summary>True for text, HTML and lists that are not empty and for everything else that is not null.</summary>
    public static bool Has(object? value) => value switch
    {
        null => false,
        string text => text.Length > 0,
        HtmlString html => !html.IsEmpty,
        ICollection items => items.Count > 0,
        IEnumerable items => items.GetEnumerator().MoveNext(),
        _ => true,
    };
}
