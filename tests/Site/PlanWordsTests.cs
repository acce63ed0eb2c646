using Swapwright.Site.Pages;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Site;

/// <summary>The plan of the work knows hours and no delivery times, and says that it leaves them out.</summary>
public sealed class PlanWordsTests
{
    [Theory]
    [InlineData("parts-shop", "Waiting for what is ordered is left out; order before the first day.")]
    [InlineData("hose-shop", "Waiting for what is ordered is left out, and for what is made to measure (hose and cable shop): a shop may take weeks; order before the first day.")]
    [InlineData("machine-shop", "Waiting for what is ordered is left out, and for what is made to measure (machine shop): a shop may take weeks; order before the first day.")]
    public void Words_OfThePlan_SayThatWaitingIsLeftOut(string from, string words)
    {
        var sheet = SmallBase.Sheet("hazel-90", "alder-14");
        Assert.NotEmpty(sheet.Shopping);
        sheet = sheet with { Shopping = [.. sheet.Shopping.Select(line => line with { Part = line.Part with { From = from } })] };

        Assert.EndsWith($"an hour later on the road. {words}", new GuideWork(new SiteKnowledge(SmallBase.Proof), sheet, "guide/x.html").Words(), StringComparison.Ordinal);
    }
}
