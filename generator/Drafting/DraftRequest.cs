using System.Collections.Immutable;

namespace Swapwright.Drafting;

/// <summary>What somebody wants drafted.</summary>
/// <param name="Kind">One of <see cref="DraftKinds.All"/>.</param>
/// <param name="Id">The new id: the file's name, or the key of an entry.</param>
public sealed record DraftRequest(string Kind, string Id)
{
    public string? Title { get; init; }

    /// <summary>For a rule, the folder it goes to; for a position, the system it is listed under.</summary>
    public string? System { get; init; }

    /// <summary>The variant from which everything is taken that is not said.</summary>
    public string? Like { get; init; }

    /// <summary>Path of keys and value, in the order given.</summary>
    public ImmutableArray<KeyValuePair<string, string>> Sets { get; init; } = [];

    /// <summary>Question and placeholder → answer; null where nobody can be asked.</summary>
    public Func<string, string, string>? Ask { get; init; }
}

/// <summary>What came of it.</summary>
/// <param name="Path">Of the new file, or of the file that the entry belongs into; from the base's folder.</param>
/// <param name="Text">The whole file, or the entry.</param>
/// <param name="Under">The key under which the entry goes; null for a file of its own.</param>
public sealed record DraftedText(string Path, string Text, string? Under);
