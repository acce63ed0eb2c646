using System.Collections.Immutable;
using System.Text.Json;
using Swapwright.Site.Rendering;

namespace Swapwright.Preview;

/// <summary>Follows the folder: reads the base anew when something changed, and tells whoever waits.</summary>
internal sealed class PreviewWatch(string folder)
{
    /// <summary>More than these nobody reads in a bar; the check prints them all.</summary>
    private const int MostShown = 50;

    private static readonly TimeSpan s_look = TimeSpan.FromMilliseconds(200);
    private static readonly JsonSerializerOptions s_json = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    private readonly Lock _gate = new();
    private PreviewState _state = PreviewState.Nothing;
    private TaskCompletionSource _next = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public PreviewState Current
    {
        get
        {
            lock (_gate)
            {
                return _state;
            }
        }
    }

    /// <summary>The state as the bar reads it, and what is done when there is another.</summary>
    public (string Json, Task Next) Now()
    {
        lock (_gate)
        {
            return (Json(_state), _next.Task);
        }
    }

    public string Json() => Now().Json;

    /// <summary>A template that fails only when a page is rendered.</summary>
    public void Add(TemplateException fault, PreviewState met)
    {
        var finding = PreviewFinding.Of(fault);
        lock (_gate)
        {
            if (_state.SiteVersion == met.SiteVersion && !_state.Findings.Contains(finding))
            {
                Put(_state with { Version = _state.Version + 1, Findings = [finding, .. _state.Findings] });
            }
        }
    }

    public async Task Run(CancellationToken cancellation)
    {
        int? read = null;
        try
        {
            while (!cancellation.IsCancellationRequested)
            {
                var stamp = FolderStamp.Of(folder);
                if (stamp != read)
                {
                    // Taken before reading: what is written meanwhile is seen at the next look.
                    read = stamp;
                    var next = Current.Next(folder, cancellation);
                    lock (_gate)
                    {
                        Put(next);
                    }
                }

                await Task.Delay(s_look, cancellation);
            }
        }
        catch (OperationCanceledException)
        {
            // Stopped.
        }
    }

    private void Put(PreviewState state)
    {
        _state = state;
        var waiting = _next;
        _next = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        waiting.SetResult();
    }

    private static string Json(PreviewState state) => JsonSerializer.Serialize(
        new
        {
            state.Version,
            Site = state.SiteVersion,
            Current = !state.Findings.Any(finding => finding.Severity == "error"),
            All = state.Findings.Length,
            Findings = state.Findings.Take(MostShown).ToImmutableArray(),
        },
        s_json);
}
