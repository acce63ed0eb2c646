using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>How far a changed entity reaches into the space: which combinations show it, and whose numbers it may move.</summary>
internal sealed class EntryReach(SharedSpace shared, EntryChanges entries)
{
    // What worksheets use wherever they like: no part of the space is certain to be without it.
    private static readonly ImmutableArray<string> s_everywhere = ["base", "gearbox", "ecu", "connector", "choice", "fact", "signal", "device", "port", "hose"];

    /// <summary>Combinations whose guide shows a chassis, a donor, a part or a task that says something else.</summary>
    public Region Shown() => shared.Store.OrAll(Vehicles().Concat(Parts()).Concat(Tasks()));

    /// <summary>Combinations whose numbers, or whose recommendation, may move: where <paramref name="told"/>, and where a changed entity is used.</summary>
    public Region Moving(Region told) =>
        s_everywhere.Any(entries.Has) || entries.ChangedOf("part").Any(SoldEverywhere) || entries.Gained.Concat(entries.Lost).Any(entry => entry.Kind == "part") || Recommended()
            ? Region.All
            : shared.Store.Or(told, Shown());

    private IEnumerable<Region> Vehicles() =>
        entries.ChangedOf("chassis").Select(shared.New.WithChassis).Concat(entries.ChangedOf("engine").Select(shared.New.WithDonor));

    private IEnumerable<Region> Parts()
    {
        var changed = entries.ChangedOf("part").ToHashSet(StringComparer.Ordinal);
        return changed.Count == 0
            ? []
            : from side in new[] { shared.Old, shared.New }
              from position in side.Base.Positions.Ids
              from standing in side.Resolution.At(position)
              where standing.Answer.PartIds.Any(changed.Contains)
              select side.Of(standing.Region);
    }

    private IEnumerable<Region> Tasks() =>
        from id in entries.ChangedOf("task")
        from side in new[] { shared.Old, shared.New }
        select side.Of(side.Resolution.Wanted(side.Base.Tasks[id]));

    /// <summary>Parts that worksheets pick from the stock.</summary>
    private bool SoldEverywhere(string id) => new[] { shared.Old.Base.Parts[id], shared.New.Base.Parts[id] }
        .Any(part => part.Belt is not null || part.Hose is not null || part.Reducer is not null || part.ChangesWiring || part.Wiring is not null || !part.Tee.IsEmpty);

    /// <summary>Whether some choice recommends something else somewhere. What it says beside that is compared as an entity.</summary>
    private bool Recommended() => shared.New.Base.Choices.All.Any(choice => shared.Old.Base.Choices.Find(choice.Id) is not { } before
        || !Recommendations(shared.Old, before).SequenceEqual(Recommendations(shared.New, choice)));

    private static IEnumerable<(string Option, Region Region)> Recommendations(Side side, Choice choice) =>
        choice.Recommendations.Select(one => (one.Option, side.Of(side.Resolution.RegionOf(one.When))))
            .Concat(choice.Options.Select(option => (option.Id, Region.All)));
}
