using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>Sheet and space → the page of one guide.</summary>
internal static class GuidePages
{
    /// <summary>
    /// The regions belong to one store that grows while it is asked, so that part is done by one worker at a time;
    /// what follows (worksheets, drawings, text) is not.
    /// </summary>
    public static GuidePage Build(SiteKnowledge site, GuideEntry guide)
    {
        ImmutableArray<GuideSystem> systems;
        ImmutableArray<string> sources;
        ImmutableArray<GuideChoice> choices;
        ImmutableArray<GuideAdvice> advice;
        int exclusions;
        lock (site.Store)
        {
            var conditions = GuideConditions.Within(site, guide);
            var positions = new GuideSystems(site, guide, conditions);
            systems = positions.All();
            sources = [.. positions.Sources];
            var open = new GuideChoices(site, guide, conditions);
            choices = open.Choices();
            exclusions = choices.IsEmpty ? 0 : GuideChoices.Exclusions(site, guide, guide.Path).Length;
            advice = open.Advice();
        }

        var sheet = site.SheetOf(guide);
        var work = new GuideWork(site, sheet, guide.Path, SitePaths.Bench(guide.Path, BenchSheets.Work));
        var chassis = guide.Headline.Chassis;
        var donor = guide.Headline.Donor;
        var title = Title(guide);
        var figures = SitePaths.Bench(guide.Path, BenchSheets.Figures);
        var mistakes = SheetTexts.Mistakes(sheet).ToLookup(mistake => mistake.Position is not null);
        ImmutableArray<GuideSystem> Section(string section) => [.. systems.Where(system => site.Base.Systems.Any(one => one.Id == system.Id && one.Section == section))];
        var page = new GuidePage
        {
            Frame = site.Frame(guide.Path, title, $"What it takes to put {donor.Title} into {chassis.Title}.", SiteKnowledge.Link(chassis)) with
            {
                Downloads = [new PageLink("JSON", DataPath(guide, "json")), new PageLink("CSV", DataPath(guide, "csv"))],
            },
            Title = title,
            Chassis = SiteKnowledge.Link(chassis),
            Donor = SiteKnowledge.Link(donor),
            Headline = Headline(site, guide),
            Summary = Summary(site, sheet, guide),
            Sheets = BenchSheets.Links(site, guide),
            Choices = choices,
            Otherwise = choices.IsEmpty ? null : new PageLink(
                exclusions == 0 ? "What other options change, line by line" : "What other options change, and which do not go together",
                SitePaths.Bench(guide.Path, BenchSheets.Otherwise)),
            Switches = choices.IsEmpty ? null : GuideVariants.Path(guide),
            Advice = advice,
            Systems = Section(""),
            Shopping = work.Sums(SitePaths.Bench(guide.Path, BenchSheets.Shopping)),
            Gearbox = sheet.Gearbox is { } gearbox ? new GuideGearbox { Title = gearbox.Title, About = site.Block(gearbox.About, guide.Path), Figures = GuideLedgers.Short(sheet, "gearing", figures), Systems = Section("drive") } : null,
            Belts = GuideBelts.Of(sheet),
            Wiring = GuideWirings.Of(site, sheet),
            Hoses = GuideHoses.Sums(sheet),
            Ecu = sheet.Ecu is { } ecu ? new GuideEcu { Title = ecu.Title, About = site.Block(ecu.About, guide.Path), Figures = GuideLedgers.Short(sheet, "fuel", figures), Systems = Section("control") } : null,
            Figures = GuideLedgers.Alone(sheet, figures),
            Work = work.Lines(),
            Checks = work.OfPhase("before-start", alone: true),
            FirstStart = work.OfPhase("first-start", alone: true),
            Mistakes = [.. mistakes[false].Select(mistake => site.Inline(mistake.Text, guide.Path))],
            MistakesAbove = mistakes[true].Count() switch
            {
                0 => "",
                1 => "One mistake stands above, beside the line that it spoils.",
                var count => string.Create(CultureInfo.InvariantCulture, $"{count} mistakes stand above, each beside the line that it spoils."),
            },
            Cautions = GuideCautions.OnPage(site, sheet, guide.Path),
            Confidence = Confidence(site, sheet, sources),
        };
        return page with { Frame = GuideMachines.Frame(site, guide, sheet, page) };
    }

    /// <summary>The combination in words.</summary>
    public static string Title(GuideEntry guide) =>
        $"{guide.Headline.Donor.Title} into {guide.Headline.Chassis.Title}{(guide.Options.Length > 0 ? $": {InSentence.Lower(guide.Options)}" : "")}";

    public static ImmutableArray<NamedValue> Headline(SiteKnowledge site, GuideEntry guide) =>
        [.. guide.Headline.Options.Where(option => option.Value != Choice.None).Select(option => new NamedValue(site.Base.Choices[option.Key].Title, site.OptionTitle(option.Key, option.Value)))];

    /// <summary>The choices besides the headline's that a guide's numbers are worked out for.</summary>
    public static ImmutableArray<NamedValue> Decided(SiteKnowledge site, Sheet sheet, GuideEntry guide) =>
    [
        .. sheet.Choices.Where(choice => choice.Value != Choice.None && guide.Headline.Options.All(option => option.Key != choice.Key))
            .Select(choice => new NamedValue(site.Base.Choices[choice.Key].Title, site.OptionTitle(choice.Key, choice.Value))),
    ];

    public static string DataPath(GuideEntry guide, string extension) => Path.ChangeExtension(guide.Path, extension);

    public static GuideSummary Summary(SiteKnowledge site, Sheet sheet, GuideEntry guide, string choices = "the recommended choices")
    {
        var answers = sheet.Answers.Select(answer => answer.Answer).OfType<Answer>().ToList();
        var decided = Decided(site, sheet, guide).Select(choice => $"{InSentence.Lower(choice.Name)}: {InSentence.Lower(choice.Value)}");
        var skill = sheet.Tasks.Select(task => task.Skill).DefaultIfEmpty("plain").MaxBy(ShopWords.SkillRank)!;
        var made = answers.Count(answer => answer.Source == "made");
        var hardest = sheet.Tasks.Where(task => task.Skill == "specialist").Select(task => InSentence.Lower(task.Title)).ToList();
        return new GuideSummary
        {
            Verdict = hardest.Count > 0 ? $"It can be built; a specialist is wanted for: {string.Join("; ", hardest)}."
                : made > 0 ? "It can be built, with some parts made to fit."
                : "It can be built with parts that bolt on.",
            VerdictWeight = hardest.Count > 0 ? Weight.Caution : Weight.Good,
            BasedOn = $"Worked out for {choices} ({string.Join("; ", decided)}).",
            Positions =
            [
                .. answers.CountBy(AnswerWording.Verb).OrderBy(count => count.Key)
                    .Select(count => new GuideVerbCount((Verb)(int)count.Key, AnswerWording.Word(count.Key), count.Value)),
            ],
            Plugs = GuideWirings.Counts(sheet),
            Belts = GuideBelts.Short(sheet),
            Hours = SiteKnowledge.Hours(SiteKnowledge.Whole(sheet.Hours)),
            Money = SiteKnowledge.Range(SiteKnowledge.Whole(sheet.Money), site.Base.Settings.Currency),
            MoneyNote = MoneyNote(site, sheet),
            Skill = ShopWords.Capital(ShopWords.Skill(skill)),
            People = sheet.Tasks.Any(task => task.People > 1) ? "Two people for some of the work" : "One person",
            Figures = [new NamedValue("Days", SiteKnowledge.Number(sheet.Effort.DaysAlone), string.Create(CultureInfo.InvariantCulture, $"for one person at {site.Base.Settings.Effort.HoursADay:0.#} hours a day; {sheet.Effort.DaysTogether} for two")), .. Figures(sheet)],
        };
    }

    public static string MoneyNote(SiteKnowledge site, Sheet sheet)
    {
        var (hours, money) = (sheet.Effort.Hours, sheet.Effort.Money);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Parts on the shopping list, prices of {site.Base.Settings.PriceDate}; the donor engine is counted{Wire(sheet)}, hire of tools is not. Nine builds in ten should fall within both ranges if the guesses are right. At best or at worst: {hours.OuterLeast:0} to {hours.OuterMost:0} hours, {money.OuterLeast:#,0} to {money.OuterMost:#,0} {site.Base.Settings.Currency}.");
    }

    // What a base has no goods for is bought all the same, and nobody may think that it is in the sum.
    private static string Wire(Sheet sheet) => (sheet.Wiring?.Purchases ?? []) is not { Length: > 0 } purchases ? ""
        : purchases.All(purchase => purchase.Part is not null) ? " with wire and terminals"
        : purchases.Any(purchase => purchase.Part is not null) ? ", of wire and terminals only what is on the list"
        : ", wire and terminals are not";

    private static ImmutableArray<NamedValue> Figures(Sheet sheet)
    {
        var figures = ImmutableArray.CreateBuilder<NamedValue>();
        if (sheet.PowerKw is { } power && sheet.PowerBeforeKw is { } before and > 0)
        {
            figures.Add(new NamedValue("Power", $"{SiteKnowledge.Number(power)} kW", $"{SiteKnowledge.Number(before)} kW as it was: {More(power / before)}"));
        }

        return figures.ToImmutable();
    }

    private static string More(decimal ratio) => Math.Round(100 * (ratio - 1)) switch
    {
        0 => "the same",
        > 0 and var more => $"{SiteKnowledge.Number(more)} % more",
        var less => $"{SiteKnowledge.Number(-less)} % less",
    };

    private static GuideConfidence Confidence(SiteKnowledge site, Sheet sheet, IEnumerable<string> sources)
    {
        var rules = sheet.Answers.Select(answer => answer.Rule).OfType<Rule>().ToList();
        int Count(Models.Standing standing) => rules.Count(rule => SiteKnowledge.Standing(rule.Standing) == standing);
        var words = string.Create(
            CultureInfo.InvariantCulture,
            $"{Count(Models.Standing.Built)} of {rules.Count} answers were built and driven, {Count(Models.Standing.Measured)} measured, {Count(Models.Standing.Reported)} only reported.");
        var oldest = rules.Select(rule => rule.Checked).OfType<string>().Min(StringComparer.Ordinal);
        return site.Pieces.Of(new MadeFrom(["confidence", words, oldest, .. sources]), () => new GuideConfidence
        {
            Words = words,
            Figures = oldest is null ? [] : [new NamedValue("Oldest check", oldest)],
            Sources = site.Sources(sources),
        });
    }
}
