using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Swapwright.Tests.Drafting;

/// <summary>A client of the language server protocol over standard input and output: just enough to open, complete and be told.</summary>
internal sealed class LanguageServer : IDisposable
{
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(60);

    private readonly Process _process;
    private readonly List<JsonElement> _told = [];
    private int _id;

    public LanguageServer(string script, string root)
    {
        _process = Process.Start(new ProcessStartInfo("node", [script, "--stdio"]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        Ask("initialize", new { processId = Environment.ProcessId, rootUri = new Uri(root).AbsoluteUri, capabilities = new { textDocument = new { completion = new { completionItem = new { snippetSupport = false } } } } });
        Tell("initialized", new { });
        Tell("workspace/didChangeConfiguration", new { settings = new { yaml = new { validate = true, completion = true, schemaStore = new { enable = false } } } });
    }

    public void Open(string path) =>
        Tell("textDocument/didOpen", new { textDocument = new { uri = new Uri(path).AbsoluteUri, languageId = "yaml", version = 1, text = File.ReadAllText(path) } });

    public IReadOnlyList<JsonElement> Complete(string path, int line, int column)
    {
        var answer = Ask("textDocument/completion", new { textDocument = new { uri = new Uri(path).AbsoluteUri }, position = new { line, character = column } });
        return [.. (answer.ValueKind == JsonValueKind.Array ? answer : answer.GetProperty("items")).EnumerateArray()];
    }

    /// <summary>Waits for what the server says of a file.</summary>
    public IReadOnlyList<JsonElement> Diagnostics(string file)
    {
        while (true)
        {
            if (_told.Find(message => message.GetProperty("params").GetProperty("uri").GetString()!.EndsWith(file, StringComparison.Ordinal)) is { ValueKind: JsonValueKind.Object } told)
            {
                return [.. told.GetProperty("params").GetProperty("diagnostics").EnumerateArray()];
            }

            Keep(Read());
        }
    }

    public void Dispose()
    {
        _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }

    private JsonElement Ask(string method, object parameters)
    {
        var id = ++_id;
        Send(new { jsonrpc = "2.0", id, method, @params = parameters });
        while (true)
        {
            var message = Read();
            if (message.TryGetProperty("id", out var answered) && !message.TryGetProperty("method", out _) && answered.GetInt32() == id)
            {
                Assert.False(message.TryGetProperty("error", out var error), error.ToString());
                return message.GetProperty("result");
            }

            Keep(message);
        }
    }

    private void Tell(string method, object parameters) => Send(new { jsonrpc = "2.0", method, @params = parameters });

    /// <summary>Keeps what the server says of files; a question of its own gets no settings for an answer.</summary>
    private void Keep(JsonElement message)
    {
        if (!message.TryGetProperty("method", out var method))
        {
            return;
        }

        if (method.GetString() == "textDocument/publishDiagnostics")
        {
            _told.Add(message);
        }
        else if (message.TryGetProperty("id", out var id))
        {
            var wanted = method.GetString() == "workspace/configuration" ? message.GetProperty("params").GetProperty("items").GetArrayLength() : 0;
            Send(new { jsonrpc = "2.0", id, result = method.GetString() == "workspace/configuration" ? Enumerable.Repeat<object?>(new { validate = true, completion = true }, wanted).ToArray() : null });
        }
    }

    private void Send(object message)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(message);
        var stream = _process.StandardInput.BaseStream;
        stream.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {body.Length}\r\n\r\n")));
        stream.Write(body);
        stream.Flush();
    }

    private JsonElement Read()
    {
        using var patience = new CancellationTokenSource(s_patience);
        var stream = _process.StandardOutput.BaseStream;
        var head = new StringBuilder();
        var one = new byte[1];
        while (!head.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            stream.ReadExactlyAsync(one, patience.Token).AsTask().GetAwaiter().GetResult();
            head.Append((char)one[0]);
        }

        var length = head.ToString().Split("\r\n").First(line => line.StartsWith("Content-Length:", StringComparison.OrdinalIgnoreCase)).Split(':')[1];
        var body = new byte[int.Parse(length, CultureInfo.InvariantCulture)];
        stream.ReadExactlyAsync(body, patience.Token).AsTask().GetAwaiter().GetResult();
        return JsonDocument.Parse(body).RootElement;
    }
}
