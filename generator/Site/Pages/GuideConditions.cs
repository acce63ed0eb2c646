using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>
/// Where, within one guide, a line holds. The guide's chassis, donor and headline options are taken as given, so only
/// the choices that are left occur.
/// </summary>
internal sealed class GuideConditions
{
    private readonly SiteKnowledge _site;
    private readonly (int Level, int Value)[] _held;
    private readonly Region _context;
    private readonly Region _here;

    /// <param name="within">Part of the space that the reader stands in, such as the guide's buildable combinations.</param>
    public GuideConditions(SiteKnowledge site, GuideEntry guide, Region within)
    {
        var space = site.Resolution.Space;
        var levels = guide.Headline.Options.Select(option => space.LevelOf(option.Key)).Append(space.Chassis).Append(space.Donor);
        _site = site;
        _held = [.. levels.Select(level => (level, guide.Recommended[level]))];
        _context = site.Store.Slice(within, _held);
        _here = site.Store.And(within, site.Store.Product(_held.Select(one => new Constraint(one.Level, ValueSet.Of(site.Store.Variables[one.Level].Size, one.Value)))));
    }

    /// <summary>What the reader stands in, with what is held taken as given: many guides have the same.</summary>
    public Region Context => _context;

    /// <summary>Whether a region holds somewhere in the guide.</summary>
    /// <remarks>Most regions of a base are of other vehicles, which is seen from the box around them.</remarks>
    public bool Meets(Region region)
    {
        var box = _site.Store.BoundsOf(region);
        foreach (var (level, value) in _held)
        {
            if (!box.Has(level, value))
            {
                return false;
            }
        }

        return _site.Store.Intersects(_here, region);
    }

    /// <summary>null where the region holds in the whole guide.</summary>
    public GuideCondition? Of(Region region) => _site.Store.Implies(_here, region) ? null : _site.Condition(_site.Store.And(_site.Store.Slice(region, _held), _context), _context);
}
