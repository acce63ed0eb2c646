using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>One combination: a value of every variable, by level.</summary>
public readonly record struct Combination(ImmutableArray<int> Values);

/// <summary>
/// The space that a knowledge base spans: a variable for the chassis, one for the donor and one per choice. A choice
/// that applies in part of the space only has the further value <see cref="Choice.None"/>.
/// </summary>
public sealed class SpaceModel
{
    /// <summary>Number of variables that stand before the choices: the chassis and the donor.</summary>
    internal const int Entities = 2;

    private readonly Dictionary<string, int> _levelOfChoice;

    private SpaceModel(KnowledgeBase kb, RegionStore store, ImmutableArray<Choice?> choiceAt, int chassis, int donor)
    {
        Base = kb;
        Store = store;
        ChoiceAt = choiceAt;
        Chassis = chassis;
        Donor = donor;
        _levelOfChoice = choiceAt.Select((choice, level) => (choice, level)).Where(pair => pair.choice is not null)
            .ToDictionary(pair => pair.choice!.Id, pair => pair.level, StringComparer.Ordinal);
    }

    public KnowledgeBase Base { get; }

    public RegionStore Store { get; }

    /// <summary>The choice at a level; null at the levels of the chassis and the donor.</summary>
    public ImmutableArray<Choice?> ChoiceAt { get; }

    /// <summary>The level of the chassis variable.</summary>
    public int Chassis { get; }

    /// <summary>The level of the donor variable.</summary>
    public int Donor { get; }

    public int LevelOf(string choice) => _levelOfChoice[choice];

    /// <summary>Lays out the variables: chassis and donor first, then the choices by who is asked about together.</summary>
    public static SpaceModel Of(KnowledgeBase kb)
    {
        var choices = kb.Choices.All;
        var index = choices.Select((choice, at) => (choice.Id, at)).ToDictionary(pair => pair.Id, pair => pair.at + 2, StringComparer.Ordinal);
        var variables = new List<Variable>
        {
            new("chassis", [.. kb.Chassis.Ids]),
            new("donor", [.. kb.Donors.Ids]),
        };
        variables.AddRange(choices.Select(choice => new Variable(choice.Id, Values(choice))));
        var supports = kb.Rules.All.Select(rule => (IReadOnlyCollection<int>)[.. rule.When.ChoicesAsked().Where(index.ContainsKey).Select(choice => index[choice]).Distinct()]);
        var order = VariableOrder.Find([.. variables.Select(variable => variable.Size)], supports, [0, 1]);
        var choiceAt = order.Select(at => at < 2 ? null : choices[at - 2]).ToImmutableArray();
        return new SpaceModel(kb, new RegionStore([.. order.Select(at => variables[at])], RegionStore.NodesOfABase), choiceAt, Array.IndexOf(order, 0), Array.IndexOf(order, 1));
    }

    /// <summary>The same space over another store of the same variables.</summary>
    internal SpaceModel Over(RegionStore store) => new(Base, store, ChoiceAt, Chassis, Donor);

    /// <summary>The region in which a choice takes one of the options; unknown ones are passed over.</summary>
    public Region WhereChoice(string choice, IEnumerable<string> options)
    {
        var level = LevelOf(choice);
        var variable = Store.Variables[level];
        return Store.Where(level, ValueSet.Of(variable.Size, [.. options.Select(option => variable.Values.IndexOf(option)).Where(value => value >= 0)]));
    }

    public Region WhereChassis(Func<ChassisVariant, bool> predicate) =>
        Store.Where(Chassis, ValueSet.Where(Base.Chassis.Count, value => predicate(Base.Chassis.All[value])));

    public Region WhereDonor(Func<DonorVariant, bool> predicate) =>
        Store.Where(Donor, ValueSet.Where(Base.Donors.Count, value => predicate(Base.Donors.All[value])));

    public ChassisVariant ChassisOf(ReadOnlySpan<int> combination) => Base.Chassis.All[combination[Chassis]];

    public DonorVariant DonorOf(ReadOnlySpan<int> combination) => Base.Donors.All[combination[Donor]];

    /// <summary>The option that a combination takes for a choice, or <see cref="Choice.None"/>.</summary>
    public string OptionOf(ReadOnlySpan<int> combination, string choice)
    {
        var level = LevelOf(choice);
        return Store.Variables[level].Values[combination[level]];
    }

    /// <summary>The entity that a choice's option binds in a combination; null where it binds none.</summary>
    public FactHolder? BoundEntity(ReadOnlySpan<int> combination, string choiceId)
    {
        var binding = Base.Choices[choiceId].Option(OptionOf(combination, choiceId))?.Binds;
        return binding is null ? null : Bound(binding, ChassisOf(combination), DonorOf(combination));
    }

    public Witness Witness(ReadOnlySpan<int> combination)
    {
        var choices = ImmutableArray.CreateBuilder<KeyValuePair<string, string>>();
        foreach (var choice in Base.Choices.All)
        {
            choices.Add(KeyValuePair.Create(choice.Id, OptionOf(combination, choice.Id)));
        }

        return new Witness(ChassisOf(combination).Id, DonorOf(combination).Id, choices.ToImmutable());
    }

    internal FactHolder? Bound(OptionBinding binding, ChassisVariant chassis, DonorVariant donor)
    {
        if (binding.Kind is { } kind)
        {
            return Base.FactHolder(kind, binding.Entity!);
        }

        var dot = binding.FactName!.IndexOf('.', StringComparison.Ordinal);
        var subject = binding.FactName[..dot];
        var fact = binding.FactName[(dot + 1)..];
        var value = subject == "chassis" ? chassis.Fact(fact) : donor.Fact(fact);
        var to = Base.Vocabulary.Fact(subject, fact)?.To;
        return value is { } reference && to is not null ? Base.FactHolder(to, reference.Text) : null;
    }

    private static ImmutableArray<string> Values(Choice choice)
    {
        var options = choice.Options.Select(option => option.Id);
        return choice.Applies == Condition.Always && !choice.Options.IsEmpty ? [.. options] : [.. options, Choice.None];
    }
}
