using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Sheets;

/// <summary>The counts by which guides are held against each other.</summary>
public sealed record GuideCounts
{
    /// <summary>Whole amounts of the base's currency.</summary>
    public required Range3 Money { get; init; }

    /// <summary>Whole hours of work.</summary>
    public required Range3 Hours { get; init; }

    /// <summary>kW of the donor; null where its facts do not say it.</summary>
    public decimal? Power { get; init; }

    /// <summary>W/kg of the finished vehicle; null where the masses are not known.</summary>
    public decimal? PowerToMass { get; init; }

    /// <summary>Devices that want a plug.</summary>
    public int Plugs { get; init; }

    /// <summary>Plugs that are changed, added or re-pinned: neither straight in nor only lengthened nor met by a lead.</summary>
    public int PlugsChanged { get; init; }

    /// <summary>Wires that are run or joined anew; lengthened ones are not counted.</summary>
    public int WiresAdded { get; init; }

    /// <summary>Pieces on the shopping list.</summary>
    public int PartsBought { get; init; }

    /// <summary>Share of answers that somebody built and drove, in per cent; null where there is no answer.</summary>
    public decimal? BuiltShare { get; init; }

    /// <summary>The most that a task asks for: plain, careful, practised or specialist.</summary>
    public required string Skill { get; init; }

    /// <summary>Tasks that ask for that skill, the longest first.</summary>
    public ImmutableArray<string> Hardest { get; init; } = [];

    public static GuideCounts Of(Sheet sheet)
    {
        var standings = sheet.Answers.Select(answer => answer.Rule?.Standing).OfType<string>().ToList();
        var skill = sheet.Tasks.Select(task => task.Skill).DefaultIfEmpty("plain").MaxBy(Rank)!;
        var counts = sheet.Wiring?.Counts;
        return new GuideCounts
        {
            Money = Whole(sheet.Money),
            Hours = Whole(sheet.Hours),
            Power = sheet.PowerKw,
            PowerToMass = sheet.Ledger("load")?.Figure("power-to-mass") is { } ratio ? Math.Round((decimal)ratio.Value, 1) : null,
            Plugs = sheet.Wiring?.Plugs.Count(plug => plug.Outcome != PlugOutcome.Capped) ?? 0,
            PlugsChanged = counts is null ? 0 : counts.Changed + counts.Added + counts.RePinned,
            WiresAdded = sheet.Wiring?.Runs.Count(run => run.Purpose != WirePurpose.Extension && run.ScreenOf is null) ?? 0,
            PartsBought = sheet.Shopping.Where(line => line.Part.Wiring is null).Sum(line => line.Amount),
            BuiltShare = standings.Count == 0 ? null : 100m * standings.Count(standing => standing == "built") / standings.Count,
            Skill = skill,
            Hardest = [.. sheet.Tasks.Where(task => task.Skill == skill).OrderByDescending(task => task.Hours.Likely).ThenBy(task => task.Id, StringComparer.Ordinal).Select(task => task.Title)],
        };
    }

    private static Range3 Whole(Range3 range) => new(Math.Round(range.Least), Math.Round(range.Likely), Math.Round(range.Most));

    private static int Rank(string skill) => skill switch
    {
        "plain" => 0,
        "careful" => 1,
        "practised" => 2,
        _ => 3,
    };
}
