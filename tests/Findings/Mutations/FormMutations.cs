using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Files that are not well formed, and files that the schema refuses.</summary>
internal static class FormMutations
{
    private const string Entities = "chassis engine gearbox ecu connector part choice rule task";

    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("break the YAML: a bracket left open", Duty.Always, "schema", (shipped, _) => Files(shipped).Where(file => file.Text.Contains('}', StringComparison.Ordinal)).Select(file => Whole(file, "bracket", file.Text.Remove(file.Text.LastIndexOf('}'), 1)))),
        MutationClass.Of("break the YAML: a tab", Duty.Always, "schema", (shipped, _) => Files(shipped).Where(file => file.Text.Contains("\n  ", StringComparison.Ordinal)).Select(file => Whole(file, "tab", Once(file.Text, "\n  ", "\n\t")))),
        MutationClass.Of("break the YAML: a key twice", Duty.Always, "schema", (shipped, _) => Files(shipped).Select(file => Whole(file, "twice", file.Text + "title: Again\n"))),
        MutationClass.Of("write an unknown key", Duty.Always, "schema", (shipped, _) => Files(shipped).Select(file => Whole(file, "unknown key", file.Text + "becuase: Because.\n"))),
        MutationClass.Of("write an unknown key further in", Duty.Always, "schema", (shipped, _) => Spot.In(shipped, "rule engine chassis", "then|then/answers/*|belt-drives/*|devices/*|harness").Where(spot => spot.Node is MappingNode).Select(spot => spot.Mistake("unknown key", TextEdit.Insert(spot.File, (MappingNode)spot.Node, "remark: none")))),
        MutationClass.Of("leave out what is required", Duty.Always, "schema reference", (shipped, _) => Spot.In(shipped, Entities, "title|then|phase|rows|question|options|then/answers/*/source|devices/*/connector").Where(spot => !spot.File.Text.Contains("\nlike:", StringComparison.Ordinal)).Select(spot => spot.Mistake("left out", spot.Removed()))),
        MutationClass.Of("write a value that is not on the list", Duty.Always, "schema", (shipped, _) => Spot.In(shipped, "rule task part engine", "standing|then/answers/*/(?:source|treatment)|phase|skill|from|belt-drives/*/stations/(?:side|role)|.*cautions/about").Select(spot => spot.Mistake("not on the list", spot.Replaced("whatever")))),
        MutationClass.Of("write a list for a text", Duty.Always, "schema", (shipped, _) => Spot.In(shipped, Entities, "title").Select(spot => spot.Mistake("a list", spot.Replaced("[one, two]")))),
    ];

    private static IEnumerable<SourceFile> Files(ShippedBase shipped) => shipped.Of(Entities.Split(' '));

    private static Mutation Whole(SourceFile file, string what, string text) => Mutation.Of(what, file.Path, text);

    private static string Once(string text, string old, string by)
    {
        var at = text.IndexOf(old, StringComparison.Ordinal);
        return string.Concat(text.AsSpan(0, at), by, text.AsSpan(at + old.Length));
    }
}
