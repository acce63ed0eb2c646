using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>An id that has been published: others link to it.</summary>
public sealed record PublishedId(string Kind, string Id, Place Place);

/// <summary>An id that is gone for good, with the reason and what took its place.</summary>
public sealed record RetiredId(string Kind, string Id, string Because, ImmutableArray<Named> Successors, Place Place);

/// <summary>register.yaml: every id of the base that has been published, so that none goes in silence.</summary>
public sealed record IdRegister(ImmutableArray<PublishedId> Published, ImmutableArray<RetiredId> Retired)
{
    /// <summary>The kinds whose ids are kept, in the order of the file.</summary>
    public static readonly ImmutableArray<string> Kinds = ["chassis", "engine", "gearbox", "ecu", "connector", "part", "choice", "position", "rule", "task", "article", "page"];

    /// <summary>The ids of one kind that the base has now.</summary>
    public static IEnumerable<string> Present(KnowledgeBase kb, string kind) => kind switch
    {
        "chassis" => kb.Chassis.Ids,
        "engine" => kb.Donors.Ids,
        "gearbox" => kb.Gearboxes.Ids,
        "ecu" => kb.Ecus.Ids,
        "connector" => kb.Connectors.Ids,
        "part" => kb.Parts.Ids,
        "choice" => kb.Choices.Ids,
        "position" => kb.Positions.Ids,
        "rule" => kb.Rules.Ids,
        "task" => kb.Tasks.Ids,
        "article" => kb.Articles.Ids,
        "page" => kb.Pages.Ids,
        _ => throw new ArgumentException($"no register is kept of `{kind}`", nameof(kind)),
    };

    /// <summary>Where an entity of the base is written; null where it is not there.</summary>
    public static Place? PlaceOf(KnowledgeBase kb, string kind, string id) => kind switch
    {
        "chassis" => kb.Chassis.Find(id)?.Place,
        "engine" => kb.Donors.Find(id)?.Place,
        "gearbox" => kb.Gearboxes.Find(id)?.Place,
        "ecu" => kb.Ecus.Find(id)?.Place,
        "connector" => kb.Connectors.Find(id)?.Place,
        "part" => kb.Parts.Find(id)?.Place,
        "choice" => kb.Choices.Find(id)?.Place,
        "position" => kb.Positions.Find(id)?.Place,
        "rule" => kb.Rules.Find(id)?.Place,
        "task" => kb.Tasks.Find(id)?.Place,
        "article" => kb.Articles.Find(id)?.Place,
        "page" => kb.Pages.Find(id)?.Place,
        _ => null,
    };
}
