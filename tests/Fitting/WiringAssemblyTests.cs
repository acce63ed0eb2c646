using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Tests.Rules;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Fitting;

/// <summary>Which devices are fitted, whose harness serves them, which ECU it meets.</summary>
public class WiringAssemblyTests
{
    private static readonly KnowledgeBase Base = new MemoryBase
    {
        ["kb.yaml"] = "title: Wiring\nas-of: 2026-03-01\nharness-position: loom\nlimits: {wiring: {reach: 30}}\n",
        ["vocabulary.yaml"] = """
            signals:
              feed: {title: Feed, kind: power, shared: true}
              lamp: {title: Charge lamp, kind: low-side}
              warm: {title: Coolant, kind: analogue}
              branch: {title: Branch, kind: power, shared: true, through: pump, branch-of: feed}
            devices:
              alternator: {title: Alternator, position: alternator}
              sender: {title: Sender}
              pump: {title: Pump, current: 3}
              fan: {title: Fan, current: 3}

            """,
        ["positions.yaml"] = """
            systems: {electrics: {title: Electrics}}
            positions:
              alternator: {system: electrics, title: Alternator}
              loom: {system: electrics, title: Loom}

            """,
        ["connectors/oval.yaml"] = "title: Oval\nrows: [[1, 2]]\n",
        ["connectors/square.yaml"] = "title: Square\nrows: [[1, 2]]\n",
        ["connectors/tab.yaml"] = "title: Tab\nrows: [[1]]\n",
        ["connectors/row.yaml"] = "title: Row\nrows: [[1, 2, 3]]\n",
        ["chassis/car.yaml"] = """
            title: Car
            years: {from: 1990, to: 1992}
            battery: {title: the joint in the boot, location: [0, 0, 4000]}
            devices:
              alternator: {title: Car alternator, connector: oval, location: [0, 0, 0], pins: {1: lamp, 2: feed}}
              sender: {connector: oval, location: [0, 0, 0], pins: {1: warm}}
            harness:
              trunk: [0, 0, 0]
              plugs: {alternator: {connector: oval, location: [10, 0, 0], pins: {1: lamp, 2: feed}}}

            """,
        ["engines/motor.yaml"] = """
            title: Motor
            years: {from: 1996, to: 1998}
            devices:
              alternator: {connector: square, location: [0, 0, 0], pins: {1: lamp, 2: feed}}
              sender: {title: Motor sender, connector: tab, location: [50, 0, 0], pins: {1: warm}}
              pump: {connector: tab, location: [60, 0, 0], pins: {1: feed}}
              fan: {connector: tab, location: [70, 0, 0], pins: {1: feed}, current: 12}
            harness:
              ecu: brain
              trunk: [0, 100, 0]
              plugs:
                alternator: {connector: square, location: [0, 0, 0], pins: {1: lamp, 2: feed}}
                sender: {connector: tab, location: [50, 0, 0], pins: {1: warm}}

            """,
        ["ecus/brain.yaml"] = "title: Brain\nplugs: {a: {connector: row, pins: {1: feed, 2: warm, 3: unused}}}\n",
        ["parts/new-alternator.yaml"] = "title: New alternator\ndevices: {alternator: {title: Bought alternator, connector: oval, location: [0, 0, 0], pins: {1: lamp, 2: feed}}}\n",
        ["parts/sender-with-wire.yaml"] = "title: Sender with its wire\nown-wires: [warm]\n",
        ["parts/sender-lead.yaml"] = "title: Sender lead\nbrings: {pump: {cavities: [\"1\"], plug: true, far-ends: true}}\n",
        ["parts/lead.yaml"] = "title: Lead\nlead: {from: square, to: oval}\n",
    }.Bind();

    [Fact]
    public void Assemble_DonorsAlternator_IsTheDevice()
    {
        var plug = Plug(Assemble(Answer("alternator", "donor")), "alternator");
        Assert.Equal(("Alternator", "square", PlugOutcome.StraightIn), (plug.Title, plug.DeviceConnector, plug.Outcome));
    }

    [Fact]
    public void Assemble_ChassisAlternator_IsTheDeviceOnTheDonorsHarness()
    {
        var plug = Plug(Assemble(Answer("alternator", "chassis")), "alternator");
        Assert.Equal(("Car alternator", "oval", "square", PlugOutcome.Changed), (plug.Title, plug.DeviceConnector, plug.HarnessConnector, plug.Outcome));
    }

    [Fact]
    public void Assemble_PartWithADevice_WinsOverTheSource()
    {
        var plug = Plug(Assemble(Answer("alternator", "donor", part: "new-alternator")), "alternator");
        Assert.Equal(("Bought alternator", "oval"), (plug.Title, plug.DeviceConnector));
    }

    [Fact]
    public void Assemble_LeadAmongTheParts_ServesThePlug()
    {
        var plug = Plug(Assemble(Answer("alternator", "chassis", part: "lead")), "alternator");
        Assert.Equal((PlugOutcome.Lead, "lead"), (plug.Outcome, plug.LeadPart));
    }

    [Theory]
    [InlineData("pump", 3)] // its role's
    [InlineData("fan", 12)] // its own
    public void Assemble_Current_IsTheDevicesOwnOrElseItsRoles(string role, double current) =>
        Assert.Equal(current, Assemble(Answer("alternator", "donor"))!.Runs.Single(run => run.Role == role).Conductor!.For.CurrentA);

    [Fact]
    public void Assemble_PartThatBringsTheOnlyWire_LeavesNoWorkOnThatPlug()
    {
        var sheet = Assemble(Answer("alternator", "donor", part: "sender-with-wire"))!;

        Assert.DoesNotContain("sender", sheet.Plugs.Select(plug => plug.Role));
        Assert.Equal(0, sheet.Counts.Capped);
    }

    /// <summary>What a chassis says of its battery, and a vocabulary of a branch, reaches the sheet; a battery without a title is the battery.</summary>
    [Fact]
    public void Assemble_BatteryAndBranch_AreAsStated()
    {
        WiringData Data(ChassisVariant chassis) => new WiringAssembly(Base).Assemble(Base.Donors["motor"], chassis, Base.Ecus["brain"], _ => null, [])!.Data!;
        var car = Base.Chassis["car"];

        Assert.Equal(new BatteryPoint("the joint in the boot", new(0, 0, 4000)), Data(car).Battery);
        Assert.Equal("the battery", Data(car with { Battery = car.Battery! with { Title = null } }).Battery!.Title);
        Assert.Null(Data(car with { Battery = null }).Battery);
        Assert.Equal(("pump", "feed"), (Data(car).SignalOf("branch")!.Through, Data(car).SignalOf("branch")!.BranchOf));
    }

    /// <summary>The pump's new feed comes with the part that the answer names, and the plug with it.</summary>
    [Theory]
    [InlineData(null, true)]
    [InlineData("sender-lead", false)]
    public void Assemble_PartThatBringsAWireOfADevice_IsNamedAtIt(string? part, bool cut)
    {
        var sheet = Assemble(Answer("alternator", "donor", part: part))!;

        Assert.Equal((cut, part), (sheet.Runs.Single(run => run.Role == "pump").IsCut, sheet.Runs.Single(run => run.Role == "pump").Lead?.PartId));
        Assert.Equal(cut, Plug(sheet, "pump").WantsHousing);
        Assert.True(sheet.Runs.Single(run => run.Role == "fan").IsCut);
    }

    [Theory]
    [InlineData("none", "as-is")]
    [InlineData("chassis", "blank")]
    public void Assemble_LeftOff_CapsThePlug(string source, string treatment) =>
        Assert.Equal(PlugOutcome.Capped, Plug(Assemble(Answer("alternator", source, treatment)), "alternator").Outcome);

    [Fact]
    public void Assemble_RoleWithoutPosition_IsTheEnginesOwnDevice() =>
        Assert.Equal(("Motor sender", "tab"), (Plug(Assemble(Answer("alternator", "donor")), "sender").Title, Plug(Assemble(Answer("alternator", "donor")), "sender").DeviceConnector));

    [Fact]
    public void Assemble_ChassisHarness_ServesTheDonorsDevices()
    {
        var sheet = Assemble(Answer("alternator", "donor"), Answer("loom", "chassis"));
        Assert.Equal("oval", Plug(sheet, "alternator").HarnessConnector);
        Assert.Equal(PlugOutcome.Added, Plug(sheet, "sender").Outcome);
    }

    [Fact]
    public void Assemble_NoHarness_HasNoSheet() =>
        Assert.Null(new WiringAssembly(Base).Assemble(Base.Donors["motor"] with { Harness = null }, Base.Chassis["car"], null, _ => null, []));

    [Fact]
    public void Assemble_LimitsOfTheBase_Apply()
    {
        var far = Base.Donors["motor"] with { Devices = [.. Base.Donors["motor"].Devices.Select(device => device.Role == "sender" ? device with { Location = new(50, 35, 0) } : device)] };
        Assert.Equal(PlugOutcome.Extended, Plug(Assemble(far, Answer("alternator", "donor")), "sender").Outcome);
    }

    [Fact]
    public void Of_Numbers_AreThoseOfTheWorksheets()
    {
        var wiring = Assemble(Answer("alternator", "chassis"));
        var sheet = new Sheet { Combination = default, Chassis = Base.Chassis["car"], Donor = Base.Donors["motor"], Choices = [], Buildable = true, Wiring = wiring, Effort = SheetEffort.Of([], new EffortSettings(6, 0)) };
        Assert.Equal(1, ComputedNumbers.Of(sheet, "wiring.plugs.straight-in"));
        Assert.Equal(1, ComputedNumbers.Of(sheet, "wiring.plugs.changed"));
        Assert.Equal(0, ComputedNumbers.Of(sheet, "wiring.plugs.capped"));
        Assert.Equal(wiring!.Bill.Splices, ComputedNumbers.Of(sheet, "wiring.splices"));
        Assert.Equal((decimal)wiring.Bill.TotalLengthMm, ComputedNumbers.Of(sheet, "wiring.wire"));
        Assert.Null(ComputedNumbers.Of(sheet, "belt.main.length"));
        Assert.Null(ComputedNumbers.Of(sheet, "wiring.plugs.lost"));
        Assert.All(
            ComputedValues.All.Where(value => value.Pattern.StartsWith("wiring.", StringComparison.Ordinal)),
            value => Assert.NotNull(ComputedNumbers.Of(sheet, value.Pattern)));
        Assert.Null(ComputedNumbers.Of(sheet with { Wiring = null }, "wiring.splices"));
    }

    private static WiringSheet? Assemble(params Answer[] answers) => Assemble(Base.Donors["motor"], answers);

    private static WiringSheet? Assemble(DonorVariant donor, params Answer[] answers)
    {
        var parts = answers.Select(answer => answer.Part is { } part ? Base.Parts.Find(part) : null).OfType<Part>();
        return new WiringAssembly(Base).Assemble(donor, Base.Chassis["car"], Base.Ecus["brain"], position => answers.FirstOrDefault(answer => answer.Position == position), parts);
    }

    private static PlugWork Plug(WiringSheet? sheet, string role) => Assert.Single(sheet!.Plugs, plug => plug.Role == role);

    private static Answer Answer(string position, string source, string treatment = "as-is", string? part = null) =>
        new(position, source, treatment, part, [], [], "", [], null, default);
}
