using Swapwright.Diagnostics;

namespace Swapwright.Knowledge.Binding;

/// <summary>Every id that one entity says of another must be carried by something.</summary>
internal sealed class ReferenceChecker(BindingContext context, KnowledgeBase kb)
{
    public void Check()
    {
        foreach (var named in kb.Settings.Headline)
        {
            Need(kb.Choices.Has(named.Id), "choice", named.Id, kb.Choices.Ids, named.Place);
        }

        foreach (var position in kb.PositionOrder)
        {
            Need(kb.Systems.Any(system => system.Id == position.System), "system", position.System, kb.Systems.Select(system => system.Id), position.Place);
        }

        foreach (var role in kb.Vocabulary.Devices.All)
        {
            Need(role.Position is null || kb.Positions.Has(role.Position), "position", role.Position ?? "", kb.Positions.Ids, role.Place);
        }

        foreach (var chassis in kb.Chassis.All)
        {
            Variant(chassis);
            Plug(chassis.Body);
            foreach (var need in chassis.Needs)
            {
                Need(kb.Vocabulary.Signals.Has(need), "signal", need, kb.Vocabulary.Signals.Ids, chassis.Place);
            }
        }

        foreach (var donor in kb.Donors.All)
        {
            Variant(donor);
            foreach (var station in donor.BeltDrives.SelectMany(drive => drive.Stations))
            {
                Need(station.Position is null || kb.Positions.Has(station.Position), "position", station.Position ?? "", kb.Positions.Ids, station.Place);
            }
        }

        foreach (var plug in kb.Ecus.All.SelectMany(ecu => ecu.Plugs))
        {
            Plug(plug.Value);
        }

        foreach (var connector in kb.Connectors.All)
        {
            foreach (var mate in connector.Mates)
            {
                Need(kb.Connectors.Has(mate), "connector", mate, kb.Connectors.Ids, connector.Place);
            }
        }

        foreach (var part in kb.Parts.All)
        {
            Part(part);
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
            Names(task.After, "task", kb.Tasks.Has, kb.Tasks.Ids);
            Names(task.Needs, "position", kb.Positions.Has, kb.Positions.Ids);
        }

        foreach (var article in kb.Articles.All)
        {
            Names(article.Positions, "position", kb.Positions.Has, kb.Positions.Ids);
            Names(article.Tasks, "task", kb.Tasks.Has, kb.Tasks.Ids);
            Sources(article.Sources, article.Place);
        }
    }

    private void Variant(Variant variant)
    {
        foreach (var accessory in variant.Accessories)
        {
            Need(kb.Positions.Has(accessory.Position), "position", accessory.Position, kb.Positions.Ids, accessory.Place);
        }

        foreach (var device in variant.Devices)
        {
            Need(kb.Connectors.Has(device.Connector), "connector", device.Connector, kb.Connectors.Ids, device.Place);
        }

        if (variant.Harness is { } harness)
        {
            Need(harness.Ecu is null || kb.Ecus.Has(harness.Ecu), "ecu", harness.Ecu ?? "", kb.Ecus.Ids, harness.Place);
            Plug(harness.Body);
            foreach (var plug in harness.Plugs)
            {
                Plug(plug.Value);
            }
        }
    }

    private void Plug(PlugEntry? plug)
    {
        if (plug is not null)
        {
            Need(kb.Connectors.Has(plug.Connector), "connector", plug.Connector, kb.Connectors.Ids, plug.Place);
        }
    }

    private void Part(Part part)
    {
        if (part.Lead is { } lead)
        {
            Need(kb.Connectors.Has(lead.From), "connector", lead.From, kb.Connectors.Ids, part.Place);
            Need(kb.Connectors.Has(lead.To), "connector", lead.To, kb.Connectors.Ids, part.Place);
        }

        foreach (var device in part.Devices)
        {
            Need(kb.Connectors.Has(device.Connector), "connector", device.Connector, kb.Connectors.Ids, device.Place);
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
                IEnumerable<string> known = kind switch
                {
                    "gearbox" => kb.Gearboxes.Ids,
                    "ecu" => kb.Ecus.Ids,
                    _ => kb.Parts.Ids,
                };
                Need(kb.FactHolder(kind, binding.Entity!) is not null, kind, binding.Entity!, known, binding.Place);
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
            Need(kb.Positions.Has(answer.Position), "position", answer.Position, kb.Positions.Ids, answer.Place);
            foreach (var part in (answer.Part is null ? [] : new[] { answer.Part }).Concat(answer.Also))
            {
                Need(kb.Parts.Has(part), "part", part, kb.Parts.Ids, answer.Place);
            }

            Need(answer.Article is null || kb.Articles.Has(answer.Article), "article", answer.Article ?? "", kb.Articles.Ids, answer.Place);
        }

        Names(rule.Overrides, "rule", kb.Rules.Has, kb.Rules.Ids);
        Sources(rule.Sources, rule.Place);
        foreach (var task in rule.Tasks)
        {
            Need(kb.Tasks.Has(task), "task", task, kb.Tasks.Ids, rule.Place);
        }

        foreach (var value in rule.Values)
        {
            Need(ComputedValues.Find(value.Name) is not null, "computed value", value.Name, ComputedValues.All.Select(known => known.Pattern), value.Place);
        }

        foreach (var advice in rule.Advises)
        {
            Need(advice.Donor is null || kb.Donors.Has(advice.Donor), "donor", advice.Donor ?? "", kb.Donors.Ids, advice.Place);
            if (advice.Option?.Split('=') is { } pair)
            {
                Need(pair.Length == 2 && kb.Choices.Find(pair[0])?.Option(pair[1]) is not null, "choice=option", advice.Option, kb.Choices.All.SelectMany(choice => choice.Options.Select(option => $"{choice.Id}={option.Id}")), advice.Place);
            }
        }
    }

    private void Sources(IEnumerable<string> sources, Place place)
    {
        foreach (var source in sources)
        {
            Need(kb.Sources.Has(source), "source", source, kb.Sources.Ids, place);
        }
    }

    private void Names(IEnumerable<Named> names, string what, Func<string, bool> has, IEnumerable<string> known)
    {
        foreach (var named in names)
        {
            Need(has(named.Id), what, named.Id, known, named.Place);
        }
    }

    private void Need(bool there, string what, string id, IEnumerable<string> known, Place place)
    {
        if (!there)
        {
            context.Unknown(FindingKinds.Reference, what, id, known, place);
        }
    }
}
