using Swapwright.Knowledge;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>An entity with the word for its kind and, where it has a page or a line on one, the link to it.</summary>
/// <param name="Kind">As in "rule"; the folder of addresses and names.</param>
internal sealed record NamedEntity(string Kind, string Word, Entity Entity, PageLink? Link)
{
    public PageLink LinkOrTitle => Link ?? new PageLink(Entity.Title, "");

    /// <summary>Everything that can carry notes and acceptances, kind by kind.</summary>
    public static IEnumerable<NamedEntity> All(SiteKnowledge site)
    {
        var kb = site.Base;
        IEnumerable<NamedEntity> Of(string kind, string word, IEnumerable<Entity> entities) => entities.Select(entity => new NamedEntity(kind, word, entity, site.LinkTo(kind, entity.Id)));
        return Of("chassis", "Chassis", kb.Chassis.All).Concat(Of("donor", "Donor", kb.Donors.All)).Concat(Of("gearbox", "Gearbox", kb.Gearboxes.All)).Concat(Of("ecu", "ECU", kb.Ecus.All))
            .Concat(Of("connector", "Connector", kb.Connectors.All)).Concat(Of("part", "Part", kb.Parts.All)).Concat(Of("choice", "Choice", kb.Choices.All))
            .Concat(Of("rule", "Rule", kb.Rules.All)).Concat(Of("task", "Task", kb.Tasks.All)).Concat(Of("article", "How-to", kb.Articles.All));
    }
}
