using Swapwright.Diagnostics;
using Swapwright.Sheets;
using Swapwright.Site.Pages;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Fitting;

/// <summary>A tee or an adapter in the middle of a hose belongs to another line than the hose, and is told in the hose's row.</summary>
public sealed class CutInTests
{
    private const string Tee = "title: Gauge tee\ncategory: Fuel\nfrom: parts-shop\ncut-into: [feed]\n";

    /// <summary>What the part is long comes off the hose, and two more ends are pushed on: 50 mm of slack for them in this base. Common practice, no source.</summary>
    [Theory]
    [InlineData("", 50)]
    [InlineData("cut-into-length: 35\n", 15)]
    public void Sheet_HoseWithAPartCutIn_IsLongerByTwoEndsLessThePart(string length, double more)
    {
        double Feed(string tee)
        {
            var resolution = Prove(tee).Resolution!;
            var sheet = new SheetBuilder(resolution).Build(resolution.Store.Witness(resolution.Store.And(resolution.Buildable, resolution.Space.WhereChoice("return", ["pipe"]))));
            return sheet.Hoses!.Runs.Single(run => run.Id == "feed").LengthMm!.Value;
        }

        Assert.Equal(more, Feed(Tee + length) - Feed(Tee.Replace("cut-into: [feed]\n", "", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("pipe", true)]
    [InlineData("closed", false)]
    public void Sheet_PartThatIsCutIntoAHose_IsToldInItsRow(string option, bool told)
    {
        var proof = Prove(Tee);
        var resolution = proof.Resolution!;
        var sheet = new SheetBuilder(resolution).Build(resolution.Store.Witness(resolution.Store.And(resolution.Buildable, resolution.Space.WhereChoice("return", [option]))));

        Assert.Equal(told ? ["gauge-tee"] : [], sheet.Hoses!.Runs.Single(run => run.Id == "feed").CutIn.Select(one => one.Part));
        Assert.All(sheet.Hoses.Runs.Where(run => run.Id != "feed"), run => Assert.Empty(run.CutIn));
        Assert.Equal(told ? 1 : 0, GuideHoses.Of(new SiteKnowledge(proof), sheet).Count(hose => hose.Action.EndsWith(" Cut into it: gauge tee. That takes 2 more clips.", StringComparison.Ordinal)));
    }

    /// <summary>The hose card says how many lengths of 2 m are bought and what is over, which is what the pieces leave of them.</summary>
    [Fact]
    public void Bought_HoseThatIsCut_SaysWhatIsLeft()
    {
        var proof = Prove(Tee);
        var resolution = proof.Resolution!;
        var sheet = new SheetBuilder(resolution).Build(resolution.Store.Witness(resolution.Store.And(resolution.Buildable, resolution.Space.WhereChoice("return", ["pipe"]))));
        var cut = sheet.Hoses!.Runs.SelectMany(run => run.Pieces).Where(piece => piece.Part == "fuel-hose-8").Sum(piece => piece.LengthMm!.Value);
        var line = GuideHoses.Bought(new SiteKnowledge(proof), sheet).Single(value => value.Name == proof.Base.Parts["fuel-hose-8"].Title);

        Assert.Equal(FormattableString.Invariant($"{cut:#,0} mm to cut, {(2000 * int.Parse(line.Value, System.Globalization.CultureInfo.InvariantCulture)) - cut:#,0} mm left over"), line.Detail);
        Assert.True(2000 * int.Parse(line.Value, System.Globalization.CultureInfo.InvariantCulture) >= 1.1 * cut);
    }

    [Fact]
    public void Bind_HoseThatNothingDeclares_IsFound() =>
        Assert.Single(Prove(Tee.Replace("[feed]", "[fed]", StringComparison.Ordinal)).Messages(FindingKinds.Reference));

    private static Swapwright.Findings.Proof Prove(string tee) => ChangedBase.Prove(
        "plumbing",
        ("rules/fuel/return-pipe.yaml", "return: {source: chassis, treatment: as-is}", "return: {source: chassis, treatment: as-is, also: [gauge-tee]}"),
        ("parts/gauge-tee.yaml", "", tee));
}
