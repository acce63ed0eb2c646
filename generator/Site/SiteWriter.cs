using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;

namespace Swapwright.Site;

/// <summary>Renders a site's pages and puts the finished site in place.</summary>
public static class SiteWriter
{
    // To link as many files and to remove them again takes a second on a fast disk; below, nobody is to find a folder beside his site for a blink of time.
    internal const int ManyFiles = 20_000;

    /// <summary>Writes pages and files; the folder is replaced at the end or not at all.</summary>
    /// <param name="target">Folder of the site: new, empty, or made by an earlier run.</param>
    /// <param name="works">Begun in this order, each by one worker; a page is let go when it is written.</param>
    /// <param name="before">Files that are there already, written first.</param>
    /// <param name="after">Files that are written last.</param>
    /// <param name="record">Of the earlier run: works with the same inputs, whose files are as that run left them, are kept and not made.</param>
    /// <param name="many">How many files a site has whose previous tree is left to the next run.</param>
    /// <returns>The number of pages of the site, and how many of them were made.</returns>
    /// <exception cref="SiteFolderException">The folder cannot be written or is not the program's own.</exception>
    /// <exception cref="TemplateException">A template is at fault.</exception>
    internal static (int Pages, int Made) Write(
        string target, IEnumerable<SiteWork> works, IEnumerable<SiteFile> before, Templates templates, IEnumerable<SiteFile> after, SiteRecord? record = null, int many = ManyFiles, CancellationToken cancellation = default)
    {
        using var folder = SiteFolder.Open(target, reuse: record is { IsEmpty: false });
        foreach (var file in before)
        {
            folder.Write(file.Path, file.Bytes.Span);
        }

        var run = new WriterRun(folder, templates, record, cancellation);
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount };
        try
        {
            Parallel.ForEach(Partitioner.Create(works, EnumerablePartitionerOptions.NoBuffering), options, run.Do);
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

        folder.Finish(keep: record is not null && folder.Count >= many);
        if (record is not null)
        {
            SiteRecord.Write(target, run.Done);
        }

        return (run.Pages, run.Made);
    }
}
