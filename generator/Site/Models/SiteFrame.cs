namespace Swapwright.Site.Models;

/// <summary>A link to a page of the site or outside it.</summary>
/// <param name="Text">The words of the link, unescaped.</param>
/// <param name="Href">
/// A path from the site's root ("rule/cable-clutch.html#why"), an anchor on the same page ("#belts") or an http, https
/// or mailto address. Templates make root paths relative to the page. Anything else is refused when the page is rendered.
/// </param>
public sealed record PageLink(string Text, string Href);

public sealed record NavItem(string Text, string Href, bool IsCurrent = false);

/// <param name="Type">Its media type, "text/csv".</param>
public sealed record AlternateLink(string Type, string Title, string Href);

/// <summary>What every page carries around its own content.</summary>
public sealed record SiteFrame
{
    /// <summary>Path of this page from the site's root, forward slashes, with extension: "guide/a/b--c.html".</summary>
    public required string Path { get; init; }

    public required string SiteTitle { get; init; }

    /// <summary>Shown in the tab and in search results, without the site's title.</summary>
    public required string PageTitle { get; init; }

    /// <summary>The sentence printed on every page, as in "Invented scenario: …"; empty leaves it out.</summary>
    public HtmlString Label { get; init; } = HtmlString.Empty;

    /// <summary>The day the knowledge is judged by, display-ready.</summary>
    public required string AsOf { get; init; }

    public string Language { get; init; } = "en";

    public string Description { get; init; } = "";

    public IReadOnlyList<NavItem> Navigation { get; init; } = [];

    /// <summary>From the start page down to the page above this one.</summary>
    public IReadOnlyList<PageLink> Breadcrumb { get; init; } = [];

    /// <summary>The community's own pages that are not in the navigation.</summary>
    public IReadOnlyList<PageLink> FooterLinks { get; init; } = [];

    /// <summary>The same content as data (JSON, CSV), offered in the footer.</summary>
    public IReadOnlyList<PageLink> Downloads { get; init; } = [];

    /// <summary>The same or the news for programs, named in the page's head.</summary>
    public IReadOnlyList<AlternateLink> Alternates { get; init; } = [];

    /// <summary>The address of this page on the published site; empty where the site is not published, or the page has no address.</summary>
    public string Canonical { get; init; } = "";

    /// <summary>The address of a picture that previews show; empty where there is none.</summary>
    public string Picture { get; init; } = "";

    /// <summary>What the page says as JSON-LD.</summary>
    public HtmlString StructuredData { get; init; } = HtmlString.Empty;

    /// <summary>The site's root for a page that is shown at addresses other than its own; null for every other page.</summary>
    internal string? Root { get; init; }

    /// <summary>Way up from this page to the site's root: "" at the root, "../" one folder down.</summary>
    public string Prefix => Root ?? SitePaths.PrefixOf(Path);
}

/// <summary>A page that a template of the same name renders.</summary>
public abstract record Page
{
    public required SiteFrame Frame { get; init; }

    /// <summary>The page's one heading of the first order.</summary>
    public required string Title { get; init; }

    /// <summary>File name of the template under site-template, without extension.</summary>
    internal abstract string Template { get; }
}
