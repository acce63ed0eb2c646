using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Findings;

/// <summary>A port as some combinations have it; the region may reach beyond what can be built.</summary>
internal sealed record PortPiece(PortRole Role, PortOrigin Origin, PortEntry Entry, Region Region);

/// <summary>
/// Where which ports are fitted and which hoses join them. The space is cut by the answers at the positions that ports and
/// hoses name, and by the variants whose ports differ; combinations are not looked at one by one.
/// </summary>
internal sealed class FittedHoses
{
    private readonly Resolution _resolution;
    private readonly RegionStore _store;
    private readonly KnowledgeBase _kb;
    private readonly Dictionary<string, ImmutableArray<PortPiece>> _pieces = new(StringComparer.Ordinal);

    public FittedHoses(Resolution resolution)
    {
        _resolution = resolution;
        _store = resolution.Store;
        _kb = resolution.Space.Base;
        Assembly = new HoseAssembly(_kb);
        Ports = [.. _kb.Vocabulary.Ports.All.OrderBy(port => port.Order)];
        Hoses = [.. _kb.Vocabulary.Hoses.All.Where(hose => hose.From != hose.To).OrderBy(hose => hose.Order)];
        foreach (var port in Ports)
        {
            _pieces.Add(port.Id, [.. Origins(port).SelectMany(one => Entries(port, one.Origin, one.Region))]);
        }
    }

    public HoseAssembly Assembly { get; }

    public ImmutableArray<PortRole> Ports { get; }

    public ImmutableArray<HoseRole> Hoses { get; }

    /// <summary>The ports that a role gets; empty for a role that is not declared.</summary>
    public ImmutableArray<PortPiece> Pieces(string port) => _pieces.GetValueOrDefault(port, []);

    public IEnumerable<HoseRole> HosesAt(string port) => Hoses.Where(hose => hose.From == port || hose.To == port);

    public Region Fitted(string port) => _store.OrAll(Pieces(port).Select(piece => piece.Region));

    /// <summary>The answers at a hose's position that leave the hose in place; null where it has none and is always there.</summary>
    public IEnumerable<(Answer? Answer, Region Region)> Answers(HoseRole hose)
    {
        if (hose.Position is null)
        {
            return [(null, Region.All)];
        }

        return Standing(hose.Position).Where(one => !PortOrigin.IsLeftOff(one.Answer)).Select(one => ((Answer?)one.Answer, one.Region));
    }

    public Region Joined(HoseRole hose) =>
        _store.AndAll([Fitted(hose.From), Fitted(hose.To), _store.OrAll(Answers(hose).Select(one => one.Region))]);

    /// <summary>Where something says that a port without a hose is closed.</summary>
    public Region Closed(string port)
    {
        var hoses = HosesAt(port).ToList();
        if (hoses.Count > 0 && hoses.TrueForAll(hose => hose.Optional))
        {
            return Region.All;
        }

        var positions = hoses.SelectMany(hose => new[] { hose.Position, _kb.Vocabulary.Ports.Find(hose.Other(port))?.Position }).OfType<string>().Distinct(StringComparer.Ordinal);
        var leftOff = positions.SelectMany(Standing).Where(one => PortOrigin.IsLeftOff(one.Answer));
        var closing = _kb.Positions.Ids.SelectMany(Standing).Where(one => one.Answer.Closes.Contains(port));
        return _store.OrAll(leftOff.Concat(closing).Select(one => one.Region));
    }

    private IEnumerable<StandingAnswer> Standing(string position) => _kb.Positions.Has(position) ? _resolution.At(position) : [];

    private IEnumerable<(PortOrigin Origin, Region Region)> Origins(PortRole port) => port.Position is null
        ? [(PortOrigin.Of(port, null, _kb.Parts), Region.All)]
        : Standing(port.Position).GroupBy(one => PortOrigin.Of(port, one.Answer, _kb.Parts)).Select(group => (group.Key, _store.OrAll(group.Select(one => one.Region))));

    private IEnumerable<PortPiece> Entries(PortRole port, PortOrigin origin, Region region) => origin.Owner switch
    {
        PortOwner.Chassis => ByVariant(port, origin, region, _kb.Chassis.All, _resolution.Space.WhereChassis),
        PortOwner.Donor => ByVariant(port, origin, region, _kb.Donors.All, _resolution.Space.WhereDonor),
        PortOwner.Part => [new PortPiece(port, origin, origin.Part!.Port(port.Id)!, region)],
        _ => [],
    };

    private IEnumerable<PortPiece> ByVariant<T>(PortRole port, PortOrigin origin, Region region, ImmutableArray<T> variants, Func<Func<T, bool>, Region> regionOf)
        where T : Variant =>
        from entry in variants.Select(variant => variant.Port(port.Id)).OfType<PortEntry>().Distinct().ToList()
        let here = _store.And(region, regionOf(variant => variant.Port(port.Id) == entry))
        where !here.IsNone
        select new PortPiece(port, origin, entry, here);
}
