using System.Buffers;
using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using System.Text;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;

namespace Swapwright.Site;

/// <summary>Renders a site's pages and puts the finished site in place.</summary>
public static class SiteWriter
{
    /// <summary>Writes pages and files; the folder is replaced at the end or not at all.</summary>
    /// <param name="target">Folder of the site: new, empty, or made by an earlier run.</param>
    /// <param name="works">Begun in this order, each by one worker; a page is let go when it is written.</param>
    /// <param name="before">Files that are there already, written first.</param>
    /// <param name="after">Files that are written last.</param>
    /// <returns>The number of pages written.</returns>
    /// <exception cref="SiteFolderException">The folder cannot be written or is not the program's own.</exception>
    /// <exception cref="TemplateException">A template is at fault.</exception>
    public static int Write(string target, IEnumerable<SiteWork> works, IEnumerable<SiteFile> before, Templates templates, IEnumerable<SiteFile> after, CancellationToken cancellation = default)
    {
        using var folder = SiteFolder.Open(target);
        foreach (var file in before)
        {
            folder.Write(file.Path, file.Bytes.Span);
        }

        var buffers = new ConcurrentBag<ArrayBufferWriter<byte>>();
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount };
        var pages = 0;
        try
        {
            Parallel.ForEach(Partitioner.Create(works, EnumerablePartitionerOptions.NoBuffering), options, work =>
            {
                var buffer = buffers.TryTake(out var used) ? used : new ArrayBufferWriter<byte>(256 * 1024);
                foreach (var build in work.Pages)
                {
                    cancellation.ThrowIfCancellationRequested();
                    var page = build();
                    buffer.ResetWrittenCount();
                    templates.Render(page, html => Encode(html, buffer));
                    folder.Write(page.Frame.Path, buffer.WrittenSpan);
                    Interlocked.Increment(ref pages);
                }

                foreach (var file in work.Files)
                {
                    buffer.ResetWrittenCount();
                    file.Write(buffer);
                    folder.Write(file.Path, buffer.WrittenSpan);
                }

                work.Done?.Invoke();
                buffers.Add(buffer);
            });
        }
        catch (AggregateException several)
        {
            // Several workers may fail for the same reason; one report is enough, and a caller catches it by its own type.
            ExceptionDispatchInfo.Throw(several.InnerExceptions.OrderBy(fault => fault.Message, StringComparer.Ordinal).First());
        }

        foreach (var file in after)
        {
            folder.Write(file.Path, file.Bytes.Span);
        }

        folder.Finish();
        return pages;
    }

    // Straight to the bytes that are written; a page that a text brought a carriage return into is the exception.
    private static void Encode(ReadOnlySpan<char> html, ArrayBufferWriter<byte> buffer)
    {
        if (html.Contains('\r'))
        {
            html = SiteFolder.LineFeeds(html.ToString());
        }

        Encoding.UTF8.GetBytes(html, buffer);
    }
}
