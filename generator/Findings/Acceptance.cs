using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>Takes out what an entity accepts with a reason. An acceptance reaches the file it stands in and no further.</summary>
internal static class Acceptance
{
    /// <param name="found">What was found.</param>
    /// <param name="silent">Kinds that were not looked for in this run: an acceptance of one of them may yet be right.</param>
    public static (ImmutableArray<Finding> Standing, ImmutableArray<Finding> Accepted) Apply(KnowledgeBase kb, ImmutableArray<Finding> found, IReadOnlySet<FindingKind> silent)
    {
        var standing = found.ToList();
        var accepted = new List<Finding>();
        foreach (var (entity, accept) in Entities(kb).SelectMany(entity => entity.Accepts.Select(accept => (entity, accept))))
        {
            var met = standing.FindAll(finding => Meets(entity, accept, finding));
            if (met.Count > 0)
            {
                accepted.AddRange(met);
                standing.RemoveAll(met.Contains);
            }
            else if (Idle(entity, accept, found, accepted, silent) is { } idle)
            {
                standing.Add(idle);
            }
        }

        return ([.. standing], [.. accepted]);
    }

    /// <summary>An error cannot stand; and an acceptance of idle acceptances would hide itself.</summary>
    private static bool CanStand(FindingKind kind) => kind.Severity != Severity.Error && kind != FindingKinds.IdleAccept;

    private static bool Meets(Entity entity, Accept accept, Finding finding) =>
        finding.Id == accept.Finding && CanStand(finding.Kind) && finding.Place.File == entity.Place.File;

    private static Finding? Idle(Entity entity, Accept accept, ImmutableArray<Finding> found, List<Finding> accepted, IReadOnlySet<FindingKind> silent)
    {
        var kind = FindingKinds.All.FirstOrDefault(kind => kind.Id == accept.Finding);
        if (kind is null)
        {
            var near = NearestName.Of(accept.Finding, FindingKinds.All.Where(CanStand).Select(known => known.Id));
            return About(accept, $"no finding is called `{accept.Finding}`{(near is null ? "" : $"; did you mean `{near}`?")}", near is null ? "Write the id of a warning as the check prints it, or take the entry out." : $"Write `{near}`, or take the entry out.");
        }

        if (!CanStand(kind))
        {
            return About(accept, kind.Severity == Severity.Error ? $"`{kind.Id}` is an error and cannot be accepted" : $"`{kind.Id}` cannot be accepted", "Mend what it says, and take the entry out.") with
            {
                Related = [.. found.Where(finding => finding.Kind == kind && finding.Place.File == entity.Place.File).Take(1).Select(finding => new RelatedPlace("it stands here", finding.Place))],
            };
        }

        if (silent.Contains(kind))
        {
            return null;
        }

        return accepted.Exists(finding => finding.Kind == kind && finding.Place.File == entity.Place.File)
            ? About(accept, $"`{kind.Id}` is accepted twice in one file", "Keep one of the two.")
            : About(accept, $"there is no `{kind.Id}` in this file to accept", "Take the entry out: what it accepted is mended, or lies in another file.");
    }

    private static Finding About(Accept accept, string message, string mend) => new(FindingKinds.IdleAccept, message, accept.Place) { Mend = mend };

    private static IEnumerable<Entity> Entities(KnowledgeBase kb) =>
        kb.Chassis.All.Cast<Entity>().Concat(kb.Donors.All).Concat(kb.Gearboxes.All).Concat(kb.Ecus.All).Concat(kb.Connectors.All)
            .Concat(kb.Parts.All).Concat(kb.Choices.All).Concat(kb.Rules.All).Concat(kb.Tasks.All).Concat(kb.Articles.All);
}
