using System.Globalization;

namespace Swapwright.Site;

/// <summary>
/// One of several disjoint parts of a site. Guides are dealt out in turn, each with all its files; the first part has everything else
/// besides. The parts laid over one another are the whole site.
/// </summary>
/// <param name="Number">From 1.</param>
public sealed record Shard(int Number, int Of)
{
    /// <summary>More parts than any farm has machines would only be a mistyped number.</summary>
    private const int Most = 1000;

    public static readonly Shard Whole = new(1, 1);

    /// <summary>Whether what is not a guide's own belongs to this part.</summary>
    public bool HasShared => Number == 1;

    public bool HasGuide(int at) => at % Of == Number - 1;

    /// <summary>As in "2/5"; null where the text says no such thing.</summary>
    public static Shard? Parse(string text) =>
        text.Split('/') is [var number, var of]
        && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var k)
        && int.TryParse(of, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && k >= 1 && k <= n && n <= Most
            ? new Shard(k, n)
            : null;
}
