using System.Globalization;
using Swapwright.Knowledge;

namespace Swapwright.Drafting;

/// <summary>A placeholder within its range for every fact that the vocabulary asks for.</summary>
internal static class DraftFacts
{
    /// <param name="ask">Asked for each value with the placeholder; null where nobody can answer.</param>
    /// <exception cref="DraftProblemException">A reference has nothing yet that it could name.</exception>
    public static DraftMapping Of(KnowledgeBase kb, string subject, Func<string, string, string>? ask)
    {
        var facts = new DraftMapping();
        var declared = kb.Vocabulary.Facts.All.Where(fact => fact.Subject == subject).OrderBy(fact => fact.Place).ToList();
        foreach (var fact in declared.Where(fact => !fact.Optional))
        {
            var placeholder = Placeholder(kb, fact);
            facts.Add(fact.Id, DraftScalar.Typed(ask?.Invoke($"{fact.Title} ({Range(fact)})", placeholder) ?? placeholder), $"{OneLine(fact.Title)}: {Range(fact)}");
        }

        foreach (var fact in declared.Where(fact => fact.Optional))
        {
            facts.Remark($"{fact.Id}: {OneLine(fact.Title)} ({Range(fact)}); may be left out");
        }

        return facts;
    }

    public static bool Any(KnowledgeBase kb, string subject) => kb.Vocabulary.Facts.All.Any(fact => fact.Subject == subject);

    private static string Placeholder(KnowledgeBase kb, FactDeclaration fact) => fact.Type switch
    {
        FactType.Flag => "false",
        FactType.Number => Middle(fact).ToString(CultureInfo.InvariantCulture),
        FactType.OneOf => DraftScalar.Of(fact.Options.FirstOrDefault()?.Id ?? throw new DraftProblemException($"the vocabulary gives `{fact.Name}` no values")),
        _ => DraftScalar.Of(Referable(kb, fact.To ?? "part").FirstOrDefault()
            ?? throw new DraftProblemException($"`{fact.Name}` names a {fact.To ?? "part"}, and the base has none yet: draft one first, as in `swapwright draft {fact.To ?? "part"} ID`")),
    };

    /// <summary>Whole where a whole number lies within the range.</summary>
    private static decimal Middle(FactDeclaration fact)
    {
        var middle = (fact.Min, fact.Max) switch
        {
            ({ } min, { } max) => (min / 2) + (max / 2),
            ({ } min, null) => min,
            (null, { } max) => max,
            _ => 1m,
        };
        var whole = decimal.Round(middle);
        return whole >= (fact.Min ?? whole) && whole <= (fact.Max ?? whole) ? whole : middle;
    }

    private static string Range(FactDeclaration fact) => fact.Type switch
    {
        FactType.Flag => "true or false",
        FactType.OneOf => string.Join(", ", fact.Options.Select(option => option.Id)),
        FactType.Number => string.Create(CultureInfo.InvariantCulture, $"{(fact.Min is { } min ? $"from {min} " : "")}{(fact.Max is { } max ? $"to {max} " : "")}{fact.Unit.Symbol}").Trim() is { Length: > 0 } range ? range : "a number",
        _ => $"a {fact.To ?? "part"}",
    };

    public static IEnumerable<string> Referable(KnowledgeBase kb, string kind) => kind switch
    {
        "gearbox" => kb.Gearboxes.Ids,
        "ecu" => kb.Ecus.Ids,
        "connector" => kb.Connectors.Ids,
        _ => kb.Parts.Ids,
    };

    public static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
