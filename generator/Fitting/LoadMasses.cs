using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Load;

namespace Swapwright.Fitting;

/// <summary>What is heavier, lighter or elsewhere than it was: engine, gearbox, equipment that answers leave off or bring, and parts where the car had nothing.</summary>
internal sealed class LoadMasses(KnowledgeBase kb)
{
    private const string Equipment = "equipment-mass";

    /// <summary>Where some rule brings a part that the car had nothing in the place of; what is fitted elsewhere is not asked for.</summary>
    private readonly Lazy<ImmutableArray<string>> _positions = new(() =>
    {
        var brought = kb.Rules.All.SelectMany(rule => rule.Answers).Where(answer => answer.PartIds.Any(id => kb.Parts.Find(id) is { IsAddition: true, MassKg: not null })).Select(answer => answer.Position).ToHashSet(StringComparer.Ordinal);
        return [.. kb.PositionOrder.Select(position => position.Id).Where(brought.Contains)];
    });

    public ImmutableArray<MassChange> Of(LedgerCase one, Quantities quantities)
    {
        var before = quantities.Word("chassis", "original-gearbox") is { } id ? kb.Gearboxes.Find(id) : null;
        return
        [
            new MassChange("engine", "Engine", quantities.Of("chassis", "engine-mass")?.Given, quantities.Of("donor", "engine-mass")?.Given, quantities.Of("chassis", "engine-place")?.Given, quantities.Of("donor", "engine-offset")?.Si ?? 0),
            new MassChange("gearbox", "Gearbox", Mass(before), Mass(one.Gearbox), quantities.Of("chassis", "gearbox-place")?.Given, Offset(one.Gearbox) - Offset(before)),
            .. kb.Vocabulary.Facts.All.Where(fact => fact is { Subject: "chassis", Means: Equipment, At: not null }).Select(Carried).Where(change => change.Before is not null || change.After is not null),
            .. _positions.Value.Select(one.At).OfType<Answer>().Where(answer => !PortOrigin.IsLeftOff(answer)).SelectMany(answer => answer.PartIds).Distinct(StringComparer.Ordinal).Select(kb.Parts.Find).OfType<Part>()
                .Where(part => part is { IsAddition: true, MassKg: not null }).Select(Added),
        ];

        double Offset(Gearbox? gearbox) => gearbox is null ? 0 : quantities.Of(gearbox, "gearbox", "gearbox-offset")?.Si ?? 0;

        MassChange Carried(FactDeclaration fact)
        {
            var was = Quantities.Value(fact, one.Chassis, "chassis");
            var answer = one.At(fact.At!);
            var after = answer switch
            {
                null => was,
                { Source: "none" } or { Treatment: "blank" } => null,
                { Source: "donor" } => Same(Equipment, "donor", one.Donor, fact) ?? was,
                _ => was,
            };
            var place = Same("equipment-place", "chassis", one.Chassis, fact) ?? quantities.Of("chassis", "engine-place");
            return new MassChange(fact.Id, fact.Title, was?.Given, after?.Given, place?.Given);
        }

        // A plate lies behind the engine and a bracket beside it: for an axle's load that is where the engine lies.
        MassChange Added(Part part) => new($"part-{part.Id}", part.Title, null, Kilograms(part.MassKg!.Value, $"part {part.Id}"), quantities.Of("chassis", "engine-place")?.Given);

        // Facts of one position go together.
        KnownValue? Same(string quantity, string subject, FactHolder holder, FactDeclaration fact) =>
            kb.Vocabulary.Facts.All.FirstOrDefault(other => other.Subject == subject && other.Means == quantity && other.At == fact.At) is { } declaration ? Quantities.Value(declaration, holder, subject) : null;
    }

    private static Given? Mass(Gearbox? gearbox) => gearbox?.MassKg is { } mass ? Kilograms(mass, $"gearbox {gearbox.Id}") : null;

    private static Given Kilograms(decimal mass, string holder) => new((double)mass, new FigureInput("mass", (double)mass, "kg", holder));
}
