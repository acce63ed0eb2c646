using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>Where a figure of the ledger of tightening and fluids comes from: tasks, and positions whose answers bring parts.</summary>
internal static class TighteningSources
{
    public const string Ledger = "torques";

    /// <summary>The tasks in which the fastener of <c>torques.bolt.ID</c> is tightened.</summary>
    public static ImmutableArray<WorkTask> Tasks(KnowledgeBase kb, string name) => Bolt(name) is { } bolt ? [.. kb.Tasks.All.Where(task => Has(task.Fasteners, bolt))] : [];

    /// <summary>The positions at which a part may bring the fastener or the filling, and those on which fillings depend.</summary>
    public static ImmutableArray<string> Positions(KnowledgeBase kb, string name)
    {
        var (bolt, fluid) = (Bolt(name), Fluid(name));
        var parts = kb.Parts.All.Where(part => (bolt is not null && Has(part.Fasteners, bolt)) || Of(part.Fluids, fluid).Any()).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        var brought = kb.Rules.All.SelectMany(rule => rule.Answers).Where(answer => answer.PartIds.Any(parts.Contains)).Select(answer => answer.Position);
        var asked = kb.Chassis.All.Cast<Variant>().Concat(kb.Donors.All).SelectMany(variant => Of(variant.Fluids, fluid)).Concat(kb.Parts.All.SelectMany(part => Of(part.Fluids, fluid)))
            .SelectMany(filling => new[] { filling.At, filling.Needs }).OfType<string>();
        return [.. brought.Concat(asked).Where(kb.Positions.Has).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    /// <summary>The fasteners of <c>torques.bolt.ID</c> that are tightened in part of the space only.</summary>
    public static ImmutableArray<FastenerEntry> Conditional(KnowledgeBase kb, string name) => Bolt(name) is { } bolt
        ? [.. kb.Tasks.All.SelectMany(task => task.Fasteners).Concat(kb.Parts.All.SelectMany(part => part.Fasteners)).Where(fastener => fastener.Id == bolt && fastener.When is not null)]
        : [];

    private static string? Bolt(string name) => name.Split('.') is [Ledger, "bolt", var bolt] ? bolt : null;

    private static string? Fluid(string name) => name.Split('.') is [Ledger, "fluid", var fluid] ? fluid : null;

    private static bool Has(ImmutableArray<FastenerEntry> fasteners, string bolt) => fasteners.Any(fastener => fastener.Id == bolt);

    private static IEnumerable<FluidEntry> Of(ImmutableArray<FluidEntry> fluids, string? kind) => fluids.Where(fluid => fluid.Kind == kind);
}
