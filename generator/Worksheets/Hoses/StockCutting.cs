namespace Swapwright.Worksheets.Hoses;

/// <summary>Pieces from lengths as sold.</summary>
internal static class StockCutting
{
    /// <summary>
    /// How many lengths the pieces need: longest first, each from the first length that still has enough left. Never more than
    /// 11/9 of the fewest possible and 6/9 (first-fit decreasing; Dósa 2007, cited from memory).
    /// </summary>
    /// <param name="stockMm">Length as sold; null by the metre, where the metres begun are counted.</param>
    public static int Count(IEnumerable<double> piecesMm, double? stockMm)
    {
        var pieces = piecesMm.OrderDescending().ToList();
        if (stockMm is not > 0)
        {
            return (int)Math.Ceiling((pieces.Sum() / 1000) - 1e-9);
        }

        var left = new List<double>();
        var used = 0.0;
        foreach (var piece in pieces)
        {
            // A piece longer than what is sold is joined from whole lengths; the builder sees its length in the table. There may
            // be more of them than can be counted one by one: nothing says how short a length is sold.
            var whole = Math.Max(0, Math.Ceiling(piece / stockMm.Value) - 1);
            var rest = piece - (whole * stockMm.Value);
            used += whole;

            var at = left.FindIndex(one => one >= rest - 1e-9);
            if (at < 0)
            {
                left.Add(stockMm.Value);
                at = left.Count - 1;
            }

            left[at] -= rest;
        }

        return (int)Math.Min(used + left.Count, int.MaxValue);
    }
}
