using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Computes the wiring of one combination. A pure function: the order of devices, plugs, pins and leads in the input changes
/// nothing; data that cannot be used becomes a problem, never an exception.
/// </summary>
/// <remarks>
/// A lengthened wire takes a piece of routing factor × distance + slack; a new wire likewise, and by way of the trunk where it runs
/// between bay and ECU. Lengths are rounded up to whole millimetres, so that they add exactly.
/// </remarks>
public static class WiringWorksheet
{
    public static WiringSheet Compute(WiringInput input)
    {
        var problems = new ProblemList();
        var data = InputCheck.Read(input, problems);
        var routing = new WireRouting(data);
        var plugs = new PlugFitting(data, routing, problems).All();

        // The ECU before the cabin: a wire that the ECU needs from the bulkhead plug is then the cabin's wire as well.
        var feeds = SharedFeeds.Of(data, [.. routing.Runs]);
        var bulkhead = new BulkheadFeeds(data, [.. routing.Runs], feeds);
        var builder = new AdapterBuilder(data, routing, bulkhead, problems);
        var ecuAdapter = builder.ForEcu();
        var bodyAdapter = builder.ForBody();
        var needs = NeedTracing.Trace(data, problems);
        ImmutableArray<WireRun> runs =
            [.. Screens.Marked(data, SharedFeeds.WithRelays(data, [.. routing.Runs], feeds)).OrderBy(run => run.Role, StringComparer.Ordinal).ThenBy(run => run.Cavity, CavityOrder.Instance).ThenBy(run => run.Label, StringComparer.Ordinal)];
        ImmutableArray<AdapterHarness> adapters = [.. new[] { ecuAdapter, bodyAdapter }.OfType<AdapterHarness>()];
        plugs = PlugFitting.Settled(plugs, runs);
        return new(
            plugs, PlugCounts.Of(plugs), ecuAdapter, bodyAdapter, needs, runs, BillOfWiring.Of(data, plugs, runs, adapters), problems.Sorted())
        {
            Data = data,
            Overloads = feeds,
            BulkheadFeeds = bulkhead.TooThin(),
        };
    }
}
