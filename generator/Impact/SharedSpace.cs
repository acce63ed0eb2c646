using System.Collections.Immutable;
using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>
/// What two bases can be compared in: the chassis, donors and options that both have. Combinations correspond where they
/// agree in chassis, donor and the option of every choice that both bases ask for; a choice that only one of them asks
/// for keeps its variable, and the other says the same whatever is taken there.
/// </summary>
internal sealed class SharedSpace
{
    public const int Chassis = 0;
    public const int Donor = 1;
    public const int Entities = 2;

    private SharedSpace(RegionStore store, Side old, Side @new)
    {
        Store = store;
        Old = old;
        New = @new;
        Both = new FactoredRegion(store, old.Buildable.Factors.Concat(@new.Buildable.Factors), Entities);
    }

    public RegionStore Store { get; }

    public Side Old { get; }

    public Side New { get; }

    /// <summary>Pairs of corresponding combinations that can be built on either side; one combination each, where both ask for the same choices.</summary>
    public FactoredRegion Both { get; }

    /// <exception cref="ArgumentException">One of the bases has no space that could be examined.</exception>
    public static SharedSpace Of(Proof old, Proof @new)
    {
        var (before, now) = (Examined(old).Space, Examined(@new).Space);
        var layout = Layout(before, now);
        var store = new RegionStore([.. layout.Select(one => new Variable(one.Name, Values(before, now, one.Old, one.New)))], RegionStore.NodesOfABase);
        return new SharedSpace(
            store,
            new Side(store, old, [.. layout.Select(one => one.Old)], [.. layout.Select(one => one.New)]),
            new Side(store, @new, [.. layout.Select(one => one.New)], [.. layout.Select(one => one.Old)]));
    }

    /// <summary>Corresponding combinations that can be built on one side, once both are known to be combinations of it.</summary>
    public BigInteger Kept(Side side, Side other) =>
        Corresponding(side.Buildable, other.Buildable, other).Size / Choices(other);

    /// <summary>A stretch of one side's combinations, cut to those whose counterpart lies in a stretch of the other side's.</summary>
    public FactoredRegion Corresponding(FactoredRegion own, FactoredRegion others, Side other) =>
        other.OnlyHere.IsEmpty ? ReferenceEquals(own, Old.Buildable) && ReferenceEquals(others, New.Buildable) ? Both : Meet(own, others) : Meet(own, others.Without(other.OnlyHere));

    /// <summary>How many ways there are to take the choices that only this side asks for: what a count over the other side's combinations is divided by.</summary>
    public BigInteger Choices(Side side) => side.OnlyHere.Aggregate(BigInteger.One, (product, level) => product * Store.Variables[level].Size);

    /// <summary>A combination of the shared space by ids, without the choices at some levels.</summary>
    public Witness Witness(ReadOnlySpan<int> combination, ImmutableArray<int> without)
    {
        var values = combination.ToArray();
        return new Witness(
            Store.Variables[Chassis].Values[values[Chassis]],
            Store.Variables[Donor].Values[values[Donor]],
            [
                .. Enumerable.Range(Entities, values.Length - Entities).Where(level => !without.Contains(level))
                    .Select(level => KeyValuePair.Create(Store.Variables[level].Name, Store.Variables[level].Values[values[level]]))
                    .OrderBy(pair => pair.Key, StringComparer.Ordinal),
            ]);
    }

    private FactoredRegion Meet(FactoredRegion one, FactoredRegion other) => new(Store, one.Factors.Concat(other.Factors), Entities);

    private static Resolution Examined(Proof proof) =>
        proof.Resolution ?? throw new ArgumentException("the space of one of the bases was not examined", nameof(proof));

    /// <summary>The variables in the order of the new base, so that what is said in its words is carried over quickly; a choice that is gone follows the one it followed.</summary>
    private static List<(string Name, int Old, int New)> Layout(SpaceModel old, SpaceModel @new)
    {
        List<string> before = [.. Names(old)];
        List<string> order = [.. Names(@new)];
        for (var at = Entities; at < before.Count; at++)
        {
            if (!order.Contains(before[at]))
            {
                order.Insert(order.IndexOf(before[at - 1]) + 1, before[at]);
            }
        }

        List<string> now = [.. Names(@new)];
        return [.. order.Select((name, at) => (at < Entities ? name[1..] : name, before.IndexOf(name), now.IndexOf(name)))];
    }

    // The two entities come first in every space; a mark keeps a choice of the same name apart.
    private static IEnumerable<string> Names(SpaceModel space) =>
        space.ChoiceAt.Select((choice, level) => choice?.Id ?? (level == Chassis ? "*chassis" : "*donor"));

    private static ImmutableArray<string> Values(SpaceModel old, SpaceModel @new, int before, int now)
    {
        if (before < 0 || now < 0)
        {
            return before < 0 ? @new.Store.Variables[now].Values : old.Store.Variables[before].Values;
        }

        ImmutableArray<string> common = [.. @new.Store.Variables[now].Values.Intersect(old.Store.Variables[before].Values, StringComparer.Ordinal)];
        // A variable needs a value. No side has this one, so nothing is then shared.
        return common.IsEmpty ? [""] : common;
    }
}
