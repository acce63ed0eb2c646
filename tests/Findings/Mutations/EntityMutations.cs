using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Entities and words of the vocabulary that go.</summary>
internal static class EntityMutations
{
    public static IEnumerable<MutationClass> Classes =>
    [
        .. new[] { "chassis", "engine", "gearbox", "ecu", "connector", "part", "choice", "task", "article" }.Select(kind =>
            MutationClass.Of($"delete {(kind is "engine" or "ecu" or "article" ? "an" : "a")} {kind}", Duty.Always, "lost-id", (shipped, _) => shipped.Of(kind).Select(file => new Mutation($"{file.Path}: deleted", [new Change(file.Path, null)], [file.Id])))),
        MutationClass.Of("delete a position", Duty.Always, "lost-id", (shipped, _) => Entries(shipped, "positions", "positions/*")),
        MutationClass.Of("delete a system", Duty.Always, "reference", (shipped, _) => Entries(shipped, "positions", "systems/*")),
        MutationClass.Of("delete a fact", Duty.Always, "vocabulary reference", (shipped, _) => Entries(shipped, "vocabulary", "facts/*/*").Where(mutation => Used(shipped, mutation))),
        MutationClass.Of("delete a signal", Duty.Always, "vocabulary reference", (shipped, _) => Entries(shipped, "vocabulary", "signals/*").Where(mutation => Used(shipped, mutation))),
        MutationClass.Of("delete a device role", Duty.Always, "vocabulary reference", (shipped, _) => Entries(shipped, "vocabulary", "devices/*").Where(mutation => Used(shipped, mutation))),
        MutationClass.Of("delete a value of a fact", Duty.Always, "vocabulary reference", (shipped, _) => Entries(shipped, "vocabulary", "facts/*/*/values/*").Where(mutation => Used(shipped, mutation))),
    ];

    private static IEnumerable<Mutation> Entries(ShippedBase shipped, string kind, string pattern) =>
        Spot.In(shipped, kind, pattern).Where(spot => spot.Parent is MappingNode).Select(spot => spot.Mistake("deleted", spot.Removed(), spot.Entry!.Key.Text));

    /// <summary>Whether any file but the one that declares it says the word.</summary>
    private static bool Used(ShippedBase shipped, Mutation mutation) =>
        shipped.FilesWith(mutation.Names[0]).Any(path => !mutation.Touches(path));
}
