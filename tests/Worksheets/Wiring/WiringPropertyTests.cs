using System.Text.Json;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class WiringPropertyTests
{
    private const int Cases = 150;

    public static TheoryData<int> Seeds => [1, 2, 3, 4];

    private static void ForEach(int seed, Action<WiringInput, WiringSheet> hold)
    {
        var random = new RandomWiring(seed);
        for (var i = 0; i < Cases; i++)
        {
            var input = random.Next();
            hold(input, WiringWorksheet.Compute(input));
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_AnyWiring_GivesEveryDeviceOneOutcome(int seed) => ForEach(seed, (input, sheet) =>
    {
        var devices = input.Devices.Select(device => device.Role).Distinct().Order(StringComparer.Ordinal);
        Assert.Equal(devices, sheet.Plugs.Where(plug => plug.Outcome != PlugOutcome.Capped).Select(plug => plug.Role));
        var counts = sheet.Counts;
        Assert.Equal(
            sheet.Plugs.Length,
            counts.StraightIn + counts.RePinned + counts.Changed + counts.Lead + counts.Added + counts.ExtendedOnly + counts.Capped);
    });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_AnyWiring_ReachesOrReportsEverySignal(int seed) => ForEach(seed, (input, sheet) =>
    {
        foreach (var device in input.Devices)
        {
            var wires = sheet.Plugs.Single(plug => plug.Role == device.Role).Wires;
            foreach (var (cavity, signal) in device.Pins.Where(pin => pin.Value != Signal.Unused))
            {
                var reached = wires.Any(wire => wire.Cavity == cavity && wire.Signal == signal && wire.Action != WireAction.Unreached);
                Assert.True(reached || sheet.Problems.Any(problem =>
                    problem.Subject == device.Role && problem.Cavity == cavity && problem.Signal == signal));
            }
        }
    });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_AnyWiring_UsesNoCavityTwice(int seed) => ForEach(seed, (_, sheet) =>
    {
        Assert.All(sheet.Plugs, plug => Assert.Distinct(plug.Wires.Select(wire => wire.Cavity)));
        Assert.All(sheet.Plugs, plug => Assert.Distinct(
            plug.Wires.Where(wire => wire.FromCavity is not null).Select(wire => wire.FromCavity).Concat(plug.Capped.Select(wire => wire.Cavity))));
        var terminals = sheet.Runs.SelectMany(run => new[] { run.From, run.To }).Where(end => end.Kind == WireEndKind.Terminal);
        Assert.Distinct(terminals.Select(end => (end.Place, end.Cavity)));
    });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_AnyWiring_AddsUpItsPieces(int seed) => ForEach(seed, (_, sheet) =>
    {
        Assert.Equal(sheet.Runs.Sum(run => run.LengthMm), sheet.Bill.TotalLengthMm);
        Assert.Equal(sheet.Bill.Cuts.Sum(cut => cut.LengthMm), sheet.Bill.TotalLengthMm);
        Assert.Equal(sheet.Runs.Length, sheet.Bill.Wire.Sum(line => line.Pieces));
        Assert.Equal(sheet.Runs.Sum(run => run.Splices), sheet.Bill.HeatShrink);
        Assert.Distinct(sheet.Runs.Select(run => run.Label));
        Assert.All(sheet.Runs, run => Assert.True(run.LengthMm >= 60 && run.SizeMm2 >= run.AskedSizeMm2));
    });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_AnyWiring_JoinsEqualSignalsOnly(int seed) => ForEach(seed, (input, sheet) =>
    {
        var signals = new Dictionary<(string, string), string>();
        foreach (var ecu in new[] { input.Ecu, input.Harness.MadeFor }.OfType<Ecu>())
        {
            foreach (var plug in ecu.Plugs)
            {
                foreach (var pin in plug.Pins)
                {
                    signals.TryAdd((ecu.Id, plug.Id + pin.Cavity), pin.Signal);
                }
            }
        }

        var toEcu = sheet.Runs.Where(run => run.To.Place == input.Ecu?.Id && run.To.Kind == WireEndKind.Terminal);
        Assert.All(toEcu, run => Assert.Equal(run.Signal, signals[(run.To.Place, run.To.Cavity)]));
        foreach (var adapter in new[] { sheet.EcuAdapter, sheet.BodyAdapter }.OfType<AdapterHarness>())
        {
            Assert.All(adapter.Rows, row => Assert.Equal(row.Action == AdapterAction.Join, row.From is not null && row.To is not null));
            Assert.All(adapter.Rows.Where(row => row.Run is not null), row => Assert.Equal(row.Signal, sheet.Runs.Single(run => run.Label == row.Run).Signal));
        }
    });

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_InAnotherOrder_GivesTheSameSheet(int seed)
    {
        var random = new RandomWiring(seed);
        for (var i = 0; i < Cases; i++)
        {
            var input = Tidy(random.Next());
            Assert.Equal(JsonSerializer.Serialize(WiringWorksheet.Compute(input)), JsonSerializer.Serialize(WiringWorksheet.Compute(random.Shuffle(input))));
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_BayMirrored_GivesTheSameSheet(int seed) => ForEach(seed, (input, sheet) =>
        Assert.Equal(JsonSerializer.Serialize(sheet), JsonSerializer.Serialize(WiringWorksheet.Compute(Placed(input, at => at with { Z = -at.Z })))));

    /// <summary>Everything further apart takes more wire, never less.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_BayTwiceAsLarge_NeverTakesLessWire(int seed) => ForEach(seed, (input, sheet) =>
        Assert.True(WiringWorksheet.Compute(Placed(input, at => new BayPoint(2 * at.X, 2 * at.Y, 2 * at.Z))).Bill.TotalLengthMm >= sheet.Bill.TotalLengthMm));

    /// <summary>More current takes no thinner wire and loses no less along it.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Choose_MoreCurrentLongerOrHotter_NeverTakesLessCopper(int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < Cases; i++)
        {
            var need = new ConductorNeed(random.Between(0.2, 4), random.Between(0, 20), random.Between(100, 6000), random.Between(0.1, 0.6), random.Between(20, 105), 0.5, random.Next(2) == 0 ? null : 15);
            var size = ConductorSize.Choose(need).SizeMm2;
            Assert.True(ConductorSize.Choose(need with { CurrentA = need.CurrentA * 1.5 }).SizeMm2 >= size);
            Assert.True(ConductorSize.Choose(need with { LengthMm = need.LengthMm * 2 }).SizeMm2 >= size);
            Assert.True(ConductorSize.Choose(need with { Celsius = need.Celsius + 20 }).SizeMm2 >= size);
            Assert.True(ConductorSize.Choose(need with { AllowedDropV = need.AllowedDropV * 2 }).SizeMm2 <= size);
        }
    }

    private static WiringInput Placed(WiringInput input, Func<BayPoint, BayPoint> place)
    {
        Plug? Moved(Plug? plug) => plug is null ? null : plug with { Location = place(plug.Location) };
        return input with
        {
            Devices = [.. input.Devices.Select(device => device with { Location = place(device.Location) })],
            Harness = input.Harness with
            {
                Trunk = place(input.Harness.Trunk),
                EcuPlace = place(input.Harness.EcuPlace),
                Plugs = [.. input.Harness.Plugs.Select(pair => KeyValuePair.Create(pair.Key, Moved(pair.Value)!))],
                Body = Moved(input.Harness.Body),
            },
            Body = Moved(input.Body),
        };
    }

    /// <summary>Where a cavity is given twice the first one counts, so that order does say something: those are left out here.</summary>
    private static WiringInput Tidy(WiringInput input)
    {
        static Plug? One(Plug? plug) => plug is null ? null : plug with { Pins = [.. plug.Pins.DistinctBy(pin => pin.Cavity)] };
        static Ecu? OneEcu(Ecu? ecu) => ecu is null
            ? null
            : ecu with { Plugs = [.. ecu.Plugs.Select(plug => plug with { Pins = [.. plug.Pins.DistinctBy(pin => pin.Cavity)] })] };
        return input with
        {
            Devices = [.. input.Devices.Select(device => device with { Pins = [.. device.Pins.DistinctBy(pin => pin.Key)] })],
            Harness = input.Harness with
            {
                MadeFor = OneEcu(input.Harness.MadeFor),
                Plugs = [.. input.Harness.Plugs.Select(pair => KeyValuePair.Create(pair.Key, One(pair.Value)!))],
                Body = One(input.Harness.Body),
            },
            Ecu = OneEcu(input.Ecu),
            Body = One(input.Body),
        };
    }
}
