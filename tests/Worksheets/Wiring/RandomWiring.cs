using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Odd but possible wiring from a seed: unknown names, doubled cavities and missing halves among it.</summary>
[SuppressMessage("Security", "CA5394", Justification = "Seeded on purpose.")]
internal sealed class RandomWiring(int seed)
{
    private static readonly string[] Families = [.. Bench.Connectors.Keys.Order(StringComparer.Ordinal), "unheard-of"];
    private static readonly string[] Signals = [.. Bench.Signals.Keys.Order(StringComparer.Ordinal), "unheard-of", Signal.Unused];
    private static readonly string[] Colours = ["BK", "RD", "GN/YE", "GNYE"];
    private readonly Random random = new(seed);

    public WiringInput Next() => Bench.Empty with
    {
        Devices = Many(8, index => new Device(Role(index), Role(index), Pick(Families), Point(), Many(3, _ => KeyValuePair.Create(Cavity(3), Pick(Signals))))),
        Harness = new("Harness", Ecu(), Point(), Point(), Many(8, index => KeyValuePair.Create(Role(index + 3), Plug())), Maybe(Plug)),
        Ecu = Ecu(),
        Body = Maybe(Plug),
        Needs = Many(3, _ => Pick(Signals[..^1])),
        Leads = Many(3, index => new AdapterLead("lead-" + Text(index), Pick(Families), Pick(Families))),
    };

    /// <summary>The same wiring, everything written in another order where order says nothing.</summary>
    public WiringInput Shuffle(WiringInput input) => input with
    {
        Devices = Shuffle([.. input.Devices.Select(device => device with { Pins = Shuffle(device.Pins) })]),
        Harness = input.Harness with
        {
            MadeFor = Shuffle(input.Harness.MadeFor),
            Plugs = Shuffle([.. input.Harness.Plugs.Select(pair => KeyValuePair.Create(pair.Key, Shuffle(pair.Value)!))]),
            Body = Shuffle(input.Harness.Body),
        },
        Ecu = Shuffle(input.Ecu),
        Body = Shuffle(input.Body),
        Needs = Shuffle(input.Needs),
        Leads = Shuffle(input.Leads),
    };

    private static string Role(int index) => "role-" + Text(index);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private Ecu? Ecu() => Maybe(() =>
    {
        var id = Pick(["ecu-x", "ecu-y", "ecu-z"]);
        return new Ecu(id, id, [new("a", Pick(Families), Pins(10)), new("b", Pick(Families), Pins(6))]);
    });

    private Plug Plug() => new(Pick(Families), Point(), Pins(4));

    private ImmutableArray<Pin> Pins(int most) =>
        Many(most, _ => new Pin(Cavity(most), Pick(Signals), Pick(Colours), Pick([0.5, 0.75, 1.5, -1])));

    private string Cavity(int most) => Text(random.Next(1, most + 1));

    private BayPoint Point() => new(random.Next(0, 60), random.Next(0, 60), random.Next(10) == 0 ? double.NaN : random.Next(0, 900));

    private T? Maybe<T>(Func<T> make) where T : class => random.Next(4) == 0 ? null : make();

    private T Pick<T>(T[] items) => items[random.Next(items.Length)];

    private ImmutableArray<T> Many<T>(int most, Func<int, T> make) =>
        [.. Enumerable.Range(0, random.Next(most + 1)).Select(make)];

    private ImmutableArray<T> Shuffle<T>(ImmutableArray<T> items)
    {
        var copy = items.ToArray();
        random.Shuffle(copy);
        return [.. copy];
    }

    private Plug? Shuffle(Plug? plug) => plug is null ? null : plug with { Pins = Shuffle(plug.Pins) };

    private Ecu? Shuffle(Ecu? ecu) => ecu is null
        ? null
        : ecu with { Plugs = Shuffle([.. ecu.Plugs.Select(plug => plug with { Pins = Shuffle(plug.Pins) })]) };
}
