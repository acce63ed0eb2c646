using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings.Mutations;

internal enum Outcome
{
    /// <summary>It had to be reported, and the right finding stands at the right file.</summary>
    Reported,

    /// <summary>It had to be reported, and was not, or by a finding of another kind or elsewhere.</summary>
    Missed,

    /// <summary>Readers are told something else that is complete and agrees with itself; a finding told of it all the same.</summary>
    Noticed,

    /// <summary>Readers are told something else, and nothing was found: no check can know better than the rule.</summary>
    Unseen,

    /// <summary>Nobody is told anything else, and nothing keeps the site from being rendered.</summary>
    Harmless,

    /// <summary>Nobody is told anything else, and an error was reported, or anything at all where nothing may be.</summary>
    FalseAlarm,
}

/// <summary>What became of a mutation.</summary>
internal sealed record Verdict(MutationClass Class, Mutation Mutation, Outcome Outcome, ImmutableArray<Finding> Findings, string Because)
{
    public static Verdict On(ShippedBase shipped, MutationClass kind, Mutation mutation)
    {
        var proof = Proof.Of(shipped.With(mutation));
        var before = shipped.Proof.Findings.Select(Key).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<Finding> found = [.. proof.Findings.Where(finding => !before.Contains(Key(finding)))];
        var right = found.Any(finding => kind.Right.Contains(finding.Id) && Speaks(finding, mutation));
        Verdict Is(Outcome outcome, string because) => new(kind, mutation, outcome, found, because);
        if (kind.Duty == Duty.Never)
        {
            return Is(found.IsEmpty ? Outcome.Harmless : Outcome.FalseAlarm, "nothing changes");
        }

        if (kind.Duty == Duty.Always)
        {
            return Is(right ? Outcome.Reported : Outcome.Missed, "by its nature");
        }

        if (proof.Resolution is null)
        {
            return Is(right ? Outcome.Reported : Outcome.Missed, "the base cannot be read");
        }

        var told = Told.By(proof);
        if (told.WrongBeside(shipped.Told).FirstOrDefault() is { } wrong)
        {
            return Is(right ? Outcome.Reported : Outcome.Missed, wrong);
        }

        if (told.Differs(shipped.Told))
        {
            return Is(found.IsEmpty ? Outcome.Unseen : Outcome.Noticed, "readers are told something else");
        }

        // Sheets are compared for recommended combinations; an error that shows another one is believed where that one differs.
        var errors = found.Where(finding => finding.Severity == Severity.Error).ToList();
        var shown = errors.Select(finding => finding.Witness).OfType<Witness>().FirstOrDefault(witness => told.At(witness) != shipped.Told.At(witness));
        return shown is null
            ? Is(errors.Count > 0 ? Outcome.FalseAlarm : Outcome.Harmless, "readers are told the same")
            : Is(right ? Outcome.Reported : Outcome.Missed, $"another sheet for {shown.Chassis} and {shown.Donor}");
    }

    private static string Key(Finding finding) => $"{finding.Id} {finding.Place.File} {finding.Message}";

    /// <summary>
    /// The finding points into a changed file, or names what was changed. A number that is no longer borne out is told where
    /// it is stated: which of the things that it is computed from is wrong, nobody can know.
    /// </summary>
    private static bool Speaks(Finding finding, Mutation mutation) =>
        finding.Kind == FindingKinds.StatedValue
        || mutation.Touches(finding.Place.File)
        || finding.Related.Any(related => mutation.Touches(related.Place.File))
        || mutation.Names.Any(name => finding.Message.Contains($"`{name}`", StringComparison.Ordinal));
}
