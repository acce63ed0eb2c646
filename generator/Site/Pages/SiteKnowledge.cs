using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Reports;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Site.Machines;
using Swapwright.Site.Models;
using Swapwright.Site.Texts;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>A guide to be made: its headline combination, its recommended combination, and where its page lies.</summary>
internal sealed record GuideEntry(Headline Headline, ImmutableArray<int> Recommended, string Path, string Options);

/// <summary>What all pages draw on: the knowledge, what was resolved of it, links, words and rendered text.</summary>
internal sealed class SiteKnowledge
{
    private readonly ConcurrentDictionary<string, Lazy<Sheet>> _sheets = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<GuideBrief>> _briefs = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<(Answer Answer, string Prefix), GuideLine> _said = new(new BySame());
    private readonly Dictionary<(Region Region, Region Context), GuideCondition?> _conditions = [];
    private readonly ILookup<string, Article> _articles;

    // What is the same around every page.
    private static readonly AlternateLink[] s_alternates = [new AlternateLink("application/atom+xml", "What changed", AtomFeed.Path)];
    private readonly RepeatedList<NavItem> _navigation;
    private readonly PageLink[] _footer;

    private readonly Dictionary<(Region Context, string Choice, string Option), ImmutableArray<KeyValuePair<string, string>>> _settled = [];

    public SiteKnowledge(Proof proof)
    {
        Proof = proof;
        Resolution = proof.Resolution ?? throw new ArgumentException("the space of this base is not known", nameof(proof));
        Words = proof.Words!;
        Sheets = new SheetBuilder(Resolution);
        Markdown = new MarkdownText(PathOf, proof.Base.Pictures.Find, term => proof.Base.Terms.Find(term)?.Short);
        var headlines = new Headlines(Resolution);
        Guides =
        [
            .. headlines.All().Select(headline => new GuideEntry(
                headline,
                [.. headlines.Default(headline.Slice)],
                SitePaths.Guide(headline.Chassis.Id, headline.Donor.Id, headline.Options.Select(option => option.Value)),
                OptionTitles(headline))),
        ];
        Articles = [.. Base.Articles.All.OrderBy(article => article.Order).ThenBy(article => article.Title, StringComparer.Ordinal)];
        _navigation = new RepeatedList<NavItem>(
        [
            new NavItem("Find your build", SitePaths.Start),
            new NavItem("Which chassis?", SitePaths.WhichChassis),
            new NavItem("Which donor?", SitePaths.WhichDonor),
            new NavItem("How-to", SitePaths.Articles),
            new NavItem("Glossary", SitePaths.Glossary),
            new NavItem("Positions", SitePaths.Positions),
            new NavItem("Rules", SitePaths.Rules),
            new NavItem("Connectors", SitePaths.Connectors),
            new NavItem("Cautions and sources", SitePaths.About),
            .. OwnPages(inNavigation: true).Select(page => new NavItem(page.Title, SitePaths.Page(page.Id))),
        ]);
        _navigation.Keep();
        _footer = [.. OwnPages(inNavigation: false).Select(page => new PageLink(page.Title, SitePaths.Page(page.Id)))];
        PositionsOf = Base.PositionOrder.ToLookup(position => position.System, StringComparer.Ordinal);
        SourceNumbers = [.. Enumerable.Range(1, Base.Sources.Count).Select(number => number.ToString(CultureInfo.InvariantCulture)).Select(number => new PageLink(number, $"#source-{number}"))];
        _articles = Articles.SelectMany(article => article.Tasks.Select(task => task.Id).Distinct(StringComparer.Ordinal), (article, task) => (article, task)).ToLookup(pair => pair.task, pair => pair.article, StringComparer.Ordinal);
        GuidesOfChassis = Guides.ToLookup(guide => guide.Headline.Chassis.Id, StringComparer.Ordinal);
        GuidesOfDonor = Guides.ToLookup(guide => guide.Headline.Donor.Id, StringComparer.Ordinal);
    }

    public Proof Proof { get; }

    /// <summary>Articles in the order in which they are listed.</summary>
    public ImmutableArray<Article> Articles { get; }

    /// <summary>The articles that a task is told more of in.</summary>
    public IEnumerable<Article> ArticlesOf(WorkTask task) => _articles[task.Id];

    public KnowledgeBase Base => Proof.Base;

    public Resolution Resolution { get; }

    public RegionStore Store => Resolution.Store;

    public RegionWords Words { get; }

    public SheetBuilder Sheets { get; }

    /// <summary>What the data beside the guides say alike.</summary>
    public SheetForms Forms { get; } = new();

    /// <summary>What stands on many guides.</summary>
    public SharedPieces Pieces { get; } = new();

    /// <summary>Drawings of the work and of what it costs: sheets of the same work have the same tasks, and those of the same shopping the same lines.</summary>
    public KnownResults<HtmlString> Drawings { get; } = new(200);

    /// <summary>Cautions of guides, see <see cref="GuideCautions.OnPage"/>.</summary>
    public KnownResults<ImmutableArray<CautionGroup>> Cautioned { get; } = new(500);

    public MarkdownText Markdown { get; }

    public ImmutableArray<GuideEntry> Guides { get; }

    /// <summary>The sheet of a guide's recommended combination; made once, for its pages and its data, until it is let go.</summary>
    public Sheet SheetOf(GuideEntry guide) => _sheets.GetOrAdd(guide.Path, _ => new Lazy<Sheet>(() => Sheets.Build(guide.Recommended.AsSpan()))).Value;

    /// <summary>What other pages tell of a guide.</summary>
    public GuideBrief BriefOf(GuideEntry guide) => _briefs.GetOrAdd(
        guide.Path, _ => new Lazy<GuideBrief>(() => GuideBrief.Of(_sheets.TryGetValue(guide.Path, out var sheet) ? sheet.Value : Sheets.Build(guide.Recommended.AsSpan()), guide.Headline, Base))).Value;

    /// <summary>What a guide answers, position by position.</summary>
    public ImmutableArray<Answer?> AnswersOf(GuideEntry guide) => BriefOf(guide).Answers ?? GuideBrief.AnswersOf(Sheets.Answers([.. guide.Recommended]), Base);

    /// <summary>Takes what an earlier run noted of a guide for what there is to tell of it.</summary>
    public void Recall(GuideEntry guide, GuideBrief brief) => _briefs.TryAdd(guide.Path, new Lazy<GuideBrief>(brief));

    /// <summary>Lets a guide's sheet go when its own pages are made.</summary>
    public void Release(GuideEntry guide)
    {
        _ = BriefOf(guide);
        _sheets.TryRemove(guide.Path, out _);
    }

    /// <summary>The positions of a system, in the order of the guide.</summary>
    public ILookup<string, Position> PositionsOf { get; }

    /// <summary>Links to the sources of a guide by their numbers, of as many as the base has.</summary>
    public ImmutableArray<PageLink> SourceNumbers { get; }

    public ILookup<string, GuideEntry> GuidesOfChassis { get; }

    public ILookup<string, GuideEntry> GuidesOfDonor { get; }

    /// <summary>Path from the site's root of what a kind and an id name; null where nothing carries the id.</summary>
    public string? PathOf(string kind, string id) => kind switch
    {
        "article" when Base.Articles.Has(id) => SitePaths.Article(id),
        "page" when Base.Pages.Has(id) => SitePaths.Page(id),
        "position" when Base.Positions.Has(id) => SitePaths.Position(id),
        "connector" when Base.Connectors.Has(id) => SitePaths.Connector(id),
        "part" when Base.Parts.Has(id) => SitePaths.Part(id),
        "rule" when Base.Rules.Has(id) => SitePaths.Rule(id),
        "task" when Base.Tasks.Has(id) => SitePaths.Task(id),
        "term" when Base.Terms.Has(id) => SitePaths.Term(id),
        "source" when Base.Sources.Has(id) => SitePaths.Source(id),
        "chassis" when Base.Chassis.Has(id) => SitePaths.Chassis(id),
        "donor" when Base.Donors.Has(id) => SitePaths.Donor(id),
        _ => null,
    };

    /// <summary>What a link to a kind and an id is called; null where nothing carries the id.</summary>
    public PageLink? LinkTo(string kind, string id) => PathOf(kind, id) is { } path
        ? new PageLink(
            kind switch
            {
                "article" => Base.Articles[id].Title,
                "page" => Base.Pages[id].Title,
                "position" => Base.Positions[id].Title,
                "connector" => Base.Connectors[id].Title,
                "part" => Base.Parts[id].Title,
                "rule" => Base.Rules[id].Title,
                "task" => Base.Tasks[id].Title,
                "term" => Base.Terms[id].Term,
                "source" => Base.Sources[id].Title,
                "chassis" => Base.Chassis[id].Title,
                _ => Base.Donors[id].Title,
            },
            path)
        : null;

    /// <summary>
    /// The condition under which a region holds, for whoever stands in <paramref name="context"/>; null where it always
    /// does there. Many guides ask the same, so each is worked out once. One worker at a time.
    /// </summary>
    public GuideCondition? Condition(Region region, Region context)
    {
        if (!_conditions.TryGetValue((region, context), out var condition))
        {
            condition = Store.Implies(context, region)
                ? null
                : new GuideCondition($"if {Words.Describe(region, context)}");
            _conditions.Add((region, context), condition);
        }

        return condition;
    }

    /// <summary>What an option settles in a guide, see <see cref="Forced.ByOption"/>. One worker at a time.</summary>
    public ImmutableArray<KeyValuePair<string, string>> SettledBy(Region context, string choice, string option)
    {
        if (!_settled.TryGetValue((context, choice, option), out var settled))
        {
            settled = Forced.ByOption(Resolution, context, choice, option);
            _settled.Add((context, choice, option), settled);
        }

        return settled;
    }

    /// <summary>What an answer says in any guide, for pages as deep as a path: where it holds and its numbered sources are the guide's own.</summary>
    public GuideLine SaidOf(Rule rule, Answer answer, string path) => _said.GetOrAdd((answer, SitePaths.PrefixOf(path)), _ => new GuideLine
    {
        Verb = ShopWords.Verb(answer),
        VerbText = ShopWords.Sentence(answer),
        Parts = [.. new[] { answer.Part }.Concat(answer.Also).OfType<string>().Select(Part)],
        Cautions = Cautions(rule.Cautions, path),
        Steps = Inlines(answer.Steps, path),
        Notes = Block(answer.Notes, path),
        Mistakes = Inlines(answer.Mistakes, path),
        Articles = answer.Article is { } article && Base.Articles.Find(article) is { } found ? [Link(found)] : [],
        Reason = new GuideReason
        {
            Because = Block(rule.Because, path),
            Rule = Link(rule) with { Text = rule.Id },
            Standing = Standing(rule.Standing),
            StandingText = StandingText(rule.Standing),
            Checked = rule.Checked,
        },
    });

    public SiteFrame Frame(string path, string title, string description, params ReadOnlySpan<PageLink> above) => new()
    {
        Path = path,
        SiteTitle = Base.Settings.Title,
        PageTitle = title,
        Label = Inline(Base.Settings.Label, path),
        AsOf = Base.Settings.AsOf,
        Language = Base.Settings.Language,
        Description = description,
        Navigation = _navigation.Any(item => item.Href == path) ? [.. _navigation.Select(item => item with { IsCurrent = item.Href == path })] : _navigation,
        FooterLinks = _footer,
        Breadcrumb = path == SitePaths.Start ? [] : [new PageLink("Start", SitePaths.Start), .. above],
        Alternates = s_alternates,
        Canonical = SitePaths.Address(Base.Settings.BaseAddress, path) ?? "",
    };

    private IEnumerable<TextPage> OwnPages(bool inNavigation) =>
        Base.Pages.All.Where(page => page.InNavigation == inNavigation).OrderBy(page => page.Order).ThenBy(page => page.Id, StringComparer.Ordinal);

    public HtmlString Inline(string? text, string path) => Markdown.Inline(text, SitePaths.PrefixOf(path)).Html;

    /// <summary>The words alone of a text that contributors write as Markdown.</summary>
    public string Plain(string? text) => PlainWords.Of(Markdown.Inline(text, "").Html);

    public HtmlString Block(string? text, string path) => Markdown.Block(text, SitePaths.PrefixOf(path)).Html;

    public IReadOnlyList<HtmlString> Inlines(IEnumerable<string> texts, string path) => [.. texts.Select(text => Inline(text, path))];

    // One phrase: "Use the donor's gearbox, the donor's harness". What is no question in this car is left out.
    private string OptionTitles(Headline headline)
    {
        var titles = headline.Options.Where(option => option.Value != Choice.None).Select(option => OptionTitle(option.Key, option.Value));
        return string.Join(", ", titles.Select((title, at) => at == 0 ? title : InSentence.Lower(title)));
    }

    public string OptionTitle(string choice, string option) => Base.Choices.Find(choice)?.Option(option)?.Title ?? option;

    public static PageLink Link(Rule rule) => new(rule.Title, SitePaths.Rule(rule.Id));

    public static PageLink Link(Position position) => new(position.Title, SitePaths.Position(position.Id));

    public static PageLink Link(ChassisVariant chassis) => new(chassis.Title, SitePaths.Chassis(chassis.Id));

    public static PageLink Link(DonorVariant donor) => new(donor.Title, SitePaths.Donor(donor.Id));

    public static PageLink Link(Article article) => new(article.Title, SitePaths.Article(article.Id));

    public static PageLink Link(WorkTask task) => new(task.Title, SitePaths.Task(task.Id));

    public PageLink? ConnectorLink(string? id) => id is not null && Base.Connectors.Find(id) is { } connector ? new PageLink(connector.Title, SitePaths.Connector(id)) : null;

    public GuidePart Part(string id)
    {
        var part = Base.Parts.Find(id);
        return new GuidePart(new PageLink(part?.Title ?? id, SitePaths.Part(id)), part?.Price is { } price ? Money(price) : null, part is null ? null : ShopWords.From(part.From));
    }

    public IReadOnlyList<SourceLine> Sources(IEnumerable<string> ids) =>
    [
        .. ids.Distinct(StringComparer.Ordinal).Select(Base.Sources.Find).OfType<SourceEntry>().Select(source => new SourceLine(
            source.Id,
            source.Title,
            (source.Invented ? "invented " : "") + source.Kind.Replace('-', ' '),
            source.Date,
            source.By,
            source.About,
            new PageLink(source.Title, SitePaths.Source(source.Id)))),
    ];

    public IReadOnlyList<Models.Caution> Cautions(IEnumerable<Knowledge.Caution> cautions, string path) =>
        [.. cautions.Select(caution => new Models.Caution(ShopWords.CautionAbout(caution.About), Inline(caution.Text, path)))];

    public IReadOnlyList<NoteLine> Notes(Entity entity, string path) =>
        [.. entity.Notes.OrderByDescending(note => note.Date).Select(note => new NoteLine(note.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Inline(note.Text, path)))];

    /// <summary>The facts of an entity, in the order in which the vocabulary declares them.</summary>
    public IReadOnlyList<FactLine> Facts(string subject, FactHolder holder, string path) =>
    [
        .. Base.Vocabulary.Facts.All.Where(fact => fact.Subject == subject).OrderBy(fact => fact.Place)
            .Select(fact => (fact, value: holder.Fact(fact.Id)))
            .Where(pair => pair.value is not null)
            .Select(pair => new FactLine(pair.fact.Title, FactText(pair.fact, pair.value!.Value), Inline(pair.fact.HowToTell, path))),
    ];

    public string FactText(FactDeclaration fact, FactValue value) => fact.Type switch
    {
        FactType.OneOf => fact.TitleOf(value.Text),
        FactType.Number => new Quantity(value.Number, fact.Unit).ToString(),
        FactType.Reference => fact.To == "connector" ? Base.Connectors.Find(value.Text)?.Title ?? value.Text : Base.FactHolder(fact.To ?? "part", value.Text)?.Title ?? value.Text,
        _ => value.Text,
    };

    public string Money(Range3 range) => $"{Span(range)} {Base.Settings.Currency}";

    public static RangeText Range(Range3 range, string unit) => new(Number(range.Least), Number(range.Likely), Number(range.Most), unit);

    /// <summary>For sums, whose parts are estimates: decimals would claim more than is known.</summary>
    public static Range3 Whole(Range3 range) => new(Math.Round(range.Least), Math.Round(range.Likely), Math.Round(range.Most));

    public static RangeText Hours(Range3 range) => Range(range, range.Likely == 1 ? "hour" : "hours");

    public static string Span(Range3 range) => range.Least == range.Most ? Number(range.Likely) : $"{Number(range.Least)}–{Number(range.Most)}";

    // Most values are small and whole, and the runtime keeps the texts of those.
    public static string Number(decimal value) =>
        value is >= 0 and < 1000 && value == Math.Floor(value) ? ((int)value).ToString(CultureInfo.InvariantCulture) : value.ToString("#,0.##", CultureInfo.InvariantCulture);

    public static string Number(double value, string format = "#,0") => value.ToString(format, CultureInfo.InvariantCulture);

    public static string Grouped(BigInteger value) => value.ToString("N0", CultureInfo.InvariantCulture);

    public static Models.Standing Standing(string standing) => standing switch
    {
        "built" => Models.Standing.Built,
        "measured" => Models.Standing.Measured,
        _ => Models.Standing.Reported,
    };

    public static string StandingText(string standing) => standing switch
    {
        "built" => "built and driven",
        "measured" => "measured",
        _ => "reported",
    };

    // An answer is known by being the same one: to compare its texts would cost more than to write them.
    private sealed class BySame : IEqualityComparer<(Answer Answer, string Prefix)>
    {
        public bool Equals((Answer Answer, string Prefix) x, (Answer Answer, string Prefix) y) => ReferenceEquals(x.Answer, y.Answer) && x.Prefix == y.Prefix;

        public int GetHashCode((Answer Answer, string Prefix) obj) => HashCode.Combine(RuntimeHelpers.GetHashCode(obj.Answer), obj.Prefix.Length);
    }
}
