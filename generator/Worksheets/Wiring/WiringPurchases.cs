using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>What new wiring is made of.</summary>
public enum WiringGood
{
    Wire,
    ScreenedWire,
    TwistedPair,
    ScreenedPair,
    Terminal,
    Seal,
    BlankingPlug,
    Splice,
    HeatShrink,
    Housing,
    Relay,
    RelayBase,
    FuseHolder,
    WireCap,
}

/// <summary>Something of a kind that is sold.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="SizeMm2">Of wire; null where one serves all sizes.</param>
public sealed record WiringStock(string Part, WiringGood Good, double? SizeMm2);

/// <summary>How much of one thing is wanted: metres of wire, pieces of anything else.</summary>
/// <param name="SizeMm2">Of wire; null for what is not told apart by size.</param>
/// <param name="Part">The part that is bought for it; null where nothing that is sold does.</param>
public sealed record WiringPurchase(WiringGood Good, double? SizeMm2, int Amount, string? Part);

/// <summary>From the pieces, terminals and splices of a wiring sheet to what is bought for them.</summary>
/// <remarks>
/// Wire is sold by the metre in each colour, so every size and colour is rounded up on its own; screened wire has one sheath for all, so it is by size alone. Wire of a size that is not sold is taken from the
/// next thicker one, never from a thinner. Two wires that are twisted together come off one reel where somebody sells such, and count once; so do two under one screen, which a
/// pair without a screen never takes the place of. A new housing for a device's plug is bought where no harness at hand has one to give; those of an adapter
/// come with the plug kits that answers name. Common practice, no source.
/// </remarks>
public static class WiringPurchases
{
    /// <param name="spare">Plugs of a harness that is cut up for them, by connector family.</param>
    public static ImmutableArray<WiringPurchase> Of(WiringSheet sheet, ImmutableArray<WiringStock> stock, IEnumerable<string>? spare = null)
    {
        var given = (spare ?? []).CountBy(connector => connector, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        var housings = sheet.Plugs.Where(plug => plug.WantsHousing).CountBy(plug => plug.DeviceConnector!, StringComparer.Ordinal);
        var sold = stock.Select(one => one.Good).ToHashSet();
        var wires =
            from run in sheet.Pieces
            let beside = TwistedPairs.Beside(sheet, run)
            let pair = beside is { IsCut: true, Shielded: true } && run.Shielded ? WiringGood.ScreenedPair : WiringGood.TwistedPair
            let twin = beside is { IsCut: true } && beside.Shielded == run.Shielded && sold.Contains(pair) ? beside : null
            where twin is null || string.CompareOrdinal(run.Signal, twin.Signal) < 0
            let good = twin is not null ? pair : run.Shielded ? WiringGood.ScreenedWire : WiringGood.Wire
            group Math.Max(run.LengthMm, twin?.LengthMm ?? 0) by (Good: good, SizeMm2: Math.Max(run.SizeMm2, twin?.SizeMm2 ?? 0), Colour: run.Shielded ? "" : run.Colour) into reel
            group (int)Math.Ceiling((reel.Sum() / 1000) - 1e-9) by (reel.Key.Good, reel.Key.SizeMm2) into metres
            orderby metres.Key
            select (metres.Key.Good, SizeMm2: (double?)metres.Key.SizeMm2, Amount: metres.Sum());
        // A relay that a load asks for wants the same as one for a wire that is too thin: its base, and a fuse in its feed.
        var relays = sheet.Overloads.Length + sheet.BulkheadFeeds.Count(feed => feed.FeedMm2 is not null) + LoadProtection.Relays(sheet).Length;
        var pieces = new (WiringGood Good, double? SizeMm2, int Amount)[]
        {
            (WiringGood.Terminal, null, sheet.Bill.Terminals.Sum(line => line.Count)),
            (WiringGood.Seal, null, sheet.Bill.Seals),
            (WiringGood.BlankingPlug, null, sheet.Bill.BlankingPlugs),
            (WiringGood.WireCap, null, sheet.Bill.Caps),
            (WiringGood.Splice, null, sheet.Bill.Splices),
            (WiringGood.HeatShrink, null, sheet.Bill.HeatShrink),
            (WiringGood.Housing, null, housings.Sum(family => Math.Max(0, family.Value - given.GetValueOrDefault(family.Key)))),
            (WiringGood.Relay, null, relays),
            (WiringGood.RelayBase, null, relays),
            (WiringGood.FuseHolder, null, relays),
        };
        return [.. wires.Concat(pieces).Where(want => want.Amount > 0).Select(want => new WiringPurchase(want.Good, want.SizeMm2, want.Amount, Part(stock, want.Good, want.SizeMm2)))];
    }

    // Nothing is thinner than one that serves all sizes, so it comes first only where none of the right size is sold.
    private static string? Part(ImmutableArray<WiringStock> stock, WiringGood good, double? sizeMm2) => stock
        .Where(one => one.Good == good && (one.SizeMm2 is null || sizeMm2 is null || one.SizeMm2 >= sizeMm2 - 1e-9))
        .OrderBy(one => one.SizeMm2 ?? double.MaxValue).ThenBy(one => one.Part, StringComparer.Ordinal)
        .FirstOrDefault()?.Part;
}
