using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Findings;

/// <summary>Two halves of a factory connection that put different signals into one cavity, and signals that are shared and must not be.</summary>
public static class PinType
{
    public static readonly EntityCheck Check = new(FindingKinds.PinType, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        // A vehicle that is like another may write the pins anew and leave the connector: pins are what is told once.
        var told = new HashSet<(Place, Place)>();

        // Cavities tell nothing where the two do not go together; that is a finding of its own.
        foreach (var pair in Plugged.All(kb).Where(pair => kb.Connectors.Find(pair.Plug.Connector) is { } one && kb.Connectors.Find(pair.Other.Connector) is { } other && one.MatesWith(other)))
        {
            foreach (var (wire, pin) in pair.Plug.Pins.Join(pair.Other.Pins, wire => wire.Cavity, pin => pin.Cavity, (wire, pin) => (wire, pin), StringComparer.Ordinal))
            {
                if (wire.Signal != pin.Signal && told.Add((wire.Place, pin.Place)) && Known(kb, wire.Signal) is { } carried && Known(kb, pin.Signal) is { } wanted)
                {
                    yield return Differ(pair, (wire, carried), (pin, wanted));
                }
            }
        }

        foreach (var signal in kb.Vocabulary.Signals.All.Where(signal => signal.Shared && !SignalKinds.MayShare(SignalKinds.Parse(signal.Kind))))
        {
            yield return new Finding(FindingKinds.PinType, $"`{signal.Id}` is shared, but a signal of the kind `{signal.Kind}` cannot be tapped", signal.Place)
            {
                Mend = "Take `shared` out: a measured, timed or driven signal has one wire from end to end; or correct its `kind`.",
            };
        }
    }

    private static Finding Differ(Plugged pair, (PinEntry Pin, SignalDeclaration Signal) wire, (PinEntry Pin, SignalDeclaration Signal) met)
    {
        var harm = SignalKinds.DoesHarm(SignalKinds.Parse(wire.Signal.Kind), SignalKinds.Parse(met.Signal.Kind)) ? $"; `{wire.Signal.Kind}` must not meet `{met.Signal.Kind}`" : "";
        return new Finding(FindingKinds.PinType, $"{pair.What} differ in cavity `{wire.Pin.Cavity}`: `{wire.Signal.Id}` and `{met.Signal.Id}`{harm}", wire.Pin.Place)
        {
            Related = [new RelatedPlace($"the other side has `{met.Signal.Id}` there", met.Pin.Place)],
            Mend = "They were plugged together in one vehicle, so one of the two is wrong: correct the cavity or the signal.",
        };
    }

    private static SignalDeclaration? Known(KnowledgeBase kb, string signal) => signal == SignalDeclaration.Unused ? null : kb.Vocabulary.Signals.Find(signal);
}
