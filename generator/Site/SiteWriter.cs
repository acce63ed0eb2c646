using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using Swapwright.Site.Models;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;

namespace Swapwright.Site;

/// <summary>Renders a site's pages and puts the finished site in place.</summary>
public static class SiteWriter
{
    /// <summary>Writes pages, files and the templates' own files; the folder is replaced at the end or not at all.</summary>
    /// <param name="target">Folder of the site: new, empty, or made by an earlier run.</param>
    /// <param name="pages">Each page is built and rendered by one worker and then let go.</param>
    /// <param name="files">Data beside the pages, each made by one worker.</param>
    /// <param name="aboutAll">Paths of all pages, in order → files that speak of them.</param>
    /// <returns>The number of pages written.</returns>
    /// <exception cref="SiteFolderException">The folder cannot be written or is not the program's own.</exception>
    /// <exception cref="TemplateException">A template is at fault.</exception>
    public static int Write(
        string target,
        IEnumerable<Func<Page>> pages,
        IEnumerable<Func<SiteFile>> files,
        Templates templates,
        Func<IReadOnlyList<string>, IEnumerable<SiteFile>> aboutAll,
        CancellationToken cancellation = default)
    {
        using var folder = SiteFolder.Open(target);
        foreach (var file in templates.Assets)
        {
            folder.Write(file.Path, file.Bytes.Span);
        }

        var paths = new ConcurrentBag<string>();
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount };
        try
        {
            Parallel.ForEach(files, options, make =>
            {
                var file = make();
                folder.Write(file.Path, file.Bytes.Span);
            });
            Parallel.ForEach(pages, options, build =>
            {
                var page = build();
                folder.Write(page.Frame.Path, templates.Render(page));
                paths.Add(page.Frame.Path);
            });
        }
        catch (AggregateException several)
        {
            // Several workers may fail for the same reason; one report is enough, and a caller catches it by its own type.
            ExceptionDispatchInfo.Throw(several.InnerExceptions.OrderBy(fault => fault.Message, StringComparer.Ordinal).First());
        }

        foreach (var file in aboutAll([.. paths.Order(StringComparer.Ordinal)]))
        {
            folder.Write(file.Path, file.Bytes.Span);
        }

        folder.Finish();
        return paths.Count;
    }
}
