using System.Buffers;

namespace Swapwright.Site.Output;

/// <summary>
/// Which paths the site may have: plain names that every file system and web server takes as they are. Ids are
/// kebab-case, so nothing of a knowledge base is lost by being strict.
/// </summary>
internal static class SitePath
{
    /// <summary>In characters.</summary>
    public const int LongestPath = 300;

    private const int LongestName = 120;

    private static readonly SearchValues<char> Plain =
        SearchValues.Create("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.");

    public static bool IsPlain(ReadOnlySpan<char> path)
    {
        if (path.Length is 0 or > LongestPath)
        {
            return false;
        }

        foreach (var name in path.Split('/'))
        {
            if (!IsPlainName(path[name]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsPlainName(ReadOnlySpan<char> name) =>
        name.Length is > 0 and <= LongestName
        && name[0] != '.'
        && name[^1] != '.'
        && !name.ContainsAnyExcept(Plain);
}
