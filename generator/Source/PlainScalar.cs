using System.Globalization;

namespace Swapwright.Source;

/// <summary>
/// What an unquoted value means, by the core schema of YAML 1.2.2, section 10.3.2: <c>yes</c>, <c>no</c>, <c>on</c> and
/// <c>off</c> are text, and so is <c>12:30</c>.
/// </summary>
internal static class PlainScalar
{
    public static ScalarKind KindOf(string text) => text switch
    {
        "" or "~" or "null" or "Null" or "NULL" => ScalarKind.Null,
        "true" or "True" or "TRUE" or "false" or "False" or "FALSE" => ScalarKind.Flag,
        _ => NumberKind(text),
    };

    /// <summary>False also where the value is a number but beyond what a decimal holds (about 7.9e28), infinite or not a number.</summary>
    public static bool TryDecimal(string text, out decimal value)
    {
        value = 0;
        if (text.StartsWith("0x", StringComparison.Ordinal))
        {
            var read = ulong.TryParse(text.AsSpan(2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var bits);
            value = bits;
            return read;
        }

        if (text.StartsWith("0o", StringComparison.Ordinal))
        {
            return TryOctal(text.AsSpan(2), out value);
        }

        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        return decimal.TryParse(text, Style, CultureInfo.InvariantCulture, out value);
    }

    private static bool TryOctal(ReadOnlySpan<char> digits, out decimal value)
    {
        value = 0;
        if (digits.Length > 21)
        {
            return false; // 21 octal digits are 63 bits
        }

        foreach (var digit in digits)
        {
            value = (value * 8) + (digit - '0');
        }

        return true;
    }

    private static ScalarKind NumberKind(string text)
    {
        var first = text[0];
        if (!char.IsAsciiDigit(first) && first is not ('-' or '+' or '.'))
        {
            return ScalarKind.Text;
        }

        if (text.Length > 2 && first == '0' && text[1] is 'x' or 'o')
        {
            var hexadecimal = text[1] == 'x';
            return All(text.AsSpan(2), c => hexadecimal ? char.IsAsciiHexDigit(c) : c is >= '0' and <= '7') ? ScalarKind.Integer : ScalarKind.Text;
        }

        if (text is ".nan" or ".NaN" or ".NAN")
        {
            return ScalarKind.Number;
        }

        var body = text.AsSpan(first is '-' or '+' ? 1 : 0);
        return body is ".inf" or ".Inf" or ".INF" ? ScalarKind.Number : DecimalKind(body);
    }

    private static ScalarKind DecimalKind(ReadOnlySpan<char> body)
    {
        var whole = DigitsAt(body, 0);
        if (whole == body.Length)
        {
            return whole > 0 ? ScalarKind.Integer : ScalarKind.Text;
        }

        var at = whole;
        if (body[at] == '.')
        {
            var fraction = DigitsAt(body, at + 1);
            if (whole + fraction == 0)
            {
                return ScalarKind.Text;
            }

            at += 1 + fraction;
        }

        if (at > 0 && at < body.Length && body[at] is 'e' or 'E')
        {
            at++;
            if (at < body.Length && body[at] is '-' or '+')
            {
                at++;
            }

            var exponent = DigitsAt(body, at);
            at = exponent > 0 ? at + exponent : 0;
        }

        return at == body.Length ? ScalarKind.Number : ScalarKind.Text;
    }

    private static int DigitsAt(ReadOnlySpan<char> text, int start)
    {
        var at = start;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return at - start;
    }

    private static bool All(ReadOnlySpan<char> text, Func<char, bool> holds)
    {
        foreach (var c in text)
        {
            if (!holds(c))
            {
                return false;
            }
        }

        return true;
    }
}
