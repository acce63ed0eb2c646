using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>Connectors that are said to go together and cannot, or that were together and are not said to be.</summary>
public static class Mate
{
    public static readonly EntityCheck Check = new(FindingKinds.Mate, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb) => SaidToMate(kb).Concat(PluggedTogether(kb)).Concat(Leads(kb));

    private static IEnumerable<Finding> SaidToMate(KnowledgeBase kb)
    {
        var told = new HashSet<(string, string)>();
        foreach (var connector in kb.Connectors.All)
        {
            foreach (var named in connector.Mates)
            {
                if (kb.Connectors.Find(named.Id) is { } other && other.Id != connector.Id && !told.Contains((other.Id, connector.Id)) && Hindrances(connector, other).ToList() is { Count: > 0 } hindrances)
                {
                    told.Add((connector.Id, other.Id));
                    yield return new Finding(FindingKinds.Mate, $"`{connector.Id}` and `{other.Id}` cannot mate: {string.Join(", ", hindrances)}", named.Place)
                    {
                        Related = [new RelatedPlace($"`{other.Id}`", other.Place)],
                        Mend = "Take the other one out of `mates`, or correct what differs.",
                    };
                }
            }
        }
    }

    private static IEnumerable<string> Hindrances(Connector one, Connector other)
    {
        if (!one.Cavities.ToHashSet(StringComparer.Ordinal).SetEquals(other.Cavities))
        {
            yield return "their cavities are labelled differently";
        }

        if (one.Sealed != other.Sealed)
        {
            yield return "one is sealed and the other is not";
        }

        if (one.Keying.Length > 0 && other.Keying.Length > 0 && !string.Equals(one.Keying, other.Keying, StringComparison.OrdinalIgnoreCase))
        {
            yield return "they are keyed differently";
        }
    }

    private static IEnumerable<Finding> PluggedTogether(KnowledgeBase kb)
    {
        foreach (var pair in Plugged.All(kb).DistinctBy(pair => (pair.Plug.Place, pair.Other.Place)))
        {
            if (kb.Connectors.Find(pair.Plug.Connector) is { } one && kb.Connectors.Find(pair.Other.Connector) is { } other && !one.MatesWith(other))
            {
                yield return new Finding(FindingKinds.Mate, $"{pair.What} were plugged together, but `{one.Id}` and `{other.Id}` do not mate", pair.Plug.Place)
                {
                    Related = [new RelatedPlace($"the other side has `{other.Id}`", pair.Other.Place)],
                    Mend = "Correct the connector on one side, or list the other one under `mates` if the two do go together.",
                };
            }
        }
    }

    private static IEnumerable<Finding> Leads(KnowledgeBase kb) =>
        from part in kb.Parts.All
        where part.Lead is { } lead && lead.From == lead.To && kb.Connectors.Has(lead.From)
        group part by part.LeadPlace into same
        let part = same.First()
        select new Finding(FindingKinds.Mate, $"`{part.Id}` is an adapter lead with `{part.Lead!.Value.From}` at both ends", part.LeadPlace)
        {
            Mend = "Correct one of its ends; where nothing is adapted no lead is needed.",
        };
}
