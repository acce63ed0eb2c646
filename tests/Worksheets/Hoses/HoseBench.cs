using System.Collections.Immutable;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Tests.Worksheets.Hoses;

/// <summary>Short ways to write hose input.</summary>
internal static class HoseBench
{
    public static readonly HoseLimits Limits = new(RoutingFactor: 1.25, SlackMm: 60, StepMm: 100, FitMm: 0.5, InjectionBar: 0.5, SparePercent: 10);

    public static Port Port(string id, double size, HosePoint? at = null, HoseCircuit circuit = HoseCircuit.Heater, double? bar = null, bool closed = false, string open = "", PortKind kind = PortKind.Barb, string thread = "") =>
        new(id, $"Port {id}", "donor", circuit, size, kind, thread, at, bar, open, closed);

    public static Hose Hose(string id, string from, string to, HoseWork work = HoseWork.New, HoseCircuit circuit = HoseCircuit.Heater, bool optional = false, ImmutableArray<StockHose>? stock = null, ImmutableArray<StepJoiner>? joiners = null, ImmutableArray<Tee>? tees = null) =>
        new(id, $"Hose {id}", circuit, from, to, work, optional, stock ?? [], joiners ?? [], tees ?? []);

    public static StockHose Stock(string part, double? bore, HoseCircuit circuit = HoseCircuit.Heater, FuelHoseClass? known = null, double? piece = 2000, bool set = false) => new(part, [circuit], bore, known, piece, set);

    public static HoseSheet Sheet(ImmutableArray<Port> ports, ImmutableArray<Hose> hoses, params ImmutableArray<StockHose> shop) => HoseWorksheet.Compute(new HoseInput(ports, hoses, shop, Limits));
}
