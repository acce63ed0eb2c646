namespace Swapwright.Site.Rendering.Compiled;

/// <summary>
/// A compiled template met what it was not made for: a name that is unknown, a value of another kind, a bound. The page is
/// rendered by the engine instead, which knows the rule and the words for every such case.
/// </summary>
internal sealed class BeyondCompiledException : Exception
{
    public BeyondCompiledException(string message)
        : base(message)
    {
    }

    public BeyondCompiledException()
    {
    }

    public BeyondCompiledException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
