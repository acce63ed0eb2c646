using System.Collections.Immutable;
using System.Globalization;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Turns the input into <see cref="WiringData"/> and reports everything that had to be dropped or mended.</summary>
internal sealed class InputCheck
{
    private readonly WiringInput input;
    private readonly ProblemList problems;
    private readonly SignalTable signals;
    private readonly HashSet<string> usedSignals = new(StringComparer.Ordinal);

    private InputCheck(WiringInput input, ProblemList problems)
    {
        this.input = input;
        this.problems = problems;
        signals = SignalTable.Of(input.Signals);
    }

    public static WiringData Read(WiringInput input, ProblemList problems) => new InputCheck(input, problems).Read();

    private WiringData Read()
    {
        var harness = input.Harness;
        var devices = ReadDevices();
        var plugs = ReadPlugs();
        var own = harness.Body is { } body ? ReadPlug(Places.HarnessBody, body) : null;
        var cabin = input.Body is { } other ? ReadPlug(Places.Body, other) : null;
        ImmutableArray<string> needs = [.. OrEmpty(input.Needs).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var parts = new WiringParts(
            devices,
            plugs,
            own,
            cabin,
            harness.MadeFor,
            WithWire(ReadEcu(harness.MadeFor), plugs, own),
            input.Ecu,
            ReadEcu(input.Ecu),
            ReadPoint("trunk", harness.Trunk),
            ReadPoint("ECU place", harness.EcuPlace),
            needs,
            [.. OrEmpty(input.Leads).OrderBy(lead => lead.PartId, StringComparer.Ordinal)],
            input.Connectors,
            signals,
            ReadSettings(input.Settings),
            OrEmpty(input.CabinHears),
            [.. OrEmpty(input.ScreenedMm2).Where(double.IsFinite).Order()],
            input.Battery is { } battery ? battery with { Location = ReadPoint("battery", battery.Location) } : null);
        foreach (var need in needs)
        {
            UseSignal("cabin", null, need);
        }

        CheckSignals();
        return new WiringData(parts);
    }

    /// <summary>
    /// The cavities of its ECU plug that the harness has a wire on: the ECU may have inputs that no plug of the harness leads to. Feeds, grounds and what is
    /// shared may meet inside the loom; a harness whose plugs nobody has stated is taken for whole.
    /// </summary>
    private ImmutableArray<SidePin> WithWire(ImmutableArray<SidePin> pins, ImmutableArray<KeyValuePair<string, Plug>> plugs, Plug? body)
    {
        if (plugs.IsEmpty)
        {
            return pins;
        }

        var wired = plugs.SelectMany(plug => plug.Value.Pins).Concat(body?.Pins ?? []).Select(pin => pin.Signal).ToHashSet(StringComparer.Ordinal);
        return [.. pins.Where(pin => wired.Contains(pin.Pin.Signal) || input.Signals.GetValueOrDefault(pin.Pin.Signal) is not { Shared: false, Kind: not (SignalKind.Power or SignalKind.Ground) })];
    }

    private static ImmutableArray<T> OrEmpty<T>(ImmutableArray<T> items) => items.IsDefault ? [] : items;

    private ImmutableArray<Device> ReadDevices()
    {
        var devices = ImmutableArray.CreateBuilder<Device>();
        foreach (var group in OrEmpty(input.Devices).GroupBy(device => device.Role, StringComparer.Ordinal))
        {
            var device = OnlyOne(group.Key, [.. group]);
            var pins = OrEmpty(device.Pins).Select(pin => new Pin(pin.Key, pin.Value, "", SignalTable.FallbackSizeMm2));
            var read = ReadPins(device.Role, device.Connector, [.. pins], withWire: false);
            devices.Add(device with
            {
                Location = ReadPoint(device.Role, device.Location),
                CurrentA = device.CurrentA is { } current ? ReadCurrent(device.Role, current) : null,
                ColdA = device.ColdA is { } cold ? ReadCurrent(device.Role, cold) : null,
                Pins = [.. read.Select(pin => KeyValuePair.Create(pin.Cavity, pin.Signal))],
            });
        }

        return [.. devices.OrderBy(device => device.Role, StringComparer.Ordinal)];
    }

    private double? ReadCurrent(string role, double current)
    {
        if (!SignalTable.IsCurrent(current))
        {
            problems.Add(WiringProblemKind.BadNumber, role, null, null, $"the current of `{role}` is not a number of at least 0");
            return null;
        }

        if (ConductorSize.For(current) is null)
        {
            var limit = ConductorSize.Table[^1].CurrentA.ToString(CultureInfo.InvariantCulture);
            problems.Add(WiringProblemKind.CurrentBeyondTable, role, null, null, $"`{role}` draws more than the {limit} A that the table of sizes ends at");
        }

        return current;
    }

    private ImmutableArray<KeyValuePair<string, Plug>> ReadPlugs()
    {
        var plugs = new List<KeyValuePair<string, Plug>>();
        foreach (var group in OrEmpty(input.Harness.Plugs).GroupBy(plug => plug.Key, StringComparer.Ordinal))
        {
            var plug = OnlyOne(group.Key, [.. group.Select(pair => pair.Value)]);
            plugs.Add(KeyValuePair.Create(group.Key, ReadPlug("harness plug " + group.Key, plug)));
        }

        return [.. plugs.OrderBy(plug => plug.Key, StringComparer.Ordinal)];
    }

    private T OnlyOne<T>(string role, ImmutableArray<T> items)
    {
        if (items.Length > 1)
        {
            problems.Add(WiringProblemKind.DuplicateRole, role, null, null, $"`{role}` is given {items.Length} times; only the first is used");
        }

        return items[0];
    }

    private Plug ReadPlug(string subject, Plug plug) => plug with
    {
        Location = ReadPoint(subject, plug.Location),
        Pins = ReadPins(subject, plug.Connector, plug.Pins, withWire: true),
    };

    private ImmutableArray<SidePin> ReadEcu(Ecu? ecu) => ecu is null
        ? []
        :
        [
            .. OrEmpty(ecu.Plugs).OrderBy(plug => plug.Id, CavityOrder.Instance).SelectMany((plug, index) =>
                ReadPins($"{ecu.Id} plug {plug.Id}", plug.Connector, plug.Pins, withWire: true)
                    .Select(pin => new SidePin(plug.Id, index, plug.Connector, pin))),
        ];

    private ImmutableArray<Pin> ReadPins(string subject, string connector, ImmutableArray<Pin> pins, bool withWire)
    {
        if (!input.Connectors.TryGetValue(connector, out var family))
        {
            problems.Add(WiringProblemKind.UnknownConnector, subject, null, null, $"`{subject}` has the unknown connector `{connector}`");
        }

        var seen = new Dictionary<string, Pin>(StringComparer.Ordinal);
        foreach (var pin in OrEmpty(pins))
        {
            if (family is not null && !OrEmpty(family.Cavities).Contains(pin.Cavity))
            {
                problems.Add(
                    WiringProblemKind.UnknownCavity, subject, pin.Cavity, pin.Signal, $"`{connector}` has no cavity `{pin.Cavity}`");
            }
            else if (!seen.TryAdd(pin.Cavity, pin))
            {
                problems.Add(
                    WiringProblemKind.DuplicateCavity, subject, pin.Cavity, pin.Signal, $"cavity `{pin.Cavity}` is given more than once; only the first counts");
            }
        }

        var used = seen.Values.Where(pin => pin.Signal != Signal.Unused).OrderBy(pin => pin.Cavity, CavityOrder.Instance);
        return [.. used.Select(pin => ReadPin(subject, pin, withWire))];
    }

    private Pin ReadPin(string subject, Pin pin, bool withWire)
    {
        UseSignal(subject, pin.Cavity, pin.Signal);
        if (!withWire)
        {
            return pin;
        }

        if (!WireColour.IsColour(pin.Colour))
        {
            problems.Add(
                WiringProblemKind.UnknownColour, subject, pin.Cavity, pin.Signal, $"`{pin.Colour}` is not a colour (two codes are written as in `GN/YE`)");
        }

        return SignalTable.IsSize(pin.SizeMm2) ? pin : pin with { SizeMm2 = BadSize(subject, pin.Cavity, pin.Signal, pin.SizeMm2) };
    }

    private void UseSignal(string subject, string? cavity, string signal)
    {
        if (signals.Has(signal))
        {
            usedSignals.Add(signal);
        }
        else
        {
            problems.Add(WiringProblemKind.UnknownSignal, subject, cavity, signal, $"`{subject}` names the unknown signal `{signal}`");
        }
    }

    private void CheckSignals()
    {
        foreach (var signal in usedSignals.Select(id => input.Signals[id]))
        {
            if (!WireColour.IsColour(signal.Colour))
            {
                problems.Add(WiringProblemKind.UnknownColour, signal.Id, null, signal.Id, $"`{signal.Colour}` is not a colour (two codes are written as in `GN/YE`)");
            }

            if (!SignalTable.IsSize(signal.SizeMm2))
            {
                BadSize(signal.Id, null, signal.Id, signal.SizeMm2);
            }

            if (signal.CurrentA is { } current && !SignalTable.IsCurrent(current))
            {
                problems.Add(WiringProblemKind.BadNumber, signal.Id, null, signal.Id, $"the current of `{signal.Id}` is not a number of at least 0");
            }
            else if (signal.CurrentA is { } known && ConductorSize.For(known) is null)
            {
                var limit = ConductorSize.Table[^1].CurrentA.ToString(CultureInfo.InvariantCulture);
                problems.Add(WiringProblemKind.CurrentBeyondTable, signal.Id, null, signal.Id, $"`{signal.Id}` carries more than the {limit} A that the table of sizes ends at");
            }
            else if (signal.CurrentA is { } asked && signal.SizeMm2 < ConductorSize.For(asked))
            {
                problems.Add(WiringProblemKind.ThinWire, signal.Id, null, signal.Id, $"`{signal.Id}` carries more current than its size is good for; new wires are thicker");
            }

            if (signal.Shared && !SignalKinds.MayShare(signal.Kind))
            {
                problems.Add(WiringProblemKind.KindConflict, signal.Id, null, signal.Id, $"`{signal.Id}` is marked shared, but a signal of its kind cannot be tapped; its wires are run singly");
            }
        }
    }

    private double BadSize(string subject, string? cavity, string signal, double size)
    {
        var text = size.ToString(CultureInfo.InvariantCulture);
        problems.Add(WiringProblemKind.BadNumber, subject, cavity, signal, $"`{text}` is not a size in mm²; 0.5 is taken");
        return SignalTable.FallbackSizeMm2;
    }

    private BayPoint ReadPoint(string subject, BayPoint point)
    {
        if (point.IsFinite)
        {
            return point;
        }

        problems.Add(WiringProblemKind.BadNumber, subject, null, null, $"the location of `{subject}` is not finite; the origin is taken");
        return default;
    }

    private WiringSettings ReadSettings(WiringSettings settings)
    {
        double Read(string name, double value, double standard)
        {
            if (double.IsFinite(value) && value >= 0)
            {
                return value;
            }

            problems.Add(WiringProblemKind.BadNumber, name, null, null, $"the {name} is not a number of at least 0; the usual one is taken");
            return standard;
        }

        var usual = WiringSettings.Default;
        return settings with
        {
            RoutingFactor = Read("routing factor", settings.RoutingFactor, usual.RoutingFactor),
            SlackMm = Read("slack", settings.SlackMm, usual.SlackMm),
            ReachMm = Read("reach", settings.ReachMm, usual.ReachMm),
            AdapterLengthMm = Read("adapter length", settings.AdapterLengthMm, usual.AdapterLengthMm),
            SplicesPerExtension = (int)Read("number of splices", settings.SplicesPerExtension, usual.SplicesPerExtension),
            AllowedDropV = Read("allowed voltage drop", settings.AllowedDropV, usual.AllowedDropV),
            ConductorCelsius = Read("temperature of conductors", settings.ConductorCelsius, usual.ConductorCelsius),
            LeastMm2 = Read("thinnest wire", settings.LeastMm2, usual.LeastMm2),
            DriverA = Read("current of an ECU's output", settings.DriverA, usual.DriverA),
        };
    }
}
