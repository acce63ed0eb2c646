using System.Globalization;

namespace Swapwright.Tests.Rules;

/// <summary>Draws conditions in the form in which a contributor writes them.</summary>
internal sealed class RandomConditions(Random random)
{
    public static readonly int[] Powers = [40, 55, 70, 90];

    public List<string> ChassisIds { get; } = [];

    /// <summary>A family of chassis that some variant belongs to.</summary>
    public string Family { get; set; } = "";

    public List<string> DonorIds { get; } = [];

    public List<(string Id, string[] Options, string? Binds)> Choices { get; } = [];

    /// <summary>The positions whose answers may be asked for.</summary>
    public List<string> Answerable { get; } = [];

    /// <param name="depth">How deep <c>any</c>, <c>all</c> and <c>not</c> may nest.</param>
    public string Draw(int depth)
    {
        var terms = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var left = random.Next(4) == 0 ? 2 : 1; left > 0; left--)
        {
            var (key, value) = Term(depth);
            terms[key] = value;
        }

        return $"{{{string.Join(", ", terms.Select(term => $"{term.Key}: {term.Value}"))}}}";
    }

    private (string Key, string Value) Term(int depth) => random.Next(depth > 0 ? 16 : 11) switch
    {
        0 => ("chassis.fuel", List("carb", "single", "multi")),
        1 or 2 => Stage(),
        3 or 4 => Power(),
        5 => Of(("chassis.cooler", Flag()), ("donor.knock", Flag())),
        6 => Of(("chassis.year", Years()), ("donor.year", Years())),
        7 => Of(("chassis.family", Family), ("donor.variant", List([.. DonorIds])), ("chassis.variant", List([.. ChassisIds])), ("donor.box", List("g0", "g1", "g2"))),
        8 or 9 => Choice(),
        10 => Answer(),
        11 or 12 => ("any", $"[{Draw(depth - 1)}, {Draw(depth - 1)}]"),
        13 => ("all", $"[{Draw(depth - 1)}, {Draw(depth - 1)}]"),
        _ => ("not", Draw(depth - 1)),
    };

    private (string Key, string Value) Stage()
    {
        var (subject, other) = Of(("chassis", "donor"), ("donor", "chassis"));
        return ($"{subject}.stage", Bounded(List("s0", "s1", "s2", "s3"), () => Of("s0", "s1", "s2", "s3"), $"{other}.stage"));
    }

    private (string Key, string Value) Power()
    {
        var (subject, other) = Of(("chassis", "donor"), ("donor", "chassis"));
        return ($"{subject}.power", Bounded(Number(), Number, $"{other}.power"));
    }

    private (string Key, string Value) Choice()
    {
        if (Choices.Count == 0)
        {
            return Power();
        }

        var (id, options, binds) = Choices[random.Next(Choices.Count)];
        return binds switch
        {
            "gearbox" when random.Next(2) == 0 => Of(("gearbox.control", Of("cable", "rod")), ("gearbox.rating", Bounded(Number(), Number, "donor.power"))),
            "brain" when random.Next(2) == 0 => Of(("brain.knock", Flag()), ("brain.stage", Bounded(List("s1", "s2"), () => Of("s1", "s2"), "donor.stage"))),
            _ => ($"choice.{id}", random.Next(8) == 0 ? "none" : List(options)),
        };
    }

    private (string Key, string Value) Answer() => Answerable.Count == 0
        ? Choice()
        : ($"answer.{Answerable[random.Next(Answerable.Count)]}", Of("{source: chassis}", "{source: [donor, new]}", "{treatment: refresh}", "{source: [chassis, donor], treatment: as-is}", "{part: [part-0, part-1]}"));

    private string Bounded(string exact, Func<string> value, string other) => random.Next(7) switch
    {
        0 => exact,
        1 => $"{{from: {value()}}}",
        2 => $"{{above: {value()}}}",
        3 => $"{{to: {value()}, from: {value()}}}",
        4 => $"{{below: {value()}}}",
        5 => $"{{equals: {other}}}",
        _ => $"{{{Of("from", "to", "above", "below")}: {other}}}",
    };

    private string Years() => Of("{from: 1989}", "{to: 1991}", "{above: 1988}", "{below: 1992}", "{from: 1989, to: 1991}", "[1986, 1987, 1988]");

    private string Flag() => Of("true", "false");

    private string Number() => Powers[random.Next(Powers.Length)].ToString(CultureInfo.InvariantCulture);

    private string List(params string[] from) => random.Next(2) == 0 ? Of(from) : $"[{string.Join(", ", from.Where(_ => random.Next(2) == 0).DefaultIfEmpty(from[0]))}]";

    private T Of<T>(params T[] from) => from[random.Next(from.Length)];
}
