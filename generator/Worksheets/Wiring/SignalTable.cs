using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Swapwright.Worksheets.Wiring;

/// <summary>The signals of a base as the computation may rely on them, and which wires are twisted with one another.</summary>
/// <remarks>Made once for all sheets that are computed from the same dictionary, since that never changes.</remarks>
internal sealed class SignalTable
{
    public const double FallbackSizeMm2 = 0.5;

    private static readonly ConditionalWeakTable<ImmutableDictionary<string, Signal>, SignalTable> s_tables = [];

    private readonly Dictionary<string, Signal> _signals;
    private readonly ILookup<string, string> _twisted;

    private SignalTable(ImmutableDictionary<string, Signal> signals)
    {
        _signals = signals.ToDictionary(pair => pair.Key, pair => Mend(pair.Value), StringComparer.Ordinal);
        _twisted = _signals.Where(pair => pair.Value.TwistedWith is not null)
            .SelectMany(pair => new[] { (Signal: pair.Key, With: pair.Value.TwistedWith!), (Signal: pair.Value.TwistedWith!, With: pair.Key) })
            .ToLookup(pair => pair.Signal, pair => pair.With, StringComparer.Ordinal);
    }

    public IEnumerable<Signal> All => _signals.Values;

    public static SignalTable Of(ImmutableDictionary<string, Signal> signals) => s_tables.GetValue(signals, key => new SignalTable(key));

    public Signal? Find(string id) => _signals.GetValueOrDefault(id);

    public bool Has(string id) => _signals.ContainsKey(id);

    /// <summary>Signals whose wires are twisted with that of a signal, whichever of the two says so; none for most.</summary>
    public IEnumerable<string> TwistedWith(string signal) => _twisted[signal];

    public static bool IsSize(double size) => double.IsFinite(size) && size > 0;

    public static bool IsCurrent(double current) => double.IsFinite(current) && current >= 0;

    private static Signal Mend(Signal signal) => signal with
    {
        SizeMm2 = IsSize(signal.SizeMm2) ? signal.SizeMm2 : FallbackSizeMm2,
        CurrentA = signal.CurrentA is { } current && IsCurrent(current) ? current : null,
        Shared = signal.Shared && SignalKinds.MayShare(signal.Kind),
    };
}
