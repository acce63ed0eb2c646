using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Site;

/// <summary>The keys of the shipped base: whoever follows them ends at a page.</summary>
public sealed class WhichPagesTests
{
    private static readonly SiteKnowledge Shipped = new(ShippedKnowledge.Proof());

    public static TheoryData<string> Subjects() => ["chassis", "donor"];

    [Theory]
    [MemberData(nameof(Subjects))]
    public void Sections_OfEachFamilyAndOfAll_EndAtEveryVariant(string subject)
    {
        var page = Page(subject);

        var expected = subject == "chassis"
            ? Shipped.Base.Chassis.All.Select(chassis => SitePaths.Chassis(chassis.Id)).ToHashSet(StringComparer.Ordinal)
            : Shipped.Base.Donors.All.Select(donor => SitePaths.Donor(donor.Id)).ToHashSet(StringComparer.Ordinal);
        var (families, any) = (page.Sections.Take(page.Sections.Count - 1), page.Sections[^1]);
        Assert.Equal("any", any.Anchor);
        Assert.Equal(expected.Order(StringComparer.Ordinal), families.SelectMany(Ends).SelectMany(end => end.Variants).Select(link => link.Href).Order(StringComparer.Ordinal));
        Assert.Equal(expected.Order(StringComparer.Ordinal), Ends(any).SelectMany(end => end.Variants).Select(link => link.Href).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Subjects))]
    public void Steps_OfEachSection_AreReachedFromTheAnswerBefore(string subject)
    {
        foreach (var section in Page(subject).Sections)
        {
            var places = section.Steps.ToDictionary(step => $"#{step.Anchor}", StringComparer.Ordinal);
            Assert.All(section.Steps, step =>
            {
                Assert.True(step.Replies.Count > 1);
                Assert.All(step.Replies, reply => Assert.True(reply.Next is null != (reply.End is null)));
                Assert.All(step.Replies.Select(reply => reply.Next).OfType<PageLink>(), next => Assert.Equal($"#{step.Anchor}", places[next.Href].From!.Href));
            });
            Assert.Equal(section.Steps.Count, section.Steps.Sum(step => step.Replies.Count(reply => reply.Next is not null)) + (section.Steps.Count > 0 ? 1 : 0));
        }
    }

    [Theory]
    [MemberData(nameof(Subjects))]
    public void Ends_ThatNothingSeenTellsApart_SayWhatDiffers(string subject) =>
        Assert.All(Page(subject).Sections.SelectMany(Ends).Where(end => end.Variants.Count > 1), end => Assert.NotEmpty(end.Differences));

    private static WhichPage Page(string subject) => subject == "chassis" ? new WhichPages(Shipped).Chassis() : new WhichPages(Shipped).Donor();

    private static IEnumerable<KeyEnd> Ends(KeySection section) => section.Only is { } only ? [only] : section.Steps.SelectMany(step => step.Replies).Select(reply => reply.End).OfType<KeyEnd>();
}
