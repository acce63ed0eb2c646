using System.Buffers;
using System.Globalization;
using System.Text;

namespace Swapwright.Source;

/// <summary>Bytes to text: UTF-8 only, with nothing in it that an editor would hide from its reader.</summary>
internal static class SourceDecoder
{
    // Control characters; NEL, LS and PS, which YAML counts as line ends and editors do not; the byte order mark inside
    // the text; and the characters that reorder a line on the screen (Unicode Technical Standard 55, section 3).
    private static readonly SearchValues<char> Refused = SearchValues.Create(
        "\u0000\u0001\u0002\u0003\u0004\u0005\u0006\u0007\u0008\u000B\u000C\u000E\u000F\u0010\u0011\u0012\u0013\u0014\u0015\u0016\u0017"
        + "\u0018\u0019\u001A\u001B\u001C\u001D\u001E\u001F\u007F\u0080\u0081\u0082\u0083\u0084\u0085\u0086\u0087\u0088\u0089\u008A\u008B"
        + "\u008C\u008D\u008E\u008F\u0090\u0091\u0092\u0093\u0094\u0095\u0096\u0097\u0098\u0099\u009A\u009B\u009C\u009D\u009E\u009F"
        + "\u2028\u2029\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069\uFEFF");

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Null, with a finding, where the bytes are no text that may be read on.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes, SourceLimits limits, FindingList findings)
    {
        if (bytes.Length > limits.MaxFileBytes)
        {
            TooLarge(limits, findings);
            return null;
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            findings.Add(findings.WholeFile, "the file is encoded as UTF-16, not UTF-8", "Save the file as UTF-8.");
            return null;
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            bytes = bytes[3..]; // else every column of the first line would be off by one
        }

        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException error)
        {
            Invalid(bytes, error.Index, findings);
            return null;
        }
    }

    public static void TooLarge(SourceLimits limits, FindingList findings) => findings.Add(
        findings.WholeFile,
        string.Create(CultureInfo.InvariantCulture, $"the file is larger than {limits.MaxFileBytes} bytes"),
        "Split it into several files.");

    /// <summary>False, with a finding each, where the text holds characters that are refused.</summary>
    public static bool Accepts(string path, string text, LineIndex lines, FindingList findings)
    {
        var at = text.AsSpan().IndexOfAny(Refused);
        if (at < 0)
        {
            return true;
        }

        while (at < text.Length && !findings.IsFull)
        {
            findings.Add(lines.Place(path, at, at + 1), $"the character {Describe(text[at])} is not allowed", "Remove it.");
            var next = text.AsSpan(at + 1).IndexOfAny(Refused);
            at = next < 0 ? text.Length : at + 1 + next;
        }

        return false;
    }

    /// <summary>The first refused character of a value that came from an escape, or half of a surrogate pair; null where there is none.</summary>
    public static string? RefusedIn(string value)
    {
        var at = value.AsSpan().IndexOfAny(Refused);
        if (at >= 0)
        {
            return Describe(value[at]);
        }

        for (var i = 0; i < value.Length; i++)
        {
            if (!char.IsSurrogate(value[i]))
            {
                continue;
            }

            if (i + 1 == value.Length || !char.IsSurrogatePair(value[i], value[i + 1]))
            {
                return Describe(value[i]);
            }

            i++;
        }

        return null;
    }

    private static string Describe(char c)
    {
        var code = string.Create(CultureInfo.InvariantCulture, $"U+{(int)c:X4}");
        return c switch
        {
            '\0' => code + " (NUL)",
            '\uFEFF' => code + " (byte order mark)",
            '\u0085' or '\u2028' or '\u2029' => code + " (a line end that editors do not show)",
            (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') => code + " (changes the order of text on the screen)",
            _ when char.IsSurrogate(c) => code + " (half of a character)",
            _ => code + " (control character)",
        };
    }

    private static void Invalid(ReadOnlySpan<byte> bytes, int at, FindingList findings)
    {
        at = Math.Clamp(at, 0, bytes.Length);
        var before = Encoding.UTF8.GetString(bytes[..at]);
        var lines = new LineIndex(before);
        var (line, column) = lines.At(before.Length);
        var value = at < bytes.Length ? string.Create(CultureInfo.InvariantCulture, $" (byte {bytes[at]:X2})") : string.Empty;
        findings.Add(
            findings.WholeFile with { Line = line, Column = column, EndLine = line, EndColumn = column + 1 },
            $"the file is not valid UTF-8 from here on{value}",
            "Save the file as UTF-8.");
    }
}
