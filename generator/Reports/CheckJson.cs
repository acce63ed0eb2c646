using System.Globalization;
using System.Text.Json;
using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Reports;

/// <summary>The check as JSON; its form is schema/reports/check.schema.json.</summary>
public static class CheckJson
{
    public static string Write(Proof proof) => JsonForm.Write(json =>
    {
        json.WriteString("tool", Product.Name);
        json.WriteString("version", Product.Version);
        json.WriteString("knowledgeBase", proof.Base.Settings.Title);
        json.Object("summary", () => Summary(json, Counts.Of(proof)));
        json.Objects("findings", proof.Findings, finding => Finding(json, finding));
    });

    private static void Summary(Utf8JsonWriter json, Counts counts)
    {
        json.WriteNumber("rules", counts.Rules);
        json.WriteNumber("positions", counts.Positions);
        json.WriteNumber("chassisVariants", counts.ChassisVariants);
        json.WriteNumber("donorVariants", counts.DonorVariants);
        json.WriteNumber("choices", counts.Choices);
        json.WriteNumber("connectors", counts.Connectors);
        json.WriteNumber("guides", counts.Guides);
        json.WriteString("combinations", counts.Combinations.ToString(CultureInfo.InvariantCulture));
        json.WriteString("buildable", counts.Buildable.ToString(CultureInfo.InvariantCulture));
        json.WriteNumber("errors", counts.Errors);
        json.WriteNumber("warnings", counts.Warnings);
        json.WriteNumber("notes", counts.Notes);
        json.WriteNumber("accepted", counts.Accepted);
        json.WriteBoolean("proved", counts.Proved);
    }

    private static void Finding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("id", finding.Id);
        json.WriteString("severity", SeverityWords.Of(finding.Severity));
        json.WriteString("message", finding.Message);
        json.Place("place", finding.Place);
        json.Objects("related", finding.Related, related =>
        {
            json.WriteString("message", related.Message);
            json.Place("place", related.Place);
        });
        if (finding.Witness is { } witness)
        {
            json.Combination("witness", witness);
        }
        else
        {
            json.WriteNull("witness");
        }

        json.Text("touches", finding.Touches?.ToString(CultureInfo.InvariantCulture));
        json.Text("region", finding.Region);
        json.Text("mend", finding.Mend);
    }
}
