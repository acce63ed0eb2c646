using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>
/// An optional fact that an entity leaves out although a worksheet wants it of the entity in some buildable combination. One
/// finding for each entity and worksheet. What the base declares no fact for is never wanted.
/// </summary>
public static class MissingInput
{
    public static readonly SpaceCheck Check = new(FindingKinds.MissingInput, Run);

    private sealed record Missing(FactHolder Holder, FactDeclaration Fact, Region Region);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        foreach (var ledger in LedgerAssembly.Ids)
        {
            var missing = examination.Base.Vocabulary.Facts.All
                .Where(fact => fact.Optional && fact.Means is { } means && KnownQuantities.Find(means) is { } quantity && quantity.IsWanted(fact.Subject, ledger))
                .SelectMany(fact => Of(examination, fact))
                .Where(one => examination.Resolution.BuildableParts.Intersects(one.Region))
                .GroupBy(one => (one.Fact.Subject, one.Holder.Id));
            foreach (var entity in missing.OrderBy(group => group.Key.Subject, StringComparer.Ordinal).ThenBy(group => group.Key.Id, StringComparer.Ordinal))
            {
                var facts = entity.Select(one => one.Fact).DistinctBy(fact => fact.Id).ToList();
                yield return examination.About(
                    FindingKinds.MissingInput,
                    $"`{entity.Key.Id}` leaves out {string.Join(", ", facts.Select(fact => $"`{fact.Id}`"))}, which the {ledger} worksheet wants",
                    entity.First().Holder.Place,
                    examination.Resolution.Store.OrAll(entity.Select(one => one.Region))) with
                {
                    Mend = $"Under `facts`, give it {string.Join(", ", facts.Select(Wanted))}; where nobody can know, accept the note with the reason.",
                };
            }
        }
    }

    private static string Wanted(FactDeclaration fact) => $"`{fact.Id}` ({InSentence.Lower(fact.Title)}{(fact.Unit.Symbol.Length > 0 ? $", {fact.Unit.Symbol}" : "")})";

    private static IEnumerable<Missing> Of(Examination examination, FactDeclaration fact) => fact switch
    {
        { Subject: "chassis", At: null } => Vehicles(examination, fact, Region.All),
        { Subject: "donor", At: null } => Vehicles(examination, fact, Region.All),
        { Subject: "chassis" or "donor", At: { } position } => examination.Resolution.At(position)
            .Where(standing => standing.Answer.Source == fact.Subject && standing.Answer.Treatment != "blank" && !Gives(examination.Base, standing.Answer, fact.Means!))
            .SelectMany(standing => Vehicles(examination, fact, standing.Region)),
        { Subject: "part", At: { } position } => examination.Resolution.At(position)
            .Where(standing => standing.Answer.Source is "new" or "other" or "made" && !Gives(examination.Base, standing.Answer, fact.Means!))
            .SelectMany(standing => standing.Answer.PartIds.Take(1).Select(examination.Base.Parts.Find).OfType<Part>().Select(part => new Missing(part, fact, standing.Region))),
        { Subject: "gearbox" } => examination.Base.Gearboxes.All.Where(gearbox => Lacks(examination.Base, gearbox, fact)).Select(gearbox => new Missing(gearbox, fact, Bound(examination.Resolution, gearbox))),
        _ => [],
    };

    private static IEnumerable<Missing> Vehicles(Examination examination, FactDeclaration fact, Region region)
    {
        var (space, store) = (examination.Resolution.Space, examination.Resolution.Store);
        return fact.Subject == "chassis"
            ? examination.Base.Chassis.All.Where(chassis => Lacks(examination.Base, chassis, fact)).Select(chassis => new Missing(chassis, fact, store.And(region, space.WhereChassis(one => one == chassis))))
            : examination.Base.Donors.All.Where(donor => Lacks(examination.Base, donor, fact)).Select(donor => new Missing(donor, fact, store.And(region, space.WhereDonor(one => one == donor))));
    }

    private static bool Lacks(KnowledgeBase kb, FactHolder holder, FactDeclaration fact) =>
        holder.Fact(fact.Id) is null
        && !(KnownQuantities.Find(fact.Means!)!.Unless is var (quantity, word) && kb.Vocabulary.Meaning(fact.Subject, quantity) is { } other && holder.Fact(other.Id)?.Text == word);

    /// <summary>Whether a part that the answer puts in place says it, so that nobody else has to.</summary>
    private static bool Gives(KnowledgeBase kb, Answer answer, string quantity) =>
        kb.Vocabulary.Meaning("part", quantity) is { } declaration && answer.PartIds.Select(kb.Parts.Find).Any(part => part?.Fact(declaration.Id) is not null);

    /// <summary>Where some choice brings a gearbox. No worksheet wants anything of an ECU.</summary>
    private static Region Bound(Resolution resolution, FactHolder holder)
    {
        var (space, store) = (resolution.Space, resolution.Store);
        return store.OrAll(
            from choice in space.Base.Choices.All
            from option in choice.Options
            where option.Binds is not null
            select store.And(space.WhereChoice(choice.Id, [option.Id]), Binds(option.Binds!)));

        Region Binds(OptionBinding binding)
        {
            if (binding.Kind is { } kind)
            {
                return space.Base.FactHolder(kind, binding.Entity!) == holder ? Region.All : Region.None;
            }

            var (subject, fact) = binding.FactName!.Split('.') is [var before, var after] ? (before, after) : ("", "");
            var names = space.Base.Vocabulary.Fact(subject, fact)?.To is { } to && space.Base.FactHolder(to, holder.Id) == holder;
            return !names ? Region.None
                : subject == "chassis" ? space.WhereChassis(one => one.Fact(fact)?.Text == holder.Id)
                : space.WhereDonor(one => one.Fact(fact)?.Text == holder.Id);
        }
    }
}
