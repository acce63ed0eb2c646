namespace Swapwright.Site.Output;

/// <summary>By what a file is known again without being read: its length, and the time of its last change.</summary>
/// <param name="Length">Bytes.</param>
/// <param name="Time">UTC, in ticks of 100 ns.</param>
public readonly record struct FileStamp(long Length, long Time)
{
    /// <summary>Null where there is no such file that can be looked at, or a link in its place.</summary>
    internal static FileStamp? Of(string path)
    {
        try
        {
            var info = new FileInfo(path);
            return !info.Exists || info.Attributes.HasFlag(FileAttributes.ReparsePoint) ? null : new FileStamp(info.Length, info.LastWriteTimeUtc.Ticks);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Taken away while it was looked at, or hidden: whoever asks then makes it.
            return null;
        }
    }
}
