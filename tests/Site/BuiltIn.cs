using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Site;

/// <summary>The built-in templates, parsed and compiled once for tests that render many small sites.</summary>
internal static class BuiltIn
{
    public static Templates Templates { get; } = Templates.Embedded();
}
