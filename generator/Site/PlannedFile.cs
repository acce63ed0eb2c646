using System.Buffers;

namespace Swapwright.Site;

/// <summary>A file of data that can be made.</summary>
/// <param name="Path">From the site's root.</param>
/// <param name="Write">Appends the file's bytes.</param>
public sealed record PlannedFile(string Path, Action<ArrayBufferWriter<byte>> Write)
{
    /// <summary>A file that is made as a whole.</summary>
    public static PlannedFile Of(string path, Func<SiteFile> make) => new(path, buffer => buffer.Write(make().Bytes.Span));

    public SiteFile Make()
    {
        var buffer = new ArrayBufferWriter<byte>();
        Write(buffer);
        return new SiteFile(Path, buffer.WrittenMemory);
    }
}
