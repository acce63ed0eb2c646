using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Fitting;

/// <summary>What a ledger is made from: the vehicles and what the choices bind, with the answers.</summary>
/// <param name="At">The answer that stands at a position; null where none does or the position does not apply.</param>
public sealed record LedgerCase(ChassisVariant Chassis, DonorVariant Donor, Gearbox? Gearbox, Ecu? Ecu, Func<string, Answer?> At)
{
    /// <summary>The work that the combination takes, in its order.</summary>
    public ImmutableArray<WorkTask> Tasks { get; init; } = [];

    /// <summary>Whether a fastener's own condition holds here.</summary>
    public Func<FastenerEntry, bool> IsTightened { get; init; } = fastener => fastener.When is null;

    /// <summary>The gearboxes that options of the choice bring and that this chassis takes behind this donor in some way, in the order of the options; empty where they are not compared.</summary>
    public ImmutableArray<GearboxOption> Gearboxes { get; init; } = [];
}

/// <summary>A gearbox that an option brings.</summary>
/// <param name="Buildable">Whether it can be built with every other decision as it is.</param>
public sealed record GearboxOption(string Title, Gearbox Gearbox, bool IsChosen, bool Buildable);

/// <summary>A known quantity of an entity.</summary>
/// <param name="Si">In the coherent SI unit of its dimension.</param>
/// <param name="Declared">As the base writes it.</param>
/// <param name="Holder">Kind and id of the entity that has it.</param>
public sealed record KnownValue(double Si, Quantity Declared, string Title, string Holder)
{
    public FigureInput Input => new(Title, (double)Declared.Value, Declared.Unit.Symbol, Holder);

    public Given Given => new(Si, Input);
}

/// <summary>
/// Finds what a base says of a known quantity, by the facts that carry its meaning. A fact declared <c>at</c> a position is
/// of whatever the answer there puts in place: the part's, the donor's or the chassis's.
/// </summary>
internal sealed class Quantities(KnowledgeBase kb, LedgerCase one)
{
    private static readonly ImmutableArray<string> s_subjects = ["chassis", "donor", "part"];

    /// <summary>Whether any fact of a subject carries the meaning; where none does, the base does not speak of it and nothing is missing.</summary>
    public bool Declared(string subject, string quantity) => Declaration(subject, quantity) is not null;

    /// <summary>The value on the entity itself, whatever the answers.</summary>
    public KnownValue? Of(string subject, string quantity) =>
        Declaration(subject, quantity) is { } declaration && Holder(subject) is { } holder ? Value(declaration, holder, subject) : null;

    /// <summary>Value of a one-of or reference fact on the entity itself.</summary>
    public string? Word(string subject, string quantity) =>
        Declaration(subject, quantity) is { } declaration && Holder(subject)?.Fact(declaration.Id) is { Text.Length: > 0 } fact ? fact.Text : null;

    /// <summary>Value of a one-of or reference fact on an entity that need not be the one the choices bind.</summary>
    public string? Word(FactHolder holder, string subject, string quantity) =>
        Declaration(subject, quantity) is { } declaration && holder.Fact(declaration.Id) is { Text.Length: > 0 } fact ? fact.Text : null;

    /// <summary>A flag of an entity; null where it says nothing.</summary>
    public bool? Flag(FactHolder holder, string subject, string quantity) =>
        Declaration(subject, quantity) is { } declaration && holder.Fact(declaration.Id) is { Type: FactType.Flag } fact ? fact.Number != 0 : null;

    /// <summary>The value of what the answers put in place; null where that is left off or does not say.</summary>
    public KnownValue? Fitted(string quantity)
    {
        if (AnswerFor(quantity) is { } answer)
        {
            return Part(answer, quantity) ?? (Keeps(answer) is { } subject ? Of(subject, quantity) : null);
        }

        return Of("donor", quantity) ?? Of("chassis", quantity);
    }

    /// <summary>
    /// The values of everything that the answers put in place, where facts at several positions carry the meaning: a drive shaft and its
    /// joint, a front and a rear part of one line. One at most for each position.
    /// </summary>
    public ImmutableArray<KnownValue> AllFitted(string quantity)
    {
        var declared = kb.Vocabulary.Facts.All.Where(fact => fact.Means == quantity && s_subjects.Contains(fact.Subject)).ToList();
        var answered = declared.Select(fact => fact.At).OfType<string>().Distinct(StringComparer.Ordinal).Select(position => (position, answer: one.At(position))).Where(at => at.answer is not null).ToList();
        if (answered.Count == 0)
        {
            return Fitted(quantity) is { } own ? [own] : [];
        }

        return [.. answered.Select(at => At(at.answer!, [.. declared.Where(fact => fact.At == at.position)])).OfType<KnownValue>()];

        KnownValue? At(Answer answer, ImmutableArray<FactDeclaration> facts)
        {
            var part = facts.Where(fact => fact.Subject == "part").SelectMany(fact => answer.PartIds.Select(kb.Parts.Find).OfType<Part>().Select(part => Value(fact, part, "part"))).OfType<KnownValue>().FirstOrDefault();
            return part ?? (Keeps(answer) is { } subject ? facts.Where(fact => fact.Subject == subject).Select(fact => Value(fact, Holder(subject)!, subject)).OfType<KnownValue>().FirstOrDefault() : null);
        }
    }

    /// <summary>A word of what the answers put in place, with the title that the vocabulary gives it.</summary>
    public (string Id, string Title, string Holder)? FittedWord(string quantity)
    {
        if (AnswerFor(quantity) is not { } answer)
        {
            return OwnWord("donor", quantity) ?? OwnWord("chassis", quantity);
        }

        if (Declaration("part", quantity) is { } declaration
            && answer.PartIds.Select(kb.Parts.Find).OfType<Part>().FirstOrDefault(part => part.Fact(declaration.Id) is not null) is { } carrier)
        {
            return TitledWord(declaration, carrier, "part");
        }

        return answer is { Source: "chassis" or "donor", Treatment: not "blank" } ? OwnWord(answer.Source, quantity) : null;
    }

    /// <summary>A word of the entity itself with its title.</summary>
    public (string Id, string Title, string Holder)? OwnWord(string subject, string quantity) =>
        Declaration(subject, quantity) is { } declaration && Holder(subject) is { } holder ? TitledWord(declaration, holder, subject) : null;

    private static (string Id, string Title, string Holder)? TitledWord(FactDeclaration declaration, FactHolder holder, string subject) =>
        holder.Fact(declaration.Id) is { Text.Length: > 0 } fact ? (fact.Text, declaration.TitleOf(fact.Text), $"{subject} {holder.Id}") : null;

    /// <summary>The answer that decides whose value of a quantity counts; null where no fact is declared at a position, or nothing is answered there.</summary>
    public Answer? AnswerFor(string quantity) =>
        s_subjects.Select(subject => Declaration(subject, quantity)?.At).OfType<string>().Select(one.At).FirstOrDefault(answer => answer is not null);

    // Whose own thing an answer leaves in place.
    private static string? Keeps(Answer answer) => answer.Source is "chassis" or "donor" && answer.Treatment != "blank" ? answer.Source : null;

    /// <summary>The value on a part that the answer puts in place.</summary>
    public KnownValue? Part(Answer answer, string quantity) =>
        Declaration("part", quantity) is { } declaration
            ? answer.PartIds.Select(kb.Parts.Find).OfType<Part>().Select(part => Value(declaration, part, "part")).OfType<KnownValue>().FirstOrDefault()
            : null;

    /// <summary>The value on an entity that need not be the one the choices bind.</summary>
    public KnownValue? Of(FactHolder holder, string subject, string quantity) => Declaration(subject, quantity) is { } declaration ? Value(declaration, holder, subject) : null;

    public static KnownValue? Value(FactDeclaration declaration, FactHolder holder, string subject) =>
        holder.Fact(declaration.Id) is { Type: FactType.Number } fact
            ? new KnownValue((double)((fact.Number * declaration.Unit.Factor) + declaration.Unit.Offset), new Quantity(fact.Number, declaration.Unit), declaration.Title, $"{subject} {holder.Id}")
            : null;

    private FactDeclaration? Declaration(string subject, string quantity) => kb.Vocabulary.Meaning(subject, quantity);

    private FactHolder? Holder(string subject) => subject switch
    {
        "chassis" => one.Chassis,
        "donor" => one.Donor,
        "gearbox" => one.Gearbox,
        "ecu" => one.Ecu,
        _ => null,
    };
}
