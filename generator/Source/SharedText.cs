namespace Swapwright.Source;

/// <summary>
/// Texts that come again and again in a base, keys and ids above all, made once by each thread that reads: a table of the latest of
/// them, in which one may push out another.
/// </summary>
internal static class SharedText
{
    private const int Places = 4096;
    private const int Longest = 80;

    [ThreadStatic]
    private static string?[]? t_latest;

    public static string Of(ReadOnlySpan<char> text)
    {
        if (text.Length > Longest)
        {
            return text.ToString();
        }

        var hash = (uint)text.Length;
        foreach (var sign in text)
        {
            hash = (hash ^ sign) * 0x01000193;
        }

        ref var known = ref (t_latest ??= new string?[Places])[(hash ^ (hash >> 15)) % Places];
        if (known is null || !text.SequenceEqual(known))
        {
            known = text.ToString();
        }

        return known;
    }
}
