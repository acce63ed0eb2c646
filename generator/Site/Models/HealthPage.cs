namespace Swapwright.Site.Models;

/// <summary>The state of a knowledge base, for those who keep it: what is covered, how sure it is, what wants a second look.</summary>
public sealed record HealthPage : Page
{
    public string Intro { get; init; } = "";

    /// <summary>The numbers that a check ends with.</summary>
    public IReadOnlyList<NamedValue> Counts { get; init; } = [];

    public IReadOnlyList<HealthSystem> Systems { get; init; } = [];

    /// <summary>Rules by the year in which they were last checked.</summary>
    public IReadOnlyList<HealthBar> Checked { get; init; } = [];

    public IReadOnlyList<HealthList> Lists { get; init; } = [];

    internal override string Template => "health";
}

/// <param name="Answers">How many different answers stand somewhere, as in "34 answers at 9 positions".</param>
/// <param name="Bar">The three standings as parts of one bar.</param>
/// <param name="Standing">The same in words.</param>
public sealed record HealthSystem(string Id, string Title, string Answers, HtmlString Bar, string Standing, IReadOnlyList<HealthPosition> Positions);

/// <param name="Exceptions">How many of the answers override another rule.</param>
/// <param name="Where">Share of the buildable combinations in which it has to be settled.</param>
/// <param name="Answered">Share of those in which it is.</param>
public sealed record HealthPosition(PageLink Link, string Answers, string Exceptions, string Where, string Answered, string Built, string Measured, string Reported);

/// <param name="Bar">Its length against the longest of its list.</param>
public sealed record HealthBar(string Name, string Count, HtmlString Bar);

/// <summary>Things of one sort that want a look.</summary>
/// <param name="Empty">What is said where there are none.</param>
/// <param name="More">How many are not shown, in words; empty where all are.</param>
public sealed record HealthList(string Id, string Title, string Count, string Intro, string Empty, IReadOnlyList<HealthLine> Lines, string More = "");

/// <param name="Finding">The kind of finding it is, with its page; null where it is none.</param>
/// <param name="Place">File and line; empty where the link leads there.</param>
public sealed record HealthLine(string Words, PageLink? About = null, PageLink? Finding = null, string Place = "", string Detail = "", Weight Weight = Weight.Plain);
