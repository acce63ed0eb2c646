using System.Globalization;
using System.Text.RegularExpressions;
using Swapwright.Knowledge.Binding;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Impact;

/// <summary>A drawn base, and the same base after one or two edits that leave it readable.</summary>
internal sealed partial class EditedBase
{
    private readonly Random _random;

    private EditedBase(int seed)
    {
        _random = new Random(seed);
        Old = RandomBase.Draw(seed);
        New = Copy(Old);
    }

    public MemoryBase Old { get; }

    public MemoryBase New { get; private set; }

    /// <summary>The kinds of edit made.</summary>
    public List<string> Edits { get; } = [];

    public static EditedBase Draw(int seed)
    {
        var edited = new EditedBase(seed);
        for (var wanted = edited._random.Next(1, 3); wanted > 0; wanted--)
        {
            edited.Edit();
        }

        return edited;
    }

    private void Edit()
    {
        (string Name, Func<MemoryBase, bool> Do)[] edits =
        [
            ("source", @base => Replace(@base, "rules/", Source(), _ => $"source: {Of("chassis", "donor", "new", "made", "other", "none")}")),
            ("treatment", @base => Replace(@base, "rules/", Treatment(), _ => $"treatment: {Of("as-is", "refresh", "modify", "blank")}")),
            ("part", @base => Replace(@base, "rules/", Treatment(), match => $"{match.Value}, notes: Mind the {Of("edge", "seal")}")),
            ("drop condition", @base => Replace(@base, "rules/", When(), _ => "")),
            ("narrow", @base => Replace(@base, "rules/", When(), match => $"when: {{all: [{match.Groups["condition"].Value}, {{chassis.variant: {Id(@base, "chassis/")}}}]}}\n")),
            ("widen", @base => Replace(@base, "rules/", When(), match => $"when: {{any: [{match.Groups["condition"].Value}, {{donor.variant: {Id(@base, "engines/")}}}]}}\n")),
            ("drop overrides", @base => Replace(@base, "rules/", Overrides(), _ => "")),
            ("drop rule", @base => Drop(@base, "rules/")),
            ("drop chassis", @base => Drop(@base, "chassis/")),
            ("drop donor", @base => Drop(@base, "engines/")),
            ("drop task", @base => Drop(@base, "tasks/")),
            ("drop choice", @base => Drop(@base, "choices/")),
            ("add chassis", @base => Add(@base, "chassis/c9.yaml", @base[Path(@base, "chassis/")])),
            ("add donor", @base => Add(@base, "engines/d9.yaml", @base[Path(@base, "engines/")])),
            ("add option", @base => Replace(@base, "choices/", Options(), match => $"{match.Value}  o9: {{title: Option 9}}\n")),
            ("drop option", @base => Replace(@base, "choices/", Option(), _ => "")),
            ("add choice", @base => Add(@base, "choices/extra.yaml", $"title: Extra\n{Of("", $"applies: {{chassis.variant: {Id(@base, "chassis/")}}}\n")}options:\n  o0: {{title: Zero}}\n  o1: {{title: One}}\n")
                && Add(@base, "rules/front/extra.yaml", $"title: Extra\nwhen: {{choice.extra: o1}}\nthen: {Of("{exclude: true}", "{tasks: [t0]}", "{answers: {p0: {source: made, treatment: move}}}")}\n")),
            ("fact", @base => Replace(@base, "chassis/", Fuel(), _ => $"fuel: {Of("carb", "single", "multi")}")),
            ("years", @base => Replace(@base, "engines/", Years(), _ => Of("years: {from: 1986, to: 1988}", "years: {from: 1992, to: 1995}"))),
            ("choice applies", @base => Replace(@base, "choices/", Applies(), _ => "")),
            ("position applies", @base => Replace(@base, "positions.yaml", PositionApplies(), _ => $", applies: {{chassis.variant: {Id(@base, "chassis/")}}}}}")),
            ("exclude", @base => Add(@base, "rules/front/shut.yaml", $"title: Shut\nwhen: {{chassis.variant: {Id(@base, "chassis/")}, donor.variant: {Id(@base, "engines/")}}}\nthen: {{exclude: It does not fit.}}\n")),
            ("caution", @base => Replace(@base, "rules/", Then(), match => $"{match.Value}  cautions: [{{about: heat, text: Hot {Of("pipe", "block")}}}]\n  mistakes: [Left loose]\n")),
            ("because", @base => Replace(@base, "rules/", Then(), match => $"because: It {Of("fits", "clears", "holds")}.\nstanding: {Of("measured", "built")}\n{match.Value}")),
            ("task when", @base => Replace(@base, "tasks/", Phase(), match => $"when: {{donor.variant: {Id(@base, "engines/")}}}\n{match.Value}")),
        ];
        if (_random.Next(4) == 0)
        {
            // Words change less often by chance than answers do.
            edits = [.. edits.Where(edit => edit.Name is "because" or "part" or "caution")];
        }

        for (var tries = 0; tries < 100; tries++)
        {
            var (name, edit) = edits[_random.Next(edits.Length)];
            var changed = Copy(New);
            if (edit(changed) && Reads(changed))
            {
                New = changed;
                Edits.Add(name);
                return;
            }
        }
    }

    private static bool Reads(MemoryBase @base)
    {
        var tree = @base.Tree();
        return tree.Findings.IsEmpty && KnowledgeBinder.Bind(tree) is var (kb, findings) && findings.IsEmpty
            && kb.Chassis.Count > 0 && kb.Donors.Count > 0 && kb.Choices.All.All(choice => !choice.Options.IsEmpty)
            && Swapwright.Rules.Resolver.Resolve(kb).Findings.IsEmpty;
    }

    private bool Replace(MemoryBase @base, string under, Regex what, Func<Match, string> with)
    {
        var path = Path(@base, under);
        var matches = what.Matches(@base[path]);
        if (matches.Count == 0)
        {
            return false;
        }

        var match = matches[_random.Next(matches.Count)];
        var text = with(match);
        @base[path] = string.Concat(@base[path].AsSpan(0, match.Index), text, @base[path].AsSpan(match.Index + match.Length));
        return text != match.Value;
    }

    private bool Drop(MemoryBase @base, string under) => @base.Remove(Path(@base, under));

    private static bool Add(MemoryBase @base, string path, string text)
    {
        if (@base.Files.Any(file => file.Key == path))
        {
            return false;
        }

        @base[path] = text;
        return true;
    }

    private string Path(MemoryBase @base, string under)
    {
        List<string> paths = [.. @base.Files.Select(file => file.Key).Where(path => path.StartsWith(under, StringComparison.Ordinal))];
        return paths[_random.Next(paths.Count)];
    }

    private string Id(MemoryBase @base, string under) => System.IO.Path.GetFileNameWithoutExtension(Path(@base, under));

    private string Of(params string[] from) => from[_random.Next(from.Length)];

    private static MemoryBase Copy(MemoryBase @base)
    {
        var copy = new MemoryBase();
        foreach (var (path, text) in @base.Files)
        {
            copy[path] = text;
        }

        return copy;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", Edits)}");

    [GeneratedRegex(@"source: \w+", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Source();

    [GeneratedRegex(@"treatment: [\w-]+", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Treatment();

    [GeneratedRegex(@"^when: (?<condition>[^\n]+)\n", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex When();

    [GeneratedRegex(@"^overrides: [^\n]+\n", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex Overrides();

    [GeneratedRegex(@"^options:\n", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex Options();

    [GeneratedRegex(@"^  o[0-9]: [^\n]+\n", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex Option();

    [GeneratedRegex(@"fuel: \w+", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Fuel();

    [GeneratedRegex(@"years: \{[^}]+\}", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Years();

    [GeneratedRegex(@"^applies: [^\n]+\n", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex Applies();

    [GeneratedRegex(@"(, applies: [^\n]+)?\}$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex PositionApplies();

    [GeneratedRegex(@"^then:\n", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex Then();

    [GeneratedRegex(@"^phase: [^\n]+\n", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.Multiline)]
    private static partial Regex Phase();
}
