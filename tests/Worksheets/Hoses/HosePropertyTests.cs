using System.Collections.Immutable;
using System.Xml.Linq;
using Swapwright.Worksheets.Hoses;
using static Swapwright.Tests.Worksheets.Hoses.HoseBench;

namespace Swapwright.Tests.Worksheets.Hoses;

/// <summary>What holds for any ports and hoses.</summary>
public class HosePropertyTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 60)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_AnyInput_AccountsForEveryPortOnce(int seed)
    {
        var input = Draw(seed);
        var sheet = HoseWorksheet.Compute(input);

        foreach (var port in input.Ports)
        {
            var on = sheet.Runs.Count(run => run.From.Id == port.Id || run.To.Id == port.Id);
            var ends = (on == 1 ? 1 : 0) + sheet.Blanked.Count(blank => blank.Port.Id == port.Id) + sheet.Open.Count(open => open.Id == port.Id) + sheet.Tees.Count(teed => teed.Port.Id == port.Id)
                + sheet.Problems.Count(problem => problem is PortLeftOpen or PortUsedTwice && problem.Subject == port.Id);
            Assert.Equal(1, ends);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_PortsInAnotherOrder_GivesTheSameHosesAndProblems(int seed)
    {
        var input = Draw(seed);
        var sheet = HoseWorksheet.Compute(input);
        var turned = HoseWorksheet.Compute(input with { Ports = [.. input.Ports.Reverse()] });

        Assert.Equal(sheet.Runs.Select(Said), turned.Runs.Select(Said));
        Assert.Equal(sheet.Problems.ToList(), turned.Problems.ToList());
        Assert.Equal(sheet.Totals.ToList(), turned.Totals.ToList());
        Assert.Equal(sheet.Purchases.ToList(), turned.Purchases.ToList());
        Assert.Equal(sheet.Blanked.Select(blank => blank.Port.Id).Order(StringComparer.Ordinal), turned.Blanked.Select(blank => blank.Port.Id).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_AnyInput_TotalsAddUpAndNoHoseIsShorterThanItsWay(int seed)
    {
        var sheet = HoseWorksheet.Compute(Draw(seed));

        Assert.Equal(sheet.Runs.SelectMany(run => run.Pieces).Sum(piece => piece.LengthMm ?? 0), sheet.Totals.Sum(total => total.LengthMm), 6);
        Assert.All(sheet.Runs.Where(run => run.LengthMm is not null), run => Assert.True(run.LengthMm >= run.From.Location!.Value.DistanceTo(run.To.Location!.Value) + Limits.SlackMm));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_BayMirrored_CutsTheSamePieces(int seed)
    {
        var input = Draw(seed);
        var mirrored = HoseWorksheet.Compute(input with { Ports = [.. input.Ports.Select(port => port with { Location = port.Location is { } at ? at with { X = -at.X } : null })] });

        Assert.Equal(HoseWorksheet.Compute(input).Runs.Select(Said), mirrored.Runs.Select(Said));
    }

    /// <summary>Everything further apart: no hose gets shorter, and what is laid is the way, scaled.</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_BayTwiceAsLarge_DoublesTheWays(int seed)
    {
        var input = Draw(seed);
        var larger = HoseWorksheet.Compute(input with { Ports = [.. input.Ports.Select(port => port with { Location = port.Location is { } at ? new HosePoint(2 * at.X, 2 * at.Y, 2 * at.Z) : null })] });

        Assert.All(HoseWorksheet.Compute(input).Runs.Zip(larger.Runs).Where(pair => pair.First.LengthMm is not null), pair =>
        {
            var slack = Limits.SlackMm * Math.Max(1, Math.Max(pair.First.Pieces.Length, pair.First.Joiner is null ? 1 : 2));
            Assert.Equal(pair.Second.LengthMm!.Value - slack, 2 * (pair.First.LengthMm!.Value - slack), 4.0);
        });
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Compute_MorePressure_NeverAsksForALowerClass(int seed)
    {
        var input = Draw(seed);
        var higher = HoseWorksheet.Compute(input with { Ports = [.. input.Ports.Select(port => port with { PressureBar = port.PressureBar + 2 })] });

        Assert.All(HoseWorksheet.Compute(input).Runs.Zip(higher.Runs), pair => Assert.True(pair.First.LeastClass is null || pair.Second.LeastClass >= pair.First.LeastClass));
    }

    /// <summary>A number that cannot be makes a port impossible or a length unknown, never a number that is none.</summary>
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(-1)]
    [InlineData(double.MaxValue)]
    public void Compute_ImpossibleNumbers_AreProblemsAndNoLengths(double odd)
    {
        var input = Draw(7);
        Func<Port, Port>[] spoil = [port => port with { SizeMm = odd }, port => port with { PressureBar = odd }, port => port with { Location = new HosePoint(odd, 0, 0) }];
        Assert.All(spoil, one =>
        {
            var sheet = HoseWorksheet.Compute(input with { Ports = [.. input.Ports.Select((port, at) => at % 2 == 0 ? one(port) : port)] });
            Assert.All(sheet.Runs, run => Assert.True(run.LengthMm is null || double.IsFinite(run.LengthMm.Value)));
            Assert.All(sheet.Runs, run => Assert.True(run.PressureBar is null || double.IsFinite(run.PressureBar.Value)));
            Assert.All(sheet.Totals, total => Assert.True(double.IsFinite(total.LengthMm)));
            Assert.True(double.IsFinite(odd) || sheet.Problems.Any(problem => problem is ImpossiblePort or LengthUnknown));
        });
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Svg_AnySheet_IsWellFormedAndShowsEveryHose(int seed)
    {
        var sheet = HoseWorksheet.Compute(Draw(seed));
        foreach (var circuit in HoseDrawing.Circuits(sheet))
        {
            var drawing = XElement.Parse(HoseDrawing.Svg(sheet, circuit, "h"));
            Assert.Equal("svg", drawing.Name.LocalName);
            Assert.Equal(sheet.Runs.Count(run => run.Circuit == circuit), drawing.Descendants().Count(element => element.Attribute("class")?.Value.StartsWith("hose ", StringComparison.Ordinal) == true));
            Assert.DoesNotContain(drawing.DescendantsAndSelf().Attributes(), attribute => attribute.Name.LocalName == "style");
        }
    }

    [Fact]
    public void Svg_HostileTitles_AreEscaped()
    {
        var port = Port("a", 8, open: "<script>alert(1)</script>") with { Title = "\"><script>&\u0001", Owner = "</svg>" };
        var text = HoseDrawing.Svg(Sheet([port], []), HoseCircuit.Heater, "x\"><script>");

        Assert.DoesNotContain("<script", text, StringComparison.Ordinal);
        Assert.Equal("svg", XElement.Parse(text).Name.LocalName);
    }

    private static string Said(HoseRun run) => FormattableString.Invariant($"{run.Id} {run.From.Id} {run.To.Id} {run.Action} {run.LengthMm} {run.Joiner?.Part} {string.Join(' ', run.Pieces)}");

    private static HoseInput Draw(int seed)
    {
        var random = new Random(seed);
        var circuits = Enum.GetValues<HoseCircuit>();
        var sizes = new[] { 4d, 6, 8, 8.4, 16, 19 };
        var ports = Enumerable.Range(0, 14).Select(at => Port(
            FormattableString.Invariant($"p{at}"),
            sizes[random.Next(sizes.Length)],
            random.Next(6) == 0 ? null : new HosePoint(random.Next(-500, 500), random.Next(-500, 500), random.Next(-500, 500)),
            circuits[at / 2 % circuits.Length],
            random.Next(2) == 0 ? random.Next(8) / 2d : null,
            random.Next(4) == 0,
            random.Next(8) == 0 ? "Breathes." : "")).Where(_ => random.Next(7) > 0).ToImmutableArray();
        var hoses = Enumerable.Range(0, 12).Select(at =>
        {
            var from = random.Next(14);
            var to = (from + 1 + random.Next(13)) % 14;
            var circuit = circuits[from / 2 % circuits.Length];
            return Hose(
                FormattableString.Invariant($"h{at:00}"),
                FormattableString.Invariant($"p{from}"),
                FormattableString.Invariant($"p{to}"),
                (HoseWork)random.Next(4),
                circuit,
                random.Next(3) == 0,
                random.Next(2) == 0 ? [Stock(FormattableString.Invariant($"s{random.Next(3)}"), 8, circuit, FuelHoseClass.R9)] : [],
                random.Next(2) == 0 ? [new StepJoiner("j", 8, 6), new StepJoiner("k", 19, 16)] : [],
                random.Next(2) == 0 ? [new Tee("t", [8, 8, 8])] : []);
        }).ToImmutableArray();
        return new HoseInput(ports, hoses, [Stock("shop", 8, HoseCircuit.Vacuum, piece: null)], Limits);
    }
}
