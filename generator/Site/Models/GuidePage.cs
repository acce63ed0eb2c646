namespace Swapwright.Site.Models;

/// <summary>The page for one headline combination, in the order in which a builder asks.</summary>
public sealed record GuidePage : Page
{
    public required PageLink Chassis { get; init; }

    public required PageLink Donor { get; init; }

    /// <summary>The headline choices and their options: "Gearbox" → "the donor's five-speed".</summary>
    public IReadOnlyList<NamedValue> Headline { get; init; } = [];

    public required GuideSummary Summary { get; init; }

    /// <summary>The sheets for the bench beside this guide, each with what is on it.</summary>
    public IReadOnlyList<BenchLink> Sheets { get; init; } = [];

    public IReadOnlyList<GuideChoice> Choices { get; init; } = [];

    /// <summary>Where the answers of the other options stand, and what cannot be combined; null where nothing is left to choose.</summary>
    public PageLink? Otherwise { get; init; }

    /// <summary>Path of what the switches fetch; null where there is nothing to switch.</summary>
    public string? Switches { get; init; }

    /// <summary>Better options or other donors that rules advise without deciding.</summary>
    public IReadOnlyList<GuideAdvice> Advice { get; init; } = [];

    /// <summary>Every system except those of <see cref="Gearbox"/> and <see cref="Ecu"/>, in the order of positions.yaml.</summary>
    public IReadOnlyList<GuideSystem> Systems { get; init; } = [];

    /// <summary>What it sums to by where it comes from; the shopping list has the parts.</summary>
    public IReadOnlyList<GuideShoppingSum> Shopping { get; init; } = [];

    public GuideGearbox? Gearbox { get; init; }

    public IReadOnlyList<GuideBelt> Belts { get; init; } = [];

    public GuideWiring? Wiring { get; init; }

    public IReadOnlyList<GuideHoseSum> Hoses { get; init; } = [];

    public GuideEcu? Ecu { get; init; }

    /// <summary>The worksheets that stand for themselves, each under its own heading: load and drivetrain.</summary>
    public IReadOnlyList<GuideFigures> Figures { get; init; } = [];

    public IReadOnlyList<GuidePhase> Work { get; init; } = [];

    /// <summary>Tasks of the phase before the first start.</summary>
    public IReadOnlyList<GuideTask> Checks { get; init; } = [];

    public IReadOnlyList<GuideTask> FirstStart { get; init; } = [];

    /// <summary>Those that belong to no line; the others stand beside their lines.</summary>
    public IReadOnlyList<HtmlString> Mistakes { get; init; } = [];

    /// <summary>How many stand beside their lines, as a sentence.</summary>
    public string MistakesAbove { get; init; } = "";

    public IReadOnlyList<CautionGroup> Cautions { get; init; } = [];

    public GuideConfidence? Confidence { get; init; }

    public override IReadOnlyList<string> Styles => ["assets/guide.css"];

    public override IReadOnlyList<string> Scripts => ["assets/guide.js"];

    internal override string Template => "guide";
}

/// <summary>Answers the first question in one screen.</summary>
public sealed record GuideSummary
{
    /// <summary>As in "It can be built, with a machined adapter plate."</summary>
    public required string Verdict { get; init; }

    public Weight VerdictWeight { get; init; } = Weight.Good;

    /// <summary>What the numbers stand for: "worked out for the recommended choices".</summary>
    public string BasedOn { get; init; } = "";

    /// <summary>Positions by what is done at them, in the order of <see cref="Verb"/>.</summary>
    public IReadOnlyList<GuideVerbCount> Positions { get; init; } = [];

    /// <summary>Plugs by what they need: straight in, changed, extended, added.</summary>
    public IReadOnlyList<NamedCount> Plugs { get; init; } = [];

    /// <summary>Loop → designation.</summary>
    public IReadOnlyList<NamedValue> Belts { get; init; } = [];

    public RangeText? Hours { get; init; }

    public RangeText? Money { get; init; }

    /// <summary>As in "invented prices of 15 January 2026".</summary>
    public string MoneyNote { get; init; } = "";

    public string Skill { get; init; } = "";

    public string People { get; init; } = "";

    /// <summary>Anything else worth the first screen: elapsed days, power to mass.</summary>
    public IReadOnlyList<NamedValue> Figures { get; init; } = [];
}

public sealed record GuideVerbCount(Verb Verb, string Words, int Count);

/// <summary>Something the builder decides, other than the headline.</summary>
public sealed record GuideChoice
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public string Question { get; init; } = "";

    public HtmlString About { get; init; } = HtmlString.Empty;

    /// <summary>Where there is something to choose, when that depends on other choices.</summary>
    public GuideCondition? Condition { get; init; }

    public IReadOnlyList<GuideOption> Options { get; init; } = [];
}

public sealed record GuideOption
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public HtmlString About { get; init; } = HtmlString.Empty;

    public bool IsRecommended { get; init; }

    /// <summary>Why it is recommended, or why it is not offered.</summary>
    public HtmlString Because { get; init; } = HtmlString.Empty;

    /// <summary>False where no buildable combination of this guide takes it.</summary>
    public bool IsOffered { get; init; } = true;

    /// <summary>What comes nearest and can be built with it, where it is not offered.</summary>
    public IReadOnlyList<NearestWay> Ways { get; init; } = [];

    /// <summary>Other choices that it leaves one option of.</summary>
    public IReadOnlyList<SettledChoice> Settles { get; init; } = [];
}

/// <summary>A choice and the one option that is left of it, as words within a sentence.</summary>
public sealed record SettledChoice(string Choice, string Option);

public sealed record GuideExclusion(HtmlString Text, PageLink Rule, GuideCondition? Condition = null);

public sealed record GuideAdvice(HtmlString Text, PageLink? Towards = null, PageLink? Rule = null, GuideCondition? Condition = null);

public sealed record GuideConfidence : Repeated
{
    /// <summary>One sentence: "41 of 52 answers were built and driven."</summary>
    public string Words { get; init; } = "";

    public IReadOnlyList<NamedValue> Figures { get; init; } = [];

    /// <summary>What is still open: warnings and accepted findings that concern this build.</summary>
    public IReadOnlyList<HtmlString> OpenPoints { get; init; } = [];

    /// <summary>Numbered by their order; the reasons name the numbers.</summary>
    public IReadOnlyList<SourceLine> Sources { get; init; } = [];
}
