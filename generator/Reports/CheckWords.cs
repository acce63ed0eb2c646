using System.Globalization;
using System.Numerics;
using Swapwright.Diagnostics;

namespace Swapwright.Reports;

/// <summary>The sentences that every form of the check for people says alike.</summary>
internal static class CheckWords
{
    public const string NotProved = "The space of combinations was not examined: mend the files first.";

    /// <summary>What the base holds.</summary>
    public static string Inventory(Counts counts) => string.Join(", ", new[]
    {
        $"{Many(counts.ChassisVariants, "chassis variant")} and {Many(counts.DonorVariants, "donor variant")}",
        Many(counts.Choices, "choice"),
        Many(counts.Positions, "position"),
        Many(counts.Rules, "rule"),
        Many(counts.Connectors, "connector"),
    });

    /// <summary>What the space holds.</summary>
    public static string Space(Counts counts) =>
        $"{Many(counts.Combinations, "combination")}, {Grouped(counts.Buildable)} of {(counts.Combinations.IsOne ? "it" : "them")} buildable, in {Many(counts.Guides, "guide")}.";

    /// <summary>What is proved where no error was found.</summary>
    public static string Answers(Counts counts) => counts.Buildable.IsOne
        ? "Every position that applies has exactly one answer in the one buildable combination."
        : $"Every position that applies has exactly one answer in all {Many(counts.Buildable, "buildable combination")}.";

    public static string Tally(Counts counts) =>
        $"{Many(counts.Errors, "error")}, {Many(counts.Warnings, "warning")}, {Many(counts.Notes, "note")}{(counts.Accepted == 0 ? "" : $"; {Grouped(counts.Accepted)} accepted with a reason")}.";

    /// <summary>How much of the space a finding touches, and which part of it; null where it does not speak of the space.</summary>
    public static string? Extent(Finding finding, BigInteger buildable) => finding.Touches is { } touches
        ? $"{Grouped(touches)} of {Many(buildable, "buildable combination")}{(finding.Region is { } region ? $": {region}" : "")}"
        : null;

    /// <summary>The combination that shows a finding, as it is named on the command line.</summary>
    public static string Combination(Witness witness)
    {
        var choices = witness.Choices.Where(choice => choice.Value != Knowledge.Choice.None).Select(choice => $"{choice.Key}={choice.Value}");
        return string.Join(' ', choices.Prepend(witness.Donor).Prepend(witness.Chassis));
    }

    /// <summary>A place as it is found from where the program was run.</summary>
    public static string At(Place place, string folder) => folder is "" or "." ? place.ToString() : $"{folder.TrimEnd('/')}/{place}";

    public static string Many(BigInteger count, string noun) => Grouped(count) + (count.IsOne ? $" {noun}" : $" {noun}s");

    public static string Grouped(BigInteger number) => number.ToString("N0", CultureInfo.InvariantCulture);
}
