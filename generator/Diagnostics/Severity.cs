namespace Swapwright.Diagnostics;

/// <summary>How much a finding weighs: an error keeps the site from being rendered.</summary>
public enum Severity
{
    Note,
    Warning,
    Error,
}
