namespace Swapwright.Site.Models;

/// <summary>One place on the vehicle and every answer the rules give to it.</summary>
public sealed record PositionPage : Page
{
    public string System { get; init; } = "";

    public HtmlString About { get; init; } = HtmlString.Empty;

    /// <summary>Where the position exists, in words; empty means everywhere.</summary>
    public string Applies { get; init; } = "";

    public string Safety { get; init; } = "";

    public IReadOnlyList<PositionAnswer> Answers { get; init; } = [];

    public IReadOnlyList<PageLink> Articles { get; init; } = [];

    public IReadOnlyList<PageLink> Tasks { get; init; } = [];

    internal override string Template => "position";
}

/// <param name="Where">The part of the space in words.</param>
/// <param name="Combinations">How many buildable combinations, display-ready.</param>
public sealed record PositionAnswer(
    Verb Verb,
    string VerbText,
    string Where,
    string Combinations,
    PageLink Rule,
    Standing Standing,
    string StandingText,
    IReadOnlyList<GuidePart> Parts);

/// <summary>What a rule says, where it applies and on whose word.</summary>
public sealed record RulePage : Page
{
    public required string Id { get; init; }

    public string System { get; init; } = "";

    /// <summary>Where it is written.</summary>
    public string Place { get; init; } = "";

    /// <summary>Its condition in words, one line for each part; empty means everywhere.</summary>
    public IReadOnlyList<string> When { get; init; } = [];

    /// <summary>Buildable combinations in which it speaks, display-ready.</summary>
    public string Combinations { get; init; } = "";

    public string CombinationsShare { get; init; } = "";

    public IReadOnlyList<RuleAnswer> Answers { get; init; } = [];

    /// <summary>What it rules out, in words.</summary>
    public IReadOnlyList<HtmlString> Excludes { get; init; } = [];

    /// <summary>What it requires, in words.</summary>
    public IReadOnlyList<string> Requires { get; init; } = [];

    public IReadOnlyList<GuideStatedValue> Values { get; init; } = [];

    public IReadOnlyList<PageLink> Tasks { get; init; } = [];

    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    public IReadOnlyList<HtmlString> Mistakes { get; init; } = [];

    public IReadOnlyList<HtmlString> Advice { get; init; } = [];

    public HtmlString Because { get; init; } = HtmlString.Empty;

    public Standing Standing { get; init; }

    public string StandingText { get; init; } = "";

    public string? Checked { get; init; }

    public string? By { get; init; }

    public IReadOnlyList<SourceLine> Sources { get; init; } = [];

    public IReadOnlyList<PageLink> Overrides { get; init; } = [];

    public IReadOnlyList<PageLink> OverriddenBy { get; init; } = [];

    public IReadOnlyList<PageLink> Guides { get; init; } = [];

    public IReadOnlyList<NoteLine> Notes { get; init; } = [];

    internal override string Template => "rule";
}

public sealed record RuleAnswer
{
    public required PageLink Position { get; init; }

    public required Verb Verb { get; init; }

    public required string VerbText { get; init; }

    public IReadOnlyList<GuidePart> Parts { get; init; } = [];

    public IReadOnlyList<HtmlString> Steps { get; init; } = [];

    public HtmlString Notes { get; init; } = HtmlString.Empty;
}

public sealed record ArticlePage : Page
{
    public string Summary { get; init; } = "";

    public required HtmlString Body { get; init; }

    /// <summary>Other articles of the same topic.</summary>
    public IReadOnlyList<PageLink> More { get; init; } = [];

    /// <summary>What it belongs to, as in "Wiring".</summary>
    public string Topic { get; init; } = "";

    /// <summary>Its headings as links to anchors.</summary>
    public IReadOnlyList<PageLink> Contents { get; init; } = [];

    public IReadOnlyList<PageLink> Positions { get; init; } = [];

    public IReadOnlyList<PageLink> Tasks { get; init; } = [];

    public IReadOnlyList<SourceLine> Sources { get; init; } = [];

    public Standing? Standing { get; init; }

    public string StandingText { get; init; } = "";

    public string? Checked { get; init; }

    internal override string Template => "article";
}

/// <summary>What one kind of finding means and how to mend it.</summary>
public sealed record FindingPage : Page
{
    public required string Id { get; init; }

    /// <summary>error, warning or note.</summary>
    public required string Severity { get; init; }

    public Weight SeverityWeight { get; init; } = Weight.Plain;

    public required HtmlString Meaning { get; init; }

    /// <summary>A sample of knowledge that has the fault, as written.</summary>
    public string Example { get; init; } = "";

    /// <summary>What the check prints for it.</summary>
    public string Message { get; init; } = "";

    public required HtmlString Mend { get; init; }

    /// <summary>The same sample, mended.</summary>
    public string MendedExample { get; init; } = "";

    public HtmlString WhenToAccept { get; init; } = HtmlString.Empty;

    internal override string Template => "finding";
}

public sealed record ConnectorPage : Page
{
    public HtmlString About { get; init; } = HtmlString.Empty;

    public HtmlString Face { get; init; } = HtmlString.Empty;

    /// <summary>The face in words, for those who cannot see it.</summary>
    public string FaceText { get; init; } = "";

    public IReadOnlyList<NamedValue> Facts { get; init; } = [];

    public IReadOnlyList<PageLink> Mates { get; init; } = [];

    public IReadOnlyList<ConnectorUse> Uses { get; init; } = [];

    internal override string Template => "connector";
}

/// <summary>Where a connector is found and what its cavities carry there.</summary>
public sealed record ConnectorUse(PageLink Owner, string Role, IReadOnlyList<GuidePin> Pins);
