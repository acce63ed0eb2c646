using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;

namespace Swapwright.Site;

/// <summary>Renders a site's pages and puts the finished site in place.</summary>
public static class SiteWriter
{
    /// <summary>Writes pages and files; the folder is replaced at the end or not at all.</summary>
    /// <param name="target">Folder of the site: new, empty, or made by an earlier run.</param>
    /// <param name="works">Begun in this order, each by one worker; a page is let go when it is written.</param>
    /// <param name="before">Files that are there already, written first.</param>
    /// <param name="after">Files that are written last.</param>
    /// <param name="record">Of the earlier run: works with the same inputs, whose files are as that run left them, are kept and not made.</param>
    /// <returns>The number of pages of the site, and how many of them were made.</returns>
    /// <exception cref="SiteFolderException">The folder cannot be written or is not the program's own.</exception>
    /// <exception cref="TemplateException">A template is at fault.</exception>
    internal static (int Pages, int Made) Write(
        string target, IEnumerable<SiteWork> works, IEnumerable<SiteFile> before, Templates templates, IEnumerable<SiteFile> after, SiteRecord? record = null, CancellationToken cancellation = default)
    {
        using var folder = SiteFolder.Open(target);
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

        folder.Finish();
        if (record is not null)
        {
            SiteRecord.Write(target, run.Done);
        }

        return (run.Pages, run.Made);
    }
}
