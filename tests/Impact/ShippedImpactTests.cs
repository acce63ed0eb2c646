using System.Collections.Immutable;
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
public class ShippedImpactTests(ShippedImpactTests.Before before) : IClassFixture<ShippedImpactTests.Before>
{
    private static readonly SourceTree s_tree = ShippedKnowledge.Tree;

    [Theory]
    [InlineData("rules/cooling/radiator-of-quillet-m.yaml", "source: new", "source: other")]
    [InlineData("rules/gearbox-and-drive/no-plate-behind-automatic.yaml", "gearbox.kind: automatic", "gearbox.kind: automatic\n  chassis.variant: quillet-m-92")]
    [InlineData("parts/radiator-22.yaml", "price: ", "price: 1 #")]
    [InlineData("choices/alternator.yaml", "  - option: keep\n", "  - option: donor\n")]
    public void Between_SingleEdit_IsWhatSheetsShow(string path, string old, string @new)
    {
        var edited = Resolved(With(path, old, @new));
        var impact = KnowledgeImpact.Between(before.Shipped, edited);
        Assert.True(impact.Changed);
        var now = new Reader(edited.Resolution!);
        Combinations(impact, before.Read, now);
        Guides(impact, before.Read, now);
    }

    private static void Combinations(KnowledgeImpact impact, Reader before, Reader now)
    {
        var (was, isNow) = (before.Told, now.Told);
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
        var (was, isNow) = (before.Guides, now.Guides);
        Assert.Equal(isNow.Keys.Except(was.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal), impact.Guides.Gained.Select(guide => guide.Id).Order(StringComparer.Ordinal));
        Assert.Equal(was.Keys.Except(isNow.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal), impact.Guides.Lost.Select(guide => guide.Id).Order(StringComparer.Ordinal));
        var common = was.Keys.Intersect(isNow.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(
            common.Where(id => was[id].Name != isNow[id].Name),
            impact.Numbers.Defaults.Select(change => change.Guide.Id).Order(StringComparer.Ordinal));
        Assert.Equal(
            common.SelectMany(id => Moved(was[id].Sheet, isNow[id].Sheet).Select(name => $"{id} {name}")).Order(StringComparer.Ordinal),
            impact.Numbers.Moved.Where(change => s_compared.Contains(change.Name)).Select(change => $"{change.Guide.Id} {change.Name}").Order(StringComparer.Ordinal));
    }

    // The numbers that are read off the sheets by hand below.
    private static readonly HashSet<string> s_compared =
    [
        "money.least", "money.likely", "money.most", "hours.least", "hours.likely", "hours.most", "wiring.splices", "wiring.wire",
        "wiring.plugs.straight-in", "wiring.plugs.re-pinned", "wiring.plugs.changed", "wiring.plugs.added", "wiring.plugs.extended", "wiring.plugs.capped",
    ];

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

    internal static Proof Shipped() => Resolved(s_tree);

    internal static SourceTree With(string path, string old, string @new)
    {
        var file = s_tree.Find(path)!;
        Assert.Contains(old, file.Text, StringComparison.Ordinal);
        var changed = SourceReader.ReadFile(path, file.Kind, file.Id, Encoding.UTF8.GetBytes(file.Text.Replace(old, @new, StringComparison.Ordinal)), SourceLimits.Default);
        Assert.Empty(changed.Findings);
        return s_tree with { Files = [.. s_tree.Files.Select(one => one.Path == path ? changed.File : one)] };
    }

    internal static Proof Resolved(SourceTree tree)
    {
        var (kb, findings) = KnowledgeBinder.Bind(tree);
        Assert.Empty(findings.Select(finding => finding.Message));
        var resolution = Resolver.Resolve(kb);
        return new Proof(tree, kb, resolution, new RegionWords(resolution), [], []);
    }

    /// <summary>The side that all edits share, read once; some hundred megabytes, which go when the edits are done.</summary>
    public sealed class Before
    {
        internal Proof Shipped { get; } = ShippedImpactTests.Shipped();

        internal Reader Read => field ??= new Reader(Shipped.Resolution!);
    }

    /// <summary>Reads a base the way a reader does: one combination after the other.</summary>
    internal sealed class Reader
    {
        private readonly Resolution _resolution;
        private readonly ImmutableArray<(string Id, Region Applies, ImmutableArray<(Region Region, string Words)> Answers)> _positions;

        // Some hundred texts are told in some millions of places: one each, by which of its answers hold there.
        private readonly Dictionary<(int Position, UInt128 Holding), string> _texts = [];

        public Reader(Resolution resolution)
        {
            _resolution = resolution;
            _positions = [.. resolution.Space.Base.Positions.Ids.Select(id => (id, resolution.Applies(id), resolution.At(id).Select(one => (one.Region, TrueImpact.Words(one.Answer))).ToImmutableArray()))];
            Assert.All(_positions, position => Assert.InRange(position.Answers.Length, 0, 127));
            Told = All(resolution.Store, resolution.Buildable, 0, []).Select(values => values.ToArray()).ToDictionary(Name, values => Enumerable.Range(0, _positions.Length).Select(position => At(position, values)).ToArray(), StringComparer.Ordinal);
            Guides = GuidesOf(resolution);
        }

        /// <summary>Combination → what it is told at each position, in order of id.</summary>
        public IReadOnlyDictionary<string, string[]> Told { get; }

        public IReadOnlyDictionary<string, (string Name, Sheet Sheet)> Guides { get; }

        private Dictionary<string, (string Name, Sheet Sheet)> GuidesOf(Resolution resolution)
        {
            var (headlines, builder) = (new Headlines(resolution), new SheetBuilder(resolution));
            return headlines.All().ToDictionary(
                headline => headline.Id,
                headline => headlines.Default(headline.Slice) is var values ? (Name(values), builder.Build(values)) : default,
                StringComparer.Ordinal);
        }

        private string At(int at, int[] values)
        {
            var (id, applies, answers) = _positions[at];
            var holding = UInt128.Zero;
            if (_resolution.Store.Contains(applies, values))
            {
                holding = UInt128.One;
                for (var answer = 0; answer < answers.Length; answer++)
                {
                    holding |= _resolution.Store.Contains(answers[answer].Region, values) ? UInt128.One << (answer + 1) : 0;
                }
            }

            if (!_texts.TryGetValue((at, holding), out var text))
            {
                var words = answers.Where((_, answer) => (holding >> (answer + 1) & 1) == 1).Select(answer => answer.Words).Distinct(StringComparer.Ordinal);
                text = string.Intern($"{id} {(holding == 0 ? "not asked" : string.Join(';', words))}");
                _texts.Add((at, holding), text);
            }

            return text;
        }

        private string Name(int[] values) => Rules.DrawnBase.Name(_resolution.Space.Witness(values));

        private static IEnumerable<List<int>> All(RegionStore store, Region region, int level, List<int> taken) =>
            region.IsNone ? []
            : level == store.Variables.Length ? [taken]
            : store.Classes(level, [region]).SelectMany(cell => cell.Values.SelectMany(value => All(store, cell.Children[0], level + 1, [.. taken, value])));
    }
}
