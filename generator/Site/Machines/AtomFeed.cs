using System.Security.Cryptography;
using System.Text;
using System.Xml;

namespace Swapwright.Site.Machines;

/// <summary>A change as a feed tells it.</summary>
/// <param name="Name">Names the change for all time, as in "rule/cable-clutch/2025-03-01/0".</param>
/// <param name="Path">The page it leads to, from the site's root.</param>
/// <param name="Html">Rendered for a page at the site's root.</param>
internal sealed record FeedEntry(string Name, string Title, DateOnly Day, string Path, HtmlString Html);

/// <summary>Dated notes → an Atom feed (RFC 4287).</summary>
internal static class AtomFeed
{
    public const string Path = "feed.xml";

    /// <summary>Readers keep what they have seen; older changes stand on the page of changes.</summary>
    private const int MostEntries = 100;

    private const string Atom = "http://www.w3.org/2005/Atom";

    /// <param name="title">The base's title; ids are drawn from it, so that they outlive a move of the site (RFC 4287, 4.2.6).</param>
    /// <param name="entries">Newest first.</param>
    /// <param name="otherwise">When the feed was last changed, where there is no entry.</param>
    /// <param name="address">Where the site is published; null leaves links relative to the feed.</param>
    public static SiteFile File(string title, string language, IReadOnlyList<FeedEntry> entries, DateOnly otherwise, string? address) => new(Path, XmlText.Write(xml =>
    {
        xml.WriteStartElement("feed", Atom);
        xml.WriteAttributeString("xml", "lang", null, XmlText.Clean(language));
        if (address is not null)
        {
            xml.WriteAttributeString("xml", "base", null, SitePaths.Address(address, "")!);
        }

        Text(xml, "id", Id(title, "feed"));
        Text(xml, "title", $"{title}: what changed");
        Text(xml, "updated", Moment(entries.Count > 0 ? entries[0].Day : otherwise));
        xml.WriteStartElement("author", Atom);
        Text(xml, "name", $"The contributors of {title}");
        xml.WriteEndElement();
        if (address is not null)
        {
            Link(xml, "self", "application/atom+xml", SitePaths.Address(address, Path)!);
        }

        Link(xml, "alternate", "text/html", SitePaths.Address(address, SitePaths.Changes) ?? SitePaths.Changes);
        foreach (var entry in entries.Take(MostEntries))
        {
            xml.WriteStartElement("entry", Atom);
            Text(xml, "id", Id(title, entry.Name));
            Text(xml, "title", entry.Title);
            Text(xml, "updated", Moment(entry.Day));
            Link(xml, "alternate", "text/html", SitePaths.Address(address, entry.Path) ?? entry.Path);
            xml.WriteStartElement("content", Atom);
            xml.WriteAttributeString("type", "html");
            xml.WriteString(XmlText.Clean(entry.Html.Value));
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }));

    /// <summary>RFC 3339. A note knows its day and no hour.</summary>
    private static string Moment(DateOnly day) => day.ToString("yyyy-MM-dd'T00:00:00Z'", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A UUID of version 8 made of a name by SHA-256 (RFC 9562, B.2): the same name has the same id for ever.</summary>
    private static string Id(string title, string name)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes($"{title}\n{name}"))[..16];
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return $"urn:uuid:{new Guid(bytes, bigEndian: true)}";
    }

    private static void Text(XmlWriter xml, string name, string text) => xml.WriteElementString(name, Atom, XmlText.Clean(text));

    private static void Link(XmlWriter xml, string relation, string type, string address)
    {
        xml.WriteStartElement("link", Atom);
        xml.WriteAttributeString("rel", relation);
        xml.WriteAttributeString("type", type);
        xml.WriteAttributeString("href", address);
        xml.WriteEndElement();
    }
}
