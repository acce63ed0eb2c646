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
        ImmutableArray<GuideExclusion> exclusions;
        ImmutableArray<GuideAdvice> advice;
        lock (site.Store)
        {
            var positions = new GuideSystems(site, guide);
            systems = positions.All();
            sources = [.. positions.Sources];
            var open = new GuideChoices(site, guide);
            choices = open.Choices();
            exclusions = open.Exclusions();
            advice = open.Advice();
        }

        var sheet = site.SheetOf(guide);
        var work = new GuideWork(site, sheet, guide.Path);
        var chassis = guide.Headline.Chassis;
        var donor = guide.Headline.Donor;
        var title = $"{donor.Title} into {chassis.Title}{(guide.Options.Length > 0 ? $": {InSentence.Lower(guide.Options)}" : "")}";
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
            Headline = [.. guide.Headline.Options.Select(option => new NamedValue(site.Base.Choices[option.Key].Title, site.OptionTitle(option.Key, option.Value)))],
            Summary = Summary(site, sheet, guide),
            Choices = choices,
            Exclusions = exclusions,
            Advice = advice,
            Systems = [.. systems.Where(system => site.Base.Systems.Any(one => one.Id == system.Id && one.Section.Length == 0))],
            Shopping = work.Shopping(),
            Gearbox = sheet.Gearbox is { } gearbox ? Gearbox(site, gearbox, guide.Path, Section("drive")) with { Ledgers = GuideLedgers.Of(sheet, "gearing") } : null,
            Belts = GuideBelts.Of(site, sheet),
            Wiring = GuideWirings.Of(site, sheet),
            Hoses = GuideHoses.Of(site, sheet),
            HoseCircuits = GuideHoses.Circuits(sheet),
            Ecu = sheet.Ecu is { } ecu ? EcuSection(site, ecu, guide.Path, Section("control")) with { Ledgers = GuideLedgers.Of(sheet, "fuel") } : null,
            Ledgers = GuideLedgers.Alone(sheet),
            Work = work.Phases(),
            WorkLedgers = GuideLedgers.Of(sheet, "torques"),
            WorkDrawing = work.Drawing(),
            WorkWords = work.Words(),
            Tools = work.Tools(),
            Consumables = work.Consumables(),
            Checks = work.OfPhase("before-start"),
            FirstStart = work.OfPhase("first-start"),
            Mistakes = [.. SheetTexts.Mistakes(sheet).Select(mistake => new GuideMistake(site.Inline(mistake.Text, guide.Path), mistake.Position is { } position ? new PageLink(position.Title, $"#at-{position.Id}") : null))],
            Cautions = site.Cautions(SheetTexts.Cautions(sheet, site.Base).Select(caution => caution.Caution), guide.Path),
            Confidence = Confidence(site, sheet, sources),
        };
        return page with { Frame = GuideMachines.Frame(site, guide, sheet, page) };
    }

    public static string DataPath(GuideEntry guide, string extension) => Path.ChangeExtension(guide.Path, extension);

    private static GuideSummary Summary(SiteKnowledge site, Sheet sheet, GuideEntry guide)
    {
        var answers = sheet.Answers.Select(answer => answer.Answer).OfType<Answer>().ToList();
        var decided = sheet.Choices.Where(choice => choice.Value != Choice.None && guide.Headline.Options.All(option => option.Key != choice.Key))
            .Select(choice => $"{InSentence.Lower(site.Base.Choices[choice.Key].Title)}: {InSentence.Lower(site.OptionTitle(choice.Key, choice.Value))}");
        var skill = sheet.Tasks.Select(task => task.Skill).DefaultIfEmpty("plain").MaxBy(ShopWords.SkillRank)!;
        var made = answers.Count(answer => answer.Source == "made");
        var hardest = sheet.Tasks.Where(task => task.Skill == "specialist").Select(task => InSentence.Lower(task.Title)).ToList();
        return new GuideSummary
        {
            Verdict = hardest.Count > 0 ? $"It can be built; a specialist is wanted for: {string.Join("; ", hardest)}."
                : made > 0 ? "It can be built, with some parts made to fit."
                : "It can be built with parts that bolt on.",
            VerdictWeight = hardest.Count > 0 ? Weight.Caution : Weight.Good,
            BasedOn = $"Worked out for the recommended choices ({string.Join("; ", decided)}).",
            Positions =
            [
                .. answers.GroupBy(AnswerWording.Verb).OrderBy(group => group.Key)
                    .Select(group => new GuideVerbCount((Verb)(int)group.Key, AnswerWording.Word(group.Key), group.Count())),
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

    private static string MoneyNote(SiteKnowledge site, Sheet sheet)
    {
        var (hours, money) = (sheet.Effort.Hours, sheet.Effort.Money);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Parts on the shopping list, prices of {site.Base.Settings.PriceDate}; the donor engine, wire and terminals are counted, hire of tools is not. Nine builds in ten should fall within the two ranges, if the single guesses are right; part of their error is taken as common to all (a rusty car holds up every job). Everything at its best or at its worst: {hours.OuterLeast:0} to {hours.OuterMost:0} hours, {money.OuterLeast:0} to {money.OuterMost:0} {site.Base.Settings.Currency}.");
    }

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

    private static GuideGearbox Gearbox(SiteKnowledge site, Gearbox gearbox, string path, IReadOnlyList<GuideSystem> systems) => new()
    {
        Title = gearbox.Title,
        About = site.Block(gearbox.About, path),
        Facts =
        [
            .. site.Facts("gearbox", gearbox, path).Select(fact => new NamedValue(fact.Title, fact.Value)),
            .. gearbox.OilLitres is { } litres ? [new NamedValue("Oil", $"{SiteKnowledge.Number(litres)} L{(gearbox.OilGrade.Length > 0 ? $", {gearbox.OilGrade}" : "")}")] : Array.Empty<NamedValue>(),
            .. gearbox.MassKg is { } mass ? [new NamedValue("Mass", $"{SiteKnowledge.Number(mass)} kg")] : Array.Empty<NamedValue>(),
        ],
        Systems = systems,
    };

    private static GuideEcu EcuSection(SiteKnowledge site, Ecu ecu, string path, IReadOnlyList<GuideSystem> systems) => new()
    {
        Title = ecu.Title,
        About = site.Block(ecu.About, path),
        Facts = [.. site.Facts("ecu", ecu, path).Select(fact => new NamedValue(fact.Title, fact.Value))],
        Systems = systems,
    };

    private static GuideConfidence Confidence(SiteKnowledge site, Sheet sheet, IEnumerable<string> sources)
    {
        var rules = sheet.Answers.Select(answer => answer.Rule).OfType<Rule>().ToList();
        var counts = rules.GroupBy(rule => SiteKnowledge.Standing(rule.Standing)).ToDictionary(group => group.Key, group => group.Count());
        int Count(Models.Standing standing) => counts.GetValueOrDefault(standing);
        var all = rules.Count.ToString(CultureInfo.InvariantCulture);
        return new GuideConfidence
        {
            Words = $"{Count(Models.Standing.Built).ToString(CultureInfo.InvariantCulture)} of {all} answers were built and driven, {Count(Models.Standing.Measured).ToString(CultureInfo.InvariantCulture)} measured, {Count(Models.Standing.Reported).ToString(CultureInfo.InvariantCulture)} only reported.",
            Standings = [.. new[] { Models.Standing.Built, Models.Standing.Measured, Models.Standing.Reported }.Select(standing => new GuideStandingCount(standing, SiteKnowledge.StandingText(standing.ToString().ToLowerInvariant()), Count(standing)))],
            Figures = rules.Select(rule => rule.Checked).OfType<string>().Min(StringComparer.Ordinal) is { } oldest ? [new NamedValue("Oldest check", oldest)] : [],
            Sources = site.Sources(sources),
        };
    }
}
