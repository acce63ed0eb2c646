using Swapwright.Diagnostics;

namespace Swapwright.Knowledge.Binding;

/// <summary>Every id that one entity says of another must be carried by something.</summary>
internal sealed class ReferenceChecker(BindingContext context, KnowledgeBase kb)
{
    private readonly Dictionary<string, HashSet<string>> _idsOf = [];

    public void Check()
    {
        foreach (var (kind, name) in context.Wanted)
        {
            Need(kind, name);
        }

        Names(kb.Settings.Headline, "choice");
        foreach (var accessory in kb.Chassis.All.Cast<Variant>().Concat(kb.Donors.All).SelectMany(variant => variant.Accessories))
        {
            Need("position", new Named(accessory.Position, accessory.Place));
        }

        foreach (var choice in kb.Choices.All)
        {
            Choice(choice);
        }

        foreach (var rule in kb.Rules.All)
        {
            Rule(rule);
        }

        foreach (var task in kb.Tasks.All)
        {
            Names(task.After, "task");
            Names(task.Needs, "position");
        }

        foreach (var article in kb.Articles.All)
        {
            Names(article.Positions, "position");
            Names(article.Tasks, "task");
        }
    }

    private void Choice(Choice choice)
    {
        foreach (var recommendation in choice.Recommendations)
        {
            Need(choice.Option(recommendation.Option) is not null, $"option of `{choice.Id}`", recommendation.Option, choice.Options.Select(option => option.Id), recommendation.Place);
        }

        foreach (var binding in choice.Options.Select(option => option.Binds).OfType<OptionBinding>())
        {
            if (binding.Kind is { } kind)
            {
                // Any other kind has been told as a mistake of form.
                if (kind is "gearbox" or "ecu" or "part")
                {
                    Need(kind, new Named(binding.Entity!, binding.Place));
                }
            }
            else if (!kb.Vocabulary.Facts.All.Any(fact => fact.Name == binding.FactName && fact.Type == FactType.Reference))
            {
                context.Unknown(FindingKinds.Vocabulary, "fact that names an entity", binding.FactName!, kb.Vocabulary.Facts.All.Where(fact => fact.Type == FactType.Reference).Select(fact => fact.Name), binding.Place);
            }
        }
    }

    private void Rule(Rule rule)
    {
        foreach (var answer in rule.Answers)
        {
            Need("position", new Named(answer.Position, answer.Place));
        }

        Names(rule.Overrides, "rule");
        foreach (var value in rule.Values)
        {
            Need(ComputedValues.Find(value.Name) is not null, "computed value", value.Name, ComputedValues.All.Select(known => known.Pattern), value.Place);
        }

        foreach (var advice in rule.Advises)
        {
            if (advice.Option?.Split('=') is { } pair)
            {
                Need(pair.Length == 2 && kb.Choices.Find(pair[0])?.Option(pair[1]) is not null, "choice=option", advice.Option, kb.Choices.All.SelectMany(choice => choice.Options.Select(option => $"{choice.Id}={option.Id}")), advice.Place);
            }
        }
    }

    private IEnumerable<string> Ids(string kind) => kind switch
    {
        "article" => kb.Articles.Ids,
        "choice" => kb.Choices.Ids,
        "connector" => kb.Connectors.Ids,
        "donor" => kb.Donors.Ids,
        "ecu" => kb.Ecus.Ids,
        "gearbox" => kb.Gearboxes.Ids,
        "part" => kb.Parts.Ids,
        "port" => kb.Vocabulary.Ports.Ids,
        "hose" => kb.Vocabulary.Hoses.Ids,
        "position" => kb.Positions.Ids,
        "rule" => kb.Rules.Ids,
        "signal" => kb.Vocabulary.Signals.Ids,
        "device" => kb.Vocabulary.Devices.Ids,
        "source" => kb.Sources.Ids,
        "system" => kb.Systems.Select(system => system.Id),
        "task" => kb.Tasks.Ids,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "no kind of entity that can be named"),
    };

    private void Names(IEnumerable<Named> names, string kind)
    {
        foreach (var named in names)
        {
            Need(kind, named);
        }
    }

    private void Need(string kind, Named name)
    {
        if (!_idsOf.TryGetValue(kind, out var ids))
        {
            ids = Ids(kind).ToHashSet(StringComparer.Ordinal);
            _idsOf.Add(kind, ids);
        }

        Need(ids.Contains(name.Id), kind, name.Id, ids, name.Place);
    }

    private void Need(bool there, string what, string id, IEnumerable<string> known, Place place)
    {
        if (!there)
        {
            context.Unknown(FindingKinds.Reference, what, id, known, place);
        }
    }
}
