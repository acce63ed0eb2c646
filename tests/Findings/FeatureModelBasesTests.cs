using System.Globalization;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings;

/// <summary>
/// Published feature models written as knowledge bases: a feature group is a choice, a constraint is a rule that excludes, and
/// the number of products is the number of buildable combinations. Counts from the tests of github flamapy/bdd_metamodel
/// (commit 898b107) as quoted in its repository: mobile phone 14, pizza 42, pizza with complex constraints 25.
/// </summary>
public sealed class FeatureModelBasesTests
{
    [Fact]
    public void Count_MobilePhone_IsThePublishedFourteen() => Assert.Equal(14, Products(
        ("screen", ["basic", "colour", "high-res"], ""),
        ("gps", ["yes", "no"], ""),
        ("media", ["yes", "no"], ""),
        ("camera", ["yes", "no"], "choice.media: yes"),
        ("mp3", ["yes", "no"], "choice.media: yes"),
        ("gps-not-basic", [], "choice.gps: yes, choice.screen: basic"),
        ("camera-wants-high-res", [], "choice.camera: yes, not: {choice.screen: high-res}"),
        ("media-is-one-of-them", [], "choice.media: yes, choice.camera: no, choice.mp3: no")));

    [Theory]
    [InlineData(false, 42)]
    [InlineData(true, 25)]
    public void Count_Pizza_IsThePublishedNumber(bool complex, int products)
    {
        (string, string[], string)[] plain =
        [
            ("salami", ["yes", "no"], ""),
            ("ham", ["yes", "no"], ""),
            ("mozzarella", ["yes", "no"], ""),
            ("size", ["normal", "big"], ""),
            ("dough", ["neapolitan", "sicilian"], ""),
            ("crust", ["yes", "no"], ""),
            ("some-topping", [], "choice.salami: no, choice.ham: no, choice.mozzarella: no"),
        ];
        (string, string[], string)[] constraints = complex
            ? [("crust-sicilian-big", [], "choice.crust: yes, choice.dough: sicilian, choice.size: normal"), ("neapolitan-plain", [], "choice.dough: neapolitan, any: [{choice.salami: yes}, {choice.ham: yes}]")]
            : [("crust-big", [], "choice.crust: yes, choice.size: normal")];
        Assert.Equal(products, Products([.. plain, .. constraints]));
    }

    /// <summary>Entries with options are choices with the condition where they apply; entries without are exclusions.</summary>
    private static int Products(params (string Id, string[] Options, string Condition)[] features)
    {
        using var folder = KnowledgeBaseCase.CopyOf("small");
        foreach (var (id, options, condition) in features)
        {
            var inside = options.Length > 0;
            var file = inside ? $"choices/{id}.yaml" : $"rules/mounts/{id}.yaml";
            var when = condition.Length == 0 ? "" : inside ? $"applies: {{{condition}}}\n" : $"when: {{{condition}}}\n";
            var rest = inside
                ? "options: {" + string.Join(", ", options.Select(option => $"\"{option}\": {{title: {option} one}}")) + "}\n"
                : "then: {exclude: The model does not allow it.}\nbecause: The model says so.\nsources: [bench]\n";
            folder.Write(file, $"title: {id}\n{when}{rest}");
        }

        var proof = Proof.Of(folder.Path);
        // The models recommend nothing, and their first options need not go together.
        Assert.DoesNotContain(proof.Findings, finding => finding.Severity == Swapwright.Diagnostics.Severity.Error && finding.Id != "default-clash");
        return int.Parse(proof.Resolution!.Store.Count(proof.Resolution.Buildable).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
