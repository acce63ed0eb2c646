using System.Text.Json;
using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Reports;

/// <summary>The check as SARIF 2.1.0 (OASIS standard), for code hosts and editors.</summary>
public static class CheckSarif
{
    /// <param name="folder">Path of the knowledge base from where the report is read, prefixed to every file.</param>
    /// <param name="helpAddress">Where the page of a kind of finding is found on the rendered site; null where that is not known.</param>
    public static string Write(Proof proof, string folder, Func<FindingKind, string?>? helpAddress = null) => JsonForm.Write(json =>
    {
        json.WriteString("$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json");
        json.WriteString("version", "2.1.0");
        json.Objects("runs", [proof], run =>
        {
            json.Object("tool", () => json.Object("driver", () =>
            {
                json.WriteString("name", Product.Name);
                json.WriteString("semanticVersion", Product.Version);
                json.Objects("rules", FindingKinds.All, kind => SarifRule.Write(json, kind, helpAddress?.Invoke(kind)));
            }));
            json.Objects("invocations", [run], one => json.WriteBoolean("executionSuccessful", true));
            json.WriteString("columnKind", "utf16CodeUnits");
            json.Objects("results", run.Findings, finding => Result(json, finding, folder));
        });
    });

    private static void Result(Utf8JsonWriter json, Finding finding, string folder)
    {
        json.WriteString("ruleId", finding.Id);
        json.WriteNumber("ruleIndex", FindingKinds.All.IndexOf(finding.Kind));
        json.WriteString("level", SeverityWords.Of(finding.Severity));
        var text = finding.Message + (finding.Region is null ? "" : $" ({finding.Region})") + (finding.Mend is null ? "" : $". {finding.Mend}");
        json.Object("message", () => json.WriteString("text", text));
        json.Objects("locations", [finding.Place], place => Physical(json, place, folder));
        json.Objects("relatedLocations", finding.Related, related =>
        {
            json.Object("message", () => json.WriteString("text", related.Message));
            Physical(json, related.Place, folder);
        });
    }

    private static void Physical(Utf8JsonWriter json, Place place, string folder) => json.Object("physicalLocation", () =>
    {
        json.Object("artifactLocation", () => json.WriteString("uri", Address(place.File, folder)));
        json.Object("region", () =>
        {
            json.WriteNumber("startLine", place.Line);
            json.WriteNumber("startColumn", place.Column);
            json.WriteNumber("endLine", place.EndLine);
            json.WriteNumber("endColumn", place.EndColumn);
        });
    });

    private static string Address(string file, string folder)
    {
        var path = folder is "" or "." ? file : $"{folder.Replace('\\', '/').TrimEnd('/')}/{file}";
        return string.Join('/', path.Split('/').Select(Uri.EscapeDataString));
    }
}
