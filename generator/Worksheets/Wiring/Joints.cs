using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>How two wires meet in a splice.</summary>
public enum JointKind
{
    /// <summary>End to end, where a piece is let in.</summary>
    InLine,

    /// <summary>A new wire is laid against one that goes on.</summary>
    Branch,
}

/// <summary>Splices of one kind and pair of sizes, with the sleeve that each takes.</summary>
/// <param name="SleeveMm">Diameter of the heat-shrink as bought, mm; null where no sleeve of the series goes over.</param>
/// <param name="SleeveLengthMm">Length to cut for one splice.</param>
public sealed record JointLine(JointKind Kind, double SizeMm2, double OtherMm2, int Count, double? SleeveMm, double SleeveLengthMm);

/// <summary>Terminals of one family, kind and wire size.</summary>
public sealed record SizedTerminal(string Connector, string Terminal, double SizeMm2, int Count);

/// <summary>What is crimped and shrunk, by family and size.</summary>
/// <remarks>
/// Sleeves are of adhesive-lined heat-shrink that shrinks three to one. One goes over the joint with a quarter to spare and, shrunk, grips the thinner
/// wire. It covers the barrel and 10 mm of insulation on either side. Common practice, no source.
/// </remarks>
public static class Joints
{
    /// <summary>Diameters as bought, mm.</summary>
    public static readonly ImmutableArray<double> Sleeves = [3, 4.8, 6, 9, 12, 19, 24];

    private const double ShrinksTo = 1.0 / 3;
    private const double OverlapMm = 10;

    /// <summary>Greatest outer diameter of thin-wall wire, mm: ISO 6722-1, from memory.</summary>
    private static readonly ImmutableArray<(double SizeMm2, double OuterMm)> s_outer =
        [(0.35, 1.4), (0.5, 1.6), (0.75, 1.9), (1, 2.1), (1.5, 2.4), (2.5, 3.0), (4, 3.7), (6, 4.3), (10, 6.0), (16, 7.2), (25, 8.7)];

    /// <summary>Splices by kind and sizes; as many as the bill counts.</summary>
    public static ImmutableArray<JointLine> Splices(WiringSheet sheet) =>
    [
        .. from run in sheet.Runs
           where run.Splices > 0
           group run.Splices by (Kind: run.Purpose == WirePurpose.Extension || Lengthens(sheet, run) ? JointKind.InLine : JointKind.Branch, Thick: Math.Max(run.SizeMm2, run.AskedSizeMm2), Thin: Math.Min(run.SizeMm2, run.AskedSizeMm2)) into joint
           orderby joint.Key
           select new JointLine(joint.Key.Kind, joint.Key.Thick, joint.Key.Thin, joint.Sum(), Sleeve(joint.Key.Kind, joint.Key.Thick, joint.Key.Thin), BarrelMm(joint.Key.Thick) + (2 * OverlapMm)),
    ];

    /// <summary>A wire that was cut out of its plug goes on end to end; what else wants it is laid against that joint.</summary>
    internal static bool Lengthens(WiringSheet sheet, WireRun run) =>
        run.TakesOver && ReferenceEquals(run, sheet.Runs.First(other => other.TakesOver && other.To.Place == run.To.Place && other.To.Cavity == run.To.Cavity));

    /// <summary>Terminals by family and size; as many of a family as the bill counts.</summary>
    public static ImmutableArray<SizedTerminal> Terminals(WiringSheet sheet)
    {
        var moved = from plug in sheet.Plugs
                    from wire in plug.Recrimped
                    select (Connector: plug.DeviceConnector!, wire.SizeMm2);
        var ended = from run in sheet.Runs
                    from end in run.Crimped()
                    select (Connector: end.Connector!, run.SizeMm2);
        return
        [
            .. from one in moved.Concat(ended)
               group one by one into same
               orderby same.Key.Connector, same.Key.SizeMm2
               select new SizedTerminal(same.Key.Connector, BillOfWiring.TerminalOf(sheet.Data, same.Key.Connector), same.Key.SizeMm2, same.Count()),
        ];
    }

    /// <summary>The smallest sleeve for a joint of two wires; null where none of the series does.</summary>
    public static double? Sleeve(JointKind kind, double thickMm2, double thinMm2)
    {
        // Laid side by side the two are as wide together; end to end the barrel is half as wide again as the wire.
        var joint = kind == JointKind.Branch ? OuterMm(thickMm2) + OuterMm(thinMm2) : 1.5 * OuterMm(thickMm2);
        return Sleeves.Select(sleeve => (double?)sleeve).FirstOrDefault(sleeve => sleeve >= (joint * 1.25) - 1e-9 && sleeve * ShrinksTo <= OuterMm(thinMm2) * (kind == JointKind.Branch ? 2 : 1));
    }

    private static double OuterMm(double sizeMm2) => s_outer.FirstOrDefault(row => row.SizeMm2 >= sizeMm2, s_outer[^1]).OuterMm;

    private static double BarrelMm(double sizeMm2) => sizeMm2 < 2.5 ? 15 : 20;
}
