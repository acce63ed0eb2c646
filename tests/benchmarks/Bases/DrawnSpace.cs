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
    private readonly List<(Limit Limit, Trial Own)> _limits = [];

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

    /// <summary>
    /// Writes exclusions and requirements that leave every trial as it is, and each of which excludes a combination that no
    /// other one does, so that none is redundant.
    /// </summary>
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
            ImmutableArray<Ask> families = [_draw.Of(Questions.Family("chassis").Ways), _draw.Of(Questions.Family("donor").Ways)];
            bool IsMeant(DrawnVariant chassis, DrawnVariant donor) => families.All(family => family.Holds(new Trial(chassis, donor, ImmutableSortedDictionary<string, string>.Empty)));
            var pair = _entities.Chassis.SelectMany(_ => _entities.Donors, (chassis, donor) => (chassis, donor)).First(pair => IsMeant(pair.chassis, pair.donor));
            return Keep(new Limit(families, null), DrawTrial(0, pair.chassis, pair.donor))
                ? Rule(at, families, "  exclude: The engine does not clear the steering shaft of this body, whatever is done.\n")
                : null;
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
            return Keep(new Limit([.. asks], required), trial) ? Rule(at, asks, $"  require: {{{required}}}\n") : null;
        }

        return Keep(new Limit([.. asks], null), trial) ? Rule(at, asks, "  exclude: The two foul each other behind the bulkhead; there is no room for a spacer.\n") : null;
    }

    /// <summary>Whether nothing depends on a pair: no trial, no combination of a limit's own, and no limit on the two families.</summary>
    public bool IsFree(DrawnVariant chassis, DrawnVariant donor)
    {
        var pair = new Trial(chassis, donor, ImmutableSortedDictionary<string, string>.Empty);
        return !Trials.Concat(_limits.Select(one => one.Own)).Any(trial => trial.Chassis == chassis && trial.Donor == donor)
            && !_limits.Exists(one => one.Limit.Asks.All(ask => ask.Key.EndsWith(".family", StringComparison.Ordinal) && ask.Holds(pair)));
    }

    /// <summary>Whether a limit fits to those that are drawn; it is noted where it does.</summary>
    /// <param name="own">The combination that it alone shall exclude.</param>
    private bool Keep(Limit limit, Trial own)
    {
        var fits = limit.Excludes(own) && !Trials.Any(limit.Excludes) && _limits.TrueForAll(known => !known.Limit.Excludes(own) && !limit.Excludes(known.Own));
        if (fits)
        {
            _limits.Add((limit, own));
        }

        return fits;
    }

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
    private Trial DrawTrial(int turn) => DrawTrial(turn, _draw.Of(_entities.Chassis), _draw.Of(_entities.Donors));

    private Trial DrawTrial(int turn, DrawnVariant chassis, DrawnVariant donor)
    {
        var trial = new Trial(chassis, donor, ImmutableSortedDictionary<string, string>.Empty.WithComparers(StringComparer.Ordinal));
        return trial with
        {
            Options = Choices.ToImmutableSortedDictionary(
                choice => choice.Id,
                choice => choice.Applies?.Holds(trial) == false ? "none" : choice.Options[(turn + _draw.Next(2)) % choice.Options.Length],
                StringComparer.Ordinal),
        };
    }

    /// <summary>What one rule excludes.</summary>
    private sealed record Limit(ImmutableArray<Ask> Asks, Ask? Required)
    {
        public bool Excludes(Trial trial) => Asks.All(ask => ask.Holds(trial)) && Required?.Holds(trial) != true;
    }
}
