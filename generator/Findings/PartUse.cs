using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>A part that no guide can ever list.</summary>
public static class PartUse
{
    public static readonly EntityCheck Check = new(FindingKinds.PartUse, Run) { AsksForWhole = true };

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        var used = Used(kb).ToHashSet(StringComparer.Ordinal);
        return kb.Parts.All.Where(part => !used.Contains(part.Id) && !IsStock(kb, part)).Select(part => new Finding(FindingKinds.PartUse, $"nothing uses `{part.Id}`", part.Place)
        {
            Mend = "Name it in an answer (`part` or `also`), bind it to an option, or take it out.",
        });
    }

    private static IEnumerable<string> Used(KnowledgeBase kb) =>
        kb.Rules.All.SelectMany(rule => rule.Answers).SelectMany(answer => answer.Part is { } part ? answer.Also.Add(part) : answer.Also)
            .Concat(kb.Choices.All.SelectMany(choice => choice.Options).Where(option => option.Binds is { Kind: "part" }).Select(option => option.Binds!.Entity!))
            .Concat(Referred(kb))
            .Concat(kb.Parts.All.Select(part => part.Like).OfType<string>());

    /// <summary>What facts name, in the files of vehicles, gearboxes, control units and parts.</summary>
    private static IEnumerable<string> Referred(KnowledgeBase kb)
    {
        var naming = kb.Vocabulary.Facts.All.Where(fact => fact is { Type: FactType.Reference, To: "part" }).ToList();
        return
            from pair in new (string Subject, IEnumerable<FactHolder> Holders)[] { ("chassis", kb.Chassis.All), ("donor", kb.Donors.All), ("gearbox", kb.Gearboxes.All), ("ecu", kb.Ecus.All), ("part", kb.Parts.All) }
            from fact in naming
            where fact.Subject == pair.Subject
            from holder in pair.Holders
            where holder.Fact(fact.Id) is not null
            select holder.Fact(fact.Id)!.Value.Text;
    }

    /// <summary>Belts and what wiring is made of are taken from the stock by computing, not by an answer.</summary>
    private static bool IsStock(KnowledgeBase kb, Part part) =>
        (part.Belt is { } belt && kb.Donors.All.SelectMany(donor => donor.BeltDrives).Any(drive => drive.Profile == belt.Profile))
        || (part.Wiring is not null && kb.Donors.All.Cast<Variant>().Concat(kb.Chassis.All).Any(variant => variant.Harness is not null));
}
