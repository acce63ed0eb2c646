namespace Swapwright.Worksheets.Belts;

/// <summary>A belt that can be bought, of the loop's profile; its length is the effective length it is sold under.</summary>
/// <param name="RibMassKgPerM">Mass a metre and rib, kg/m; null where nobody weighed it.</param>
public sealed record StockedBelt(int Ribs, double LengthMm, string PartId, double? RibMassKgPerM = null);
