using System.Collections;

namespace Swapwright.Site.Models;

/// <summary>A list that many pages have, as the same object.</summary>
/// <param name="Items">Not changed afterwards.</param>
internal sealed record RepeatedList<T>(T[] Items) : Repeated, IReadOnlyList<T>
{
    public int Count => Items.Length;

    public T this[int index] => Items[index];

    public IEnumerator<T> GetEnumerator() => Items.AsEnumerable().GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
