using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>The pages of chassis and donors with what goes together.</summary>
internal sealed class VariantPages(SiteKnowledge site, ClosedWays closed)
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
            Donors = Comparisons.Of(site, guides, guide => guide.Headline.Donor),
            Differ = guides.Count > 1 ? new PageLink("What differs between them, position by position", SitePaths.Differ(chassis.Id)) : null,
            Which = new PageLink("Not sure that it is yours? Tell it by a few questions", $"{SitePaths.WhichChassis}#{WhichPages.Anchor(chassis)}"),
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
            Chassis = Comparisons.Of(site, guides, guide => guide.Headline.Chassis),
            Which = new PageLink("Not sure that it is yours? Tell it by a few questions", $"{SitePaths.WhichDonor}#{WhichPages.Anchor(donor)}"),
            NotBuildable = [.. site.Base.Chassis.All.Where(chassis => guides.All(guide => guide.Headline.Chassis.Id != chassis.Id)).Select(chassis => NotBuildable(chassis, donor, SiteKnowledge.Link(chassis), path))],
            Siblings = [.. site.Base.Donors.All.Where(other => other.Family == donor.Family && other.Id != donor.Id).Select(SiteKnowledge.Link)],
            Devices = [.. Devices(donor)],
            Notes = site.Notes(donor, path),
        };
    }

    public static string Years(Variant variant) => variant.Years.ToString();

    private NotBuildable NotBuildable(ChassisVariant chassis, DonorVariant donor, PageLink other, string path)
    {
        var reasons = closed.OfPair(chassis.Id, donor.Id).Select(rule => new ExclusionReason(site.Inline(rule.WhyExcluded, path), SiteKnowledge.Link(rule)));
        lock (site.Store)
        {
            return new NotBuildable(other, [.. reasons], [.. new NearestWays(site).OfPair(chassis, donor, Region.All)]);
        }
    }

    private IEnumerable<OwnDevice> Devices(Variant variant) =>
        variant.Devices.OrderBy(device => device.Role, StringComparer.Ordinal).Select(device => new OwnDevice(
            device.Title ?? site.Base.Vocabulary.Devices.Find(device.Role)?.Title ?? device.Role,
            site.ConnectorLink(device.Connector),
            [.. device.Pins.Select(pin => new GuidePin(pin.Cavity, site.Base.Vocabulary.Signals.Find(pin.Signal)?.Title ?? pin.Signal))]));
}
