using System.Globalization;
using System.Text.RegularExpressions;

namespace Swapwright.Tests.Worksheets.Belts;

/// <summary>
/// An arc of an SVG path, read back from its text; its centre after the endpoint rules of the SVG specification, appendix B.2.4, for
/// circles.
/// </summary>
internal sealed partial record SvgArc(double FromX, double FromY, double Radius, bool Large, bool Sweep, double ToX, double ToY)
{
    private double Chord => Math.Sqrt(Math.Pow(ToX - FromX, 2) + Math.Pow(ToY - FromY, 2));

    private double Height => (Large == Sweep ? -1 : 1) * Math.Sqrt(Math.Max(0, (Radius * Radius) - (Chord * Chord / 4)));

    public double CentreX => ((FromX + ToX) / 2) - (Height * (ToY - FromY) / Chord);

    public double CentreY => ((FromY + ToY) / 2) + (Height * (ToX - FromX) / Chord);

    public double Length
    {
        get
        {
            var angle = 2 * Math.Asin(Math.Min(1, Chord / (2 * Radius)));
            return Radius * (Large ? (2 * Math.PI) - angle : angle);
        }
    }

    public static List<SvgArc> AllOf(string data)
    {
        var arcs = new List<SvgArc>();
        foreach (Match match in LineAndArc().Matches(data))
        {
            double Part(string name) => double.Parse(match.Groups[name].Value, CultureInfo.InvariantCulture);
            arcs.Add(new SvgArc(
                Part("fromX"), Part("fromY"), Part("radius"), Part("large") == 1, Part("sweep") == 1, Part("toX"), Part("toY")));
        }

        return arcs;
    }

    [GeneratedRegex(
        @"L(?<fromX>\S+) (?<fromY>\S+?)A(?<radius>\S+) \S+ 0 (?<large>\d) (?<sweep>\d) (?<toX>\S+) (?<toY>[-\d.]+)",
        RegexOptions.CultureInvariant,
        1000)]
    private static partial Regex LineAndArc();
}
