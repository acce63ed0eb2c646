using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using Swapwright.Preview;
using Swapwright.Reports;
using Swapwright.Tests.Drafting;

namespace Swapwright.Tests.Preview;

/// <summary>The preview over real HTTP.</summary>
public sealed class PreviewTests : IAsyncLifetime, IDisposable
{
    private const string Guide = "guide/first-car/first-engine.html";
    private const string Engine = "swap-kb/engines/first-engine.yaml";

    private readonly TemporaryFolder _folder = DraftedBases.Copy("new");
    private readonly CancellationTokenSource _stop = new();
    private readonly int _port = FreePort();
    private readonly HttpClient _client = new() { Timeout = TimeSpan.FromSeconds(30) };
    private PreviewServer? _server;
    private Task? _running;

    private string KnowledgeBase => Path.Combine(_folder.Path, "swap-kb");

    public async Task InitializeAsync()
    {
        _server = PreviewServer.Start(KnowledgeBase, IPAddress.Loopback, _port);
        _running = _server.Run(_stop.Token);
        _client.BaseAddress = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{_port}/"));
        await State(state => state.GetProperty("site").GetInt32() > 0);
    }

    public async Task DisposeAsync()
    {
        await _stop.CancelAsync();
        await _running!;
    }

    public void Dispose()
    {
        _server?.Dispose();
        _client.Dispose();
        _stop.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public async Task Get_AfterAFileChanged_GivesTheChangedPage()
    {
        Assert.DoesNotContain("Renamed engine", await _client.GetStringAsync(Guide), StringComparison.Ordinal);
        await Change(Engine, "title: First engine", "title: Renamed engine");
        await State(state => state.GetProperty("site").GetInt32() > 1);
        Assert.Contains("Renamed engine", await _client.GetStringAsync(Guide), StringComparison.Ordinal);
        Assert.Contains("\"first-engine\"", await _client.GetStringAsync(Guide.Replace(".html", ".json", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_WithABrokenFile_GivesTheLastGoodPageAndTheFindingsUntilItIsMended()
    {
        await _client.GetStringAsync(Guide);
        await Change(Engine, "  power: 80", "  power: [80");
        var broken = await State(state => state.GetProperty("findings").GetArrayLength() > 0);
        Assert.False(broken.GetProperty("current").GetBoolean());
        var finding = broken.GetProperty("findings")[0];
        Assert.Equal("schema", finding.GetProperty("id").GetString());
        Assert.StartsWith($"{KnowledgeBase}/engines/first-engine.yaml:", finding.GetProperty("place").GetString(), StringComparison.Ordinal);
        Assert.Contains("First engine, 1995 to 1998", await _client.GetStringAsync(Guide), StringComparison.Ordinal);

        await Change(Engine, "  power: [80", "  power: 80");
        Assert.True((await State(state => state.GetProperty("findings").GetArrayLength() == 0)).GetProperty("current").GetBoolean());
    }

    [Fact]
    public async Task Events_WhenAFileChanges_TellOfTheNewSite()
    {
        using var stream = new StreamReader(await _client.GetStreamAsync(".preview/events"));
        Assert.Equal(1, await Told(stream));
        await Change(Engine, "title: First engine", "title: Renamed engine");
        Assert.Equal(2, await Told(stream));

        static async Task<int> Told(StreamReader stream)
        {
            var line = await stream.ReadLineAsync();
            await stream.ReadLineAsync();
            using var state = JsonDocument.Parse(line!["data: ".Length..]);
            return state.RootElement.GetProperty("site").GetInt32();
        }
    }

    [Fact]
    public async Task Get_ATemplateThatFailsInOnePage_GivesItsLastGoodOneAndSaysWhere()
    {
        await _client.GetStringAsync(Guide);
        _folder.Write("swap-kb/site-template/guide.sbn-html", "<p>\n{{ page.no_such_thing }}</p>\n");
        await State(state => state.GetProperty("site").GetInt32() > 1);
        Assert.Contains("First engine, 1995 to 1998", await _client.GetStringAsync(Guide), StringComparison.Ordinal);
        var place = (await State(state => state.GetProperty("findings").GetArrayLength() > 0)).GetProperty("findings")[0].GetProperty("place").GetString();
        Assert.EndsWith("site-template/guide.sbn-html:2:9", place, StringComparison.Ordinal);
        Assert.Contains("Find your build", await _client.GetStringAsync("index.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_APage_BringsItsScriptAndStrictRulesOnly()
    {
        using var answer = await _client.GetAsync(new Uri("", UriKind.Relative));
        var html = await answer.Content.ReadAsStringAsync();
        Assert.Contains("<script src=\"/.preview/bar.js\" data-site=\"1\" defer></script>", html, StringComparison.Ordinal);
        Assert.Contains("content=\"default-src 'none'; connect-src 'self';", html, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-inline", string.Join(' ', answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Equal("nosniff", string.Join(' ', answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Contains("EventSource", await _client.GetStringAsync(".preview/bar.js"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GET /index.html HTTP/1.1\r\nHost: swaps.example:{port}\r\n", "403", "400", "404")]
    [InlineData("GET /index.html HTTP/1.1\r\nHost: swaps.example\r\n", "403", "400", "404")]
    [InlineData("GET /../../../../etc/passwd HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n", "404", "400", "403")]
    [InlineData("GET /%2e%2e/%2e%2e/swap-kb/kb.yaml HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n", "404", "400", "403")]
    [InlineData("GET /..%5c..%5cswap-kb/kb.yaml HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n", "404", "400", "403")]
    [InlineData("GET /swap-kb/kb.yaml HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n", "404", "400", "403")]
    [InlineData("GET /.preview/../overlay HTTP/1.1\r\nHost: localhost:{port}\r\n", "404", "400", "403")]
    [InlineData("POST /index.html HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nContent-Length: 0\r\n", "405", "411", "400")]
    [InlineData("nonsense\r\n", "400", "400", "400")]
    public async Task Answer_WhatIsNotForIt_RefusesAndGoesOn(string request, params string[] status)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, _port);
        var text = request.Replace("{port}", _port.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal) + "Connection: close\r\n\r\n";
        await socket.GetStream().WriteAsync(Encoding.ASCII.GetBytes(text));
        using var reader = new StreamReader(socket.GetStream());
        Assert.Contains((await reader.ReadLineAsync())!.Split(' ')[1], status);
        Assert.DoesNotContain("Our swaps", await reader.ReadToEndAsync(), StringComparison.Ordinal);
        Assert.Contains("Our swaps", await _client.GetStringAsync("index.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Get_APageThatIsNotThere_SaysSo()
    {
        using var answer = await _client.GetAsync(new Uri("rule/no-such-rule.html", UriKind.Relative));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("There is no page at this address", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Program_Interrupted_EndsWithoutAnError()
    {
        // Where the tests themselves run in the background the signal would be ignored from the start.
        var start = new ProcessStartInfo("env", ["--default-signal=INT", "dotnet", Path.ChangeExtension(typeof(Product).Assembly.Location, ".dll"), "preview", KnowledgeBase, "--port", FreePort().ToString(CultureInfo.InvariantCulture)]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        using var program = Process.Start(start)!;
        try
        {
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
            Assert.Contains("and follows it. Ctrl+C ends it.", await program.StandardOutput.ReadLineAsync(patience.Token), StringComparison.Ordinal);
            using (var interrupt = Process.Start("kill", ["-INT", program.Id.ToString(CultureInfo.InvariantCulture)]))
            {
                await interrupt.WaitForExitAsync(patience.Token);
            }

            await program.WaitForExitAsync(patience.Token);
            Assert.Equal((0, ""), (program.ExitCode, await program.StandardError.ReadToEndAsync(patience.Token)));
        }
        finally
        {
            // A preview that does not end must not outlive the test.
            if (!program.HasExited)
            {
                program.Kill(entireProcessTree: true);
            }
        }
    }

    private async Task<JsonElement> State(Func<JsonElement, bool> until)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (true)
        {
            var state = JsonDocument.Parse(await _client.GetStringAsync(".preview/state", patience.Token)).RootElement;
            if (until(state))
            {
                return state;
            }

            await Task.Delay(50, patience.Token);
        }
    }

    private Task Change(string file, string from, string to)
    {
        var path = Path.Combine(_folder.Path, file);
        return File.WriteAllTextAsync(path, File.ReadAllText(path).Replace(from, to, StringComparison.Ordinal));
    }

    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
