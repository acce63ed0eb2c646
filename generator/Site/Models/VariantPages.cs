namespace Swapwright.Site.Models;

/// <summary>One chassis variant and the donors compared for it.</summary>
public sealed record ChassisPage : Page
{
    public string Years { get; init; } = "";

    public string Detail { get; init; } = "";

    public HtmlString About { get; init; } = HtmlString.Empty;

    public IReadOnlyList<FactLine> Facts { get; init; } = [];

    /// <summary>null where no donor goes in.</summary>
    public Comparison? Donors { get; init; }

    /// <summary>Where the guides of this chassis are held against each other; null where there are not two.</summary>
    public PageLink? Differ { get; init; }

    /// <summary>Where an owner tells it from its relatives.</summary>
    public PageLink? Which { get; init; }

    public IReadOnlyList<NotBuildable> NotBuildable { get; init; } = [];

    public IReadOnlyList<PageLink> Siblings { get; init; } = [];

    public IReadOnlyList<OwnDevice> Devices { get; init; } = [];

    public IReadOnlyList<NoteLine> Notes { get; init; } = [];

    public override IReadOnlyList<string> Styles => ["assets/find.css"];

    public override IReadOnlyList<string> Scripts => ["assets/compare.js"];

    internal override string Template => "chassis";
}

/// <summary>One donor variant and the chassis it goes into.</summary>
public sealed record DonorPage : Page
{
    public string Years { get; init; } = "";

    public string Detail { get; init; } = "";

    public HtmlString About { get; init; } = HtmlString.Empty;

    public IReadOnlyList<FactLine> Facts { get; init; } = [];

    /// <summary>null where it goes into nothing.</summary>
    public Comparison? Chassis { get; init; }

    /// <summary>Where an owner tells it from its relatives.</summary>
    public PageLink? Which { get; init; }

    public IReadOnlyList<NotBuildable> NotBuildable { get; init; } = [];

    public IReadOnlyList<PageLink> Siblings { get; init; } = [];

    public IReadOnlyList<OwnDevice> Devices { get; init; } = [];

    public IReadOnlyList<NoteLine> Notes { get; init; } = [];

    public override IReadOnlyList<string> Styles => ["assets/find.css"];

    public override IReadOnlyList<string> Scripts => ["assets/compare.js"];

    internal override string Template => "donor";
}

public sealed record FactLine(string Title, string Value, HtmlString HowToTell);

/// <summary>A chassis and a donor of which nothing can be built.</summary>
/// <param name="Reasons">The rules that exclude it: one, or those that do it together.</param>
/// <param name="Ways">What comes nearest to it and can be built.</param>
public sealed record NotBuildable(PageLink Other, IReadOnlyList<ExclusionReason> Reasons, IReadOnlyList<NearestWay> Ways);

public sealed record ExclusionReason(HtmlString Text, PageLink Rule);

/// <summary>What to change so that it can be built: in words, and the guide that is reached by it.</summary>
public sealed record NearestWay(string Words, PageLink Guide);

public sealed record OwnDevice(string Title, PageLink? Connector, IReadOnlyList<GuidePin> Pins);

public sealed record NoteLine(string Date, HtmlString Text);
