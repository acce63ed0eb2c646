using System.Collections.Immutable;
using System.Text.Json;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>What a builder's decisions settle, and the nearest way where they lead nowhere.</summary>
internal static class DecisionJson
{
    /// <param name="forced">Written as <c>forced</c>; left out where it is default.</param>
    public static void Decisions(this Utf8JsonWriter json, Sheet sheet, Resolution resolution, ImmutableArray<KeyValuePair<string, string>> forced)
    {
        if (!forced.IsDefault)
        {
            json.Objects("forced", forced, one =>
            {
                json.WriteString("choice", one.Key);
                json.WriteString("option", one.Value);
            });
        }

        if (!sheet.Buildable && Alternatives.NearestBuildable(resolution, sheet) is { } nearest)
        {
            json.Object("nearest", () =>
            {
                foreach (var (choice, option) in nearest)
                {
                    json.WriteString(choice, option);
                }
            });
        }
    }
}
