using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Swapwright.Benchmarks.Bases;

/// <summary>Vocabulary, vehicles, engines, gearboxes and ECUs of a drawn base.</summary>
internal sealed class DrawnEntities
{
    public static readonly ImmutableArray<string> Stages = ["s0", "s1", "s2", "s3"];

    // Variants keep to these stretches of years, so that a condition on their ends cuts through none.
    public static readonly ImmutableArray<(int From, int To)> Stretches = [(1986, 1988), (1989, 1991), (1992, 1994), (1995, 1997)];

    private const int Boxes = 8;
    private const int Brains = 10;

    private readonly Draw _draw;
    private readonly SortedDictionary<string, string> _files;

    public DrawnEntities(Draw draw, BaseSize size, SortedDictionary<string, string> files)
    {
        _draw = draw;
        _files = files;
        files["vocabulary.yaml"] = Vocabulary;
        for (var at = 0; at < Boxes; at++)
        {
            BoxControl[Draw.Text($"box-{at}")] = at % 2 == 0 ? "cable" : "rod";
            files[Draw.Text($"gearboxes/box-{at}.yaml")] = Draw.Text($"title: Gearbox {at}\nfacts: {{control: {(at % 2 == 0 ? "cable" : "rod")}, rating: {60 + (at * 15)}}}\nmass: {30 + at}\n");
        }

        for (var at = 0; at < Brains; at++)
        {
            files[Draw.Text($"ecus/brain-{at}.yaml")] = Draw.Text($"title: ECU {at}\nfacts: {{stage: {Stages[at % 4]}, knock: {(at % 3 == 0 ? "true" : "false")}}}\n");
        }

        Chassis = [.. Enumerable.Range(0, size.Chassis).Select(DrawChassis)];
        Donors = [.. Enumerable.Range(0, size.Donors).Select(DrawDonor)];
    }

    public ImmutableArray<DrawnVariant> Chassis { get; }

    public ImmutableArray<DrawnVariant> Donors { get; }

    /// <summary>Gearbox id → its fact <c>control</c>.</summary>
    public SortedDictionary<string, string> BoxControl { get; } = new(StringComparer.Ordinal);

    public static string Box(int at) => Draw.Text($"box-{at % Boxes}");

    public static string Brain(int at) => Draw.Text($"brain-{at % Brains}");

    private DrawnVariant DrawChassis(int at) => Write("chassis", "chassis", at, 6, new()
    {
        ["fuel"] = _draw.Of("carburettor", "single-point", "multi-point"),
        ["stage"] = _draw.Of([.. Stages]),
        ["layout"] = _draw.Of("transverse", "lengthwise"),
        ["limit"] = _draw.Number(60, 160, 10),
        ["space"] = _draw.Number(520, 640, 10),
        ["cooler"] = _draw.Flag(),
        ["steering"] = _draw.Of("manual", "hydraulic", "electric"),
        ["box"] = Box(_draw.Next(Boxes)),
        ["lamp"] = _draw.Flag(),
    });

    private DrawnVariant DrawDonor(int at) => Write("donor", "engines", at, 12, new()
    {
        ["power"] = _draw.Number(50, 180, 10),
        ["height"] = _draw.Number(480, 620, 10),
        ["stage"] = _draw.Of([.. Stages]),
        ["ignition"] = _draw.Of("distributor", "coil-packs", "coil-on-plug"),
        ["intake"] = _draw.Of("plain", "variable", "air-assisted", "charged"),
        ["knock"] = _draw.Flag(),
        ["turbo"] = _draw.Flag(),
        ["box"] = Box(_draw.Next(Boxes)),
        ["brain"] = Brain(_draw.Next(Brains)),
    });

    private DrawnVariant Write(string subject, string folder, int at, int perFamily, Dictionary<string, string> facts)
    {
        var (from, to) = Stretches[_draw.Next(Stretches.Length)];
        var id = Draw.Text($"{subject}-{at:000}");
        var variant = new DrawnVariant(id, Draw.Text($"{subject}-family-{at / perFamily}"), from, to, facts.ToImmutableSortedDictionary(StringComparer.Ordinal));
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"title: Variant {at} of {from} to {to}\nmaker: Ardley\nfamily: {variant.Family}\nyears: {{from: {from}, to: {to}}}\n"));
        text.Append("about: >-\n  Drawn for measuring. The badge on the left wing and the number on the bulkhead tell it from the variants beside it.\nfacts:\n");
        foreach (var (fact, value) in variant.Facts)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {fact}: {value}\n");
        }

        _files[$"{folder}/{id}.yaml"] = text.ToString();
        return variant;
    }

    private const string Vocabulary = """
        facts:
          chassis:
            fuel: {title: Fuel delivery, type: one-of, values: {carburettor: Carburettor, single-point: Single point, multi-point: Multi point}}
            stage: {title: Emission stage, type: one-of, ordered: true, values: {s0: None, s1: First, s2: Second, s3: Third}}
            layout: {title: Layout, type: one-of, values: {transverse: Transverse, lengthwise: Lengthwise}}
            limit: {title: Power that the drive line bears, type: number, unit: kW, min: 20, max: 400}
            space: {title: Height under the bonnet, type: number, unit: mm, min: 300, max: 900}
            cooler: {title: Oil cooler, type: flag}
            steering: {title: Steering, type: one-of, values: {manual: Manual, hydraulic: Hydraulic, electric: Electric}}
            box: {title: Gearbox it was built with, type: reference, to: gearbox}
            lamp: {title: Engine lamp, type: flag}
          donor:
            power: {title: Power, type: number, unit: kW, min: 20, max: 400}
            height: {title: Height of the engine, type: number, unit: mm, min: 300, max: 900}
            stage: {title: Emission stage, type: one-of, ordered: true, values: {s0: None, s1: First, s2: Second, s3: Third}}
            ignition: {title: Ignition, type: one-of, values: {distributor: Distributor, coil-packs: Coil packs, coil-on-plug: Coil on plug}}
            intake: {title: Intake, type: one-of, values: {plain: Plain, variable: Variable, air-assisted: Air assisted, charged: Charged}}
            knock: {title: Knock sensor, type: flag}
            turbo: {title: Turbocharger, type: flag}
            box: {title: Gearbox it was built with, type: reference, to: gearbox}
            brain: {title: ECU it was built with, type: reference, to: ecu}
          gearbox:
            control: {title: Shift, type: one-of, values: {cable: Cable, rod: Rod}}
            rating: {title: Power it bears, type: number, unit: kW, min: 20, max: 400}
          ecu:
            stage: {title: Emission stage, type: one-of, ordered: true, values: {s0: None, s1: First, s2: Second, s3: Third}}
            knock: {title: Knock input, type: flag}

        """;
}
