using System.Collections.Frozen;
using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;
using Swapwright.Worksheets.Effort;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Sheets;

/// <summary>
/// Makes the sheet of one combination. A builder for many asks the space once, in the constructor; building a sheet
/// afterwards only looks things up and computes, so sheets may be built on several threads. A builder for a few works out
/// only what their combinations ask, on one thread.
/// </summary>
public sealed class SheetBuilder
{
    // A plan of a long job is some ten kilobytes; combinations that take the same work are mostly near each other.
    private const int MostPlans = 200;

    private readonly Resolution _resolution;
    private readonly KnowledgeBase _kb;
    private readonly BeltAssembly _belts;
    private readonly WiringAssembly _wiring;
    private readonly HoseAssembly _hoses;
    private readonly LedgerAssembly _ledgers;
    private readonly Dictionary<string, Region> _speaks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Region> _options = new(StringComparer.Ordinal);
    private readonly RulesNearby _nearby;
    private readonly ImmutableArray<Choice> _binding;
    private readonly Dictionary<Answer, Brought> _brought = new(ReferenceEqualityComparer.Instance);
    private readonly SheetMemories _memories = new();
    private readonly KnownResults<Plan> _plans = new(MostPlans);
    private readonly ImmutableArray<(WorkTask Task, Region? When)> _tasks;
    private readonly Dictionary<string, int> _taskPlaces;
    private readonly SheetShopping _shopping;
    private readonly FrozenDictionary<Condition, Region> _fastenerWhen;
    private readonly FrozenDictionary<Condition, Region> _toolWhen;

    /// <param name="many">Work everything out now, so that sheets can be built on several threads.</param>
    public SheetBuilder(Resolution resolution, bool many = true)
    {
        _resolution = resolution;
        _kb = resolution.Space.Base;
        _belts = new BeltAssembly(_kb);
        _wiring = new WiringAssembly(_kb);
        _hoses = new HoseAssembly(_kb);
        _ledgers = new LedgerAssembly(_kb);
        _binding = [.. _kb.Choices.All.Where(choice => choice.Options.Any(option => option.Binds is not null))];
        if (many)
        {
            resolution.Complete();
            foreach (var choice in _binding)
            {
                Options(choice);
            }
        }

        _nearby = new RulesNearby(resolution, Speaks, many);
        _shopping = new SheetShopping(_kb);
        foreach (var answer in many ? _kb.Rules.All.SelectMany(rule => rule.Answers) : [])
        {
            BroughtBy(answer);
        }

        _tasks = [.. _kb.Tasks.All.Select(task => (task, task.When is { } when ? resolution.RegionOf(when) : (Region?)null))];
        _taskPlaces = _tasks.Select((task, at) => (task.Task.Id, at)).ToDictionary(pair => pair.Id, pair => pair.at, StringComparer.Ordinal);
        _fastenerWhen = _kb.Tasks.All.SelectMany(task => task.Fasteners).Concat(_kb.Parts.All.SelectMany(part => part.Fasteners)).Select(fastener => fastener.When).OfType<Condition>().Distinct()
            .ToFrozenDictionary(when => when, resolution.RegionOf);
        _toolWhen = _kb.Tasks.All.SelectMany(task => task.Tools).Select(tool => tool.When).OfType<Condition>().Distinct().ToFrozenDictionary(when => when, resolution.RegionOf);
    }

    public Resolution Resolution => _resolution;

    /// <summary>Where a rule still speaks, see <see cref="Rules.Resolution.Speaks"/>.</summary>
    public Region Speaks(Rule rule)
    {
        if (!_speaks.TryGetValue(rule.Id, out var region))
        {
            region = _resolution.Speaks(rule);
            _speaks.Add(rule.Id, region);
        }

        return region;
    }

    public Sheet Build(ReadOnlySpan<int> combination)
    {
        var memory = Remember(combination);
        var sheet = Build(combination, memory);
        LetGo(combination, memory);
        return sheet;
    }

    /// <summary>What is known of a combination's chassis and donor, for many combinations of the two; to be given back to <see cref="LetGo"/>.</summary>
    internal SheetMemory Remember(ReadOnlySpan<int> combination) => _memories.Take(combination[_resolution.Space.Chassis], combination[_resolution.Space.Donor]);

    internal void LetGo(ReadOnlySpan<int> combination, SheetMemory memory) => _memories.GiveBack(combination[_resolution.Space.Chassis], combination[_resolution.Space.Donor], memory);

    /// <param name="memory">What was worked out for other combinations of the same chassis and donor.</param>
    internal Sheet Build(ReadOnlySpan<int> combination, SheetMemory memory)
    {
        var values = combination.ToArray();
        var space = _resolution.Space;
        var chassis = space.ChassisOf(values);
        var donor = space.DonorOf(values);
        var near = _nearby.To(values[space.Chassis], values[space.Donor]);
        var answers = Answers(values, near);
        var byPosition = new Dictionary<string, Answer>(answers.Length, StringComparer.Ordinal);
        var brought = new List<Brought>();
        foreach (var answer in answers)
        {
            if (answer.Answer is not { } given)
            {
                continue;
            }

            byPosition.Add(answer.Position.Id, given);
            if (BroughtBy(given) is var thing && !ReferenceEquals(thing, Brought.Nothing))
            {
                brought.Add(thing);
            }
        }

        Answer? At(string position) => byPosition.GetValueOrDefault(position);

        var ecu = Bound<Ecu>(values);
        var gearbox = Bound<Gearbox>(values);
        var speaking = Speaking(near, values);
        var belts = memory.Recall("belts", MadeFrom.Nothing, At, at => _belts.Assemble(donor, chassis, at));
        var hoses = memory.Recall("hoses", new MadeFrom([.. brought.Where(one => one.IsPlumbing)]), At, at => _hoses.Assemble(donor, chassis, at, byPosition.Values));
        var wanted = Tasks(values, speaking);
        var work = Work(wanted);
        var parts = brought.SelectMany(one => one.Parts).DistinctBy(part => part.Id).ToList();
        var wiring = _wiring.Case(donor, chassis, ecu, At, parts) is { } wired ? memory.Recall(wired, _wiring.Assemble) : null;
        var shopping = _shopping.Of(answers, answer => BroughtBy(answer).Parts, memory.Recall(new MeasuredParts(belts, hoses, wiring), SheetShopping.Sizes));
        var isBuildable = _resolution.BuildableParts.Contains(values);
        var one = new LedgerCase(chassis, donor, gearbox, ecu, At)
        {
            Tasks = work.Tasks,
            Gearboxes = GearboxOptions(values, chassis, donor),
            IsTightened = fastener => fastener.When is not { } when || _resolution.Store.Contains(_fastenerWhen[when], values),
        };
        var quantities = new Quantities(_kb, one);
        var sheet = new Sheet
        {
            Combination = new Combination([.. values]),
            Chassis = chassis,
            Donor = donor,
            Choices = [.. _kb.Choices.All.Select(choice => KeyValuePair.Create(choice.Id, space.OptionOf(values, choice.Id)))],
            Buildable = isBuildable,
            ExcludedBy = isBuildable ? [] : [.. _resolution.Exclusions.Where(exclusion => _resolution.Store.Contains(exclusion.Region, values)).Select(exclusion => exclusion.Rule)],
            Answers = answers,
            Belts = belts,
            Wiring = wiring,
            Hoses = hoses,
            Ledgers = Ledgers(one, work, values, memory),
            PowerBeforeKw = Kilowatts(quantities.Of("chassis", "engine-power")),
            PowerKw = Kilowatts(quantities.Of("donor", "engine-power")),
            Gearbox = gearbox,
            Ecu = ecu,
            Tasks = work.Tasks,
            Tools = [.. work.Tasks.SelectMany(task => task.Tools).Where(tool => tool.When is not { } when || _resolution.Store.Contains(_toolWhen[when], values))],
            Shopping = shopping,
            Effort = SheetEffort.Priced(work.Effort, shopping, _kb.Settings.Effort),
            Speaking = speaking,
        };
        return sheet with { Values = Values(near, values, sheet) };
    }

    private ImmutableArray<Ledger> Ledgers(LedgerCase one, Plan work, int[] values, SheetMemory memory)
    {
        var ledgers = ImmutableArray.CreateBuilder<Ledger>();
        foreach (var id in _ledgers.Told)
        {
            // What a ledger goes by besides the answers.
            var seen = _ledgers.Seen(one, id);
            var key = new MadeFrom(
            [
                seen.Gearbox,
                seen.Ecu,
                .. seen.Gearboxes.SelectMany(option => new object[] { option.Title, option.Gearbox, option.IsChosen ? "chosen" : "", option.Buildable ? "buildable" : "" }),
                .. _ledgers.GoesByWork(id) ? [work.Tightening, Tightened(values)] : Array.Empty<string>(),
            ]);
            if (memory.Recall(id, key, one.At, at => _ledgers.Assemble(one with { At = at }, id)) is { } ledger)
            {
                ledgers.Add(ledger);
            }
        }

        return ledgers.ToImmutable();
    }

    /// <summary>Which conditions of fasteners hold.</summary>
    private string Tightened(int[] values) => string.Create(_fastenerWhen.Count, values, (text, at) =>
    {
        for (var one = 0; one < text.Length; one++)
        {
            text[one] = _resolution.Store.Contains(_fastenerWhen.Values[one], at) ? '1' : '0';
        }
    });

    private static string Joined(IEnumerable<string> texts) => string.Join(',', texts);

    private static decimal? Kilowatts(KnownValue? power) => power is null ? null : Math.Round((decimal)power.Si / 1000, 1).Normalized();

    /// <summary>The answers of a combination alone, by position in the order of the base.</summary>
    internal ImmutableArray<SheetAnswer> Answers(int[] values) =>
        Answers(values, _nearby.To(values[_resolution.Space.Chassis], values[_resolution.Space.Donor]));

    private ImmutableArray<SheetAnswer> Answers(int[] values, NearRules near)
    {
        var store = _resolution.Store;
        var answers = ImmutableArray.CreateBuilder<SheetAnswer>();
        foreach (var (position, applies, at) in near.Positions)
        {
            if (!store.Contains(applies, values))
            {
                continue;
            }

            // Nearly everywhere one answer stands, and mostly none is overridden.
            NearAnswer? only = null;
            List<StandingAnswer>? standing = null;
            List<OverriddenRule>? overridden = null;
            foreach (var one in at)
            {
                if (!store.Contains(one.Rule.When, values))
                {
                    continue;
                }

                if (store.Contains(one.Standing.Region, values))
                {
                    if (only is null)
                    {
                        only = one;
                    }
                    else
                    {
                        (standing ??= [only.Standing]).Add(one.Standing);
                    }
                }
                else
                {
                    (overridden ??= []).Add(new OverriddenRule(one.Rule.Rule, [.. one.Over.Where(over => store.Contains(over.When, values)).Select(over => over.Rule)]));
                }
            }

            answers.Add(only is null ? new SheetAnswer(position, [], [.. overridden ?? []])
                : standing is null && overridden is null ? only.Alone
                : new SheetAnswer(position, standing is null ? only.Alone.Standing : [.. standing], [.. overridden ?? []]));
        }

        return answers.ToImmutable();
    }

    private ImmutableArray<Rule> Speaking(NearRules near, int[] values)
    {
        var speaking = ImmutableArray.CreateBuilder<Rule>();
        foreach (var rule in near.Rules)
        {
            if (_resolution.Store.Contains(rule.When, values) && _resolution.Store.Contains(rule.Speaks, values))
            {
                speaking.Add(rule.Rule);
            }
        }

        return speaking.DrainToImmutable();
    }

    private T? Bound<T>(int[] values)
        where T : FactHolder =>
        _binding.Select(choice => _resolution.Space.BoundEntity(values, choice.Id)).OfType<T>().FirstOrDefault();

    /// <summary>Which options of a choice some buildable combination of a chassis and a donor takes.</summary>
    private Region Options(Choice choice)
    {
        if (!_options.TryGetValue(choice.Id, out var region))
        {
            region = _resolution.BuildableParts.Onto([_resolution.Space.LevelOf(choice.Id)]);
            _options.Add(choice.Id, region);
        }

        return region;
    }

    /// <summary>
    /// What the choice of the gearbox would bring by its other options, each with everything else as it is. An option that this
    /// chassis never takes behind this donor is none.
    /// </summary>
    private ImmutableArray<GearboxOption> GearboxOptions(int[] values, ChassisVariant chassis, DonorVariant donor)
    {
        if (_binding.FirstOrDefault(choice => _resolution.Space.BoundEntity(values, choice.Id) is Gearbox) is not { } choice)
        {
            return [];
        }

        var level = _resolution.Space.LevelOf(choice.Id);
        var possible = Options(choice);
        var options = ImmutableArray.CreateBuilder<GearboxOption>();
        foreach (var option in choice.Options)
        {
            if (option.Binds is { } binding && _resolution.Space.Bound(binding, chassis, donor) is Gearbox gearbox)
            {
                int[] other = [.. values];
                other[level] = _resolution.Store.Variables[level].Values.IndexOf(option.Id);
                var isChosen = other[level] == values[level];
                if (isChosen || _resolution.Store.Contains(possible, other))
                {
                    options.Add(new GearboxOption(option.Title, gearbox, isChosen, _resolution.BuildableParts.Contains(other)));
                }
            }
        }

        return options.ToImmutable();
    }

    private List<WorkTask> Tasks(int[] values, ImmutableArray<Rule> speaking)
    {
        var isNamed = new bool[_tasks.Length];
        foreach (var rule in speaking)
        {
            foreach (var id in rule.Tasks)
            {
                if (_taskPlaces.TryGetValue(id, out var at))
                {
                    isNamed[at] = true;
                }
            }
        }

        return [.. _tasks.Where((task, at) => isNamed[at] || (task.When is { } when && _resolution.Store.Contains(when, values))).Select(task => task.Task)];
    }

    /// <summary>What the tasks alone decide, whichever combination asks for them.</summary>
    private Plan Work(List<WorkTask> wanted) => _plans.Of(new MadeFrom([.. wanted]), () =>
    {
        var tasks = WorkOrder.Sort(wanted);
        return new Plan(tasks, SheetEffort.Of(tasks, _kb.Settings.Effort), Joined(tasks.Where(TorquesAssembly.IsTold).Select(task => task.Id)) + '/');
    });

    private Brought BroughtBy(Answer answer)
    {
        if (!_brought.TryGetValue(answer, out var brought))
        {
            ImmutableArray<Part> parts = [.. PartsOf(answer)];
            var isPlumbing = !answer.Closes.IsEmpty || _hoses.CutIn(answer).Any();
            _brought.Add(answer, brought = parts.IsEmpty && !isPlumbing ? Brought.Nothing : new Brought(parts, isPlumbing));
        }

        return brought;
    }

    private IEnumerable<Part> PartsOf(Answer answer)
    {
        if (answer.Part is { } own && _kb.Parts.Find(own) is { } part)
        {
            yield return part;
        }

        foreach (var id in answer.Also)
        {
            if (_kb.Parts.Find(id) is { } also)
            {
                yield return also;
            }
        }
    }

    private ImmutableArray<ValueComparison> Values(NearRules near, int[] values, Sheet sheet) =>
    [
        .. near.Values.Where(value => _resolution.Store.Contains(value.Rule.When, values) && _resolution.Store.Contains(value.Standing.Region, values))
            .Select(value => new ValueComparison(value.Standing, ComputedNumbers.Of(sheet, value.Standing.Value.Name))),
    ];

    /// <param name="Tasks">In order of work.</param>
    /// <param name="Tightening">The tasks that the worksheet of torques looks at.</param>
    private sealed record Plan(ImmutableArray<WorkTask> Tasks, EffortResult Effort, string Tightening);

    /// <summary>What an answer brings, looked up once for all combinations: another object for each answer that brings something.</summary>
    /// <param name="IsPlumbing">It closes ports or brings parts that are cut into hoses.</param>
    private sealed record Brought(ImmutableArray<Part> Parts, bool IsPlumbing)
    {
        public static readonly Brought Nothing = new([], false);
    }
}
