using System.Globalization;
using System.Text;

namespace Swapwright.Tests.Rules;

/// <summary>
/// Draws a small knowledge base from a seed, as the text of its files. Overrides and answers that depend on answers never
/// go in a loop, and no condition cuts through a variant's years; everything else is left to chance.
/// </summary>
internal sealed class RandomBase
{
    // Variants keep to one of these stretches, and conditions on years to their ends.
    private static readonly (int From, int To)[] Stretches = [(1986, 1988), (1989, 1991), (1992, 1995)];

    private readonly Random _random;
    private readonly RandomConditions _conditions;

    // Some bases exclude a lot, so that pairs of chassis and donor are left with nothing to build.
    private readonly bool _strict;

    private RandomBase(int seed)
    {
        _random = new Random(seed);
        _conditions = new RandomConditions(_random);
        _strict = Chance(25);
    }

    private MemoryBase Files { get; } = new();

    public static MemoryBase Draw(int seed)
    {
        var drawn = new RandomBase(seed);
        drawn.Write();
        return drawn.Files;
    }

    internal static string Text(FormattableString text) => FormattableString.Invariant(text);

    private void Write()
    {
        Vocabulary();
        Entities();
        Choices();
        var positions = Positions();
        Rules(positions);
        if (_strict)
        {
            LeaveNothing();
        }

        Tasks(positions);
        var headline = string.Join(", ", _conditions.Choices.Where(_ => Chance(40)).Select(choice => choice.Id));
        Files["kb.yaml"] = $"title: Drawn base\nas-of: 2026-03-01\nheadline: [{headline}]\n";
    }

    private void Vocabulary() => Files["vocabulary.yaml"] = """
        facts:
          chassis:
            fuel: {title: Fuel, type: one-of, values: {carb: Carburettor, single: Single point, multi: Multi point}}
            stage: {title: Stage, type: one-of, ordered: true, values: {s0: None, s1: First, s2: Second, s3: Third}}
            power: {title: Power, type: number, unit: kW, min: 0, max: 500, optional: true}
            cooler: {title: Cooler, type: flag, optional: true}
            box: {title: Box, type: reference, to: gearbox}
          donor:
            stage: {title: Stage, type: one-of, ordered: true, optional: true, values: {s0: None, s1: First, s2: Second, s3: Third}}
            power: {title: Power, type: number, unit: kW, min: 0, max: 500}
            knock: {title: Knock sensor, type: flag}
            box: {title: Box, type: reference, to: gearbox, optional: true}
            brain: {title: Brain, type: reference, to: ecu}
          gearbox:
            control: {title: Control, type: one-of, values: {cable: Cable, rod: Rod}}
            rating: {title: Rating, type: number, unit: kW, min: 0, max: 500, optional: true}
          ecu:
            stage: {title: Stage, type: one-of, ordered: true, values: {s0: None, s1: First, s2: Second, s3: Third}}
            knock: {title: Knock input, type: flag, optional: true}

        """;

    private void Entities()
    {
        for (var at = 0; at < 3; at++)
        {
            Files[Text($"gearboxes/g{at}.yaml")] = Text($"title: Box {at}\nfacts: {{control: {Of("cable", "rod")}{Maybe(Text($", rating: {Power()}"))}}}\n");
            Files[Text($"parts/part-{at}.yaml")] = Text($"title: Part {at}\nprice: {at + 1}\n");
        }

        for (var at = 0; at < 2; at++)
        {
            Files[Text($"ecus/e{at}.yaml")] = Text($"title: Brain {at}\nfacts: {{stage: {Stage()}{Maybe($", knock: {Flag()}")}}}\n");
        }

        for (var at = _random.Next(2, 5); at > 0; at--)
        {
            Files[Text($"chassis/c{at}.yaml")] = Variant(_conditions.Family = Of("north", "south"), $"{{fuel: {Of("carb", "single", "multi")}, stage: {Stage()}, box: {Box()}{Maybe(Text($", power: {Power()}"))}{Maybe($", cooler: {Flag()}")}}}");
            _conditions.ChassisIds.Add(Text($"c{at}"));
        }

        for (var at = _random.Next(2, 6); at > 0; at--)
        {
            Files[Text($"engines/d{at}.yaml")] = Variant(Of("north", "south"), $"{{power: {Power()}, knock: {Flag()}, brain: {Of("e0", "e1")}{Maybe($", stage: {Stage()}")}{Maybe($", box: {Box()}")}}}");
            _conditions.DonorIds.Add(Text($"d{at}"));
        }
    }

    private string Variant(string family, string facts)
    {
        var (from, to) = Stretches[_random.Next(Stretches.Length)];
        return Text($"title: Variant\nfamily: {family}\nyears: {{from: {from}, to: {to}}}\nfacts: {facts}\n");
    }

    private void Choices()
    {
        string[] ids = ["gearbox", "brain", "cooling", "belt"];
        _random.Shuffle(ids);
        foreach (var (id, at) in ids.Take(_random.Next(2, 5)).Select((id, at) => (id, at)))
        {
            var text = new StringBuilder(Text($"title: Choice of {id}\norder: {_random.Next(3)}\n"));
            if (Chance(45))
            {
                text.Append(Text($"applies: {_conditions.Draw(1)}\n"));
            }

            string[] options = [.. Enumerable.Range(0, _random.Next(2, 4)).Select(option => Text($"o{option}"))];
            text.Append("options:\n");
            foreach (var option in options)
            {
                text.Append(Text($"  {option}: {{title: Option {option}{Binding(id)}}}\n"));
            }

            _conditions.Choices.Add((id, options, text.ToString().Contains("binds", StringComparison.Ordinal) ? id : null));
            if (Chance(60))
            {
                text.Append(Text($"recommend:\n  - {{option: {Of(options)}, when: {_conditions.Draw(1)}, because: it is simpler}}\n"));
            }

            Files[$"choices/{id}.yaml"] = text.ToString();
        }
    }

    private string Binding(string choice) => choice switch
    {
        "gearbox" => $", binds: {Of("{fact: chassis.box}", "{fact: donor.box}", "{gearbox: g0}", "{gearbox: g2}")}",
        "brain" when Chance(80) => $", binds: {Of("{fact: donor.brain}", "{ecu: e0}", "{ecu: e1}")}",
        _ => "",
    };

    /// <returns>The positions in an order in which a rule may ask for the answers at earlier ones.</returns>
    private string[] Positions()
    {
        string[] ids = [.. Enumerable.Range(0, _random.Next(3, 7)).Select(at => Text($"p{at}"))];
        string[] order = [.. ids];
        _random.Shuffle(order);
        var applies = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var id in order)
        {
            applies[id] = Chance(35) ? $", applies: {_conditions.Draw(1)}" : "";
            _conditions.Answerable.Add(id);
        }

        Files["positions.yaml"] = "systems: {front: {title: Front}, back: {title: Back}}\npositions:\n"
            + string.Concat(ids.Select(id => $"  {id}: {{title: Position {id}, system: {Of("front", "back")}{applies[id]}}}\n"));
        return order;
    }

    private void Rules(string[] order)
    {
        string[] names = [.. Enumerable.Range(0, _random.Next(10, 41)).Select(at => Text($"r{at:00}"))];
        _random.Shuffle(names);
        foreach (var (name, at) in names.Select((name, at) => (name, at)))
        {
            var text = new StringBuilder($"title: Rule {name}\n");
            var answered = Chance(80) ? order.Where(_ => _random.Next(order.Length) == 0).DefaultIfEmpty(Of(order)).ToList() : [];
            _conditions.Answerable.Clear();
            _conditions.Answerable.AddRange(order.TakeWhile(position => !answered.Contains(position)));
            var excludes = Chance(answered.Count == 0 ? 40 : _strict ? 12 : 4);
            if (excludes || Chance(90))
            {
                // Exclusions are kept narrow, or nothing would be left to build.
                text.Append($"when: {(excludes ? $"{{all: [{_conditions.Draw(1)}, {_conditions.Draw(1)}]}}" : _conditions.Draw(2))}\n");
            }

            text.Append("then:\n").Append(Then(answered, excludes));
            var overrides = names.Take(at).Where(_ => _random.Next(at + 1) == 0).ToList();
            if (overrides.Count > 0)
            {
                text.Append($"overrides: [{string.Join(", ", overrides)}]\n");
            }

            Files[$"rules/front/{name}.yaml"] = text.ToString();
        }
    }

    /// <summary>Excludes the options of one choice, most of them, for one chassis and donor: a rule an option.</summary>
    private void LeaveNothing()
    {
        var pair = $"chassis.variant: {Of([.. _conditions.ChassisIds])}, donor.variant: {Of([.. _conditions.DonorIds])}";
        var (choice, options, _) = _conditions.Choices[_random.Next(_conditions.Choices.Count)];
        foreach (var option in options.Append("none").Where(_ => Chance(85)))
        {
            Files[$"rules/front/x-{option}.yaml"] = $"title: Not with {option}\nwhen: {{{pair}, choice.{choice}: {option}}}\nthen: {{exclude: true}}\n";
        }
    }

    private string Then(List<string> answered, bool excludes)
    {
        var text = new StringBuilder();
        if (answered.Count > 0)
        {
            text.Append("  answers:\n");
            answered.ForEach(position => text.Append($"    {position}: {{source: {Of("chassis", "donor", "new", "none")}, treatment: {Of("as-is", "refresh", "blank")}{Maybe($", part: {Of("part-0", "part-1")}", 30)}{Maybe(Of(", also: [part-1, part-2]", ", also: [part-2, part-1]"), 20)}}}\n"));
        }

        if (excludes)
        {
            text.Append(Chance(50) ? "  exclude: It does not fit.\n" : $"  require: {_conditions.Draw(1)}\n");
        }

        if (Chance(20))
        {
            text.Append($"  values: {{{Of("wiring.splices", "belt.main.ribs")}: {{value: {Of("4", "6")}}}}}\n");
        }

        text.Append(Chance(20) || text.Length == 0 ? $"  tasks: [{Of("t0", "t1", "t2")}]\n" : "");
        return text.ToString();
    }

    private void Tasks(string[] positions)
    {
        _conditions.Answerable.Clear();
        for (var at = 0; at < 5; at++)
        {
            var after = Enumerable.Range(0, 5).Where(other => other != at && _random.Next(5) == 0).Select(other => Text($"t{other}"));
            Files[Text($"tasks/t{at}.yaml")] = Text($"title: Task {at}\nphase: {Of("assess", "fit", "wire", "paper")}\nafter: [{string.Join(", ", after)}]\nneeds: [{Of(positions)}]\n")
                + (Chance(40) ? $"when: {_conditions.Draw(1)}\n" : "");
        }
    }

    private bool Chance(int percent) => _random.Next(100) < percent;

    private string Of(params string[] from) => from[_random.Next(from.Length)];

    private string Maybe(string text, int percent = 60) => Chance(percent) ? text : "";

    private string Stage() => Of("s0", "s1", "s2", "s3");

    private string Flag() => Of("true", "false");

    private string Box() => Of("g0", "g1", "g2");

    private string Power() => RandomConditions.Powers[_random.Next(RandomConditions.Powers.Length)].ToString(CultureInfo.InvariantCulture);
}
