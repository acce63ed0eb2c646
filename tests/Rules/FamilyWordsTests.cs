using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Rules;

public class FamilyWordsTests
{
    [Theory]
    [InlineData("a: Orrel 18 manual; a: Orrel 18 fleet; b: Marn 16", "donor: any Orrel 18")]
    [InlineData("a: Orrel 18; b: Marn 16", "donor Orrel 18")]
    [InlineData("a: Orrel 18 manual; a: Orrel 18, fleet; b: Marn 16", "donor: any Orrel")]
    [InlineData("a: Orrel 18 manual; a: Orrel 18 fleet; b: Orrel 18 late", "donor family a")]
    [InlineData("a: Orrel; a: Marn; b: Hazel", "donor family a")]
    [InlineData("a: Orrel 18 – early; a: Orrel 18 – late; b: Orrel 180", "donor: any Orrel 18")]
    public void Of_Titles_AreUsedWhereTheyTellTheFamilyApart(string titles, string wanted)
    {
        var one = SmallBase.Proof.Base.Donors.All[0];
        ImmutableArray<Variant> variants = [.. titles.Split("; ").Select(title => one with { Family = title[..1], Title = title[3..] })];

        Assert.Equal(wanted, FamilyWords.Of("donor", "a", variants));
    }
}
