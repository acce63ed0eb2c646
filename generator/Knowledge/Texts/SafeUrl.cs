namespace Swapwright.Knowledge.Texts;

/// <summary>
/// Decides what may stand in a link. Escaping keeps a value inside its attribute; it does not keep "javascript:" from
/// being followed, so every address passes here as well.
/// </summary>
public static class SafeUrl
{
    /// <summary>The address as the page at <paramref name="prefix"/> has to write it, unescaped; null where it is refused.</summary>
    /// <param name="address">Root path, anchor, or http, https or mailto address.</param>
    /// <param name="prefix">Way up from the page to the site's root.</param>
    public static string? Resolve(string? address, string prefix)
    {
        if (string.IsNullOrEmpty(address) || address.AsSpan().ContainsAny(Refused) || HasControl(address))
        {
            return null;
        }

        if (address[0] == '#')
        {
            return address;
        }

        var mark = address.AsSpan().IndexOfAny(":/?#");
        if (mark >= 0 && address[mark] == ':')
        {
            return AllowedScheme(address.AsSpan(0, mark)) ? address : null;
        }

        return IsRootPath(address) ? prefix + address : null;
    }

    private static readonly System.Buffers.SearchValues<char> Refused = System.Buffers.SearchValues.Create(" \\\"'<>`{}|^");

    private static bool AllowedScheme(ReadOnlySpan<char> scheme) =>
        scheme.Equals("https", StringComparison.OrdinalIgnoreCase)
        || scheme.Equals("http", StringComparison.OrdinalIgnoreCase)
        || scheme.Equals("mailto", StringComparison.OrdinalIgnoreCase);

    /// <summary>Below the root and staying there: no leading slash, no step up, also when written in percent.</summary>
    private static bool IsRootPath(string address)
    {
        if (address[0] is '/' or '?')
        {
            return false;
        }

        var end = address.AsSpan().IndexOfAny('?', '#');
        var path = Uri.UnescapeDataString(end < 0 ? address : address[..end]);
        return !path.Contains('\\', StringComparison.Ordinal)
            && !path.Contains(':', StringComparison.Ordinal)
            && !HasControl(path)
            && Array.TrueForAll(path.Split('/'), segment => segment is not ("." or ".."))
            && !path.Contains("//", StringComparison.Ordinal)
            && !path.StartsWith('/');
    }

    private static bool HasControl(string text)
    {
        foreach (var c in text)
        {
            if (char.IsControl(c) || char.IsWhiteSpace(c) || c is '\u00AD' or (>= '\u200B' and <= '\u200F') or (>= '\u202A' and <= '\u202E'))
            {
                return true;
            }
        }

        return false;
    }
}
