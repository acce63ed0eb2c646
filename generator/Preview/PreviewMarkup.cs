using System.Globalization;
using System.Text;

namespace Swapwright.Preview;

/// <summary>What the preview adds to a page on its way out: its own script and style, and leave to hear of changes.</summary>
internal static class PreviewMarkup
{
    /// <summary>Below this come the preview's own files; no page of a site has a name that begins with a dot.</summary>
    public const string Own = ".preview/";

    /// <summary>The rules of the pages hold here as well, whatever a template says; only hearing of changes is added.</summary>
    public const string ContentSecurityPolicy = "default-src 'none'; connect-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; script-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    public static byte[] With(ReadOnlySpan<byte> page, int siteVersion)
    {
        var html = Encoding.UTF8.GetString(page).Replace("content=\"default-src 'none';", "content=\"default-src 'none'; connect-src 'self';", StringComparison.Ordinal);
        var added = string.Create(CultureInfo.InvariantCulture, $"<link rel=\"stylesheet\" href=\"/{Own}bar.css\"><script src=\"/{Own}bar.js\" data-site=\"{siteVersion}\" defer></script>\n");
        var end = html.LastIndexOf("</body>", StringComparison.OrdinalIgnoreCase);
        return Encoding.UTF8.GetBytes(end < 0 ? html + added : html.Insert(end, added));
    }

    /// <summary>A page without a site: before the base was sound once, or where the template fails and there is no earlier page.</summary>
    public static byte[] Empty(string words, int siteVersion) => With(
        Encoding.UTF8.GetBytes($"<!doctype html>\n<html lang=\"en\">\n<head><meta charset=\"utf-8\"><title>Preview</title></head>\n<body>\n<p>{words}</p>\n</body>\n</html>\n"),
        siteVersion);
}
