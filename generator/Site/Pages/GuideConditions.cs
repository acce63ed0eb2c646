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
    private readonly Region _point;

    /// <param name="held">What is taken as given.</param>
    /// <param name="point">The same as a region.</param>
    private GuideConditions(SiteKnowledge site, (int Level, int Value)[] held, Region point, Region context, Region here)
    {
        _point = point;
        _site = site;
        _held = held;
        _context = context;
        _here = here;
    }

    /// <summary>For who stands in the guide's buildable combinations.</summary>
    public static GuideConditions Within(SiteKnowledge site, GuideEntry guide)
    {
        var held = Held(site, guide);
        var point = site.Store.Point(held);
        return new GuideConditions(site, held, point, site.Store.Slice(guide.Headline.Slice, point), guide.Headline.Slice);
    }

    /// <summary>For who stands in its combinations, those among them that cannot be built too.</summary>
    public static GuideConditions Beyond(SiteKnowledge site, GuideEntry guide)
    {
        var (held, domain) = (Held(site, guide), site.Resolution.Domain);
        var point = site.Store.Point(held);
        return new GuideConditions(site, held, point, site.Store.Slice(domain, point), site.Store.And(domain, point));
    }

    private static (int Level, int Value)[] Held(SiteKnowledge site, GuideEntry guide)
    {
        var space = site.Resolution.Space;
        return [.. guide.Headline.Options.Select(option => space.LevelOf(option.Key)).Append(space.Chassis).Append(space.Donor).Select(level => (level, guide.Recommended[level]))];
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
    public GuideCondition? Of(Region region) => _site.Store.Implies(_here, region) ? null : _site.Condition(_site.Store.And(_site.Store.Slice(region, _point), _context), _context);
}
