using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Pairs what a device wants with what a plug carries: first the same signal in the same cavity, then by signal in cavity order.</summary>
internal sealed record SignalMatch(ImmutableArray<Pin?> Found, ImmutableArray<Pin> Left)
{
    /// <summary>A wire for each want (null: none carries it), and the wires that nothing wants. Both lists come in cavity order.</summary>
    public static SignalMatch Pair(ImmutableArray<KeyValuePair<string, string>> wants, ImmutableArray<Pin> wires)
    {
        var left = wires.ToList();
        var found = new Pin?[wants.Length];
        for (var pass = 0; pass < 2; pass++)
        {
            for (var i = 0; i < found.Length; i++)
            {
                var (cavity, signal) = wants[i];
                var at = found[i] is null ? left.FindIndex(wire => wire.Signal == signal && (pass == 1 || wire.Cavity == cavity)) : -1;
                if (at >= 0)
                {
                    found[i] = left[at];
                    left.RemoveAt(at);
                }
            }
        }

        return new([.. found], [.. left]);
    }
}
