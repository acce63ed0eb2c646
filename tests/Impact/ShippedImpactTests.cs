using System.Numerics;
using System.Text;
using Swapwright.Findings;
using Swapwright.Impact;
using Swapwright.Knowledge.Binding;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Source;
using Swapwright.Space;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Impact;

/// <summary>Single edits to the base that is shipped, held against the sheets of both sides.</summary>
public class ShippedImpactTests
{
    private static readonly SourceTree s_tree = KnowledgeFolder.Read(Path.Combine(Reading.Repository(), "swap-kb"));

    private static readonly Lazy<Proof> s_shipped = new(() => Resolved(s_tree));

    [Theory]
    [InlineData("rules/cooling/radiator-of-quillet-m.yaml", "source: new", "source: other")]
    [InlineData("rules/gearbox-and-drive/no-plate-behind-automatic.yaml", "gearbox.kind: automatic", "gearbox.kind: automatic\n  chassis.variant: quillet-m-92")]
    [InlineData("parts/radiator-22.yaml", "price: ", "price: 1 #")]
    [InlineData("choices/alternator.yaml", "  - option: keep\n", "  - option: donor\n")]
    public void Between_SingleEdit_IsWhatSheetsShow(string path, string old, string @new)
    {
        var edited = Resolved(With(path, old, @new));
        var impact = KnowledgeImpact.Between(s_shipped.Value, edited);
        Assert.True(impact.Changed);
        var (before, now) = (new Reader(s_shipped.Value.Resolution!), new Reader(edited.Resolution!));
        Combinations(impact, before, now);
        Guides(impact, before, now);
    }

    private static void Combinations(KnowledgeImpact impact, Reader before, Reader now)
    {
        var (was, isNow) = (before.Told(), now.Told());
        Assert.Equal(was.Keys.Except(isNow.Keys, StringComparer.Ordinal).Count(), impact.Lost.All);
        Assert.Equal(isNow.Keys.Except(was.Keys, StringComparer.Ordinal).Count(), impact.Gained.All);
        var common = was.Keys.Intersect(isNow.Keys, StringComparer.Ordinal).ToList();
        Assert.Equal(common.Count, impact.Compared);
        Assert.Equal(common.Count(name => !was[name].SequenceEqual(isNow[name], StringComparer.Ordinal)), impact.Answered);
        var wanted = common.SelectMany(name => was[name].Zip(isNow[name]).Where(pair => pair.First != pair.Second).Select(pair => $"{pair.First} > {pair.Second}"))
            .CountBy(step => step, StringComparer.Ordinal).OrderBy(step => step.Key, StringComparer.Ordinal).Select(step => (step.Key, (BigInteger)step.Value));
        Assert.Equal(wanted, impact.Answers
            .Select(change => ($"{change.Position.Id} {Answer(change.From)} > {change.Position.Id} {Answer(change.To)}", change.Extent.Combinations))
            .OrderBy(step => step.Item1, StringComparer.Ordinal));
    }

    private static void Guides(KnowledgeImpact impact, Reader before, Reader now)
    {
        var (was, isNow) = (before.Guides(), now.Guides());
        Assert.Equal(isNow.Keys.Except(was.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal), impact.Guides.Gained.Select(guide => guide.Id).Order(StringComparer.Ordinal));
        Assert.Equal(was.Keys.Except(isNow.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal), impact.Guides.Lost.Select(guide => guide.Id).Order(StringComparer.Ordinal));
        var common = was.Keys.Intersect(isNow.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(
            common.Where(id => was[id].Name != isNow[id].Name),
            impact.Numbers.Defaults.Select(change => change.Guide.Id).Order(StringComparer.Ordinal));
        Assert.Equal(
            common.SelectMany(id => Moved(was[id].Sheet, isNow[id].Sheet).Select(name => $"{id} {name}")).Order(StringComparer.Ordinal),
            impact.Numbers.Moved.Where(change => change.Name.Split('.')[0] is "money" or "hours" or "wiring").Select(change => $"{change.Guide.Id} {change.Name}").Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Moved(Sheet old, Sheet @new)
    {
        (string Name, decimal Old, decimal New)[] numbers =
        [
            ("money.least", Math.Round(old.Money.Least, 2), Math.Round(@new.Money.Least, 2)),
            ("money.likely", Math.Round(old.Money.Likely, 2), Math.Round(@new.Money.Likely, 2)),
            ("money.most", Math.Round(old.Money.Most, 2), Math.Round(@new.Money.Most, 2)),
            ("hours.least", Math.Round(old.Hours.Least, 2), Math.Round(@new.Hours.Least, 2)),
            ("hours.likely", Math.Round(old.Hours.Likely, 2), Math.Round(@new.Hours.Likely, 2)),
            ("hours.most", Math.Round(old.Hours.Most, 2), Math.Round(@new.Hours.Most, 2)),
            ("wiring.splices", old.Wiring!.Bill.Splices, @new.Wiring!.Bill.Splices),
            ("wiring.wire", Math.Round((decimal)old.Wiring.Bill.TotalLengthMm, 1), Math.Round((decimal)@new.Wiring.Bill.TotalLengthMm, 1)),
            ("wiring.plugs.straight-in", old.Wiring.Counts.StraightIn, @new.Wiring.Counts.StraightIn),
            ("wiring.plugs.re-pinned", old.Wiring.Counts.RePinned, @new.Wiring.Counts.RePinned),
            ("wiring.plugs.changed", old.Wiring.Counts.Changed, @new.Wiring.Counts.Changed),
            ("wiring.plugs.added", old.Wiring.Counts.Added, @new.Wiring.Counts.Added),
            ("wiring.plugs.extended", old.Wiring.Counts.Extended, @new.Wiring.Counts.Extended),
            ("wiring.plugs.capped", old.Wiring.Counts.Capped, @new.Wiring.Counts.Capped),
        ];
        return numbers.Where(number => number.Old != number.New).Select(number => number.Name);
    }

    private static string Answer(Told told) => told.Asked ? string.Join(';', told.Answers.Select(TrueImpact.Words)) : "not asked";

    private static SourceTree With(string path, string old, string @new)
    {
        var file = s_tree.Find(path)!;
        Assert.Contains(old, file.Text, StringComparison.Ordinal);
        var changed = SourceReader.ReadFile(path, file.Kind, file.Id, Encoding.UTF8.GetBytes(file.Text.Replace(old, @new, StringComparison.Ordinal)), SourceLimits.Default);
        Assert.Empty(changed.Findings);
        return s_tree with { Files = [.. s_tree.Files.Select(one => one.Path == path ? changed.File : one)] };
    }

    private static Proof Resolved(SourceTree tree)
    {
        var (kb, findings) = KnowledgeBinder.Bind(tree);
        Assert.Empty(findings.Select(finding => finding.Message));
        var resolution = Resolver.Resolve(kb);
        return new Proof(tree, kb, resolution, new RegionWords(resolution), [], []);
    }

    /// <summary>Reads a base the way a reader does: one combination after the other.</summary>
    private sealed class Reader(Resolution resolution)
    {
        /// <summary>Combination → what it is told at each position, in order of id.</summary>
        public Dictionary<string, string[]> Told() => All(resolution.Store, resolution.Buildable, 0, []).ToDictionary(
            values => Name([.. values]),
            values => resolution.Space.Base.Positions.Ids.Select(position => $"{position} {At(position, [.. values])}").ToArray(),
            StringComparer.Ordinal);

        public Dictionary<string, (string Name, Sheet Sheet)> Guides()
        {
            var (headlines, builder) = (new Headlines(resolution), new SheetBuilder(resolution));
            return headlines.All().ToDictionary(
                headline => headline.Id,
                headline => headlines.Default(headline.Slice) is var values ? (Name(values), builder.Build(values)) : default,
                StringComparer.Ordinal);
        }

        private string At(string position, int[] values) => resolution.Store.Contains(resolution.Applies(position), values)
            ? string.Join(';', resolution.At(position).Where(one => resolution.Store.Contains(one.Region, values)).Select(one => TrueImpact.Words(one.Answer)).Distinct(StringComparer.Ordinal))
            : "not asked";

        private string Name(int[] values) => Rules.DrawnBase.Name(resolution.Space.Witness(values));

        private static IEnumerable<List<int>> All(RegionStore store, Region region, int level, List<int> taken) =>
            region.IsNone ? []
            : level == store.Variables.Length ? [taken]
            : store.Classes(level, [region]).SelectMany(cell => cell.Values.SelectMany(value => All(store, cell.Children[0], level + 1, [.. taken, value])));
    }
}
