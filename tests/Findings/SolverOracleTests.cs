using Swapwright.Benchmarks.Bases;
using Swapwright.Benchmarks.Solving;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Findings;

/// <summary>
/// Bases too large to be walked through, held against a constraint solver: what the checks find, a model made from the
/// entities alone must find possible, and nothing else.
/// </summary>
public sealed class SolverOracleTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void ProofOf_DrawnBase_AgreesWithSolver(int seed)
    {
        var drawn = LargeBase.Of(new BaseSize(8, 12, 10, 40, 200, seed, Faults: 8));
        var proof = Prove(drawn);
        var solver = new SolverSpace(proof.Base);

        Assert.Equal(
            proof.Base.Positions.Ids.SelectMany(position => Contradicting(solver, position)).Order(StringComparer.Ordinal),
            Of(proof, FindingKinds.Contradiction).Select(finding => $"{finding.Place} {finding.Related[0].Place}").Order(StringComparer.Ordinal));
        Assert.Equal(
            proof.Base.Positions.All.Where(solver.IsOpen).Select(position => position.Place.ToString()).Order(StringComparer.Ordinal),
            Of(proof, FindingKinds.Gap).Select(finding => finding.Place.ToString()).Order(StringComparer.Ordinal));
        Assert.Equal(
            proof.Base.Rules.All.Where(rule => !solver.IsMet(rule)).Select(rule => rule.Place.File).Order(StringComparer.Ordinal),
            Of(proof, FindingKinds.DeadRule).Select(finding => finding.Place.File).Order(StringComparer.Ordinal));
    }

    /// <summary>Pairs that cannot be built are found possible or not alike; a pair that one rule excludes as a whole has its reason there.</summary>
    [Fact]
    public void Possible_DrawnBase_AgreesWithSolver()
    {
        var proof = Prove(LargeBase.Of(new BaseSize(8, 12, 10, 40, 200, 3, Faults: 8)));
        var solver = new SolverSpace(proof.Base);
        var (space, possible) = (proof.Resolution!.Space, proof.Resolution.BuildableParts.Possible);
        var values = new int[space.Store.Variables.Length];
        foreach (var (chassis, at) in proof.Base.Chassis.All.Select((one, at) => (one, at)))
        {
            foreach (var (donor, donorAt) in proof.Base.Donors.All.Select((one, at) => (one, at)))
            {
                (values[space.Chassis], values[space.Donor]) = (at, donorAt);
                Assert.Equal(solver.Takes(chassis, donor), space.Store.Contains(possible, values));
            }
        }
    }

    /// <summary>Every planted fault is found, under its id and at its file, and nothing is found that was not planted.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void ProofOf_PlantedFaults_FindsEachOneAndNoOther(int seed)
    {
        var drawn = LargeBase.Of(new BaseSize(8, 12, 10, 40, 200, seed, Faults: 12));
        var errors = Prove(drawn).Findings.Where(finding => finding.Severity == Severity.Error).ToList();

        Assert.All(drawn.Planted, fault => Assert.Single(errors, finding => IsOf(finding, fault)));
        Assert.All(errors, finding => Assert.Contains(drawn.Planted, fault => IsOf(finding, fault)));
    }

    [Fact]
    public void ProofOf_NothingPlanted_FindsNoError()
    {
        var proof = Prove(LargeBase.Of(new BaseSize(12, 30, 12, 60, 400, 5)));

        Assert.DoesNotContain(proof.Findings, finding => finding.Severity == Severity.Error);
    }

    private static bool IsOf(Finding finding, PlantedFault fault) =>
        finding.Id == fault.Finding && finding.Place.File == fault.File && finding.Message.Contains($"`{fault.Name}`", StringComparison.Ordinal);

    private static IEnumerable<string> Contradicting(SolverSpace solver, string position)
    {
        var answers = solver.At(position);
        return from second in Enumerable.Range(0, answers.Length)
               from first in Enumerable.Range(0, second)
               where !Same(answers[first].Answer, answers[second].Answer) && solver.Meet(answers[first], answers[second])
               select $"{answers[first].Answer.Place} {answers[second].Answer.Place}";
    }

    private static bool Same(Answer one, Answer other) => (one.Source, one.Treatment, one.Part) == (other.Source, other.Treatment, other.Part);

    private static IEnumerable<Finding> Of(Proof proof, FindingKind kind) => proof.Findings.Where(finding => finding.Kind == kind);

    private static Proof Prove(LargeBase drawn)
    {
        using var folder = new TemporaryFolder();
        foreach (var (path, text) in drawn.Files)
        {
            var file = Path.Combine(folder.Path, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }

        return Proof.Of(folder.Path);
    }
}
