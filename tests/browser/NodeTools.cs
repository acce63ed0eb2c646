namespace Swapwright.BrowserTests;

/// <summary>The checkers of tests/npm, pinned there.</summary>
internal static class NodeTools
{
    public static string PathOf(params ReadOnlySpan<string> below)
    {
        var file = Path.Combine([Browsers.Repository(), "tests", "npm", "node_modules", .. below]);
        return File.Exists(file) ? file : throw new InvalidOperationException($"{file} is missing: `npm ci --prefix tests/npm` puts it there");
    }
}
