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

    public static Proof Of(string folder, CancellationToken cancellation = default) => Of(KnowledgeFolder.Read(folder, cancellation: cancellation));

    public static Proof Of(SourceTree tree)
    {
        // Form and meaning are judged side by side: neither needs the other.
        var form = Task.Run(() => tree.Files.Where(file => file.Root is not null).SelectMany(file => SchemaSet.Embedded.Validate(file)).ToList());
        var (kb, bound) = KnowledgeBinder.Bind(tree);
        var found = tree.Findings
            .Concat(form.GetAwaiter().GetResult())
            .Concat(bound)
            .Concat(Checks.OfEntities.SelectMany(check => check.Run(kb)))
            .ToList();
        var broken = found.Any(finding => finding.Severity == Severity.Error && finding.Kind != FindingKinds.PinClash && ShapesTheSpace(tree, finding.Place.File));
        if (broken || kb.Chassis.Count == 0 || kb.Donors.Count == 0 || kb.Choices.All.Any(choice => choice.Options.IsEmpty))
        {
            return Judged(tree, kb, null, null, found);
        }

        var resolution = Resolver.Resolve(kb);
        var words = new RegionWords(resolution);
        var examination = new Examination(kb, resolution, words);
        found.AddRange(resolution.Findings);
        // A loop or a variant cut in two leaves answers unsettled: the gaps that come of it would be told as if they were causes.
        var settled = resolution.Findings.All(finding => finding.Severity != Severity.Error);
        return Judged(tree, kb, resolution, words, settled ? found.Concat(Checks.OfSpace.SelectMany(check => check.Run(examination))) : found);
    }

    private static Proof Judged(SourceTree tree, KnowledgeBase kb, Resolution? resolution, RegionWords? words, IEnumerable<Finding> found)
    {
        var sorted = found.OrderByDescending(finding => finding.Severity).ThenBy(finding => finding.Place).ThenBy(finding => finding.Id, StringComparer.Ordinal).ThenBy(finding => finding.Message, StringComparer.Ordinal).ToList();
        return new Proof(tree, kb, resolution, words, [.. sorted], []);
    }

    private static bool ShapesTheSpace(SourceTree tree, string path) =>
        tree.Find(path) is { } file ? s_shapeTheSpace.Contains(file.Kind) : path.EndsWith(".yaml", StringComparison.Ordinal);
}
