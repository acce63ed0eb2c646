using System.Globalization;
using System.Text;
using System.Xml;

namespace Swapwright.Worksheets.Belts;

/// <summary>The words and numbers of a belt drawing.</summary>
internal static class DrawingText
{
    private const double RadToDegrees = 180 / Math.PI;
    private const int LongestLine = 24;
    private const int MostTitleLines = 2;

    /// <summary>At most two decimals, a dot, and no negative zero.</summary>
    public static string Number(double value) =>
        (Math.Round(value, 2, MidpointRounding.AwayFromZero) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    public static string Pair(BeltPoint point) => Number(point.X) + " " + Number(point.Y);

    /// <summary>Text without the characters that XML cannot carry even when escaped.</summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (i + 1 < text.Length && XmlConvert.IsXmlSurrogatePair(text[i + 1], text[i]))
            {
                clean.Append(text[i]).Append(text[++i]);
            }
            else
            {
                clean.Append(XmlConvert.IsXmlChar(text[i]) ? text[i] : '\uFFFD');
            }
        }

        return clean.ToString();
    }

    /// <summary>
    /// Width of a line in font sizes, reckoned for common sans-serif faces; a drawing made without a browser cannot measure it.
    /// </summary>
    public static double Ems(string line) => line.Sum(letter => letter switch
    {
        'M' or 'W' or 'm' or 'w' or '@' => 0.9,
        >= 'A' and <= 'Z' => 0.68,
        >= '\u2E80' => 1,
        _ => 0.55,
    });

    public static string Id(string prefix, string name) =>
        string.Concat(prefix.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '-')) + "-" + name;

    /// <summary>The lines of a pulley's label: its title, broken at spaces, then its ribs and diameter.</summary>
    public static List<string> Label(Pulley pulley)
    {
        var lines = new List<string>();
        foreach (var word in pulley.Title.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (lines.Count > 0 && lines[^1].Length + 1 + word.Length <= LongestLine)
            {
                lines[^1] += " " + word;
            }
            else
            {
                lines.Add(word);
            }
        }

        var title = lines.Take(MostTitleLines).Select(line => line.Length > LongestLine ? Shortened(line) : line).ToList();
        if (lines.Count > MostTitleLines && !title[^1].EndsWith('…'))
        {
            title[^1] = title[^1].Length < LongestLine ? title[^1] + "…" : Shortened(title[^1]);
        }

        title.Add(Ribs(pulley) + ", ⌀" + Number(pulley.DiameterMm));
        return title;
    }

    public static string Description(BeltLoop loop, BeltResult result)
    {
        var text = new StringBuilder();
        if (result.Running is { } running)
        {
            text.Append(result.PathIsPossible ? "" : "No belt can run as drawn. ");
            text.Append(result.Designation ?? loop.Profile)
                .Append(", effective length round the pulleys ").Append(Number(running.LengthMm)).Append(" mm. ");
        }
        else
        {
            text.Append("No belt path can be drawn. ");
        }

        text.Append("In belt order: ");
        var pulleys = loop.Pulleys.IsDefault ? [] : loop.Pulleys;
        text.AppendJoin("; ", pulleys.Select((pulley, index) =>
            $"{pulley.Title}, {Ribs(pulley)}, diameter {Diameter(pulley)}"
            + (pulley.Side == BeltSide.Back ? ", on the back of the belt" : "")
            + (result.Running is null ? "" : $", wrap {Number(Math.Round(result.Running.Runs[index].WrapRad * RadToDegrees))}°")));
        return text.Append('.').ToString();
    }

    private static string Diameter(Pulley pulley) => LoopInput.IsDrawable(pulley) ? Number(pulley.DiameterMm) + " mm" : "unknown";

    private static string Ribs(Pulley pulley) => pulley.Ribs switch
    {
        0 => "flat",
        1 => "1 rib",
        _ => string.Create(CultureInfo.InvariantCulture, $"{pulley.Ribs} ribs"),
    };

    /// <summary>Cut so that a pair of surrogates is never parted.</summary>
    private static string Shortened(string line)
    {
        var end = LongestLine - 1;
        return line[..(char.IsHighSurrogate(line[end - 1]) ? end - 1 : end)] + "…";
    }
}
