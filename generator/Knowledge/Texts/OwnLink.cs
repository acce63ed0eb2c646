using System.Collections.Immutable;

namespace Swapwright.Knowledge.Texts;

/// <summary>A link of a text to something of the knowledge base, as in <c>article:extending-wires#splices</c>.</summary>
/// <param name="Anchor">The heading behind the mark <c>#</c>; null without one.</param>
public readonly record struct OwnLink(string Kind, string Id, string? Anchor)
{
    /// <summary>What a text can link to.</summary>
    public static readonly ImmutableArray<string> Kinds = ["article", "chassis", "connector", "donor", "page", "part", "position", "rule", "source", "task", "term"];

    /// <summary>Null for every other address, whether it may be followed or not.</summary>
    public static OwnLink? Parse(string written)
    {
        var mark = written.AsSpan().IndexOfAny(":/?#");
        if (mark <= 0 || written[mark] != ':' || !Kinds.Contains(written[..mark]))
        {
            return null;
        }

        var anchor = written.IndexOf('#', StringComparison.Ordinal);
        return anchor < 0
            ? new OwnLink(written[..mark], written[(mark + 1)..], null)
            : new OwnLink(written[..mark], written[(mark + 1)..anchor], written[(anchor + 1)..]);
    }
}
