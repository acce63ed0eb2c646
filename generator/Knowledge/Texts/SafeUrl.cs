namespace Swapwright.Knowledge.Texts;

/// <summary>What stands before an address on a page.</summary>
public enum AddressKind
{
    Refused,
    AsItStands,
    BelowRoot,
}

/// <summary>
/// Decides what may stand in a link. Escaping keeps a value inside its attribute; it does not keep "javascript:" from
/// being followed, so every address passes here as well.
/// </summary>
public static class SafeUrl
{
    /// <summary>The address as the page at <paramref name="prefix"/> has to write it, unescaped; null where it is refused.</summary>
    /// <param name="address">Root path, anchor, or http, https or mailto address.</param>
    /// <param name="prefix">Way up from the page to the site's root.</param>
    public static string? Resolve(string? address, string prefix) => Judge(address) switch
    {
        AddressKind.AsItStands => address,
        AddressKind.BelowRoot => prefix + address,
        _ => null,
    };

    /// <summary>What an address is to a page, wherever the page lies.</summary>
    public static AddressKind Judge(string? address)
    {
        if (IsPlainPath(address))
        {
            return AddressKind.BelowRoot;
        }

        if (string.IsNullOrEmpty(address) || address.AsSpan().ContainsAny(Refused) || HasControl(address))
        {
            return AddressKind.Refused;
        }

        if (address[0] == '#')
        {
            return AddressKind.AsItStands;
        }

        var mark = address.AsSpan().IndexOfAny(":/?#");
        if (mark >= 0 && address[mark] == ':')
        {
            return AllowedScheme(address.AsSpan(0, mark)) ? AddressKind.AsItStands : AddressKind.Refused;
        }

        return IsRootPath(address) ? AddressKind.BelowRoot : AddressKind.Refused;
    }

    private static readonly System.Buffers.SearchValues<char> Refused = System.Buffers.SearchValues.Create(" \\\"'<>`{}|^");

    private static readonly System.Buffers.SearchValues<char> Plain =
        System.Buffers.SearchValues.Create("#-./0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz");

    /// <summary>Almost every address of a site: nothing in it needs a second look.</summary>
    private static bool IsPlainPath(ReadOnlySpan<char> address) =>
        address.Length > 0 && char.IsAsciiLetterOrDigit(address[0]) && !address.ContainsAnyExcept(Plain)
        && address.IndexOf("/.") < 0 && address.IndexOf("//") < 0;

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
        var written = end < 0 ? address : address[..end];
        var path = written.Contains('%', StringComparison.Ordinal) ? Uri.UnescapeDataString(written) : written;
        return !path.Contains('\\', StringComparison.Ordinal)
            && !path.Contains(':', StringComparison.Ordinal)
            && !HasControl(path)
            && !HasStep(path)
            && !path.Contains("//", StringComparison.Ordinal)
            && !path.StartsWith('/');
    }

    /// <summary>A part that stays or leads up.</summary>
    private static bool HasStep(ReadOnlySpan<char> path)
    {
        foreach (var part in path.Split('/'))
        {
            if (path[part] is "." or "..")
            {
                return true;
            }
        }

        return false;
    }

    private static bool HasControl(string text)
    {
        if (text.AsSpan().IndexOfAnyExceptInRange('!', '~') < 0)
        {
            return false;
        }

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
