using System.Text.RegularExpressions;
using Swapwright.Knowledge;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Knowledge that is old, on nobody's word or out of reach.</summary>
internal static class WordMutations
{
    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("delete a source", Duty.Always, "reference", (shipped, _) => Spot.In(shipped, "sources", "sources/*").Where(spot => shipped.Proof.Base.Rules.All.Any(rule => rule.Sources.Contains(spot.Entry!.Key.Text))).Select(spot => spot.Mistake("deleted", spot.Removed(), spot.Entry!.Key.Text))),
        MutationClass.Of("leave out the reason", Duty.WhereItBreaks, "schema", (shipped, _) => Without(shipped, "because")),
        MutationClass.Of("leave out the sources", Duty.Always, "schema unsourced", (shipped, _) => Without(shipped, "sources").Where(mutation => shipped.Proof.Base.Rules.All.Any(rule => mutation.Touches(rule.Place.File) && Decides(rule))).Concat(Spot.In(shipped, "rule", "sources").Where(spot => spot.Parent is MappingNode && Decides(shipped.Proof.Base.Rules[spot.File.Id])).Select(spot => spot.Mistake("emptied", spot.Replaced("[]"))))),
        MutationClass.Of("age the day of checking", Duty.Always, "stale", (shipped, _) => Spot.In(shipped, "rule article", "checked").Select(spot => spot.Mistake("2015", spot.Replaced("2015-03-01")))),
        MutationClass.Of("leave out the day of checking", Duty.Always, "stale schema", (shipped, _) => Spot.In(shipped, "rule", "checked").Where(spot => shipped.Proof.Base.Rules[spot.File.Id].Standing != "reported").Select(spot => spot.Mistake("left out", spot.Removed()))),
        MutationClass.Of("let safety rest on a report", Duty.Always, "standing", (shipped, _) => Spot.In(shipped, "rule", "standing").Where(spot => spot.Word != "reported" && Safety(shipped, spot)).Select(spot => spot.Mistake("reported only", spot.Replaced("reported")))),
        MutationClass.Of("mistype a link", Duty.Always, "article", (shipped, _) => shipped.Files.SelectMany(file => Regex.Matches(file.Text, @"\]\((?:article|task|part|connector|position|rule|term|picture):(?<id>[a-z0-9-]+)", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture).Select(link => Mutation.Of($"link to {link.Groups["id"].Value}", file.Path, file.Text.Insert(link.Groups["id"].Index + 1, file.Text[link.Groups["id"].Index].ToString()))))),
        MutationClass.Of("link to a heading that is not there", Duty.Always, "article", (shipped, _) => shipped.Files.SelectMany(file => Regex.Matches(file.Text, @"\]\(article:[a-z0-9-]+\)", RegexOptions.NonBacktracking).Select(link => Mutation.Of($"anchor at {link.Value}", file.Path, file.Text.Insert(link.Index + link.Length - 1, "#what-nobody-wrote"))))),
        MutationClass.Of("jump over an order of headings", Duty.Always, "article", (shipped, _) => Articles(shipped, "^## ", "#### ")),
        MutationClass.Of("draw what a picture may not hold", Duty.Always, "article", (shipped, _) => shipped.Of("picture").Select(file => Mutation.Of("script", file.Path, file.Text.Replace("</svg>", "<script>alert(1)</script></svg>", StringComparison.Ordinal)))),
        MutationClass.Of("show a picture that is not there", Duty.Always, "article", (shipped, _) => shipped.Of("article").Select(file => Mutation.Of("picture", file.Path, file.Text + "\n![](nowhere.svg)\n"))),
    ];

    private static IEnumerable<Mutation> Without(ShippedBase shipped, string key) =>
        Spot.In(shipped, "rule", key).Where(spot => spot.Parent is MappingNode).Select(spot => spot.Mistake("left out", spot.Removed()));

    /// <summary>A rule that only advises or asks for work may rest on nobody's word.</summary>
    private static bool Decides(Rule rule) => !rule.Answers.IsEmpty || !rule.Values.IsEmpty || rule.Excludes || rule.Requires is not null;

    private static bool Safety(ShippedBase shipped, Spot spot) =>
        shipped.Proof.Base.Rules[spot.File.Id].Answers.Any(answer => shipped.Proof.Base.Positions[answer.Position].Safety is not null);

    private static IEnumerable<Mutation> Articles(ShippedBase shipped, string pattern, string by) =>
        shipped.Of("article").SelectMany(file => Regex.Matches(file.Text, pattern, RegexOptions.Multiline | RegexOptions.NonBacktracking)
            .Select(match => Mutation.Of(FormattableString.Invariant($"heading at {match.Index}"), file.Path, string.Concat(file.Text.AsSpan(0, match.Index), by, file.Text.AsSpan(match.Index + match.Length)))));
}
