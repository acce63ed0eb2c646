using System.Collections.Concurrent;

namespace Swapwright.Source;

/// <summary>What was found where a file stands.</summary>
/// <param name="Length">In bytes, as listed.</param>
/// <param name="Bytes">null where the file is too large to be read or cannot be opened.</param>
internal sealed record FileContent(long Length, byte[]? Bytes);

/// <summary>Fetches the bytes of files on a thread of its own, in order and only a little ahead of the reader.</summary>
internal sealed class ReadAhead : IDisposable
{
    // Enough to keep the reader busy, few enough that files of the largest size do not fill the memory.
    private const int Ahead = 32;

    private readonly BlockingCollection<FileContent> _contents = new(Ahead);
    private readonly CancellationTokenSource _stop;
    private readonly Task _work;

    public ReadAhead(List<FoundFile> files, SourceLimits limits, CancellationToken cancellation)
    {
        _stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        _work = Task.Run(() => Fetch(files, limits), CancellationToken.None);
    }

    /// <summary>The content of the next file.</summary>
    public FileContent Next() => _contents.Take(_stop.Token);

    public void Dispose()
    {
        _stop.Cancel();
        _work.GetAwaiter().GetResult();
        _contents.Dispose();
        _stop.Dispose();
    }

    private void Fetch(List<FoundFile> files, SourceLimits limits)
    {
        try
        {
            foreach (var file in files)
            {
                _contents.Add(Fetch(file, limits), _stop.Token);
            }
        }
        catch (OperationCanceledException)
        {
            // The reader has stopped: nothing more is wanted.
        }
    }

    private static FileContent Fetch(FoundFile file, SourceLimits limits)
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
    private static long LengthOf(FoundFile found)
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
