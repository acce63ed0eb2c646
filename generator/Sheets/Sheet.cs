using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Worksheets.Effort;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Sheets;

/// <summary>What holds at one position in one combination.</summary>
/// <param name="Standing">Answers that stand: one in a sound base; none is a gap, several a contradiction unless they agree.</param>
/// <param name="Overridden">Rules that apply here and are silenced, each with who silences it.</param>
public sealed record SheetAnswer(Position Position, ImmutableArray<StandingAnswer> Standing, ImmutableArray<OverriddenRule> Overridden)
{
    public Answer? Answer => Standing.IsEmpty ? null : Standing[0].Answer;

    public Rule? Rule => Standing.IsEmpty ? null : Standing[0].Rule;
}

public sealed record OverriddenRule(Rule Rule, ImmutableArray<Rule> By);

/// <summary>What is to be bought or found, with what it is for.</summary>
/// <param name="Amount">How many are wanted.</param>
public sealed record ShoppingLine(Part Part, int Amount, ImmutableArray<Position> For)
{
    /// <summary>Which ones to ask for, where one part is sold in several sizes: the designations of belts.</summary>
    public ImmutableArray<string> Sizes { get; init; } = [];

    /// <summary>Of all of them; null where the part has no price.</summary>
    public Range3? Price => Part.Price is { } one ? new Range3(one.Least * Amount, one.Likely * Amount, one.Most * Amount) : null;
}

/// <summary>A number that a rule states beside the one computed; null where the combination has no such number.</summary>
public sealed record ValueComparison(StandingValue Stated, decimal? Computed)
{
    public bool Agrees => Computed is { } computed && Math.Abs(computed - Stated.Value.Value) <= Stated.Value.Tolerance;

    /// <summary>What the comparison is worth, in a word or two: a number that was written down from the worksheet can only have changed.</summary>
    public string Verdict => (Stated.Value.WrittenDown, Agrees) switch
    {
        (true, true) => "is unchanged since it was written down",
        (true, false) => "has changed since it was written down",
        (_, true) => "agrees",
        _ => "differs",
    };
}

/// <summary>Everything for one combination, as data.</summary>
public sealed record Sheet
{
    public required Combination Combination { get; init; }

    public required ChassisVariant Chassis { get; init; }

    public required DonorVariant Donor { get; init; }

    /// <summary>Choice id → option id, <c>none</c> where the choice does not apply.</summary>
    public required ImmutableArray<KeyValuePair<string, string>> Choices { get; init; }

    public required bool Buildable { get; init; }

    public ImmutableArray<Rule> ExcludedBy { get; init; } = [];

    /// <summary>A line for each position that applies, in the order of the guide.</summary>
    public ImmutableArray<SheetAnswer> Answers { get; init; } = [];

    public ImmutableArray<FittedBelt> Belts { get; init; } = [];

    /// <summary>null where neither vehicle brings a harness.</summary>
    public WiringSheet? Wiring { get; init; }

    /// <summary>null where the base describes no ports.</summary>
    public HoseSheet? Hoses { get; init; }

    /// <summary>The worksheets that end in numbers, in the order of the guide.</summary>
    public ImmutableArray<Ledger> Ledgers { get; init; } = [];

    /// <summary>Greatest power of the engine the chassis was built with and of the donor's, kW; null where the base does not say.</summary>
    public decimal? PowerBeforeKw { get; init; }

    /// <inheritdoc cref="PowerBeforeKw"/>
    public decimal? PowerKw { get; init; }

    public Gearbox? Gearbox { get; init; }

    public Knowledge.Ecu? Ecu { get; init; }

    /// <summary>In order of work.</summary>
    public ImmutableArray<WorkTask> Tasks { get; init; } = [];

    /// <summary>Tools of the tasks, one after the other: those that are asked for here.</summary>
    public ImmutableArray<TaskTool> Tools { get; init; } = [];

    public ImmutableArray<ShoppingLine> Shopping { get; init; } = [];

    /// <summary>Rules that speak in this combination.</summary>
    public ImmutableArray<Rule> Speaking { get; init; } = [];

    public ImmutableArray<ValueComparison> Values { get; init; } = [];

    /// <summary>Hours, money and days.</summary>
    public required EffortResult Effort { get; init; }

    /// <summary>Hours of work: nine builds in ten, with the mean between.</summary>
    public Range3 Hours => SheetEffort.Range(Effort.Hours);

    /// <summary>Prices on the shopping list in the base's currency: nine builds in ten, with the mean between.</summary>
    public Range3 Money => SheetEffort.Range(Effort.Money);

    /// <summary>What all the work takes beyond a usual set of tools, each named once, by name.</summary>
    public IEnumerable<string> ToolNames => Tools.Select(tool => tool.Title).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);

    public Ledger? Ledger(string id) => Ledgers.FirstOrDefault(ledger => ledger.Id == id);

    public SheetAnswer? At(string position) => Answers.FirstOrDefault(answer => answer.Position.Id == position);
}
