using System.Collections.Immutable;

namespace Swapwright.Benchmarks.Bases;

/// <summary>Something that parts the combinations: every combination goes one of the ways, or none where it is not total.</summary>
/// <param name="IsTotal">Every combination goes one of the ways.</param>
internal sealed record Question(ImmutableArray<Ask> Ways, bool IsTotal)
{
    public bool Asks(string key) => Ways.Any(way => way.Key == key);
}

/// <summary>Draws questions of every kind that a condition can ask.</summary>
internal sealed class Questions(Draw draw, DrawnEntities entities, ImmutableArray<DrawnChoice> choices)
{
    /// <summary>A question on facts alone.</summary>
    public Question OfFacts() => draw.Next(9) switch
    {
        0 => OneOf("chassis", "fuel", "carburettor", "single-point", "multi-point"),
        1 => OneOf("donor", "ignition", "distributor", "coil-packs", "coil-on-plug"),
        2 => OneOf("donor", "intake", "plain", "variable", "air-assisted", "charged"),
        3 => draw.Chance(50) ? OneOf("chassis", "layout", "transverse", "lengthwise") : OneOf("chassis", "steering", "manual", "hydraulic", "electric"),
        4 => draw.Chance(50) ? OneOf("chassis", draw.Of("cooler", "lamp"), "true", "false") : OneOf("donor", draw.Of("knock", "turbo"), "true", "false"),
        5 => Stage(draw.Of("chassis", "donor")),
        6 => draw.Chance(50) ? Limit("donor", "power", draw.Of(80, 100, 120)) : Limit("chassis", "space", draw.Of(560, 580, 600)),
        7 => draw.Chance(50) ? Against("donor", "power", "chassis", "limit") : Against("donor", "height", "chassis", "space"),
        _ => Year(draw.Of("chassis", "donor")),
    };

    /// <summary>A question on facts, a choice or what a choice stands for, mostly of one part of the vehicle.</summary>
    public Question Any(int system)
    {
        if (draw.Chance(45))
        {
            return OfFacts();
        }

        var near = choices.Where(choice => choice.System == system).ToList();
        var choice = near.Count > 0 && draw.Chance(80) ? draw.Of(near) : draw.Of(choices);
        return choice.Id switch
        {
            "gearbox" when draw.Chance(40) => Control(choice),
            _ when draw.Chance(20) => Not(choice),
            _ => OfChoice(choice),
        };
    }

    /// <summary>The families of one subject; not total, for only a few are asked for.</summary>
    public Question Family(string subject) => new(
        [.. entities.Chassis.Where(_ => subject == "chassis").Concat(entities.Donors.Where(_ => subject == "donor")).Select(variant => variant.Family).Distinct(StringComparer.Ordinal)
            .Select(family => new Ask($"{subject}.family", family, trial => Of(subject, trial).Family == family))],
        IsTotal: false);

    public static DrawnVariant Of(string subject, Trial trial) => subject == "chassis" ? trial.Chassis : trial.Donor;

    public static Ask Taken(DrawnChoice choice, params ImmutableArray<string> options) => new(
        $"choice.{choice.Id}",
        options.Length == 1 ? options[0] : $"[{string.Join(", ", options)}]",
        trial => options.Contains(trial.Options[choice.Id]));

    private static Question OneOf(string subject, string fact, params ImmutableArray<string> values) => new(
        [.. values.Select(value => new Ask($"{subject}.{fact}", value, trial => Of(subject, trial).Facts[fact] == value))],
        IsTotal: true);

    private Question Stage(string subject)
    {
        var cut = DrawnEntities.Stages[1 + draw.Next(3)];
        bool Reached(Trial trial) => string.CompareOrdinal(Of(subject, trial).Facts["stage"], cut) >= 0;
        return Two($"{subject}.stage", $"{{from: {cut}}}", $"{{below: {cut}}}", Reached);
    }

    private static Question Limit(string subject, string fact, int cut) =>
        Two($"{subject}.{fact}", Draw.Text($"{{from: {cut}}}"), Draw.Text($"{{below: {cut}}}"), trial => Of(subject, trial).Number(fact) >= cut);

    private static Question Against(string subject, string fact, string other, string otherFact) =>
        Two($"{subject}.{fact}", $"{{above: {other}.{otherFact}}}", $"{{to: {other}.{otherFact}}}", trial => Of(subject, trial).Number(fact) > Of(other, trial).Number(otherFact));

    private Question Year(string subject)
    {
        var cut = DrawnEntities.Stretches[1 + draw.Next(3)].From;
        return Two($"{subject}.year", Draw.Text($"{{from: {cut}}}"), Draw.Text($"{{below: {cut}}}"), trial => Of(subject, trial).From >= cut);
    }

    private static Question OfChoice(DrawnChoice choice) =>
        new([.. choice.Options.Concat(choice.Applies is null ? [] : ["none"]).Select(option => Taken(choice, option))], IsTotal: true);

    private Question Not(DrawnChoice choice)
    {
        var taken = Taken(choice, [.. draw.Shuffled(choice.Options).Take(1 + draw.Next(choice.Options.Length - 1)).Order(StringComparer.Ordinal)]);
        return new Question([taken, new Ask("not", $"{{{taken}}}", trial => !taken.Holds(trial))], IsTotal: true);
    }

    private Question Control(DrawnChoice gearbox)
    {
        string Taken(Trial trial)
        {
            var bound = gearbox.Binds[trial.Options[gearbox.Id]];
            return entities.BoxControl[bound switch { "chassis.box" => trial.Chassis.Facts["box"], "donor.box" => trial.Donor.Facts["box"], _ => bound }];
        }

        return new Question([.. new[] { "cable", "rod" }.Select(control => new Ask("gearbox.control", control, trial => Taken(trial) == control))], IsTotal: true);
    }

    private static Question Two(string key, string yes, string no, Func<Trial, bool> holds) =>
        new([new Ask(key, yes, holds), new Ask(key, no, trial => !holds(trial))], IsTotal: true);
}
