namespace Swapwright.Site;

/// <summary>
/// Text that is HTML already and is written as it stands. Only this stage makes one: from Markdown it rendered
/// itself and from drawings it drew itself. Everything else is escaped on its way out.
/// </summary>
public sealed record HtmlString(string Value)
{
    public static readonly HtmlString Empty = new("");

    public bool IsEmpty => Value.Length == 0;

    public override string ToString() => Value;
}
