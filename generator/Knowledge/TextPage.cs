using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A page of the site in the community's own words: who we are, how to help, where we meet.</summary>
public sealed record TextPage(string Id, string Title, Place Place) : Entity(Id, Title, Place)
{
    public string Summary { get; init; } = "";

    /// <summary>Markdown.</summary>
    public string Body { get; init; } = "";

    /// <summary>Linked in the navigation of every page; in the footer otherwise.</summary>
    public bool InNavigation { get; init; }

    public int Order { get; init; }
}
