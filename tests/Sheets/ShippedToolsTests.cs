namespace Swapwright.Tests.Sheets;

/// <summary>Tools of every guide of the shipped base. That an ECU with a lamp alone answers no scan tool is common practice, no source.</summary>
[Collection(ShippedSheetsCollection.Name)]
public sealed class ShippedToolsTests(ShippedSheets shipped)
{
    [Fact]
    public void Tools_EveryGuide_AreThoseTheEcuAnswersTo()
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        Assert.All(shipped.Sheets, sheet =>
        {
            var kind = sheet.Choices.Any(choice => choice is { Key: "ecu", Value: "standalone" }) ? "standalone" : sheet.Ecu!.Fact("diagnostics")?.Text ?? "";
            lock (seen)
            {
                seen.Add(kind);
            }

            var start = sheet.Tasks.Single(task => task.Id == "first-start").Tools.Where(sheet.Tools.Contains).Select(tool => tool.Title);
            Assert.Equal(kind switch { "flash" => "Bridge wire", "standalone" => "Laptop", _ => "Scan tool" }, Assert.Single(start.Intersect(["Bridge wire", "Laptop", "Scan tool"])));
            Assert.True(kind is not "flash" || !sheet.ToolNames.Contains("Scan tool"));
        });
        Assert.Superset(new HashSet<string>(["flash", "five-digit", "data-bus"]), seen);
    }
}
