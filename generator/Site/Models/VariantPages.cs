namespace Swapwright.Site.Models;

/// <summary>One chassis variant and the donors compared for it.</summary>
public sealed record ChassisPage : Page
{
    public string Years { get; init; } = "";

    public string Detail { get; init; } = "";

    public HtmlString About { get; init; } = HtmlString.Empty;

    public IReadOnlyList<FactLine> Facts { get; init; } = [];

    public IReadOnlyList<ComparisonRow> Donors { get; init; } = [];

    public IReadOnlyList<NotBuildable> NotBuildable { get; init; } = [];

    public IReadOnlyList<PageLink> Siblings { get; init; } = [];

    public IReadOnlyList<OwnDevice> Devices { get; init; } = [];

    public IReadOnlyList<NoteLine> Notes { get; init; } = [];

    internal override string Template => "chassis";
}

/// <summary>One donor variant and the chassis it goes into.</summary>
public sealed record DonorPage : Page
{
    public string Years { get; init; } = "";

    public string Detail { get; init; } = "";

    public HtmlString About { get; init; } = HtmlString.Empty;

    public IReadOnlyList<FactLine> Facts { get; init; } = [];

    public IReadOnlyList<ComparisonRow> Chassis { get; init; } = [];

    public IReadOnlyList<NotBuildable> NotBuildable { get; init; } = [];

    public IReadOnlyList<PageLink> Siblings { get; init; } = [];

    public IReadOnlyList<OwnDevice> Devices { get; init; } = [];

    public IReadOnlyList<NoteLine> Notes { get; init; } = [];

    internal override string Template => "donor";
}

public sealed record FactLine(string Title, string Value, HtmlString HowToTell);

/// <summary>One guide in a comparison; every number display-ready.</summary>
public sealed record ComparisonRow
{
    /// <summary>The donor on a chassis page, the chassis on a donor page.</summary>
    public required PageLink Other { get; init; }

    /// <summary>Under its headline options: "Use the donor's gearbox".</summary>
    public required PageLink Guide { get; init; }

    public string Power { get; init; } = "";

    public string Hours { get; init; } = "";

    public string Money { get; init; } = "";

    public string Skill { get; init; } = "";

    /// <summary>Positions where something is bought, made or modified.</summary>
    public string Changes { get; init; } = "";

    public string PlugsStraightIn { get; init; } = "";

    public string Standing { get; init; } = "";
}

/// <summary>A chassis and a donor of which nothing can be built.</summary>
/// <param name="Reasons">The rules that exclude it: one, or those that do it together.</param>
/// <param name="Ways">What comes nearest to it and can be built.</param>
public sealed record NotBuildable(PageLink Other, IReadOnlyList<ExclusionReason> Reasons, IReadOnlyList<NearestWay> Ways);

public sealed record ExclusionReason(HtmlString Text, PageLink Rule);

/// <summary>What to change so that it can be built: in words, and the guide that is reached by it.</summary>
public sealed record NearestWay(string Words, PageLink Guide);

public sealed record OwnDevice(string Title, PageLink? Connector, IReadOnlyList<GuidePin> Pins);

public sealed record NoteLine(string Date, HtmlString Text);
