namespace Swapwright.Site.Models;

/// <summary>What changed, day by day, newest first.</summary>
public sealed record ChangesPage : Page
{
    public string Intro { get; init; } = "";

    public PageLink? Feed { get; init; }

    public IReadOnlyList<ChangeDay> Days { get; init; } = [];

    internal override string Template => "changes";
}

public sealed record ChangeDay(string Day, IReadOnlyList<ChangeLine> Changes);

/// <param name="Kind">As in "Rule".</param>
public sealed record ChangeLine(string Kind, PageLink About, HtmlString Text);
