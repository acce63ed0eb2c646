namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Slips of the finger.</summary>
internal static class Mistyping
{
    /// <summary>A character in the middle comes twice; null where the result is a word that the base knows.</summary>
    public static string? Of(ShippedBase shipped, string word)
    {
        var typed = word.Insert(word.Length / 2, word[word.Length / 2].ToString());
        return shipped.Says(typed) ? null : typed;
    }

    public static IEnumerable<Mutation> Values(ShippedBase shipped, string kinds, string pattern) =>
        from spot in Spot.In(shipped, kinds, pattern)
        where spot.Word is { Length: > 1 } && spot.Node is Swapwright.Source.ScalarNode { Kind: Swapwright.Source.ScalarKind.Text }
        let typed = Of(shipped, spot.Word!)
        where typed is not null
        select spot.Mistake($"`{spot.Word}` typed `{typed}`", spot.Replaced(typed));

    public static IEnumerable<Mutation> Keys(ShippedBase shipped, string kinds, string pattern) =>
        from spot in Spot.In(shipped, kinds, pattern)
        where spot.Entry is { Key.Text.Length: > 1 }
        let typed = Of(shipped, spot.Entry!.Key.Text)
        where typed is not null
        select spot.Mistake($"`{spot.Entry!.Key.Text}` typed `{typed}`", spot.Renamed(typed));
}
