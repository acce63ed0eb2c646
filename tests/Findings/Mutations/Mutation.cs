using System.Collections.Immutable;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Whether a mutation has to be reported.</summary>
internal enum Duty
{
    /// <summary>It breaks an invariant by its nature, whatever the base says.</summary>
    Always,

    /// <summary>Where what a reader would be told lacks something, says two things at once, or cannot be built or bought.</summary>
    WhereItBreaks,

    /// <summary>Nothing changes for anybody: nothing may be reported, not even a warning.</summary>
    Never,
}

/// <summary>A file's new text; null where the file is taken out.</summary>
internal sealed record Change(string Path, string? Text);

/// <summary>One mistake that somebody could make.</summary>
/// <param name="What">As in <c>parts/x.yaml: …</c>; names the mutation among all others of its class.</param>
/// <param name="Names">Ids that the right finding speaks of where it does not stand in a changed file.</param>
internal sealed record Mutation(string What, ImmutableArray<Change> Changes, ImmutableArray<string> Names)
{
    public static Mutation Of(string what, string path, string text, params ReadOnlySpan<string> names) => new($"{path}: {what}", [new Change(path, text)], [.. names]);

    public bool Touches(string path) => Changes.Any(change => change.Path == path);
}

/// <summary>Mistakes of one kind, and the findings that are right for them.</summary>
internal sealed record MutationClass(string Name, Duty Duty, ImmutableArray<string> Right, Func<ShippedBase, Random, IEnumerable<Mutation>> Candidates)
{
    public static MutationClass Of(string name, Duty duty, string right, Func<ShippedBase, Random, IEnumerable<Mutation>> candidates) =>
        new(name, duty, [.. right.Split(' ', StringSplitOptions.RemoveEmptyEntries)], candidates);
}
