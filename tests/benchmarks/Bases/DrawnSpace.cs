using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Swapwright.Benchmarks.Bases;

/// <summary>
/// Choices, what cannot be built, and trials: combinations that stay buildable whatever is drawn. A rule is written for
/// a trial that meets it, so none is dead. No exclusion speaks of the first options, so every chassis takes every donor
/// but where one rule says why not.
/// </summary>
internal sealed class DrawnSpace
{
    private const int Trying = 400;
    private readonly Draw _draw;
    private readonly DrawnEntities _entities;
    private readonly SortedDictionary<string, string> _files;

    public DrawnSpace(Draw draw, BaseSize size, DrawnEntities entities, SortedDictionary<string, string> files)
    {
        (_draw, _entities, _files) = (draw, entities, files);
        Systems = Math.Max(1, size.Choices / 3);
        var facts = new Questions(draw, entities, []);
        Choices = [.. Enumerable.Range(0, size.Choices).Select(at => DrawChoice(at, at * Systems / size.Choices, facts))];
        Questions = new Questions(draw, entities, Choices);
        Trials = [.. Enumerable.Range(0, Math.Max(24, Math.Min(120, size.Rules / 8))).Select(DrawTrial)];
    }

    public int Systems { get; }

    public ImmutableArray<DrawnChoice> Choices { get; }

    public Questions Questions { get; }

    public ImmutableArray<Trial> Trials { get; }

    public static string SystemName(int system) => Draw.Text($"system-{system:00}");

    /// <summary>Writes exclusions and requirements that leave every trial as it is.</summary>
    public void Exclude(int count)
    {
        for (var (written, tried) = (0, 0); written < count; tried++)
        {
            if (tried > count * Trying)
            {
                throw new InvalidOperationException("so many exclusions cannot be drawn for this size; ask for fewer rules");
            }

            if (DrawExclusion(written) is { } text)
            {
                _files[Draw.Text($"rules/limits/limit-{written++:0000}.yaml")] = text;
            }
        }
    }

    private string? DrawExclusion(int at)
    {
        if (_draw.Next(25) == 0)
        {
            Ask[] families = [_draw.Of(_questionsOf("chassis")), _draw.Of(_questionsOf("donor"))];
            return Spares(families) ? Rule(at, families, "  exclude: The engine does not clear the steering shaft of this body, whatever is done.\n") : null;
        }

        var trial = DrawTrial(_draw.Next(1000));
        var choice = _draw.Of(Choices);
        if (trial.Options[choice.Id] is var option && (option == "none" || option == choice.Options[0]))
        {
            return null;
        }

        var asks = new List<Ask> { Questions.Taken(choice, option) };
        for (var more = 1 + _draw.Next(3); more > 0; more--)
        {
            var way = Questions.OfFacts().Ways.First(one => one.Holds(trial));
            if (asks.TrueForAll(ask => ask.Key != way.Key))
            {
                asks.Add(way);
            }
        }

        var near = Choices.Where(other => other.System == choice.System && other.Id != choice.Id).ToList();
        if (near.Count > 0 && _draw.Chance(40))
        {
            var other = _draw.Of(near);
            var required = Questions.Taken(other, [other.Options[0], .. other.Options.Skip(1).Where(_ => _draw.Chance(40)), .. other.Applies is null ? Array.Empty<string>() : ["none"]]);
            return Trials.All(one => !asks.TrueForAll(ask => ask.Holds(one)) || required.Holds(one)) ? Rule(at, asks, $"  require: {{{required}}}\n") : null;
        }

        return Spares(asks) ? Rule(at, asks, "  exclude: The two foul each other behind the bulkhead; there is no room for a spacer.\n") : null;

        ImmutableArray<Ask> _questionsOf(string subject) => Questions.Family(subject).Ways;
    }

    private bool Spares(IReadOnlyCollection<Ask> asks) => Trials.All(trial => asks.Any(ask => !ask.Holds(trial)));

    private static string Rule(int at, IEnumerable<Ask> asks, string then) =>
        Draw.Text($"title: Limit {at}\nwhen:\n{string.Concat(asks.Select(ask => $"  {ask}\n"))}then:\n{then}because: Measured on the bench with the parts side by side.\nsources: [bench]\nstanding: measured\nchecked: 2025-06-01\n");

    private DrawnChoice DrawChoice(int at, int system, Questions facts)
    {
        var id = at switch { 0 => "gearbox", 1 => "brain", _ => Draw.Text($"choice-{at:00}") };
        ImmutableArray<string> options = [.. Enumerable.Range(0, 2 + _draw.Next(5)).Select(option => Draw.Text($"o{option}"))];
        var applies = at > 1 && _draw.Chance(25) ? facts.OfFacts().Ways[0] : null;
        var binds = options.Select((option, index) => KeyValuePair.Create(option, (id, index) switch
        {
            ("gearbox", 0) => "chassis.box",
            ("gearbox", 1) => "donor.box",
            ("gearbox", _) => DrawnEntities.Box(index),
            ("brain", 0) => "donor.brain",
            ("brain", _) => DrawnEntities.Brain(index),
            _ => "",
        })).ToImmutableDictionary(StringComparer.Ordinal);
        var text = new StringBuilder(Draw.Text($"title: Choice {at}\nquestion: Which way is taken here?\norder: {at}\n"));
        if (applies is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $"applies: {{{applies}}}\n");
        }

        text.Append("options:\n");
        foreach (var option in options)
        {
            var bound = binds[option];
            var entity = bound.Contains('.', StringComparison.Ordinal) ? $"{{fact: {bound}}}" : id == "gearbox" ? $"{{gearbox: {bound}}}" : $"{{ecu: {bound}}}";
            text.Append(CultureInfo.InvariantCulture, $"  {option}: {{title: Way {option}{(bound.Length == 0 ? "" : $", binds: {entity}")}}}\n");
        }

        _files[$"choices/{id}.yaml"] = text.ToString();
        return new DrawnChoice(id, system, options, applies, binds);
    }

    /// <param name="turn">Options are taken in turn, so that every one is in some trial.</param>
    private Trial DrawTrial(int turn)
    {
        var trial = new Trial(_draw.Of(_entities.Chassis), _draw.Of(_entities.Donors), ImmutableSortedDictionary<string, string>.Empty.WithComparers(StringComparer.Ordinal));
        return trial with
        {
            Options = Choices.ToImmutableSortedDictionary(
                choice => choice.Id,
                choice => choice.Applies?.Holds(trial) == false ? "none" : choice.Options[(turn + _draw.Next(2)) % choice.Options.Length],
                StringComparer.Ordinal),
        };
    }
}
