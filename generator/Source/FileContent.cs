namespace Swapwright.Source;

/// <summary>What was found where a file stands.</summary>
/// <param name="Length">In bytes, as listed.</param>
/// <param name="Bytes">null where the file is too large to be read or cannot be opened.</param>
internal sealed record FileContent(long Length, byte[]? Bytes)
{
    public static FileContent Of(FoundFile file, SourceLimits limits)
    {
        var length = LengthOf(file);
        // By length, before opening: a named pipe has none and would be waited for without end.
        if (length == 0)
        {
            return new FileContent(0, []);
        }

        if (length > limits.MaxFileBytes)
        {
            return new FileContent(length, null);
        }

        try
        {
            return new FileContent(length, File.ReadAllBytes(file.Info.FullName));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new FileContent(length, null);
        }
    }

    /// <summary>A file that has gone since the folder was listed counts as one byte, so that opening it gives the finding.</summary>
    public static long LengthOf(FoundFile found)
    {
        try
        {
            return found.Info.Length;
        }
        catch (IOException)
        {
            return 1;
        }
    }
}
