using System.Buffers;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;

namespace Swapwright.Site;

/// <summary>One run over the works of a site: each is kept from the earlier run, or made. Any number of workers do works at the same time.</summary>
internal sealed class WriterRun(SiteFolder folder, Templates templates, SiteRecord? record, CancellationToken cancellation)
{
    private readonly ConcurrentBag<ArrayBufferWriter<byte>> _buffers = [];
    private readonly ConcurrentBag<KeyValuePair<string, RecordedWork>> _done = [];
    private int _pages;
    private int _made;

    /// <summary>Pages of the site.</summary>
    public int Pages => _pages;

    /// <summary>Pages that were made in this run.</summary>
    public int Made => _made;

    /// <summary>What the next run may keep.</summary>
    public IEnumerable<KeyValuePair<string, RecordedWork>> Done => _done;

    /// <exception cref="SiteFolderException">A file cannot be written.</exception>
    /// <exception cref="TemplateException">A template is at fault.</exception>
    public void Do(SiteWork work)
    {
        cancellation.ThrowIfCancellationRequested();
        if (work.Inputs is { } inputs && record?.Find(work.Name, inputs) is { } known && Keep(work, known))
        {
            _done.Add(KeyValuePair.Create(work.Name, known));
        }
        else
        {
            var stamps = Make(work);
            if (record is not null && work.Inputs is { } from)
            {
                _done.Add(KeyValuePair.Create(work.Name, new RecordedWork(from, stamps, work.Note())));
            }
        }

        work.Done?.Invoke();
    }

    private bool Keep(SiteWork work, RecordedWork known)
    {
        var pages = work.Pages.Select(page => page.Path).ToList();
        if (!folder.TryKeep([.. pages, .. work.Files.Select(file => file.Path)], known.Files.AsSpan()))
        {
            return false;
        }

        Interlocked.Add(ref _pages, pages.Count);
        return true;
    }

    private ImmutableArray<FileStamp> Make(SiteWork work)
    {
        var buffer = _buffers.TryTake(out var used) ? used : new ArrayBufferWriter<byte>(256 * 1024);
        var stamps = ImmutableArray.CreateBuilder<FileStamp>();
        foreach (var planned in work.Pages)
        {
            cancellation.ThrowIfCancellationRequested();
            buffer.ResetWrittenCount();
            templates.Render(planned.Build(), html => Encode(html, buffer));
            stamps.Add(folder.Write(planned.Path, buffer.WrittenSpan));
            Interlocked.Increment(ref _pages);
            Interlocked.Increment(ref _made);
        }

        foreach (var file in work.Files)
        {
            buffer.ResetWrittenCount();
            file.Write(buffer);
            stamps.Add(folder.Write(file.Path, buffer.WrittenSpan));
        }

        _buffers.Add(buffer);
        return stamps.ToImmutable();
    }

    // Straight to the bytes that are written; a page that a text brought a carriage return into is the exception.
    private static void Encode(ReadOnlySpan<char> html, ArrayBufferWriter<byte> buffer)
    {
        if (html.Contains('\r'))
        {
            html = SiteFolder.LineFeeds(html.ToString());
        }

        // Into room for any text of this length: to count the bytes first would be to go through it twice.
        buffer.Advance(Encoding.UTF8.GetBytes(html, buffer.GetSpan(Encoding.UTF8.GetMaxByteCount(html.Length))));
    }
}
