using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Impact;

/// <summary>Findings that one side has and the other does not.</summary>
public sealed partial record FindingChanges(ImmutableArray<Finding> Introduced, ImmutableArray<Finding> Mended)
{
    public static FindingChanges Between(Proof old, Proof @new) => new(Beyond(@new, old), Beyond(old, @new));

    /// <summary>The findings of one side without as many of each identity as the other has.</summary>
    private static ImmutableArray<Finding> Beyond(Proof one, Proof other)
    {
        var left = other.Findings.CountBy(finding => Identity(other, finding), StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        return
        [
            .. one.Findings.Where(finding =>
            {
                var identity = Identity(one, finding);
                var known = left.GetValueOrDefault(identity);
                left[identity] = known - 1;
                return known <= 0;
            }),
        ];
    }

    /// <summary>
    /// What a finding is about, wherever it has moved to: its id, the entity of its file, and the names in its message.
    /// Lines, counts and computed numbers are left out, so that a finding that stays is not told as mended and introduced.
    /// </summary>
    private static string Identity(Proof proof, Finding finding)
    {
        var subject = proof.Tree.Find(finding.Place.File) is { } file ? $"{file.Kind} {file.Id}" : finding.Place.File;
        return string.Join('\n', Name().Matches(finding.Message).Select(match => match.Value).Prepend(subject).Prepend(finding.Id));
    }

    [GeneratedRegex("`[^`]*`", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Name();
}
