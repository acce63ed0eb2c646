using System.Collections.Frozen;
using System.Collections.Immutable;
using Swapwright.Knowledge.Pictures;

namespace Swapwright.Knowledge;

/// <summary>Entities of one kind, ordered by id, with lookup.</summary>
public sealed class EntitySet<T>
{
    private readonly Dictionary<string, T> _byId;
    private readonly Func<T, string> _id;

    public EntitySet(IEnumerable<T> entities, Func<T, string> id)
    {
        // Gone through once: what is found by id has to be the very thing that is listed.
        All = [.. entities.OrderBy(id, StringComparer.Ordinal)];
        _byId = new Dictionary<string, T>(All.Length, StringComparer.Ordinal);
        _id = id;
        foreach (var entity in All)
        {
            _byId[id(entity)] = entity;
        }
    }

    public ImmutableArray<T> All { get; }

    public IEnumerable<string> Ids => All.Select(_id);

    public int Count => All.Length;

    public T? Find(string key) => _byId.GetValueOrDefault(key);

    public bool Has(string key) => _byId.ContainsKey(key);

    public T this[string key] => _byId[key];
}

/// <summary>What words a knowledge base may use: facts, signals, roles of devices, ports and hoses.</summary>
public sealed record Vocabulary(EntitySet<FactDeclaration> Facts, EntitySet<SignalDeclaration> Signals, EntitySet<DeviceRole> Devices)
{
    public EntitySet<PortRole> Ports { get; init; } = new([], port => port.Id);

    public EntitySet<HoseRole> Hoses { get; init; } = new([], hose => hose.Id);

    private readonly FrozenDictionary<(string Subject, string Quantity), FactDeclaration> _meanings = Facts.All.Where(fact => fact.Means is not null)
        .GroupBy(fact => (fact.Subject, fact.Means!)).ToFrozenDictionary(group => group.Key, group => group.First());

    public FactDeclaration? Fact(string subject, string id) => Facts.Find($"{subject}.{id}");

    /// <summary>The fact of a subject that carries a meaning of <see cref="KnownQuantities"/>; null where none does.</summary>
    public FactDeclaration? Meaning(string subject, string quantity) => _meanings.GetValueOrDefault((subject, quantity));
}

/// <summary>Everything a community wrote down, typed and immutable.</summary>
public sealed record KnowledgeBase(Settings Settings, Vocabulary Vocabulary)
{
    public required ImmutableArray<VehicleSystem> Systems { get; init; }

    public required EntitySet<Position> Positions { get; init; }

    /// <summary>Positions in the order in which a guide lists them.</summary>
    public required ImmutableArray<Position> PositionOrder { get; init; }

    public required EntitySet<SourceEntry> Sources { get; init; }

    public required EntitySet<ChassisVariant> Chassis { get; init; }

    public required EntitySet<DonorVariant> Donors { get; init; }

    public required EntitySet<Gearbox> Gearboxes { get; init; }

    public required EntitySet<Ecu> Ecus { get; init; }

    public required EntitySet<Connector> Connectors { get; init; }

    public required EntitySet<Part> Parts { get; init; }

    public required EntitySet<Choice> Choices { get; init; }

    public required EntitySet<Rule> Rules { get; init; }

    public required EntitySet<WorkTask> Tasks { get; init; }

    public required EntitySet<Article> Articles { get; init; }

    /// <summary>The words of the trade that the base explains.</summary>
    public EntitySet<GlossaryTerm> Terms { get; init; } = new([], term => term.Id);

    /// <summary>Pages that belong to no entity.</summary>
    public EntitySet<TextPage> Pages { get; init; } = new([], page => page.Id);

    /// <summary>The pictures that may be shown; one with a mistake is not among them.</summary>
    public EntitySet<Picture> Pictures { get; init; } = new([], picture => picture.Id);

    /// <summary>null where the base keeps no register.</summary>
    public IdRegister? Register { get; init; }

    /// <summary>The entity of a kind that can be bound by an option or named by a reference fact.</summary>
    public FactHolder? FactHolder(string kind, string id) => kind switch
    {
        "gearbox" => Gearboxes.Find(id),
        "ecu" => Ecus.Find(id),
        "part" => Parts.Find(id),
        _ => null,
    };
}
