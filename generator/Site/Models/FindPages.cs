namespace Swapwright.Site.Models;

/// <summary>Questions by which an owner tells which variant stands before them, as a numbered key that works on paper.</summary>
public sealed record WhichPage : Page
{
    public HtmlString Intro { get; init; } = HtmlString.Empty;

    /// <summary>One a family, then one over all families.</summary>
    public IReadOnlyList<KeySection> Sections { get; init; } = [];

    /// <summary>How the order of the questions is found.</summary>
    public HtmlString Method { get; init; } = HtmlString.Empty;

    public override IReadOnlyList<string> Styles => ["assets/find.css"];

    internal override string Template => "which";
}

/// <param name="Words">How many questions it takes.</param>
/// <param name="Steps">In the order in which they are read; empty where there is nothing to ask.</param>
/// <param name="Only">Where there is nothing to ask: what is left.</param>
public sealed record KeySection(string Title, string Anchor, string Words, IReadOnlyList<KeyStep> Steps, KeyEnd? Only);

/// <param name="From">The answer that leads here, "2: Carburettor"; empty for the first step.</param>
/// <param name="Depth">How many questions came before.</param>
public sealed record KeyStep(string Number, string Anchor, PageLink? From, int Depth, string Question, HtmlString HowToTell, IReadOnlyList<KeyHint> Same, IReadOnlyList<KeyReply> Replies);

/// <summary>Another question that does as well.</summary>
public sealed record KeyHint(string Question, HtmlString HowToTell);

/// <param name="Next">The step to go on with; null at an end.</param>
public sealed record KeyReply(string Words, PageLink? Next, KeyEnd? End);

/// <summary>Where questions end: a variant, or several that nothing to be seen tells apart.</summary>
/// <param name="Differences">Where there are several: what differs all the same.</param>
public sealed record KeyEnd(IReadOnlyList<PageLink> Variants, IReadOnlyList<NamedValue> Differences);

/// <summary>The guides of one chassis, position by position, where they differ.</summary>
public sealed record DifferPage : Page
{
    public required PageLink Chassis { get; init; }

    public string Words { get; init; } = "";

    public IReadOnlyList<DifferGuide> Guides { get; init; } = [];

    public IReadOnlyList<DifferSystem> Systems { get; init; } = [];

    public override IReadOnlyList<string> Styles => ["assets/find.css"];

    public override IReadOnlyList<string> Scripts => ["assets/compare.js"];

    internal override string Template => "differ";
}

/// <param name="Sums">The same counts for every guide, in the same order.</param>
public sealed record DifferGuide(string Number, PageLink Link, IReadOnlyList<ComparedCell> Sums);

public sealed record DifferSystem(string Title, IReadOnlyList<DifferPosition> Positions);

public sealed record DifferPosition(PageLink Link, IReadOnlyList<DifferAnswer> Answers);

/// <summary>What some of the guides do at a position.</summary>
/// <param name="Verb">null where the position does not arise.</param>
/// <param name="Guides">Numbers of the guides, with single spaces between them.</param>
/// <param name="Shown">The same for reading: "1 to 4, 9".</param>
public sealed record DifferAnswer(Verb? Verb, string Words, string Guides, string Shown);
