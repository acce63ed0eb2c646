using System.Globalization;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Changes of spelling that say the same: whoever reports them cries wolf.</summary>
internal static class HarmlessMutations
{
    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("say the same: a remark", Duty.Never, "", (shipped, _) => Yaml(shipped).Select(file => Mutation.Of("remark", file.Path, file.Text + "# Nothing else.\n"))),
        MutationClass.Of("say the same: other line ends", Duty.Never, "", (shipped, _) => Yaml(shipped).Select(file => Mutation.Of("line ends", file.Path, file.Text.Replace("\n", "\r\n", StringComparison.Ordinal)))),
        MutationClass.Of("say the same: quotes", Duty.Never, "", (shipped, _) => Spot.In(shipped, "rule part task engine", "title").Where(spot => !((ScalarNode)spot.Node).IsQuoted).Select(spot => spot.Mistake("quoted", spot.Replaced($"\"{spot.Word!.Replace("\"", "\\\"", StringComparison.Ordinal)}\"")))),
        MutationClass.Of("say the same: a list of one", Duty.Never, "", (shipped, _) => Spot.In(shipped, "rule", "when/[a-z-]+\\.[a-z-]+").Where(spot => spot is { Node: ScalarNode { Kind: ScalarKind.Text }, Parent: MappingNode }).Select(spot => spot.Mistake("as a list", spot.Replaced($"[{spot.Word}]")))),
        MutationClass.Of("say the same: another form of the number", Duty.Never, "", (shipped, _) => Spot.In(shipped, "engine chassis gearbox", "facts/*|belt-drives/*/stations/(?:x|y|plane)").Where(spot => spot.Node is ScalarNode { Kind: ScalarKind.Integer }).Select(spot => spot.Mistake("with a decimal", spot.Replaced(spot.Word + ".0")))),
        MutationClass.Of("say the same: another unit", Duty.Never, "", (shipped, _) => Spot.In(shipped, "engine", "facts/(?:displacement|manifold-height)").Where(spot => spot.Node is ScalarNode { Kind: ScalarKind.Integer }).Where(spot => spot.Trail.EndsWith("height", StringComparison.Ordinal)).Select(spot => spot.Mistake("in centimetres", spot.Replaced((decimal.Parse(spot.Word!, CultureInfo.InvariantCulture) / 10).ToString(CultureInfo.InvariantCulture) + " cm")))),
        MutationClass.Of("say the same: not of not", Duty.Never, "", (shipped, _) => Spot.In(shipped, "rule", "when").Where(spot => TextEdit.Text(spot.File, spot.Node.Place).StartsWith('{')).Select(spot => spot.Mistake("not of not", spot.Replaced($"{{not: {{not: {TextEdit.Text(spot.File, spot.Node.Place)}}}}}")))),
        MutationClass.Of("say the same: overrides in another order", Duty.Never, "", (shipped, _) => Spot.In(shipped, "rule", "overrides").Where(spot => spot.Node is SequenceNode { Items.Length: > 1 }).Select(spot => spot.Mistake("reversed", spot.Replaced($"[{string.Join(", ", ((SequenceNode)spot.Node).Items.Reverse().Select(item => ((ScalarNode)item).Text))}]")))),
    ];

    private static IEnumerable<SourceFile> Yaml(ShippedBase shipped) => shipped.Files.Where(file => file.Body is null && file.Text.EndsWith('\n'));
}
