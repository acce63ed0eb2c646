using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>The pages of chassis and donors with what goes together.</summary>
internal sealed class VariantPages(SiteKnowledge site)
{
    public ChassisPage Chassis(ChassisVariant chassis)
    {
        var path = SitePaths.Chassis(chassis.Id);
        var guides = site.GuidesOfChassis[chassis.Id].ToList();
        return new ChassisPage
        {
            Frame = site.Frame(path, chassis.Title, $"What goes into {chassis.Title}, and what it takes."),
            Title = chassis.Title,
            Years = Years(chassis),
            Detail = string.Join(", ", new[] { chassis.Maker, chassis.Trim }.Where(text => text.Length > 0)),
            About = site.Block(chassis.About, path),
            Facts = site.Facts("chassis", chassis, path),
            Donors = [.. guides.Select(guide => Row(guide, SiteKnowledge.Link(guide.Headline.Donor), guide.Headline.Donor))],
            NotBuildable = [.. site.Base.Donors.All.Where(donor => guides.All(guide => guide.Headline.Donor.Id != donor.Id)).Select(donor => NotBuildable(chassis, donor, SiteKnowledge.Link(donor), path))],
            Siblings = [.. site.Base.Chassis.All.Where(other => other.Family == chassis.Family && other.Id != chassis.Id).Select(SiteKnowledge.Link)],
            Devices = [.. Devices(chassis)],
            Notes = site.Notes(chassis, path),
        };
    }

    public DonorPage Donor(DonorVariant donor)
    {
        var path = SitePaths.Donor(donor.Id);
        var guides = site.GuidesOfDonor[donor.Id].ToList();
        return new DonorPage
        {
            Frame = site.Frame(path, donor.Title, $"Where {donor.Title} goes, and what it takes."),
            Title = donor.Title,
            Years = Years(donor),
            Detail = donor.Maker,
            About = site.Block(donor.About, path),
            Facts = site.Facts("donor", donor, path),
            Chassis = [.. guides.Select(guide => Row(guide, SiteKnowledge.Link(guide.Headline.Chassis), guide.Headline.Donor))],
            NotBuildable = [.. site.Base.Chassis.All.Where(chassis => guides.All(guide => guide.Headline.Chassis.Id != chassis.Id)).Select(chassis => NotBuildable(chassis, donor, SiteKnowledge.Link(chassis), path))],
            Siblings = [.. site.Base.Donors.All.Where(other => other.Family == donor.Family && other.Id != donor.Id).Select(SiteKnowledge.Link)],
            Devices = [.. Devices(donor)],
            Notes = site.Notes(donor, path),
        };
    }

    public static string Years(Variant variant) => variant.Years.ToString();

    private ComparisonRow Row(GuideEntry guide, PageLink other, DonorVariant donor)
    {
        var sheet = site.SheetOf(guide);
        var answers = sheet.Answers.Select(answer => answer.Answer).OfType<Answer>().ToList();
        var standings = sheet.Answers.Select(answer => answer.Rule?.Standing).OfType<string>().ToList();
        return new ComparisonRow
        {
            Other = other,
            Guide = new PageLink(guide.Options.Length > 0 ? guide.Options : "Guide", guide.Path),
            Power = donor.Fact("power") is { } power ? $"{SiteKnowledge.Number(power.Number)} kW" : "",
            Hours = SiteKnowledge.Span(SiteKnowledge.Whole(sheet.Hours)),
            Money = SiteKnowledge.Span(SiteKnowledge.Whole(sheet.Money)),
            Skill = ShopWords.Skill(sheet.Tasks.Select(task => task.Skill).DefaultIfEmpty("plain").MaxBy(ShopWords.SkillRank)!),
            Changes = SiteKnowledge.Number(answers.Count(answer => AnswerWording.Verb(answer) is AnswerVerb.Buy or AnswerVerb.Make or AnswerVerb.Modify)),
            PlugsStraightIn = sheet.Wiring is { } wiring ? $"{SiteKnowledge.Number(wiring.Counts.StraightIn)} of {SiteKnowledge.Number(wiring.Plugs.Length - wiring.Counts.Capped)}" : "",
            Standing = standings.Count == 0 ? "" : $"{SiteKnowledge.Number(Math.Round(100m * standings.Count(standing => standing == "built") / standings.Count))} % built",
        };
    }

    private NotBuildable NotBuildable(ChassisVariant chassis, DonorVariant donor, PageLink other, string path)
    {
        lock (site.Store)
        {
            return new NotBuildable(
                other,
                [.. Reasons(chassis, donor).Select(rule => new ExclusionReason(site.Inline(rule.ExcludeText.Length > 0 ? rule.ExcludeText : rule.Because, path), SiteKnowledge.Link(rule)))],
                [.. new NearestWays(site).OfPair(chassis, donor, Region.All)]);
        }
    }

    /// <summary>The rule that excludes every combination of a chassis and a donor; null where it takes several.</summary>
    public Rule? Reason(ChassisVariant chassis, DonorVariant donor)
    {
        lock (site.Store)
        {
            return Reasons(chassis, donor) is [var only] ? only : null;
        }
    }

    /// <summary>The first rule that excludes a chassis with a donor by itself, or rules none of which can be spared to do it together.</summary>
    private List<Rule> Reasons(ChassisVariant chassis, DonorVariant donor)
    {
        var store = site.Store;
        var pair = PairSpace.Domain(site.Resolution, chassis.Id, donor.Id);
        var touching = site.Resolution.Exclusions.Where(exclusion => store.Intersects(pair, exclusion.Region)).ToList();
        if (touching.Find(exclusion => store.Implies(pair, exclusion.Region)) is { } alone)
        {
            return [alone.Rule];
        }

        foreach (var exclusion in touching.ToList())
        {
            var others = touching.Where(other => other != exclusion).ToList();
            if (store.Implies(pair, store.OrAll(others.Select(other => other.Region))))
            {
                touching = others;
            }
        }

        return touching.ConvertAll(exclusion => exclusion.Rule);
    }

    private IEnumerable<OwnDevice> Devices(Variant variant) =>
        variant.Devices.OrderBy(device => device.Role, StringComparer.Ordinal).Select(device => new OwnDevice(
            device.Title ?? site.Base.Vocabulary.Devices.Find(device.Role)?.Title ?? device.Role,
            site.ConnectorLink(device.Connector),
            [.. device.Pins.Select(pin => new GuidePin(pin.Cavity, site.Base.Vocabulary.Signals.Find(pin.Signal)?.Title ?? pin.Signal))]));
}
