using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Fitting;

/// <summary>Puts together the wiring of a combination: which devices are fitted, whose harness serves them, which ECU it meets.</summary>
internal sealed class WiringAssembly
{
    private readonly KnowledgeBase _kb;
    private readonly ImmutableDictionary<string, ConnectorFamily> _connectors;
    private readonly ImmutableDictionary<string, Signal> _signals;
    private readonly ImmutableArray<WiringStock> _stock;
    private readonly Worksheets.Wiring.WiringSettings _settings;

    public WiringAssembly(KnowledgeBase kb)
    {
        _kb = kb;
        _connectors = kb.Connectors.All.ToImmutableDictionary(
            connector => connector.Id,
            connector => new ConnectorFamily(connector.Id, connector.Title, [.. connector.Cavities], connector.Terminal, connector.Sealed, [.. connector.Mates.Select(named => named.Id)]) { FromMm2 = (double?)connector.WireFromMm2, ToMm2 = (double?)connector.WireToMm2 });
        _signals = kb.Vocabulary.Signals.All.ToImmutableDictionary(
            signal => signal.Id,
            signal => new Signal(signal.Id, signal.Title, SignalKinds.Parse(signal.Kind), (double?)signal.CurrentA, (double)signal.SizeMm2, signal.Colour, signal.Shared, signal.Shielded) { Through = signal.Through, BranchOf = signal.BranchOf, TwistedWith = signal.TwistedWith });
        _stock = [.. kb.Parts.All.Where(part => part.Wiring is { Kind: not WiringGoods.PlugSet }).Select(part => new WiringStock(part.Id, Good(part.Wiring!.Kind), (double?)part.Wiring.SizeMm2))];
        _settings = Worksheets.Wiring.WiringSettings.Default with
        {
            RoutingFactor = (double)kb.Settings.Wiring.RoutingFactor,
            SlackMm = (double)kb.Settings.Wiring.SlackMm,
            ReachMm = (double)kb.Settings.Wiring.ReachMm,
            AllowedDropV = (double)kb.Settings.Wiring.AllowedDropV,
            ConductorCelsius = (double)kb.Settings.Wiring.ConductorCelsius,
            LeastMm2 = (double)kb.Settings.Wiring.LeastMm2,
            DriverA = (double)kb.Settings.Wiring.OutputCurrentA,
        };
    }

    /// <returns>null where the answers leave no harness to work on.</returns>
    public WiringSheet? Assemble(DonorVariant donor, ChassisVariant chassis, Knowledge.Ecu? ecu, Func<string, Answer?> answers, IEnumerable<Part> parts) =>
        Case(donor, chassis, ecu, answers, parts) is { } one ? Assemble(one) : null;

    /// <summary>What the wiring of a combination goes by; null where the answers leave no harness to work on.</summary>
    public WiringCase? Case(DonorVariant donor, ChassisVariant chassis, Knowledge.Ecu? ecu, Func<string, Answer?> answers, IEnumerable<Part> parts)
    {
        var harness = answers(_kb.Settings.HarnessPosition)?.Source == "chassis" ? chassis.Harness : donor.Harness;
        if (harness is null)
        {
            return null;
        }

        var devices = ImmutableArray.CreateBuilder<FittedDevice>();
        foreach (var role in _kb.Vocabulary.Devices.All)
        {
            if (Fitted(role, donor, chassis, answers) is { } fitted)
            {
                devices.Add(fitted);
            }
        }

        return new WiringCase(donor, chassis, harness, ecu, devices.ToImmutable(), [.. parts.Where(part => part.ChangesWiring || part.Wiring is { Kind: WiringGoods.PlugSet })]);
    }

    /// <summary>The wiring of a case. It goes by nothing else, so that combinations of the same case may share it.</summary>
    public WiringSheet Assemble(WiringCase one)
    {
        var (donor, chassis, harness, ecu, devices, parts) = one;
        var brought = parts.SelectMany(part => part.OwnWires).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<Part> leads = [.. parts.Where(part => !part.Brings.IsEmpty)];
        var title = ReferenceEquals(harness, chassis.Harness) ? $"{chassis.Title}: engine harness" : $"{donor.Title}: engine harness";
        var input = new WiringInput(
            [.. devices.Select(device => Without(Device(device, leads), brought)).OfType<Device>()],
            new Harness(
                title,
                harness.Ecu is { } id && _kb.Ecus.Find(id) is { } own ? Ecu(own) : null,
                Point(harness.Trunk),
                Point(harness.EcuPlace),
                [.. harness.Plugs.Where(plug => !IsBrought(plug.Value.Pins.Select(pin => pin.Signal), brought)).Select(plug => KeyValuePair.Create(plug.Key, Plug(plug.Value) with { Title = _kb.Vocabulary.Devices.Find(plug.Key)?.Title }))],
                harness.Body is { } body ? Plug(body) : null),
            ecu is null ? null : Ecu(ecu),
            chassis.Body is { } cabin ? Plug(cabin) : null,
            chassis.Needs,
            _connectors,
            _signals,
            [.. parts.Where(part => part.Lead is not null).Select(part => new AdapterLead(part.Id, part.Lead!.Value.From, part.Lead.Value.To))],
            _settings)
        {
            CabinHears =
            [
                .. chassis.Devices.Where(device => Givers.MayGive(device.Pins.Select(pin => _signals.GetValueOrDefault(pin.Signal)?.Kind)))
                    .SelectMany(device => device.Pins).Select(pin => pin.Signal).Distinct(StringComparer.Ordinal),
            ],
            ScreenedMm2 = [.. _stock.Where(one => one.Good == WiringGood.ScreenedWire).Select(one => one.SizeMm2).OfType<double>()],
            Battery = chassis.Battery is { } battery ? new BatteryPoint(battery.Title ?? BatteryPoint.Post, Point(battery.Location)) : null,
        };
        var sheet = WiringWorksheet.Compute(input);

        // The donor's harness gives its plugs where it is not the one in use.
        var cut = parts.Any(part => part.Wiring is { Kind: WiringGoods.PlugSet }) && !ReferenceEquals(harness, donor.Harness) ? donor.Harness : null;
        var whole = sheet with { Purchases = WiringPurchases.Of(sheet, _stock, cut?.Plugs.Select(plug => plug.Value.Connector)) };
        sheet.Data?.Rest();
        return whole;
    }

    private FittedDevice? Fitted(DeviceRole role, DonorVariant donor, ChassisVariant chassis, Func<string, Answer?> answers)
    {
        var own = donor.Device(role.Id);
        if (role.Position is null)
        {
            return own is null ? null : new FittedDevice(role, own, own.Location);
        }

        var answer = answers(role.Position);
        if (answer is null or { Source: "none" } or { Treatment: "blank" })
        {
            return null;
        }

        if (Bought(role, answer) is { } bought)
        {
            return new FittedDevice(role, bought, Place(bought, chassis));
        }

        switch (answer.Source)
        {
            case "chassis" when chassis.Device(role.Id) is { } kept:
                // What moves onto the donor's engine, and every accessory that its belt drives, takes the place that the donor has for it.
                var moves = answer.Treatment == "move" || chassis.AccessoryAt(role.Position) is not null;
                return new FittedDevice(role, kept, moves && own is not null ? own.Location : kept.Location);
            case "donor" or "new" or "made" when own is not null:
                return new FittedDevice(role, own, Place(own, chassis));
            default:
                // Of another vehicle's part only its own entry can say which plug it has.
                return null;
        }
    }

    private DeviceEntry? Bought(DeviceRole role, Answer answer)
    {
        foreach (var id in answer.PartIds)
        {
            if (_kb.Parts.Find(id) is { } part && DeviceEntry.Of(part.Devices, role.Id) is { } bought)
            {
                return bought;
            }
        }

        return null;
    }

    /// <summary>Where this car has room for it: a part and a donor know no other dash than their own.</summary>
    private static Knowledge.BayPoint Place(DeviceEntry device, ChassisVariant chassis) => chassis.Places.TryGetValue(device.Role, out var place) ? place : device.Location;

    /// <summary>A device as the harness meets it; null where a part brings every wire that it has.</summary>
    private static Device? Without(Device device, HashSet<string> brought) =>
        IsBrought(device.Pins.Select(pin => pin.Value), brought) ? null : device with { Pins = [.. device.Pins.Where(pin => !brought.Contains(pin.Value))] };

    private static bool IsBrought(IEnumerable<string> signals, HashSet<string> brought) => brought.Count > 0 && signals.Any() && signals.All(brought.Contains);

    private static WiringGood Good(string kind) => kind switch
    {
        "screened-wire" => WiringGood.ScreenedWire,
        "twisted-pair" => WiringGood.TwistedPair,
        "screened-pair" => WiringGood.ScreenedPair,
        "terminal" => WiringGood.Terminal,
        "seal" => WiringGood.Seal,
        "blanking-plug" => WiringGood.BlankingPlug,
        "splice" => WiringGood.Splice,
        "heat-shrink" => WiringGood.HeatShrink,
        "housing" => WiringGood.Housing,
        "relay" => WiringGood.Relay,
        "relay-base" => WiringGood.RelayBase,
        "fuse-holder" => WiringGood.FuseHolder,
        "wire-cap" => WiringGood.WireCap,
        _ => WiringGood.Wire,
    };

    private static Device Device(FittedDevice fitted, ImmutableArray<Part> leads)
    {
        var (role, entry, place) = fitted;
        return new Device(role.Id, entry.Title ?? role.Title, entry.Connector, Point(place), [.. entry.Pins.Select(pin => KeyValuePair.Create(pin.Cavity, pin.Signal))])
        {
            CurrentA = (double?)(entry.CurrentA ?? role.CurrentA),
            OwnFuse = role.OwnFuse,
            IsBrief = role.IsBrief,
            ColdA = (double?)role.ColdCurrentA,
            Position = role.Position,
            Supplies = role.Supplies,
            InCabin = role.InCabin,
            ToCabin = entry.ToCabin,
            Leads = leads.IsEmpty
                ? []
                :
                [
                    .. from part in leads
                       from wires in part.Brings
                       where wires.Role == role.Id
                       select new DeviceLead(part.Id, part.Title, wires.Cavities, wires.HasPlug, wires.HasFarEnds),
                ],
        };
    }

    private static Worksheets.Wiring.Ecu Ecu(Knowledge.Ecu ecu) =>
        new(ecu.Id, ecu.Title, [.. ecu.Plugs.Select(plug => new EcuPlug(plug.Key, plug.Value.Connector, Pins(plug.Value)))])
        {
            DriverA = (double?)ecu.OutputCurrentA,
        };

    private static Plug Plug(PlugEntry plug) => new(plug.Connector, Point(plug.Location ?? default), Pins(plug));

    private static ImmutableArray<Pin> Pins(PlugEntry plug) => [.. plug.Pins.Select(pin => new Pin(pin.Cavity, pin.Signal, pin.Colour, (double)pin.SizeMm2))];

    private static Worksheets.Wiring.BayPoint Point(Knowledge.BayPoint point) => new((double)point.X, (double)point.Y, (double)point.Z);
}
