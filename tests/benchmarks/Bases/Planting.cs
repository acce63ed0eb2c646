using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Swapwright.Benchmarks.Bases;

/// <summary>Puts faults into a base: of every kind that a check over the space finds, in turn.</summary>
internal sealed class Planting(Draw draw, DrawnSpace space, DrawnEntities entities, SortedDictionary<string, string> files, StringBuilder positions)
{
    private const string Rest = "because: Planted.\nsources: [bench]\nstanding: built\nchecked: 2025-06-01\n";

    public ImmutableArray<PlantedFault> Plant(int faults) => [.. Enumerable.Range(0, faults).Select(at => (at % 4) switch
    {
        0 => Contradiction(at),
        1 => Gap(at),
        2 => DeadRule(at),
        _ => NoBuild(at),
    })];

    /// <summary>Speaks where a trial goes, overrides nothing and answers as no other rule does.</summary>
    private PlantedFault Contradiction(int at)
    {
        var trial = draw.Of(space.Trials);
        var choice = draw.Of(space.Choices);
        var position = Draw.Text($"planted-{at}");
        var part = Draw.Text($"planted-{at}");
        files[$"parts/{part}.yaml"] = "title: Planted part\nprice: 3\nfrom: parts-shop\n";
        AddPosition(position);
        Write(Draw.Text($"planted-{at}-all"), [], $"  answers:\n    {position}: {{source: donor, treatment: as-is}}\n");
        var id = Draw.Text($"a-planted-{at}");
        var asks = new[] { Questions.Taken(choice, trial.Options[choice.Id]), space.Questions.OfFacts().Ways.First(way => way.Holds(trial)) };
        return new PlantedFault("contradiction", Write(id, asks, $"  answers:\n    {position}: {{source: made, treatment: modify, part: {part}}}\n"), id);
    }

    /// <summary>A position for which nothing is said about one option, or about what lies outside a fact.</summary>
    private PlantedFault Gap(int at)
    {
        var position = Draw.Text($"planted-{at}");
        AddPosition(position);
        var trial = draw.Of(space.Trials);
        var question = draw.Chance(50) ? space.Questions.OfFacts() : space.Questions.Any(draw.Next(space.Systems));
        foreach (var (way, index) in question.Ways.Select((way, index) => (way, index)).Where(pair => !pair.way.Holds(trial)))
        {
            Write(Draw.Text($"planted-{at}-{index}"), [way], $"  answers:\n    {position}: {{source: donor, treatment: as-is}}\n");
        }

        return new PlantedFault("gap", "positions.yaml", position);
    }

    /// <summary>Terms that never hold together, or a pair that one rule excludes as a whole.</summary>
    private PlantedFault DeadRule(int at)
    {
        var id = Draw.Text($"planted-{at}");
        const string Then = "  tasks: [look-over]\n";
        if (at % 8 < 4)
        {
            var chassis = draw.Of(entities.Chassis);
            var other = entities.Chassis.First(one => one.Family != chassis.Family);
            return new PlantedFault("dead-rule", Write(id, [Is("chassis.variant", chassis.Id), Is("chassis.family", other.Family)], Then), id);
        }

        var (car, donor) = FreePair();
        ImmutableArray<Ask> pair = [Is("chassis.variant", car.Id), Is("donor.variant", donor.Id)];
        Write(Draw.Text($"planted-{at}-limit"), pair, "  exclude: Planted.\n");
        return new PlantedFault("dead-rule", Write(id, [.. pair, space.Questions.OfFacts().Ways.First(way => way.Holds(new Trial(car, donor, ImmutableSortedDictionary<string, string>.Empty)))], Then), id);
    }

    /// <summary>A pair that two rules exclude half each.</summary>
    private PlantedFault NoBuild(int at)
    {
        var (car, donor) = FreePair();
        var choice = draw.Of(space.Choices.Where(one => one.Applies is null).ToList());
        ImmutableArray<Ask> pair = [Is("chassis.variant", car.Id), Is("donor.variant", donor.Id)];
        Write(Draw.Text($"planted-{at}-first"), [.. pair, Questions.Taken(choice, choice.Options[0])], "  exclude: Planted.\n");
        Write(Draw.Text($"planted-{at}-rest"), [.. pair, Questions.Taken(choice, [.. choice.Options.Skip(1)])], "  exclude: Planted.\n");
        return new PlantedFault("no-build", $"chassis/{car.Id}.yaml", donor.Id);
    }

    /// <summary>A pair on which nothing drawn depends, and that no other fault was planted in.</summary>
    private (DrawnVariant Chassis, DrawnVariant Donor) FreePair()
    {
        while (true)
        {
            var (car, donor) = (draw.Of(entities.Chassis), draw.Of(entities.Donors));
            if (space.IsFree(car, donor) && _taken.Add((car.Id, donor.Id)))
            {
                return (car, donor);
            }
        }
    }

    private readonly HashSet<(string Chassis, string Donor)> _taken = [];

    private void AddPosition(string id) => positions.Append(CultureInfo.InvariantCulture, $"  {id}: {{title: Planted position, system: {DrawnSpace.SystemName(0)}}}\n");

    private static Ask Is(string key, string value) => new(key, value, _ => true);

    private string Write(string id, IReadOnlyCollection<Ask> asks, string then)
    {
        var path = $"rules/planted/{id}.yaml";
        files[path] = $"title: Planted ({id})\n{(asks.Count == 0 ? "" : $"when:\n{string.Concat(asks.Select(ask => $"  {ask}\n"))}")}then:\n{then}{Rest}";
        return path;
    }
}
