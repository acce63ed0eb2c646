using System.Globalization;

namespace Swapwright.Commands;

/// <summary>A file of a commit.</summary>
/// <param name="IsLink">A symbolic link: its content is where it leads.</param>
internal sealed record GitFile(string Object, long Size, string Path, bool IsLink)
{
    /// <summary>A line of <c>ls-tree -r -l</c>: mode, type, object, size, a tab, the path; null for what is no file, as another repository inside.</summary>
    public static GitFile? Parse(string line)
    {
        var tab = line.IndexOf('\t', StringComparison.Ordinal);
        return tab > 0 && line[..tab].Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var mode, "blob", var id, var size]
            && long.TryParse(size, NumberStyles.None, CultureInfo.InvariantCulture, out var bytes)
            ? new GitFile(id, bytes, line[(tab + 1)..], mode == "120000")
            : null;
    }
}
