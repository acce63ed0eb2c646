using System.Collections.Immutable;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>One of the two bases, with its regions as they look in the shared space.</summary>
internal sealed class Side
{
    private readonly RegionStore _shared;
    private readonly RegionTransfer _in;
    private readonly RegionTransfer _out;
    private readonly Region _known;
    private readonly ImmutableArray<int> _own;

    /// <param name="own">For each variable of the shared space the level at which this side has it; −1 where it does not.</param>
    /// <param name="others">The same of the other side.</param>
    public Side(RegionStore shared, Proof proof, ImmutableArray<int> own, ImmutableArray<int> others)
    {
        _shared = shared;
        _own = own;
        Proof = proof;
        var store = Resolution.Store;
        _in = new RegionTransfer(store, shared, [.. Enumerable.Range(0, store.Variables.Length).Select(level => own.IndexOf(level))]);
        _out = new RegionTransfer(shared, store, own);
        OnlyHere = [.. Enumerable.Range(0, own.Length).Where(level => others[level] < 0)];
        NotHere = [.. Enumerable.Range(0, own.Length).Where(level => own[level] < 0)];
        _known = store.AndAll(own.Index().Where(pair => pair.Item >= 0)
            .Select(pair => store.Where(pair.Item, ValueSet.Where(store.Variables[pair.Item].Size, value => shared.Variables[pair.Index].Values.Contains(store.Variables[pair.Item].Values[value])))));

        var nothing = shared.Variables.Any(variable => variable.Values is [""]);
        ImmutableArray<Region> domain = [.. Resolution.DomainParts.Factors.Select(Of), nothing ? Region.None : Region.All];
        Exclusions = [.. Resolution.Exclusions.Select(exclusion => (exclusion.Rule, Of(exclusion.Region)))];
        Domain = new FactoredRegion(shared, domain, SharedSpace.Entities);
        Buildable = new FactoredRegion(shared, domain.Concat(Exclusions.Select(exclusion => shared.Not(exclusion.Region))), SharedSpace.Entities);
    }

    public Proof Proof { get; }

    public Resolution Resolution => Proof.Resolution!;

    public KnowledgeBase Base => Resolution.Space.Base;

    /// <summary>Levels of the choices that only this side asks for.</summary>
    public ImmutableArray<int> OnlyHere { get; }

    /// <summary>Levels of the choices that only the other side asks for.</summary>
    public ImmutableArray<int> NotHere { get; }

    /// <summary>This side's combinations among what both sides know.</summary>
    public FactoredRegion Domain { get; }

    /// <summary>Those that no rule of this side excludes.</summary>
    public FactoredRegion Buildable { get; }

    public ImmutableArray<(Rule Rule, Region Region)> Exclusions { get; }

    /// <summary>A region of this side's own space in the shared one.</summary>
    public Region Of(Region own) => _in.Carry(own);

    /// <summary>A region of the shared space in this side's own words, taking for granted that the combination lies in <paramref name="among"/>.</summary>
    public string Describe(Region region, FactoredRegion among)
    {
        var store = Resolution.Store;
        var context = store.And(_known, _out.Carry(among.Near(region)));
        return Proof.Words!.Describe(store.And(context, _out.Carry(region)), context);
    }

    /// <summary>A region of the shared space in this side's own; it may hold combinations that the other side does not know.</summary>
    public Region Own(Region region) => _out.Carry(region);

    /// <summary>The level of a choice of this side in the shared space.</summary>
    public int LevelOf(string choice) => _own.IndexOf(Resolution.Space.LevelOf(choice));

    /// <summary>The combinations with one chassis.</summary>
    public Region WithChassis(string id) => With(SharedSpace.Chassis, id);

    public Region WithDonor(string id) => With(SharedSpace.Donor, id);

    private Region With(int level, string id)
    {
        var variable = _shared.Variables[level];
        return _shared.Where(level, ValueSet.Where(variable.Size, value => variable.Values[value] == id));
    }
}
