using Swapwright.Diagnostics;

namespace Swapwright.Reports;

internal static class SeverityWords
{
    public static string Of(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };
}
