using System.Collections.Immutable;

namespace Swapwright.Benchmarks.Bases;

/// <summary>A chassis or donor variant: facts as they are written, in order of writing.</summary>
internal sealed record DrawnVariant(string Id, string Family, int From, int To, ImmutableSortedDictionary<string, string> Facts)
{
    public int Number(string fact) => int.Parse(Facts[fact], System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>A choice with its options; the first option is never excluded by a rule.</summary>
/// <param name="Applies">Where there is anything to choose; null where there always is.</param>
/// <param name="Binds">Option → what it stands for, as <c>chassis.box</c> or the id of an entity; empty where it stands for nothing.</param>
internal sealed record DrawnChoice(string Id, int System, ImmutableArray<string> Options, Ask? Applies, ImmutableDictionary<string, string> Binds);

/// <summary>One combination, of which the base is known to allow every one that is kept.</summary>
internal sealed record Trial(DrawnVariant Chassis, DrawnVariant Donor, ImmutableSortedDictionary<string, string> Options);

/// <summary>A term of a condition: how it is written, and whether a combination meets it.</summary>
internal sealed record Ask(string Key, string Value, Func<Trial, bool> Holds)
{
    public override string ToString() => $"{Key}: {Value}";
}
