using System.Collections.Immutable;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class PlugOutcomeTests
{
    private static readonly Ecu Donor = Bench.Ecu("donor", "ecu-8", "1:coolant", "2:sensor-ground", "3:injector-1", "4:power-ground");

    [Fact]
    public void Compute_SameSignalsWithinReach_GoesStraightIn()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", new(40, 0, 0), "1:coolant", "2:sensor-ground"))
            .WithPlug("sensor", Plug("oval-2", Origin, "1:coolant", "2:sensor-ground")));

        Assert.Equal(PlugOutcome.StraightIn, Assert.Single(sheet.Plugs).Outcome);
        Assert.All(sheet.Plugs[0].Wires, wire => Assert.Equal(WireAction.Stays, wire.Action));
        Assert.Equal(new PlugCounts(1, 0, 0, 0, 0, 0, 0, 0, 0), sheet.Counts);
        Assert.Empty(sheet.Bill.Cuts);
        Assert.Empty(sheet.Problems);
    }

    [Fact]
    public void Compute_BeyondReach_LengthensEveryWire()
    {
        // 3-4-5: 300 and 400 give 500 mm; 1.2 × 500 + 60 = 660 mm a wire; two wires, two splices each.
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", new(300, 0, 400), "1:coolant", "2:sensor-ground"))
            .WithPlug("sensor", Plug("oval-2", Origin, "1:coolant", "2:sensor-ground")));

        var plug = Assert.Single(sheet.Plugs);
        Assert.Equal(PlugOutcome.Extended, plug.Outcome);
        Assert.True(plug.Extended);
        Assert.Equal(500, plug.DistanceMm);
        Assert.Equal([660d, 660d], plug.Wires.Select(wire => wire.ExtensionMm));
        Assert.Equal(new PlugCounts(0, 0, 0, 0, 0, 1, 1, 0, 0), sheet.Counts);
        Assert.Equal(4, sheet.Bill.Splices);
        Assert.Equal(4, sheet.Bill.HeatShrink);
        Assert.Empty(sheet.Bill.Terminals);
        Assert.Equal([new WireLine(0.75, "BN", 1320, 2)], sheet.Bill.Wire.AsEnumerable());
    }

    [Fact]
    public void Compute_SignalsInOtherCavities_MovesThem()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", Origin, "1:coolant", "2:sensor-ground"))
            .WithPlug("sensor", Plug("oval-2", Origin, "1:sensor-ground", "2:coolant")));

        var plug = Assert.Single(sheet.Plugs);
        Assert.Equal(PlugOutcome.RePinned, plug.Outcome);
        Assert.Equal([("2", "1"), ("1", "2")], plug.Moves.Select(move => (move.FromCavity, move.Cavity)));
        Assert.Equal([new CavityClash("1", "coolant", "sensor-ground", true), new CavityClash("2", "sensor-ground", "coolant", true)], plug.Clashes.AsEnumerable());
        Assert.Empty(sheet.Bill.Terminals);
        Assert.Equal(1, sheet.Counts.RePinned);
    }

    [Fact]
    public void Compute_MatesNamedByOneSideOnly_CountsAsMating()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("a", "square-2", Origin, "1:coolant"), Device("b", "square-2-keyed", Origin, "1:throttle"))
            .WithPlug("a", Plug("square-2-keyed", Origin, "1:coolant"))
            .WithPlug("b", Plug("square-2", Origin, "1:throttle")));

        Assert.Equal(2, sheet.Counts.StraightIn);
    }

    [Fact]
    public void Compute_OtherFamily_ChangesThePlug()
    {
        // A sealed housing with three cavities, two of them used: two terminals, two seals, one blanking plug.
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "flat-3", Origin, "1:coolant", "3:sensor-ground"))
            .WithPlug("sensor", Plug("square-2", Origin, "1:sensor-ground", "2:coolant")));

        var plug = Assert.Single(sheet.Plugs);
        Assert.Equal(PlugOutcome.Changed, plug.Outcome);
        Assert.Equal([("2", "1"), ("1", "3")], plug.Moves.Select(move => (move.FromCavity, move.Cavity)));
        Assert.Empty(plug.Clashes);
        Assert.Equal([new TerminalLine("flat-3", "blade-2.8", 2, 2)], sheet.Bill.Terminals.AsEnumerable());
        Assert.Equal(1, sheet.Bill.BlankingPlugs);
        Assert.Equal([new CountLine("flat-3", 1)], sheet.Bill.Housings.AsEnumerable());
    }

    [Fact]
    public void Compute_ChangedAndFar_CountsAsBoth()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", new(0, 100, 0), "1:coolant", "2:sensor-ground"))
            .WithPlug("sensor", Plug("square-2", Origin, "1:coolant", "2:sensor-ground")));

        Assert.Equal(new PlugCounts(0, 0, 1, 0, 0, 0, 1, 0, 0), sheet.Counts);
        Assert.Equal([180d, 180d], sheet.Plugs[0].Wires.Select(wire => wire.ExtensionMm));
    }

    [Fact]
    public void Compute_LeadCoversTheFamilies_UsesIt()
    {
        var input = Empty
            .With(Device("sensor", "oval-2", Origin, "1:coolant", "2:sensor-ground"))
            .WithPlug("sensor", Plug("square-2", Origin, "2:coolant", "1:sensor-ground"));

        var right = WiringWorksheet.Compute(input with { Leads = [new("lead-b", "square-2-keyed", "oval-2")] });
        var wrongWay = WiringWorksheet.Compute(input with { Leads = [new("lead-a", "oval-2", "square-2")] });

        Assert.Equal(PlugOutcome.Lead, right.Plugs[0].Outcome);
        Assert.Equal("lead-b", right.Plugs[0].LeadPart);
        Assert.Equal([new CountLine("lead-b", 1)], right.Bill.Leads.AsEnumerable());
        Assert.Empty(right.Bill.Terminals);
        Assert.Equal(PlugOutcome.Changed, wrongWay.Plugs[0].Outcome);
    }

    [Fact]
    public void Compute_NoPlugForTheRole_RunsEveryWireToTheEcu()
    {
        // Device to trunk 500 mm, trunk to ECU 1000 mm: 1.2 × 1500 + 60 = 1860 mm.
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("injector", "oval-2", new(300, 400, 0), "1:injector-1", "2:coolant"))
            .WithEcus(null, Donor));

        var plug = Assert.Single(sheet.Plugs);
        Assert.Equal(PlugOutcome.Added, plug.Outcome);
        Assert.All(plug.Wires, wire => Assert.Equal(WireAction.Runs, wire.Action));
        var run = Assert.Single(sheet.Runs, run => run.Signal == "injector-1");
        Assert.Equal(1860, run.LengthMm);
        Assert.Equal(new WireEnd(WireEndKind.Terminal, "donor", "a3", "ecu-8"), run.To);
        Assert.Equal(("YE/BK", 0.75, 0), (run.Colour, run.SizeMm2, run.Splices));
        Assert.Equal(1, sheet.Counts.Added);
    }

    [Fact]
    public void Compute_SignalOnTheCabinOnly_RunsToTheBulkhead()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sender", "oval-2", Origin, "1:gauge"))
            .WithBodies(null, Plug("bulkhead-6", new(0, 0, 200), "4:gauge")));

        // 1.2 × 200 + 60 = 300 mm, one terminal at each end; the adapter's row names the same piece.
        var run = Assert.Single(sheet.Runs);
        Assert.Equal(300, run.LengthMm);
        Assert.Equal(new WireEnd(WireEndKind.Terminal, "body", "4", "bulkhead-6"), run.To);
        Assert.Equal(run.Label, Assert.Single(sheet.BodyAdapter!.Rows).Run);
        Assert.Equal([new TerminalLine("bulkhead-6", "blade-6.3", 1, 0), new TerminalLine("oval-2", "blade-2.8", 1, 1)], sheet.Bill.Terminals.AsEnumerable());
    }

    [Fact]
    public void Compute_SignalNowhere_IsAProblem()
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("valve", "oval-2", Origin, "1:purge")));

        var problem = Assert.Single(sheet.Problems);
        Assert.Equal((WiringProblemKind.SignalNowhere, "valve", "1", "purge"), (problem.Kind, problem.Subject, problem.Cavity, problem.Signal));
        Assert.Equal(WireAction.Unreached, sheet.Plugs[0].Wires[0].Action);
    }

    [Fact]
    public void Compute_MissingSharedSignal_JoinsTheNearestWire()
    {
        // Nearest sensor ground is 100 mm away: 1.2 × 100 + 60 = 180 mm, one splice, one terminal with its seal.
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", Origin, "1:coolant", "2:sensor-ground"), Device("near", "oval-2", new(100, 0, 0), "2:sensor-ground"))
            .WithPlug("sensor", Plug("oval-2", Origin, "1:coolant"))
            .WithPlug("far", Plug("oval-2", new(900, 0, 0), "1:sensor-ground"))
            .WithPlug("near", Plug("oval-2", new(100, 0, 0), "2:sensor-ground"))
            .WithEcus(null, Donor));

        var plug = sheet.Plugs.Single(plug => plug.Role == "sensor");
        Assert.Equal(PlugOutcome.RePinned, plug.Outcome);
        Assert.Equal(WireAction.Joins, plug.Wires[1].Action);
        var run = Assert.Single(sheet.Runs, run => run.Purpose == WirePurpose.Device);
        Assert.Equal((180d, "near", 1), (run.LengthMm, run.To.Place, run.Splices));
        Assert.Equal((1, 1), (sheet.Counts.Joined, sheet.Counts.Capped));
    }

    [Fact]
    public void Compute_PowerGroundMissing_NeverJoinsSensorGround()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("coil", "oval-2", Origin, "2:power-ground"))
            .WithPlug("sensor", Plug("oval-2", new(10, 0, 0), "1:sensor-ground"))
            .WithPlug("pump", Plug("oval-2", new(800, 0, 0), "1:power-ground")));

        var run = Assert.Single(sheet.Runs);
        Assert.Equal(("pump", "power-ground"), (run.To.Place, run.Signal));
    }

    [Fact]
    public void Compute_FeedMissing_ComesFromTheBulkheadBeforeTheEcu()
    {
        var ecu = Bench.Ecu("donor", "ecu-8", "1:battery");
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("relay", "oval-2", Origin, "1:battery"))
            .WithEcus(ecu, ecu)
            .WithBodies(null, Plug("bulkhead-6", new(0, 0, 200), "1:battery")));

        Assert.Equal("body", Assert.Single(sheet.Runs).To.Place);
    }

    [Fact]
    public void Compute_EcuCavityAlreadyWired_SplicesThere()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", Origin, "1:coolant"))
            .WithEcus(Donor, Donor));

        var run = Assert.Single(sheet.Runs);
        Assert.Equal(new WireEnd(WireEndKind.Splice, "donor", "a1", "ecu-8"), run.To);
        Assert.Equal(1, run.Splices);
        Assert.Null(sheet.EcuAdapter);
    }

    [Fact]
    public void Compute_TwoGroundsOnOneDevice_PairOffAndTheExtraJoins()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("coil", "flat-3", Origin, "1:power-ground", "3:power-ground"))
            .WithPlug("coil", Plug("flat-3", Origin, "3:power-ground")));

        var plug = Assert.Single(sheet.Plugs);
        Assert.Equal([("1", WireAction.Joins), ("3", WireAction.Stays)], plug.Wires.Select(wire => (wire.Cavity, wire.Action)));
        Assert.Equal(60, Assert.Single(sheet.Runs).LengthMm);
    }

    [Fact]
    public void Compute_DeviceNotFitted_CapsThePlug()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithPlug("valve", Plug("oval-2", Origin, "1:feed", "2:purge")));

        var plug = Assert.Single(sheet.Plugs);
        Assert.Equal(PlugOutcome.Capped, plug.Outcome);
        Assert.Equal(["feed", "purge"], plug.Capped.Select(wire => wire.Signal));
        Assert.Equal((1, 0), (sheet.Counts.Capped, sheet.Bill.Caps));
    }

    [Fact]
    public void Compute_WireWithoutADeviceCavity_IsCapped()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("kept", "flat-3", Origin, "1:coolant"), Device("changed", "oval-2", Origin, "1:throttle"))
            .WithPlug("kept", Plug("flat-3", Origin, "1:coolant", "3:feed"))
            .WithPlug("changed", Plug("flat-3", Origin, "1:throttle", "2:feed")));

        var changed = Assert.Single(sheet.Plugs[0].Capped);
        var kept = Assert.Single(sheet.Plugs[1].Capped);
        Assert.Equal(PlugOutcome.StraightIn, sheet.Plugs[1].Outcome);
        Assert.True(kept.StaysInHousing);
        Assert.False(changed.StaysInHousing);
        Assert.Equal(1, sheet.Bill.Caps);
    }

    [Fact]
    public void Compute_CurrentAsksForMore_TakesTheLargerSizeAndReports()
    {
        // The table gives 10.5 A to 1.25 mm², which is 1.5 mm² of the sizes of IEC 60228; the found wire has 0.75.
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("pump", "oval-2", new(200, 0, 0), "1:feed"))
            .WithPlug("pump", Plug("oval-2", Origin, "1:feed")));

        var run = Assert.Single(sheet.Runs);
        Assert.Equal((1.5, 0.75), (run.SizeMm2, run.AskedSizeMm2));
        Assert.Equal(WiringProblemKind.ThinWire, Assert.Single(sheet.Problems).Kind);
    }

    [Fact]
    public void Compute_ImmutableArraysLeftOut_GivesAnEmptySheet()
    {
        var sheet = WiringWorksheet.Compute(Empty with
        {
            Devices = default,
            Needs = default,
            Leads = default,
            Harness = Empty.Harness with { Plugs = default, MadeFor = new Ecu("x", "x", default) },
            Ecu = new Ecu("y", "y", [new EcuPlug("a", "ecu-8", default)]),
        });

        Assert.Empty(sheet.Plugs);
        Assert.Empty(sheet.Problems);
        Assert.Empty(sheet.EcuAdapter!.Rows);
    }
}
