namespace Swapwright.Knowledge.Binding;

/// <summary>kb.yaml → settings.</summary>
internal static class SettingsBinder
{
    private static readonly Unit s_kilometresPerHour = Unit.Find("km/h")!;

    public static Settings Bind(NodeReader root)
    {
        var limits = root.Mapping("limits");
        var belt = limits.Mapping("belt");
        var wiring = limits.Mapping("wiring");
        var hoses = limits.Mapping("hoses");
        var fuel = limits.Mapping("fuel");
        var tightening = limits.Mapping("tightening");
        var gearing = limits.Mapping("gearing");
        var load = limits.Mapping("load");
        var usual = new Settings(root.Text("title", "Untitled"));
        return usual with
        {
            Label = root.Text("label"),
            About = root.Text("about"),
            Language = root.Text("language", usual.Language),
            Currency = root.Text("currency", usual.Currency),
            PriceDate = root.Text("price-date"),
            AsOf = root.Text("as-of"),
            StaleAfterMonths = root.Integer("stale-after", usual.StaleAfterMonths),
            Headline = root.Names("headline"),
            BaseAddress = root.Mapping("site").OptionalText("base-address"),
            HarnessPosition = root.Text("harness-position", usual.HarnessPosition),
            Belt = new BeltSettings(
                belt.Number("crank-wrap", Unit.Degree, usual.Belt.CrankWrapDeg, 0, 360),
                belt.Number("alternator-wrap", Unit.Degree, usual.Belt.AlternatorWrapDeg, 0, 360),
                belt.Number("other-wrap", Unit.Degree, usual.Belt.OtherWrapDeg, 0, 360),
                belt.Number("plane-offset", Unit.Millimetre, usual.Belt.PlaneOffsetMmPer100Mm, 0, 20),
                belt.Number("fit-slack", Unit.Percent, usual.Belt.FitSlackPercent, 0, 20),
                belt.Number("take-up", Unit.Percent, usual.Belt.TakeUpPercent, 0, 20))
            {
                SpringMiddlePercent = belt.Number("spring-middle", Unit.Percent, usual.Belt.SpringMiddlePercent, 0, 100),
                TrimRibs = belt.Integer("trim-ribs", usual.Belt.TrimRibs),
                RibMassGPerM = belt.Number("rib-mass", Unit.One, usual.Belt.RibMassGPerM, 1, 500),
                TensionNewN = belt.Number("tension-new", Unit.Newton, usual.Belt.TensionNewN, 0, 1000),
                TensionRunInN = belt.Number("tension-run-in", Unit.Newton, usual.Belt.TensionRunInN, 0, 1000),
                TensionSpreadPercent = belt.Number("tension-spread", Unit.Percent, usual.Belt.TensionSpreadPercent, 0, 50),
            },
            Wiring = new WiringSettings(
                wiring.Number("routing-factor", Unit.One, usual.Wiring.RoutingFactor, 1, 5),
                wiring.Number("slack", Unit.Millimetre, usual.Wiring.SlackMm, 0, 2000),
                wiring.Number("reach", Unit.Millimetre, usual.Wiring.ReachMm, 0, 2000))
            {
                AllowedDropV = wiring.Number("allowed-drop", Unit.Volt, usual.Wiring.AllowedDropV, 0.01m, 5),
                ConductorCelsius = wiring.Number("conductor-temperature", Unit.Celsius, usual.Wiring.ConductorCelsius, 20, 200),
                LeastMm2 = wiring.Number("least-size", Unit.SquareMillimetre, usual.Wiring.LeastMm2, 0.1m, 10),
                OutputCurrentA = wiring.Number("output-current", Unit.Ampere, usual.Wiring.OutputCurrentA, 0, 50),
            },
            Hoses = new HoseSettings(
                hoses.Number("routing-factor", Unit.One, usual.Hoses.RoutingFactor, 1, 5),
                hoses.Number("slack", Unit.Millimetre, usual.Hoses.SlackMm, 0, 1000),
                hoses.Number("step", Unit.Millimetre, usual.Hoses.StepMm, 0, 1000),
                hoses.Number("fit", Unit.Millimetre, usual.Hoses.FitMm, 0, 5),
                hoses.Number("injection-pressure", Unit.Bar, usual.Hoses.InjectionBar, 0, 20),
                hoses.Number("spare", Unit.Percent, usual.Hoses.SparePercent, 0, 100)),
            Fuel = new FuelSettings(
                fuel.Number("consumption", Unit.GramPerKilowattHour, usual.Fuel.Consumption, 150, 600),
                fuel.Number("density", Unit.KilogramPerLitre, usual.Fuel.DensityKgPerL, 0.6m, 1),
                fuel.Number("duty", Unit.Percent, usual.Fuel.DutyPercent, 10, 100),
                fuel.Number("pump-margin", Unit.Percent, usual.Fuel.PumpMarginPercent, 0, 200),
                fuel.Number("supply", Unit.Volt, usual.Fuel.SupplyV, 5, 30))
            {
                PumpFallPercent = fuel.Number("pump-fall", Unit.Percent, usual.Fuel.PumpFallPercent, 0, 50),
            },
            Tightening = new TighteningSettings(
                tightening.Number("proof-share", Unit.Percent, usual.Tightening.ProofPercent, 10, 90),
                tightening.Number("nut-factor", Unit.One, usual.Tightening.NutFactor, 0.05m, 0.5m),
                tightening.Number("nut-factor-lubricated", Unit.One, usual.Tightening.NutFactorLubricated, 0.05m, 0.5m),
                tightening.Number("scatter", Unit.Percent, usual.Tightening.ScatterPercent, 0, 60)),
            Gearing = new GearingSettings(
                gearing.Has("cruise") ? [.. gearing.Scalars("cruise").Select(scalar => gearing.Quantity(scalar, s_kilometresPerHour, 20, 300)).OfType<decimal>().Distinct().Order()] : usual.Gearing.CruiseKmh,
                gearing.Number("widest-drop", Unit.Percent, usual.Gearing.WidestDropPercent, 1, 90)),
            Load = new LoadSettings(
                load.Number("clutch-margin", Unit.One, usual.Load.ClutchMargin, 1, 5),
                load.Number("ground-clearance", Unit.Millimetre, usual.Load.GroundClearanceMm, 0, 500),
                load.Number("front-reserve", Unit.Kilogram, usual.Load.FrontReserveKg, 0, 1000)),
            Effort = new EffortSettings(
                limits.Mapping("effort").Number("day", Unit.Hour, usual.Effort.HoursADay, 0.5m, 24),
                limits.Mapping("effort").Number("in-common", Unit.One, usual.Effort.InCommon, 0, 1)),
            Cautions = EntityBinder.Cautions(root),
        };
    }
}
