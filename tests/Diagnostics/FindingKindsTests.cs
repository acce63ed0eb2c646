using System.Collections.Immutable;
using System.Reflection;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Source;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Diagnostics;

public sealed class FindingKindsTests
{
    /// <summary>Every kind that is declared anywhere in the generator, listed in the ledger or not.</summary>
    private static ImmutableArray<FindingKind> Declared =>
    [
        .. typeof(FindingKind).Assembly.GetTypes()
            .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
            .Where(member => member.FieldType == typeof(FindingKind))
            .Select(member => (FindingKind)member.GetValue(null)!),
    ];

    /// <summary>Every check that is declared anywhere, in the list that runs or not.</summary>
    private static IEnumerable<object> DeclaredChecks => typeof(Checks).Assembly.GetTypes()
        .SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
        .Where(member => member.FieldType == typeof(EntityCheck) || member.FieldType == typeof(SourceCheck) || member.FieldType == typeof(SpaceCheck))
        .Select(member => member.GetValue(null)!);

    public static TheoryData<string> Ids => [.. FindingKinds.All.Select(kind => kind.Id)];

    [Fact]
    public void All_DeclaredKinds_AreAllInTheLedger() =>
        Assert.Equal(Declared.Select(kind => kind.Id).Order(StringComparer.Ordinal), FindingKinds.All.Select(kind => kind.Id).Order(StringComparer.Ordinal));

    [Fact]
    public void All_Ids_AreUnique() => Assert.Equal(FindingKinds.All.Length, FindingKinds.All.Select(kind => kind.Id).Distinct(StringComparer.Ordinal).Count());

    [Theory]
    [MemberData(nameof(Ids))]
    public void Id_Kind_IsKebabCaseWithATitle(string id)
    {
        var kind = Assert.Single(FindingKinds.All, kind => kind.Id == id);

        Assert.True(KnowledgeLayout.IsId(id), $"`{id}` is not kebab-case");
        Assert.True(char.IsUpper(kind.Title[0]) && kind.Title[^1] != '.', $"the title of `{id}` is no heading");
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Kind_InLedger_HasABrokenBaseThatYieldsIt(string id)
    {
        var cases = KnowledgeBaseCase.Broken.Where(name => name.StartsWith(id + "-", StringComparison.Ordinal)).Select(KnowledgeBaseCase.Read).ToList();

        Assert.True(cases.Count > 0, $"add a folder `tests/knowledge-bases/broken/{id}-…` with a base that gives `{id}`");
        Assert.Contains(cases, one => one.Prove().Findings.Any(finding => finding.Id == id));
    }

    [Fact]
    public void Checks_Declared_AllRun() =>
        Assert.Equal(
            DeclaredChecks.ToHashSet(ReferenceEqualityComparer.Instance),
            Checks.OfEntities.Cast<object>().Concat(Checks.OfSource).Concat(Checks.OfSpace).ToHashSet(ReferenceEqualityComparer.Instance));

    [Fact]
    public void Checks_InBrokenBases_GiveTheirOwnKindOnly()
    {
        foreach (var proof in KnowledgeBaseCase.Broken.Select(name => KnowledgeBaseCase.Read(name).Prove()))
        {
            foreach (var check in Checks.OfEntities)
            {
                Assert.All(check.Run(proof.Base), finding => Assert.Same(check.Kind, finding.Kind));
            }

            foreach (var check in Checks.OfSource)
            {
                Assert.All(check.Run(proof.Tree, proof.Base), finding => Assert.Same(check.Kind, finding.Kind));
            }

            if (proof.Resolution is { } resolution)
            {
                var examination = new Examination(proof.Base, resolution, proof.Words!);
                foreach (var check in Checks.OfSpace)
                {
                    Assert.All(check.Run(examination), finding => Assert.Same(check.Kind, finding.Kind));
                }
            }
        }
    }
}
