using System.Collections.Frozen;
using System.Text;
using Swapwright.Site;
using Swapwright.Site.Rendering;

namespace Swapwright.Preview;

/// <summary>A site whose pages are made when they are asked for. One page at a time is made: the space is asked without locks.</summary>
internal sealed class PreviewSite
{
    private readonly Lock _gate = new();
    private readonly FrozenDictionary<string, PlannedPage> _pages;
    private readonly FrozenDictionary<string, Func<SiteFile>> _data;
    private readonly FrozenDictionary<string, SiteFile> _assets;
    private readonly Dictionary<string, ReadOnlyMemory<byte>> _made = new(StringComparer.Ordinal);
    private readonly Templates _templates;
    private PreviewSite? _before;

    /// <param name="before">The site before this one, for pages that this one's templates fail to render.</param>
    public PreviewSite(SitePlan plan, Templates templates, PreviewSite? before)
    {
        _templates = templates;
        _pages = plan.Pages.ToFrozenDictionary(page => page.Path, StringComparer.Ordinal);
        _data = plan.Files.ToFrozenDictionary(file => file.Path, file => (Func<SiteFile>)file.Make, StringComparer.Ordinal);
        _assets = templates.Assets.ToFrozenDictionary(file => file.Path, StringComparer.Ordinal);
        _before = before;
        if (before is not null)
        {
            // One step back is enough; more would keep every site of a day's work.
            before._before = null;
        }
    }

    /// <summary>A file of the site; null where there is none of this path. Nothing is read from the disk.</summary>
    /// <param name="fault">What keeps a page from being rendered: then the bytes are those of the last one that was.</param>
    public ReadOnlyMemory<byte>? Find(string path, out TemplateException? fault)
    {
        fault = null;
        lock (_gate)
        {
            if (_made.TryGetValue(path, out var made))
            {
                return made;
            }

            try
            {
                var bytes = Make(path);
                if (bytes is not null)
                {
                    _made[path] = bytes.Value;
                }

                return bytes;
            }
            catch (TemplateException problem)
            {
                fault = problem;
                return _before?._made.TryGetValue(path, out var last) == true ? last : ReadOnlyMemory<byte>.Empty;
            }
        }
    }

    private ReadOnlyMemory<byte>? Make(string path) =>
        _pages.TryGetValue(path, out var page) ? Encoding.UTF8.GetBytes(_templates.Render(page.Build()))
        : _data.TryGetValue(path, out var data) ? data().Bytes
        : _assets.TryGetValue(path, out var asset) ? asset.Bytes
        // A bare null would become empty bytes: an array's null converts.
        : (ReadOnlyMemory<byte>?)null;
}
