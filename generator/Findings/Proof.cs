using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Binding;
using Swapwright.Rules;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>A knowledge base as read, bound, resolved and checked.</summary>
/// <param name="Resolution">null where the base cannot be read well enough for its space to be examined.</param>
/// <param name="Findings">Everything found and not accepted, by severity, file and line.</param>
/// <param name="Accepted">Findings that an entity accepts with a reason.</param>
public sealed record Proof(SourceTree Tree, KnowledgeBase Base, Resolution? Resolution, RegionWords? Words, ImmutableArray<Finding> Findings, ImmutableArray<Finding> Accepted)
{
    // A mistake in one of these changes regions: what the space then shows would be told twice, and wrongly.
    private static readonly ImmutableArray<string> s_shapeTheSpace = ["kb", "vocabulary", "positions", "chassis", "engine", "gearbox", "ecu", "choice", "rule"];

    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    public int Count(Severity severity) => Findings.Count(finding => finding.Severity == severity);

    public static Proof Of(string folder, CancellationToken cancellation = default) => Of(folder, examine: true, cancellation);

    /// <inheritdoc cref="Of(SourceTree, bool)"/>
    public static Proof Of(string folder, bool examine, CancellationToken cancellation = default) => Of(KnowledgeFolder.Read(folder, cancellation: cancellation), examine);

    /// <param name="examine">Run the checks of the space; without them the findings are those of the files.</param>
    public static Proof Of(SourceTree tree, bool examine = true)
    {
        // Form and meaning are judged side by side: neither needs the other.
        var form = Task.Run(() => tree.Files.Where(file => file.Root is not null).SelectMany(file => SchemaSet.Embedded.Validate(file)).ToList());
        var (kb, bound) = KnowledgeBinder.Bind(tree);
        List<Finding> reading = [.. tree.Findings, .. form.GetAwaiter().GetResult(), .. bound, .. NothingToBuild(tree)];
        var mistakes = reading.FindAll(finding => finding.Severity == Severity.Error);
        var entityChecks = Checks.OfEntities.Where(check => mistakes.Count == 0 || !check.AsksForWhole).ToList();

        // What is asked of entities and texts needs no regions: it is answered while these are made.
        var ofFiles = Task.Run(() => entityChecks.SelectMany(check => check.Run(kb)).Concat(Checks.OfSource.SelectMany(check => check.Run(tree, kb))).ToList());
        var silent = Checks.OfEntities.Except(entityChecks).Select(check => check.Kind).ToHashSet();
        if (mistakes.Exists(finding => !finding.SparesTheSpace && ShapesTheSpace(tree, finding.Place.File)) || kb.Chassis.Count == 0 || kb.Donors.Count == 0 || kb.Choices.All.Any(choice => choice.Options.IsEmpty))
        {
            silent.UnionWith(Checks.OfSpace.Select(check => check.Kind));
            return Judged(tree, kb, null, null, [.. reading, .. ofFiles.GetAwaiter().GetResult()], silent);
        }

        var resolution = Resolver.Resolve(kb);
        var words = new RegionWords(resolution);
        List<Finding> found = [.. reading, .. resolution.Findings];
        // A loop or a variant cut in two leaves answers unsettled: the gaps that come of it would be told as if they were causes.
        if (examine && resolution.Findings.All(finding => finding.Severity != Severity.Error))
        {
            // What takes about as long as everything else together has a store of its own, beside the others.
            var copy = resolution.Copy();
            var aside = Task.Run(() => Examined(Checks.OfSpace.Where(check => check.Aside), new Examination(kb, copy, new RegionWords(copy))));
            found.AddRange(Examined(Checks.OfSpace.Where(check => !check.Aside), new Examination(kb, resolution, words)));

            // Every report gives it: counted while the other thread is still at work.
            _ = resolution.BuildableParts.Size;
            found.AddRange(aside.GetAwaiter().GetResult());
        }
        else
        {
            silent.UnionWith(Checks.OfSpace.Select(check => check.Kind));
        }

        found.AddRange(ofFiles.GetAwaiter().GetResult());
        return Judged(tree, kb, resolution, words, found, silent);
    }

    private static List<Finding> Examined(IEnumerable<SpaceCheck> checks, Examination examination) => [.. checks.SelectMany(check => check.Run(examination))];

    private static Proof Judged(SourceTree tree, KnowledgeBase kb, Resolution? resolution, RegionWords? words, IEnumerable<Finding> found, IReadOnlySet<FindingKind> silent)
    {
        var (standing, accepted) = Acceptance.Apply(kb, [.. Echoes.LeftOut(tree, [.. found])], silent);
        return new Proof(tree, kb, resolution, words, Sorted(standing), Sorted(accepted));
    }

    private static ImmutableArray<Finding> Sorted(IEnumerable<Finding> findings) =>
        [.. findings.OrderByDescending(finding => finding.Severity).ThenBy(finding => finding.Place).ThenBy(finding => finding.Id, StringComparer.Ordinal).ThenBy(finding => finding.Message, StringComparer.Ordinal)];

    /// <summary>A base without a car, or without an engine, agrees with itself and tells nobody anything.</summary>
    private static IEnumerable<Finding> NothingToBuild(SourceTree tree) =>
        from folder in new[] { (Name: "chassis", Kind: "chassis"), (Name: "engines", Kind: "engine") }
        where !tree.Files.Any(file => file.Kind == folder.Kind)
        select new Finding(FindingKinds.Schema, $"`{folder.Name}` holds no variant, so there is nothing to build", Place.Of(folder.Name))
        {
            Mend = $"Write the first one: `swapwright draft {folder.Kind} ID`.",
        };

    private static bool ShapesTheSpace(SourceTree tree, string path) =>
        tree.Find(path) is { } file ? s_shapeTheSpace.Contains(file.Kind) : path.EndsWith(".yaml", StringComparison.Ordinal);
}
