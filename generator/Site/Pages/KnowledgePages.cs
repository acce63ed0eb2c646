using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Site.Pages;

/// <summary>The pages of positions, rules and connectors: the knowledge itself, entity by entity.</summary>
internal sealed class KnowledgePages(SiteKnowledge site)
{
    // A rule's page names the guides it speaks in up to this many; the count is always given.
    private const int MostGuides = 24;

    public PositionPage Position(Position position)
    {
        var path = SitePaths.Position(position.Id);
        var store = site.Store;
        var resolution = site.Resolution;
        var applies = resolution.Applies(position.Id);
        var asked = resolution.At(position.Id).SelectMany(standing => standing.Rule.When.FactsAsked()).ToHashSet();
        return new PositionPage
        {
            Frame = site.Frame(path, position.Title, $"{position.Title}: what it is and every answer given.", new PageLink("Positions", SitePaths.Positions)),
            Title = position.Title,
            System = SystemTitle(position),
            About = site.Block(position.About, path),
            Applies = store.Implies(resolution.Buildable, applies) ? "" : ShopWords.Capital(site.Words.Describe(applies)),
            Safety = position.Safety is { } safety ? ShopWords.CautionAbout(safety) : "",
            Answers =
            [
                .. resolution.At(position.Id).Select(standing => (standing, region: store.And(standing.Region, resolution.Buildable))).Where(pair => !pair.region.IsNone)
                    .Select(pair => new PositionAnswer(
                        ShopWords.Verb(pair.standing.Answer),
                        ShopWords.Sentence(pair.standing.Answer),
                        ShopWords.Capital(site.Words.Describe(pair.region, store.And(resolution.Buildable, applies), pair.standing.Rule.When, asked)),
                        SiteKnowledge.Grouped(store.Count(pair.region)),
                        SiteKnowledge.Link(pair.standing.Rule),
                        SiteKnowledge.Standing(pair.standing.Rule.Standing),
                        SiteKnowledge.StandingText(pair.standing.Rule.Standing),
                        [.. new[] { pair.standing.Answer.Part }.Concat(pair.standing.Answer.Also).OfType<string>().Select(site.Part)])),
            ],
            Articles = [.. site.Base.Articles.All.Where(article => article.Positions.Any(named => named.Id == position.Id)).Select(SiteKnowledge.Link)],
            Tasks = [.. site.Base.Tasks.All.Where(task => task.Needs.Any(named => named.Id == position.Id)).Select(SiteKnowledge.Link)],
        };
    }

    public RulePage Rule(Rule rule)
    {
        var path = SitePaths.Rule(rule.Id);
        var store = site.Store;
        var resolution = site.Resolution;
        var restricts = rule.Excludes || rule.Requires is not null;
        var where = restricts ? resolution.Exclusions.First(exclusion => exclusion.Rule.Id == rule.Id).Region : store.And(site.Sheets.Speaks(rule), resolution.Buildable);
        var whole = restricts ? resolution.Domain : resolution.Buildable;
        var guides = restricts ? [] : site.Guides.Where(guide => store.Intersects(guide.Headline.Slice, where)).ToList();
        return new RulePage
        {
            Frame = site.Frame(path, rule.Title, rule.Title, new PageLink("Rules", SitePaths.Rules)),
            Id = rule.Id,
            Title = rule.Title,
            System = rule.Answers.IsEmpty ? "" : site.Base.Positions.Find(rule.Answers[0].Position) is { } position ? SystemTitle(position) : "",
            Place = rule.Place.ToString(),
            When = rule.When == Condition.Always ? [] : [ShopWords.Capital(site.Words.Describe(resolution.When(rule), resolution.Domain, rule.When, ImmutableHashSet<FactName>.Empty))],
            Combinations = SiteKnowledge.Grouped(store.Count(where)),
            CombinationsShare = Share(store.Count(where), store.Count(whole)),
            Answers = [.. rule.Answers.Where(answer => site.Base.Positions.Has(answer.Position)).Select(answer => Answer(answer, path))],
            Excludes = rule.Excludes ? [site.Inline(rule.WhyExcluded, path)] : [],
            Requires = rule.Requires is { } required ? [ShopWords.Capital(site.Words.Describe(resolution.RegionOf(required), resolution.Domain))] : [],
            Values =
            [
                .. rule.Values.Select(value => new GuideStatedValue(
                    ComputedValues.Find(value.Name)?.Title ?? value.Name,
                    new Quantity(value.Value, ComputedValues.UnitOf(value.Name)).ToString(),
                    "",
                    value.WrittenDown ? "written down from the worksheet, not measured" : "held against the computed one in every guide",
                    Weight.Plain)),
            ],
            Tasks = [.. rule.Tasks.Select(site.Base.Tasks.Find).OfType<WorkTask>().Select(SiteKnowledge.Link)],
            Cautions = site.Cautions(rule.Cautions, path),
            Mistakes = site.Inlines(rule.Mistakes, path),
            Advice = site.Inlines(rule.Advises.Select(advice => advice.Text), path),
            Because = site.Block(rule.Because, path),
            Standing = SiteKnowledge.Standing(rule.Standing),
            StandingText = SiteKnowledge.StandingText(rule.Standing),
            Checked = rule.Checked,
            Sources = site.Sources(rule.Sources),
            Overrides = [.. rule.Overrides.Select(named => site.Base.Rules.Find(named.Id)).OfType<Rule>().Select(SiteKnowledge.Link)],
            OverriddenBy = [.. resolution.Overriders.GetValueOrDefault(rule.Id, []).Select(SiteKnowledge.Link)],
            Guides = [.. guides.Take(MostGuides).Select(guide => new PageLink($"{guide.Headline.Donor.Title} into {guide.Headline.Chassis.Title}, {InSentence.Lower(guide.Options)}", guide.Path))],
            Notes = site.Notes(rule, path),
        };
    }

    public ConnectorPage Connector(Connector connector)
    {
        var path = SitePaths.Connector(connector.Id);
        return new ConnectorPage
        {
            Frame = site.Frame(path, connector.Title, $"{connector.Title}: face, cavities and where it is found.", new PageLink("Connectors", SitePaths.Connectors)),
            Title = connector.Title,
            About = site.Block(connector.About, path),
            Face = new HtmlString(ConnectorFace.Svg("face", connector.Title, connector.Rows)),
            FaceText = $"{connector.Cavities.Count().ToString(CultureInfo.InvariantCulture)} cavities in {(connector.Rows.Length == 1 ? "one row" : $"{connector.Rows.Length.ToString(CultureInfo.InvariantCulture)} rows")}: {string.Join("; ", connector.Rows.Select(row => string.Join(", ", row)))}.",
            Facts = [.. Facts(connector)],
            Mates = [.. connector.Mates.Select(named => site.ConnectorLink(named.Id)).OfType<PageLink>()],
            Uses = [.. Uses(connector.Id)],
        };
    }

    private static IEnumerable<NamedValue> Facts(Connector connector)
    {
        yield return new NamedValue("Terminal", WiringWords.Terminal(connector.Terminal));
        yield return new NamedValue("Sealed", connector.Sealed ? "yes" : "no");
        if (connector.Keying.Length > 0)
        {
            yield return new NamedValue("Keying", connector.Keying);
        }

        if (connector is { WireFromMm2: { } from, WireToMm2: { } to })
        {
            yield return new NamedValue("Wire", $"{SiteKnowledge.Number(from)}–{SiteKnowledge.Number(to)} mm²");
        }

        if (connector.MaxCurrentA is { } current)
        {
            yield return new NamedValue("Current, at most", $"{SiteKnowledge.Number(current)} A");
        }
    }

    private IEnumerable<ConnectorUse> Uses(string id)
    {
        var found = new List<(PageLink Owner, string Role, ImmutableArray<PinEntry> Pins)>();
        foreach (var variant in site.Base.Chassis.All.Cast<Variant>().Concat(site.Base.Donors.All))
        {
            var owner = variant is ChassisVariant chassis ? SiteKnowledge.Link(chassis) : SiteKnowledge.Link((DonorVariant)variant);
            found.AddRange(variant.Devices.Where(device => device.Connector == id).Select(device => (owner, DeviceTitle(device.Role), device.Pins)));
            found.AddRange((variant.Harness?.Plugs ?? []).Where(plug => plug.Value.Connector == id).Select(plug => (owner, $"harness plug for {InSentence.Lower(DeviceTitle(plug.Key))}", plug.Value.Pins)));
        }

        found.AddRange(site.Base.Ecus.All.SelectMany(ecu => ecu.Plugs.Where(plug => plug.Value.Connector == id).Select(plug => (new PageLink(ecu.Title, SitePaths.Connector(id)), $"plug {plug.Key}", plug.Value.Pins))));

        // Variants of one family mostly carry the same plug: it is told once, for the first of them.
        return found.DistinctBy(use => (use.Role, string.Join(',', use.Pins.Select(pin => $"{pin.Cavity}={pin.Signal}={pin.Colour}"))))
            .Select(use => new ConnectorUse(
                use.Owner,
                use.Role,
                [.. use.Pins.Select(pin => new GuidePin(pin.Cavity, site.Base.Vocabulary.Signals.Find(pin.Signal)?.Title ?? pin.Signal, "", new Models.WireColour(pin.Colour), $"{SiteKnowledge.Number(pin.SizeMm2)} mm²"))]));
    }

    private RuleAnswer Answer(Answer answer, string path) => new()
    {
        Position = SiteKnowledge.Link(site.Base.Positions[answer.Position]),
        Verb = ShopWords.Verb(answer),
        VerbText = ShopWords.Sentence(answer),
        Parts = [.. new[] { answer.Part }.Concat(answer.Also).OfType<string>().Select(site.Part)],
        Steps = site.Inlines(answer.Steps, path),
        Notes = site.Block(answer.Notes, path),
    };

    private string SystemTitle(Position position) => site.Base.Systems.FirstOrDefault(system => system.Id == position.System)?.Title ?? position.System;

    private string DeviceTitle(string role) => site.Base.Vocabulary.Devices.Find(role)?.Title ?? role;

    private static string Share(System.Numerics.BigInteger part, System.Numerics.BigInteger whole) =>
        whole.IsZero ? "" : $"{((double)(part * 1000 / whole) / 10).ToString("0.#", CultureInfo.InvariantCulture)} %";
}
