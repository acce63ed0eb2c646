using System.Collections.Immutable;
using System.Numerics;

namespace Swapwright.Diagnostics;

/// <summary>A second place that a finding speaks of, with what it has to do with it.</summary>
public sealed record RelatedPlace(string Message, Place Place);

/// <summary>One combination that shows a finding: ids of a chassis variant, a donor variant and an option per choice.</summary>
public sealed record Witness(string Chassis, string Donor, ImmutableArray<KeyValuePair<string, string>> Choices);

/// <summary>One diagnostic. The message says what is wrong (lower case, no full stop, names in back-ticks).</summary>
public sealed record Finding(FindingKind Kind, string Message, Place Place)
{
    public string Id => Kind.Id;

    public Severity Severity => Kind.Severity;

    public ImmutableArray<RelatedPlace> Related { get; init; } = [];

    /// <summary>The change that mends it, as a sentence; null where nothing useful can be said.</summary>
    public string? Mend { get; init; }

    /// <summary>Wrong as it is, it leaves the regions of the rules as they are, so the space can be examined all the same.</summary>
    public bool SparesTheSpace { get; init; }

    public Witness? Witness { get; init; }

    /// <summary>How many buildable combinations it touches, where it speaks of the space.</summary>
    public BigInteger? Touches { get; init; }

    /// <summary>The touched part of the space, in facts.</summary>
    public string? Region { get; init; }
}
