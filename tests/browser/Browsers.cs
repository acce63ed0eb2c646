using System.Net;
using System.Net.Sockets;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>Chromium as the tests start it, and what they need around it. The whole of it makes parts of a window for every tab, at more than the pages take: Debian's build that has none comes first.</summary>
internal static class Browsers
{
    // As long as every other wait may take: what a page does on a busy machine is late, not wrong.
    private const float MostMs = 30_000;

    private static readonly string[] s_paths = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];

    /// <remarks>Where a page has gone is asked with an expectation, which looks again: a wait for the event of going there misses one that came just before it.</remarks>
    public static Task<IBrowser> Start(IPlaywright playwright)
    {
        Assertions.SetDefaultExpectTimeout(MostMs);
        return playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = s_paths.First(File.Exists),
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public static string Repository()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Swapwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the tests do not lie inside the repository");
        }

        return folder;
    }

    public static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
