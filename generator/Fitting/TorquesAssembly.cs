using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Torques;

namespace Swapwright.Fitting;

/// <summary>Work, parts and vehicles of a combination → tightening and fluids.</summary>
internal sealed class TorquesAssembly(KnowledgeBase kb)
{
    /// <summary>Where some rule brings a part that has something to say here; what is fitted elsewhere is not asked for.</summary>
    private readonly Lazy<ImmutableArray<string>> _positions = new(() =>
    {
        var speaking = kb.Parts.All.Where(part => !part.Fasteners.IsEmpty || !part.Fluids.IsEmpty).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        var brought = kb.Rules.All.SelectMany(rule => rule.Answers).Where(answer => answer.PartIds.Any(speaking.Contains)).Select(answer => answer.Position).ToHashSet(StringComparer.Ordinal);
        return [.. kb.PositionOrder.Select(position => position.Id).Where(brought.Contains)];
    });

    /// <summary>Whether a task says anything here.</summary>
    public static bool IsTold(WorkTask task) => !task.Fasteners.IsEmpty || task.Refresh;

    public Ledger Assemble(LedgerCase one)
    {
        var settings = kb.Settings.Tightening;
        var parts = Parts(one);
        return TorquesWorksheet.Work(new TorquesInput(
            new TighteningAssumptions((double)settings.ProofPercent / 100, (double)settings.NutFactor, (double)settings.NutFactorLubricated, (double)settings.ScatterPercent / 100),
            [
                .. one.Tasks.SelectMany(task => task.Fasteners.Where(one.IsTightened).Select(entry => Fastener(entry, task.Title, $"task {task.Id}")))
                    .Concat(parts.SelectMany(part => part.Fasteners.Where(one.IsTightened).Select(entry => Fastener(entry, part.Title, $"part {part.Id}"))))
                    .DistinctBy(fastener => fastener.Id),
            ],
            Fillings(one, parts),
            [.. one.Tasks.Where(task => task.Refresh).Select(task => new Refresh(task.Title, task.WhyNow))]));
    }

    /// <summary>Whether the base says anything of fasteners or fillings; where it does not, there is nothing to tell.</summary>
    public bool Speaks { get; } =
        kb.Tasks.All.Any(task => !task.Fasteners.IsEmpty) || kb.Parts.All.Any(part => !part.Fasteners.IsEmpty || !part.Fluids.IsEmpty)
        || kb.Chassis.All.Any(chassis => !chassis.Fluids.IsEmpty) || kb.Donors.All.Any(donor => !donor.Fluids.IsEmpty);

    private ImmutableArray<Part> Parts(LedgerCase one) =>
        [.. _positions.Value.Select(one.At).OfType<Answer>().SelectMany(answer => answer.PartIds).Distinct(StringComparer.Ordinal).Select(kb.Parts.Find).OfType<Part>()];

    private Fastener Fastener(FastenerEntry entry, string what, string origin) => new(
        entry.Id,
        entry.Title,
        what,
        origin,
        entry.Thread,
        entry.Class,
        entry.Count,
        (double?)entry.NutFactor,
        entry.Lubricated,
        (double?)entry.StatedNm,
        (double?)entry.AngleDeg,
        entry.StatedBy is { } source ? kb.Sources.Find(source)?.Title ?? source : "",
        entry.ToYield,
        entry.Once,
        entry.Into)
    {
        LookUp = entry.LookUp,
    };

    private ImmutableArray<Filling> Fillings(LedgerCase one, ImmutableArray<Part> parts)
    {
        var quantities = new Quantities(kb, one);
        var found = new List<(FluidEntry Entry, decimal? Amount, string Title, string Origin)>();
        foreach (var entry in one.Donor.Fluids.Where(entry => Counts(one, entry, "donor")))
        {
            found.Add((entry, entry.Amount ?? Stated(quantities, entry.Kind), one.Donor.Title, $"donor {one.Donor.Id}"));
        }

        foreach (var entry in one.Chassis.Fluids.Where(entry => Counts(one, entry, "chassis")))
        {
            found.Add((entry, entry.Amount, one.Chassis.Title, $"chassis {one.Chassis.Id}"));
        }

        if (one.Gearbox is { } gearbox && (gearbox.OilGrade.Length > 0 || gearbox.OilLitres is not null))
        {
            found.Add((new FluidEntry("gearbox-oil", gearbox.OilGrade, gearbox.OilLitres, null, null, gearbox.Place), gearbox.OilLitres, gearbox.Title, $"gearbox {gearbox.Id}"));
        }

        foreach (var part in parts)
        {
            found.AddRange(part.Fluids.Where(entry => Counts(one, entry, null)).Select(entry => (entry, entry.Amount, part.Title, $"part {part.Id}")));
        }

        return
        [
            .. from kind in FluidEntry.Kinds
               from line in found
               where line.Entry.Kind == kind.Id
               select new Filling(kind.Id, kind.Title, line.Entry.Grade, (double?)line.Amount, line.Title, line.Origin, line.Entry.IsRefrigerant),
        ];
    }

    private static bool Counts(LedgerCase one, FluidEntry entry, string? source)
    {
        if (entry.At is { } at && one.At(at) is var own && (own is null || own.Source != source || IsLeftOff(own)))
        {
            return false;
        }

        return entry.Needs is not { } needs || (one.At(needs) is { } there && !IsLeftOff(there));
    }

    private static bool IsLeftOff(Answer answer) => answer.Source == "none" || answer.Treatment == "blank";

    private static decimal? Stated(Quantities quantities, string kind) => kind switch
    {
        "engine-oil" => Litres(quantities.Of("donor", "engine-oil-amount")),
        "coolant" => Litres(quantities.Of("donor", "coolant-amount")),
        _ => null,
    };

    private static decimal? Litres(KnownValue? value) => value?.Declared.Unit.Convert(value.Declared.Value, Unit.Litre);
}
