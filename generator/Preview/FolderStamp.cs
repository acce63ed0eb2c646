namespace Swapwright.Preview;

/// <summary>
/// What tells that a folder has changed: the names, lengths and times of its files. Asked again and again rather than told by
/// the system, whose notices do not come from network folders and get lost when there are many at once.
/// </summary>
internal static class FolderStamp
{
    private const int MostFiles = 60_000;

    public static int Of(string folder)
    {
        var stamp = new HashCode();
        try
        {
            var options = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint, IgnoreInaccessible = true };
            foreach (var file in new DirectoryInfo(folder).EnumerateFiles("*", options).Take(MostFiles).OrderBy(file => file.FullName, StringComparer.Ordinal))
            {
                stamp.Add(file.FullName, StringComparer.Ordinal);
                stamp.Add(file.Length);
                stamp.Add(file.LastWriteTimeUtc.Ticks);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // A file went while the folder was listed: the next look sees what is left.
            stamp.Add(problem.Message, StringComparer.Ordinal);
        }

        return stamp.ToHashCode();
    }
}
