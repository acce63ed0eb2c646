using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Hoses;
using FittedPort = Swapwright.Worksheets.Hoses.Port;

namespace Swapwright.Fitting;

/// <summary>Puts together the hoses of a combination: which ports are fitted, whose they are, and what is at hand for each hose.</summary>
internal sealed class HoseAssembly
{
    private readonly KnowledgeBase _kb;
    private readonly ImmutableArray<PortRole> _ports;
    private readonly ImmutableArray<HoseRole> _hoses;
    private readonly ImmutableArray<StockHose> _shop;

    public HoseAssembly(KnowledgeBase kb)
    {
        _kb = kb;
        _ports = [.. kb.Vocabulary.Ports.All.OrderBy(port => port.Order)];
        _hoses = [.. kb.Vocabulary.Hoses.All.OrderBy(hose => hose.Order)];
        _shop = [.. kb.Parts.All.Select(Stock).OfType<StockHose>().Where(stock => !stock.IsSet)];
        Limits = LimitsOf(kb);
    }

    public HoseLimits Limits { get; }

    public static HoseLimits LimitsOf(KnowledgeBase kb)
    {
        var settings = kb.Settings.Hoses;
        return new HoseLimits((double)settings.RoutingFactor, (double)settings.SlackMm, (double)settings.StepMm, (double)settings.FitMm, (double)settings.InjectionBar, (double)settings.SparePercent);
    }

    /// <param name="answers">The answer that stands at a position; null where none does or the position does not apply.</param>
    /// <param name="standing">Every answer that stands.</param>
    /// <returns>null where the vocabulary knows no ports.</returns>
    public HoseSheet? Assemble(DonorVariant donor, ChassisVariant chassis, Func<string, Answer?> answers, IEnumerable<Answer> standing)
    {
        if (_ports.IsEmpty)
        {
            return null;
        }

        Answer? At(string? position) => position is null ? null : answers(position);
        var stands = standing.ToList();
        var cutIn = stands.SelectMany(CutIn).DistinctBy(part => part.Id).ToList();
        var closed = stands.SelectMany(answer => answer.Closes).ToHashSet(StringComparer.Ordinal);
        foreach (var hose in _hoses)
        {
            // Where the thing at one end is left off, the other end is closed with it.
            closed.UnionWith(new[] { hose.From, hose.To }
                .Where(port => At(_kb.Vocabulary.Ports.Find(hose.Other(port))?.Position) is { } answer && PortOrigin.IsLeftOff(answer)));
        }

        var ports = ImmutableArray.CreateBuilder<FittedPort>();
        var owners = new Dictionary<string, PortOwner>(StringComparer.Ordinal);
        foreach (var role in _ports)
        {
            var answer = At(role.Position);
            var origin = PortOrigin.Of(role, answer, _kb.Parts);
            if (origin.Entry(role, chassis, donor) is { } entry)
            {
                owners.Add(role.Id, origin.Owner);
                var port = Port(role, origin, entry, closed.Contains(role.Id));
                ports.Add(origin.Part is null && Bought(answer) is { } bought ? port with { Owner = bought.Title } : port);
            }
        }

        return HoseWorksheet.Compute(new HoseInput(
            ports.ToImmutable(),
            [.. _hoses.Select(role => (AsBuilt(role, owners) ? Hose(role, null) with { Work = HoseWork.Keep } : Hose(role, At(role.Position))) with { CutIn = [.. cutIn.Where(part => part.CutInto.Contains(role.Id)).Select(part => new CutInPart(part.Id, (double?)part.CutIntoLengthMm))] })],
            _shop,
            Limits));
    }

    /// <summary>What an answer brings that is cut into hoses, whichever position it stands at.</summary>
    public IEnumerable<Part> CutIn(Answer answer) => PortOrigin.IsLeftOff(answer) ? [] : answer.PartIds.Select(_kb.Parts.Find).OfType<Part>().Where(part => !part.CutInto.IsEmpty);

    /// <summary>What is bought in the shape of the old one has its ports, and is still the part that somebody holds in hand.</summary>
    private Part? Bought(Answer? answer) => answer is { Source: "new" or "made" or "other", Part: { } id } ? _kb.Parts.Find(id) : null;

    /// <summary>A hose of which no rule speaks, with both ends on one vehicle, is the one that came with it.</summary>
    private static bool AsBuilt(HoseRole role, Dictionary<string, PortOwner> owners) =>
        role.Position is null && owners.TryGetValue(role.From, out var from) && owners.TryGetValue(role.To, out var to) && from == to && from != PortOwner.Part;

    public static FittedPort Port(PortRole role, PortOrigin origin, PortEntry entry, bool isClosed) => new(
        role.Id,
        entry.Title ?? role.Title,
        origin.Owner switch
        {
            PortOwner.Chassis => "chassis",
            PortOwner.Donor => "donor",
            _ => origin.Part!.Title,
        },
        Circuit(role.Circuit),
        (double)entry.SizeMm,
        entry.Kind switch
        {
            "thread" => PortKind.Thread,
            "quick" => PortKind.Quick,
            _ => PortKind.Barb,
        },
        entry.Thread,
        entry.Location is { } location ? new HosePoint((double)location.X, (double)location.Y, (double)location.Z) : null,
        (double?)entry.PressureBar,
        entry.Open,
        isClosed);

    /// <param name="answer">The answer at the hose's position; null where it has none.</param>
    public Hose Hose(HoseRole role, Answer? answer)
    {
        ImmutableArray<Part> parts = answer is null ? [] : [.. answer.PartIds.Select(_kb.Parts.Find).OfType<Part>()];
        var work = (role.Position, answer) switch
        {
            (null, _) => HoseWork.New,
            (_, null) => HoseWork.Absent,
            _ when PortOrigin.IsLeftOff(answer) => HoseWork.LeftOff,
            (_, { Source: "chassis" or "donor" }) => HoseWork.Keep,
            _ => HoseWork.New,
        };
        return new Hose(
            role.Id,
            role.Title,
            Circuit(role.Circuit),
            role.From,
            role.To,
            work,
            role.Optional,
            [.. parts.Select(Stock).OfType<StockHose>()],
            [.. parts.Where(part => part.Reducer is not null).Select(part => new StepJoiner(part.Id, (double)part.Reducer!.FromMm, (double)part.Reducer.ToMm))],
            [.. parts.Where(part => !part.Tee.IsEmpty).Select(part => new Tee(part.Id, [.. part.Tee.Select(size => (double)size)]))]);
    }

    private static StockHose? Stock(Part part) => part.Hose is not { } goods
        ? null
        : new StockHose(part.Id, [.. goods.Circuits.Select(Circuit)], (double?)goods.BoreMm, Enum.TryParse<FuelHoseClass>(goods.Class, out var known) ? known : null, (double?)goods.LengthMm, goods.Set);

    private static HoseCircuit Circuit(string circuit) => circuit switch
    {
        "brake-booster" => HoseCircuit.BrakeBooster,
        "breather" => HoseCircuit.Breather,
        "purge" => HoseCircuit.Purge,
        "fuel" => HoseCircuit.Fuel,
        "coolant" => HoseCircuit.Coolant,
        "heater" => HoseCircuit.Heater,
        _ => HoseCircuit.Vacuum,
    };
}
