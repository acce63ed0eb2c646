namespace Swapwright.Site.Texts;

/// <summary>A link or picture of a text that is not shown as written.</summary>
/// <param name="Target">The address as written.</param>
/// <param name="Message">What is wrong: lower case, no full stop, names in back-ticks.</param>
/// <param name="Line">Line within the text, from 1.</param>
public sealed record MarkdownProblem(string Target, string Message, int Line);

/// <summary>Rendered Markdown with what could not be shown as written.</summary>
public sealed record MarkdownResult(HtmlString Html, IReadOnlyList<MarkdownProblem> Problems)
{
    /// <summary>Headings of an article, as links to their anchors; empty for other texts.</summary>
    public IReadOnlyList<Models.PageLink> Contents { get; init; } = [];
}
