using System.Text.Json.Nodes;
using Swapwright.Knowledge;

namespace Swapwright.Drafting;

/// <summary>Which places of a kind's schema name what, and what may stand there in one base.</summary>
internal sealed class EditorIds(KnowledgeBase kb, string kind)
{
    private const string IdPattern = "^[a-z0-9]+(-[a-z0-9]+)*$";

    /// <summary>
    /// Narrows one schema: an id to the ids there are, a mapping by ids to these keys. Recognised by what the schema says of
    /// itself, its place and its description; a place that is not listed stays as it is.
    /// </summary>
    public void Narrow(JsonObject schema, string path)
    {
        if (schema["pattern"]?.GetValueKind() == System.Text.Json.JsonValueKind.String && schema["pattern"]!.GetValue<string>() == IdPattern && Values(path) is { } values)
        {
            Enumerate(schema, values);
        }

        if (schema["patternProperties"] is JsonObject byPattern)
        {
            if (path.EndsWith("/definitions/condition", StringComparison.Ordinal))
            {
                Conditions(schema, byPattern);
            }
            else if (path.EndsWith("/definitions/facts", StringComparison.Ordinal) && Subject is { } subject)
            {
                Keys(schema, kb.Vocabulary.Facts.All.Where(fact => fact.Subject == subject).OrderBy(fact => fact.Place).Select(fact => KeyValuePair.Create(fact.Id, Fact(fact))));
            }
            else if (KeysAt(path) is { } keys)
            {
                var one = byPattern.First().Value!;
                Keys(schema, keys.Select(key => KeyValuePair.Create(key.Key, Titled(one, key.Value))));
            }
        }
    }

    private string? Subject => kind switch
    {
        "chassis" or "gearbox" or "ecu" or "part" => kind,
        "engine" => "donor",
        _ => null,
    };

    // The register names what is retired too, so what there is says nothing of it.
    private IEnumerable<string>? Values(string path) => kind == "register" ? null : Last(path) switch
    {
        "like" => kind switch
        {
            "chassis" => kb.Chassis.Ids,
            "engine" => kb.Donors.Ids,
            "gearbox" => kb.Gearboxes.Ids,
            "ecu" => kb.Ecus.Ids,
            _ => kb.Parts.Ids,
        },
        "needs/items" or "after/items" or "positions/items" => path.Contains("after", StringComparison.Ordinal) ? kb.Tasks.Ids : kind == "chassis" ? kb.Vocabulary.Signals.Ids : kb.Positions.Ids,
        "properties/through" => kb.Vocabulary.Devices.Ids,
        "properties/twisted-with" => kb.Vocabulary.Signals.Ids,
        "own-wires/items" or "supplies/items" => kb.Vocabulary.Signals.Ids,
        "tasks/items" => kb.Tasks.Ids,
        "sources/items" => kb.Sources.Ids,
        "overrides/items" => kb.Rules.Ids,
        "also/items" or "properties/part" or "part/items" => kb.Parts.Ids,
        "mates/items" or "properties/connector" => kb.Connectors.Ids,
        "properties/ecu" => kb.Ecus.Ids,
        "properties/gearbox" => kb.Gearboxes.Ids,
        "properties/article" => kb.Articles.Ids,
        "properties/donor" => kb.Donors.Ids,
        "properties/system" => kb.Systems.Select(system => system.Id),
        "closes/items" => kb.Vocabulary.Ports.Ids,
        "cut-into/items" => kb.Vocabulary.Hoses.Ids,
        "headline/items" => kb.Choices.Ids,
        "properties/signal" or "definitions/pin" or "pins/signal" => kb.Vocabulary.Signals.Ids.Append("unused"),
        "properties/position" or "properties/at" or "properties/harness-position" => kb.Positions.Ids,
        _ => null,
    };

    private IEnumerable<KeyValuePair<string, string>>? KeysAt(string path) => Last(path) switch
    {
        "then/answers" or "definitions/accessories" => Named(kb.Positions.All, position => (position.Id, position.Title)),
        "properties/devices" or "properties/brings" or "harness/plugs" when kind != "vocabulary" => Named(kb.Vocabulary.Devices.All, device => (device.Id, device.Title)),
        "properties/ports" when kind != "vocabulary" => Named(kb.Vocabulary.Ports.All, port => (port.Id, port.Title)),
        _ => null,
    };

    /// <summary>The end of a place that tells what it is: the member's name with its holder's.</summary>
    private static string Last(string path)
    {
        var steps = path.Split('/');
        return steps switch
        {
            [.., "properties", "pins", "patternProperties", _] => "pins/signal",
            [.., "properties", "like"] => "like",
            [.., "then", "properties", "answers"] => "then/answers",
            [.., "harness", "properties", "plugs"] => "harness/plugs",
            [.., var holder, var member] => $"{holder}/{member}",
            _ => path,
        };
    }

    private static IEnumerable<KeyValuePair<string, string>> Named<T>(IEnumerable<T> all, Func<T, (string Id, string Title)> name) =>
        all.Select(one => KeyValuePair.Create(name(one).Id, name(one).Title));

    /// <summary>A condition may test every fact, choice and answer there is, and facts of what a choice brings in.</summary>
    private void Conditions(JsonObject schema, JsonObject byPattern)
    {
        var tests = byPattern.ToDictionary(pair => pair.Key.Contains("choice\\.", StringComparison.Ordinal) && !pair.Key.Contains("(?!", StringComparison.Ordinal) ? "choice" : pair.Key.Contains("answer\\.", StringComparison.Ordinal) && !pair.Key.Contains("(?!", StringComparison.Ordinal) ? "answer" : pair.Key.Contains("(?!", StringComparison.Ordinal) ? "bound" : "fact", pair => pair.Value!, StringComparer.Ordinal);
        var facts = kb.Vocabulary.Facts.All.OrderBy(fact => fact.Place).ToList();
        var keys = new List<KeyValuePair<string, JsonNode>>();
        foreach (var subject in (string[])["chassis", "donor"])
        {
            keys.AddRange(facts.Where(fact => fact.Subject == subject).Select(fact => KeyValuePair.Create(fact.Name, Titled(tests["fact"], fact.Title))));
            keys.AddRange(((string[])["year", "family", "variant"]).Select(word => KeyValuePair.Create($"{subject}.{word}", Titled(tests["fact"], $"The {subject}'s {word}"))));
        }

        foreach (var choice in kb.Choices.All)
        {
            keys.Add(KeyValuePair.Create($"choice.{choice.Id}", Titled(tests["choice"], $"{choice.Title}: {string.Join(", ", choice.Options.Select(option => option.Id))}")));
            var bound = choice.Options.Select(option => option.Binds).OfType<OptionBinding>()
                .Select(binding => binding.Kind ?? kb.Vocabulary.Facts.Find(binding.FactName!)?.To).ToHashSet(StringComparer.Ordinal);
            keys.AddRange(facts.Where(fact => bound.Contains(fact.Subject)).Select(fact => KeyValuePair.Create($"{choice.Id}.{fact.Id}", Titled(tests["bound"], fact.Title))));
        }

        keys.AddRange(kb.PositionOrder.Select(position => KeyValuePair.Create($"answer.{position.Id}", Titled(tests["answer"], position.Title))));
        Keys(schema, keys);
    }

    private JsonObject Fact(FactDeclaration fact)
    {
        var schema = new JsonObject { ["title"] = fact.Title };
        var about = string.Join(' ', new[] { fact.Unit.Symbol.Length > 0 ? $"In {fact.Unit.Symbol}." : "", fact.HowToTell }.Where(text => text.Length > 0));
        if (about.Length > 0)
        {
            schema["description"] = about;
        }

        // Null takes out what `like` would bring.
        switch (fact.Type)
        {
            case FactType.Flag:
                schema["type"] = new JsonArray("boolean", "null");
                break;
            case FactType.OneOf:
                schema["enum"] = new JsonArray([.. fact.Options.Select(option => (JsonNode)option.Id), null]);
                break;
            case FactType.Reference:
                schema["enum"] = new JsonArray([.. DraftFacts.Referable(kb, fact.To ?? "part").Select(id => (JsonNode)id), null]);
                break;
            default:
                schema["type"] = new JsonArray("number", "string", "null");
                if (fact.Min is { } min)
                {
                    schema["minimum"] = min;
                }

                if (fact.Max is { } max)
                {
                    schema["maximum"] = max;
                }

                break;
        }

        return schema;
    }

    /// <summary>Keys in the place of a pattern; where the base has none yet, the pattern stays.</summary>
    private static void Keys(JsonObject schema, IEnumerable<KeyValuePair<string, JsonNode>> keys)
    {
        var properties = schema["properties"] as JsonObject ?? [];
        var any = false;
        foreach (var (key, value) in keys)
        {
            any |= properties.TryAdd(key, value);
        }

        if (any)
        {
            schema["properties"] = properties;
            schema.Remove("patternProperties");
        }
    }

    private static void Keys(JsonObject schema, IEnumerable<KeyValuePair<string, JsonObject>> keys) =>
        Keys(schema, keys.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode)pair.Value)));

    private static JsonNode Titled(JsonNode schema, string title)
    {
        var copy = schema.DeepClone();
        if (copy is JsonObject mapping)
        {
            mapping["title"] = title;
        }

        return copy;
    }

    /// <summary>A schema that also takes a list or nothing keeps doing so: the ids are one of several ways.</summary>
    private static void Enumerate(JsonObject schema, IEnumerable<string> values)
    {
        var ids = new JsonArray([.. values.Distinct(StringComparer.Ordinal).Select(id => (JsonNode)id)]);
        if (ids.Count == 0)
        {
            return;
        }

        schema.Remove("pattern");
        var type = schema["type"];
        if (type is not JsonArray)
        {
            schema["enum"] = ids;
            return;
        }

        // A type of several: text has to be one of the ids, everything else is judged by the rest of the schema.
        var others = new JsonArray([.. type.AsArray().Select(one => one!.GetValue<string>()).Where(one => one != "string").Select(one => (JsonNode)one)]);
        schema["anyOf"] = new JsonArray(new JsonObject { ["enum"] = ids }, new JsonObject { ["type"] = others });
    }
}
