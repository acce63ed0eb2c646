using System.Net;
using System.Reflection;
using System.Text;
using Swapwright.Site;

namespace Swapwright.Preview;

/// <summary>
/// Serves the site over HTTP while somebody writes. It stands on the listener that the runtime brings: a whole web framework
/// would have to be installed beside the program, and every command would start later for it.
/// </summary>
public sealed class PreviewServer : IDisposable
{
    private readonly HttpListener _listener = new();
    private readonly PreviewWatch _watch;

    private PreviewServer(PreviewWatch watch) => _watch = watch;

    /// <summary>Listens on an address of this machine.</summary>
    /// <param name="address">An IP address; 127.0.0.1 is reached from this machine alone.</param>
    /// <exception cref="HttpListenerException">The port is taken, or the address is none of this machine's.</exception>
    public static PreviewServer Start(string folder, IPAddress address, int port)
    {
        var server = new PreviewServer(new PreviewWatch(folder));
        var everywhere = address.Equals(IPAddress.Any) || address.Equals(IPAddress.IPv6Any);
        var host = everywhere ? "*" : HostOf(address);
        server._listener.Prefixes.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"http://{host}:{port}/"));
        if (IPAddress.IsLoopback(address))
        {
            server._listener.Prefixes.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"http://localhost:{port}/"));
        }

        server._listener.Start();
        return server;
    }

    /// <summary>An address as it stands in the address of a page.</summary>
    public static string HostOf(IPAddress address) =>
        address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 ? string.Concat("[", address.ToString(), "]") : address.ToString();

    /// <summary>Answers until it is cancelled.</summary>
    public async Task Run(CancellationToken cancellation)
    {
        await using var stop = cancellation.Register(_listener.Stop);
        var watching = _watch.Run(cancellation);
        while (!cancellation.IsCancellationRequested)
        {
            HttpListenerContext context;
            try
            {
                context = await _listener.GetContextAsync();
            }
            catch (Exception problem) when (problem is HttpListenerException or ObjectDisposedException)
            {
                break;
            }

            _ = Task.Run(() => Answer(context, cancellation), CancellationToken.None);
        }

        await watching;
    }

    public void Dispose() => _listener.Close();

    private async Task Answer(HttpListenerContext context, CancellationToken cancellation)
    {
        var response = context.Response;
        try
        {
            response.Headers["Content-Security-Policy"] = PreviewMarkup.ContentSecurityPolicy;
            response.Headers["X-Content-Type-Options"] = "nosniff";
            response.Headers["Referrer-Policy"] = "no-referrer";
            response.Headers["Cache-Control"] = "no-store";
            if (!IsOwnHost(context.Request.UserHostName))
            {
                Send(context, 403, "text/plain; charset=utf-8", "This server answers to addresses of this machine only.\n"u8);
            }
            else if (context.Request.HttpMethod is not ("GET" or "HEAD"))
            {
                response.Headers["Allow"] = "GET, HEAD";
                Send(context, 405, "text/plain; charset=utf-8", "Nothing can be sent here.\n"u8);
            }
            else if (PathOf(context.Request.RawUrl) is not { } path)
            {
                Send(context, 404, "text/plain; charset=utf-8", "There is nothing here.\n"u8);
            }
            else if (path == PreviewMarkup.Own + "events")
            {
                await Events(response, cancellation);
            }
            else
            {
                Serve(context, path);
            }
        }
        catch (Exception problem) when (problem is HttpListenerException or IOException or ObjectDisposedException or InvalidOperationException or OperationCanceledException)
        {
            // The reader went away, or the server is being stopped.
        }
        finally
        {
            response.Abort();
        }
    }

    /// <summary>A name that anybody may point at this machine is refused: a foreign page could read through it.</summary>
    private static bool IsOwnHost(string? host)
    {
        var name = host ?? "";
        var colon = name.LastIndexOf(':');
        var bare = name.EndsWith(']') || colon < 0 ? name : name[..colon];
        return bare.Equals("localhost", StringComparison.OrdinalIgnoreCase) || IPAddress.TryParse(bare.Trim('[', ']'), out _);
    }

    /// <summary>A path from the site's root; null for one that no file of a site can have.</summary>
    private static string? PathOf(string? raw)
    {
        var text = (raw ?? "").Split('?')[0];
        if (text.Length == 0 || text[0] != '/')
        {
            return null;
        }

        var path = Uri.UnescapeDataString(text[1..]);
        return path.Contains('\\', StringComparison.Ordinal) || path.Split('/').Any(step => step is ".." or ".") ? null
            : path.Length == 0 || path.EndsWith('/') ? path + "index.html"
            : path;
    }

    private void Serve(HttpListenerContext context, string path)
    {
        if (path == PreviewMarkup.Own + "state")
        {
            Send(context, 200, "application/json", Encoding.UTF8.GetBytes(_watch.Json()));
            return;
        }

        if (path.StartsWith(PreviewMarkup.Own, StringComparison.Ordinal))
        {
            using var own = Assembly.GetExecutingAssembly().GetManifestResourceStream("preview/" + path[PreviewMarkup.Own.Length..]);
            using var copy = new MemoryStream();
            own?.CopyTo(copy);
            Send(context, own is null ? 404 : 200, TypeOf(path), copy.ToArray());
            return;
        }

        var state = _watch.Current;
        var isPage = path.EndsWith(".html", StringComparison.Ordinal);
        if (state.Site is not { } site)
        {
            Send(context, isPage ? 200 : 404, TypeOf(path), isPage ? PreviewMarkup.Empty("The base has errors: mend them, and the site appears here.", state.SiteVersion) : []);
            return;
        }

        var status = 200;
        var found = site.Find(path, out var fault);
        if (found is null && isPage)
        {
            (status, found) = (404, site.Find(SitePaths.NotFound, out fault));
        }

        if (fault is not null)
        {
            _watch.Add(fault, state);
        }

        var bytes = found ?? ReadOnlyMemory<byte>.Empty;
        Send(
            context,
            found is null ? 404 : status,
            TypeOf(path),
            !isPage ? bytes.Span : bytes.IsEmpty ? PreviewMarkup.Empty("The template of this page fails: see below.", state.SiteVersion) : PreviewMarkup.With(bytes.Span, state.SiteVersion));
    }

    /// <summary>Tells a page of every new state for as long as it listens.</summary>
    private async Task Events(HttpListenerResponse response, CancellationToken cancellation)
    {
        response.ContentType = "text/event-stream";
        response.SendChunked = true;
        while (!cancellation.IsCancellationRequested)
        {
            var (json, next) = _watch.Now();
            await response.OutputStream.WriteAsync(Encoding.UTF8.GetBytes($"data: {json}\n\n"), cancellation);
            await response.OutputStream.FlushAsync(cancellation);
            await next.WaitAsync(cancellation);
        }
    }

    private static string TypeOf(string path) => Path.GetExtension(path) switch
    {
        ".html" => "text/html; charset=utf-8",
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".json" => "application/json",
        ".csv" => "text/csv; charset=utf-8",
        ".svg" => "image/svg+xml",
        ".xml" => "application/xml",
        ".png" => "image/png",
        ".webp" => "image/webp",
        ".woff2" => "font/woff2",
        _ => "application/octet-stream",
    };

    private static void Send(HttpListenerContext context, int status, string type, ReadOnlySpan<byte> bytes)
    {
        var response = context.Response;
        response.StatusCode = status;
        response.ContentType = type;
        response.ContentLength64 = bytes.Length;
        if (context.Request.HttpMethod != "HEAD")
        {
            response.OutputStream.Write(bytes);
        }

        response.Close();
    }
}
