using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Swapwright.Site;
using Swapwright.Site.Machines;

namespace Swapwright.Tests.Site.Machines;

/// <summary>Held against the rules of RFC 4287, 4.1.1 and 4.1.2; RFC 3339 for moments; RFC 9562 for the ids.</summary>
public sealed partial class AtomFeedTests
{
    private static readonly XNamespace s_atom = "http://www.w3.org/2005/Atom";

    [Theory]
    [InlineData(null)]
    [InlineData("https://swaps.example/base/")]
    public void File_Changes_FollowTheRulesOfTheStandard(string? address)
    {
        var feed = Feed(address, Entry("rule/a/2025-03-02/0", 2), Entry("rule/b/2025-03-01/0", 1));

        Assert.Equal(s_atom + "feed", feed.Name);
        RequireOne(feed, "id", "title", "updated", "author");
        Assert.NotEqual("", feed.Element(s_atom + "author")!.Element(s_atom + "name")!.Value);
        Assert.Equal("2025-03-02T00:00:00Z", feed.Element(s_atom + "updated")!.Value);
        var entries = feed.Elements(s_atom + "entry").ToList();
        Assert.Equal(2, entries.Count);
        Assert.All(entries, entry =>
        {
            RequireOne(entry, "id", "title", "updated", "content");
            Assert.Contains(entry.Elements(s_atom + "link"), link => link.Attribute("rel")!.Value == "alternate");
        });
        Assert.All(feed.Descendants(s_atom + "updated"), moment => Assert.True(DateTimeOffset.TryParseExact(moment.Value, "yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out _), moment.Value));
        Assert.All(feed.Descendants(s_atom + "id"), id => Assert.Matches(Uuid(), id.Value));
        Assert.Equal(3, feed.Descendants(s_atom + "id").Select(id => id.Value).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void File_SiteThatMoves_KeepsItsIds()
    {
        var before = Feed(null, Entry("rule/a/2025-03-02/0", 2));
        var after = Feed("https://elsewhere.example/", Entry("rule/a/2025-03-02/0", 2));

        Assert.Equal(before.Descendants(s_atom + "id").Select(id => id.Value), after.Descendants(s_atom + "id").Select(id => id.Value));
        Assert.NotEqual(before.Descendants(s_atom + "id").Last().Value, Feed(null, Entry("rule/a/2025-03-02/1", 2)).Descendants(s_atom + "id").Last().Value);
    }

    [Fact]
    public void File_PublishedSite_LinksToItselfAndByWholeAddresses()
    {
        var feed = Feed("https://swaps.example/base/", Entry("rule/a/2025-03-02/0", 2));

        var links = feed.Elements(s_atom + "link").ToDictionary(link => link.Attribute("rel")!.Value, link => link.Attribute("href")!.Value, StringComparer.Ordinal);
        Assert.Equal("https://swaps.example/base/feed.xml", links["self"]);
        Assert.Equal("https://swaps.example/base/changes.html", links["alternate"]);
        Assert.Equal("https://swaps.example/base/rule/a.html", feed.Element(s_atom + "entry")!.Element(s_atom + "link")!.Attribute("href")!.Value);
        Assert.Equal("https://swaps.example/base/", feed.Attribute(XNamespace.Xml + "base")!.Value);
        Assert.DoesNotContain(Feed(null, Entry("rule/a/2025-03-02/0", 2)).Elements(s_atom + "link"), link => link.Attribute("rel")!.Value == "self");
    }

    [Fact]
    public void File_NothingNoted_IsStillAFeed()
    {
        var feed = Feed(null);

        RequireOne(feed, "id", "title", "updated", "author");
        Assert.Equal("2026-03-01T00:00:00Z", feed.Element(s_atom + "updated")!.Value);
    }

    [Fact]
    public void File_WhatXmlCannotSay_IsReplaced()
    {
        var entry = Entry("rule/a/2025-03-02/0", 2) with { Title = "a\u0001\uD800b<c>]]>", Html = new HtmlString("<em>x</em>\u0008") };

        var read = Feed(null, entry).Element(s_atom + "entry")!;

        Assert.Equal("a\uFFFD\uFFFDb<c>]]>", read.Element(s_atom + "title")!.Value);
        Assert.Equal("<em>x</em>\uFFFD", read.Element(s_atom + "content")!.Value);
        Assert.Equal("html", read.Element(s_atom + "content")!.Attribute("type")!.Value);
    }

    private static FeedEntry Entry(string name, int day) => new(name, "Rule: cable clutch", new DateOnly(2025, 3, day), $"rule/{name.Split('/')[1]}.html", new HtmlString("Measured <strong>again</strong>."));

    private static XElement Feed(string? address, params FeedEntry[] entries)
    {
        var file = AtomFeed.File("Quillet transplants", "en", entries, new DateOnly(2026, 3, 1), address);
        Assert.Equal("feed.xml", file.Path);
        using var stream = new MemoryStream(file.Bytes.ToArray());
        return XDocument.Load(stream).Root!;
    }

    private static void RequireOne(XElement of, params string[] names) => Assert.All(names, name => Assert.Single(of.Elements(s_atom + name)));

    [GeneratedRegex("^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Uuid();
}
