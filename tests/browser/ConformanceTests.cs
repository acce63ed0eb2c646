using System.Diagnostics;
using System.Text.Json;

namespace Swapwright.BrowserTests;

/// <summary>Every kind of page, the style sheets and the pictures against the Nu HTML checker (npm package vnu-jar), in one run.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class ConformanceTests(RenderedSite site)
{
    [Fact]
    public async Task EveryKindOfPageAndStyleSheetAndPicture_HasNoError()
    {
        var files = PageKinds.Of(site).Select(path => Path.Combine(site.Folder, path))
            .Concat(Directory.EnumerateFiles(Path.Combine(site.Folder, "assets"), "*.css"))
            .Concat(Directory.EnumerateFiles(site.Folder, "*.svg", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Take(5))
            .ToList();

        Assert.InRange(files.Count, 30, 100);
        Assert.Empty(await Errors(files));
    }

    [Fact]
    public async Task Checker_OnFilesWithFaults_FindsThem()
    {
        var folder = Directory.CreateTempSubdirectory("swapwright-nu-");
        try
        {
            var page = Path.Combine(folder.FullName, "page.html");
            await File.WriteAllTextAsync(page, "<!doctype html><html lang=\"en\"><title>x</title><p><div></div></p><svg><circle foo=\"1\"/></svg></html>");
            var style = Path.Combine(folder.FullName, "style.css");
            await File.WriteAllTextAsync(style, "p { colour: red; }");

            var found = await Errors([page, style]);

            Assert.Contains(found, one => one.Contains("page.html", StringComparison.Ordinal) && one.Contains("“p”", StringComparison.Ordinal));
            Assert.Contains(found, one => one.Contains("page.html", StringComparison.Ordinal) && one.Contains("“foo” not allowed on element “circle”", StringComparison.Ordinal));
            Assert.Contains(found, one => one.Contains("style.css", StringComparison.Ordinal) && one.Contains("colour", StringComparison.Ordinal));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<IReadOnlyList<string>> Errors(IEnumerable<string> files)
    {
        // For the few seconds that it runs, code that is compiled quickly takes half as long as code that is compiled well.
        string[] arguments = ["-XX:TieredStopAtLevel=1", "-Xss8m", "-jar", NodeTools.PathOf("vnu-jar", "build", "dist", "vnu.jar"), "--errors-only", "--format", "json", "--also-check-css", "--also-check-svg", .. files];
        using var checker = Process.Start(new ProcessStartInfo("java", arguments) { RedirectStandardError = true, UseShellExecute = false })!;
        var told = await checker.StandardError.ReadToEndAsync();
        await checker.WaitForExitAsync();
        using var json = JsonDocument.Parse(told);
        return [.. json.RootElement.GetProperty("messages").EnumerateArray().Select(one =>
            FormattableString.Invariant($"{Path.GetFileName(one.GetProperty("url").GetString())}:{(one.TryGetProperty("lastLine", out var line) ? line.GetInt32() : 0)}: {one.GetProperty("message").GetString()}"))];
    }
}
