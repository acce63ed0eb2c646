namespace Swapwright.Diagnostics;

/// <summary>A finding's identity, declared once. The id is never used again for something else.</summary>
/// <param name="Id">Kebab-case, as in <c>pin-clash</c>.</param>
/// <param name="Title">What it is, in a few words.</param>
public sealed record FindingKind(string Id, Severity Severity, string Title);
