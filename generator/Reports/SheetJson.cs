using System.Collections.Immutable;
using System.Text.Json;
using Swapwright.Diagnostics;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Reports;

/// <summary>A sheet as JSON; its form is schema/reports/sheet.schema.json.</summary>
/// <param name="forced">What the builder's own decisions left no choice of; left out where nobody decided anything.</param>
public sealed class SheetJson(Sheet sheet, Resolution resolution, ImmutableArray<KeyValuePair<string, string>> forced = default)
{
    /// <param name="part">One member of the sheet to write alone, such as <c>wiring</c>; null for all.</param>
    public string Write(string? part = null) => JsonForm.Write(json =>
    {
        json.Combination("combination", resolution.Space.Witness([.. sheet.Combination.Values]));
        json.WriteBoolean("buildable", sheet.Buildable);
        json.Objects("excludedBy", sheet.ExcludedBy, rule =>
        {
            json.WriteString("rule", rule.Id);
            json.Text("because", rule.ExcludeText.Length > 0 ? rule.ExcludeText : rule.Because);
            json.Place("place", rule.Place);
        });
        json.Decisions(sheet, resolution, forced);
        foreach (var (name, write) in Parts(json).Where(one => part is null || one.Name == part))
        {
            write();
        }
    });

    private static ImmutableArray<string> LedgerIds => LedgerAssembly.Ids;

    /// <summary>The members that <c>--part</c> may name.</summary>
    public static readonly ImmutableArray<string> PartNames = ["answers", "belts", "wiring", "hoses", .. LedgerIds, "effort", "cautions", "mistakes", "advice"];

    private IEnumerable<(string Name, Action Write)> Parts(Utf8JsonWriter json) =>
    [
        ("answers", () => json.Objects("answers", sheet.Answers.Where(answer => answer.Answer is not null), answer => Answer(json, answer))),
        ("belts", () => json.Objects("belts", sheet.Belts, belt => Belt(json, belt))),
        ("wiring", () => Wiring(json)),
        ("hoses", () => SheetHoses.Write(json, sheet.Hoses)),
        .. LedgerIds.Select(id => (id, (Action)(() => SheetLedgers.Write(json, id, sheet.Ledger(id))))),
        ("effort", () => json.Object("effort", () =>
        {
            SheetWork.Write(json, sheet, resolution.Space.Base.Settings.Currency);
        })),
        ("cautions", () => json.Objects("cautions", SheetTexts.Cautions(sheet, resolution.Space.Base), caution =>
        {
            json.WriteString("about", caution.Caution.About);
            json.WriteString("text", caution.Caution.Text);
            json.Text("rule", caution.Rule?.Id);
        })),
        ("mistakes", () => json.Objects("mistakes", SheetTexts.Mistakes(sheet), mistake =>
        {
            json.WriteString("text", mistake.Text);
            json.Text("rule", mistake.Rule?.Id);
        })),
        ("advice", () => json.Objects("advice", sheet.Speaking.SelectMany(rule => rule.Advises.Select(advice => (rule, advice))), pair =>
        {
            json.WriteString("text", pair.advice.Text);
            json.Text("option", pair.advice.Option);
            json.Text("donor", pair.advice.Donor);
            json.Text("rule", pair.rule.Id);
        })),
    ];

    internal void Answer(Utf8JsonWriter json, SheetAnswer at)
    {
        var answer = at.Answer!;
        var rule = at.Rule!;
        json.WriteString("position", at.Position.Id);
        json.WriteString("system", at.Position.System);
        json.WriteString("source", answer.Source);
        json.WriteString("treatment", answer.Treatment);
        json.Text("part", answer.Part);
        json.Texts("also", answer.Also);
        json.Texts("steps", answer.Steps);
        json.Text("notes", answer.Notes);
        json.Texts("mistakes", answer.Mistakes);
        json.Text("article", answer.Article);
        json.Text("because", rule.Because);
        json.WriteString("rule", rule.Id);
        json.Texts("overridden", at.Overridden.Select(over => over.Rule.Id));
        json.Texts("sources", rule.Sources);
        json.Text("standing", rule.Standing);
        json.Objects("alternatives", Alternatives.At(resolution, sheet, at), alternative =>
        {
            json.Object("choices", () =>
            {
                foreach (var (choice, option) in alternative.Changes)
                {
                    json.WriteString(choice, option);
                }
            });
            json.WriteString("source", alternative.Answer.Source);
            json.WriteString("treatment", alternative.Answer.Treatment);
            json.Text("part", alternative.Answer.Part);
            json.WriteString("rule", alternative.Rule.Id);
        });
    }

    private static void Belt(Utf8JsonWriter json, FittedBelt belt)
    {
        var result = belt.Result;
        json.WriteString("loop", belt.Loop.Id);
        json.WriteString("profile", belt.Loop.Profile);
        json.WriteNumber("ribs", result.Ribs);
        json.Quantity("length", result.Recommended?.Belt.LengthMm ?? result.Nominal?.LengthMm ?? 0, "mm");
        json.Text("designation", result.Recommended?.Designation);
        json.Text("runnerUp", result.RunnerUp?.Designation);
        if (result.Window is { } window)
        {
            json.Object("window", () =>
            {
                json.Quantity("shortest", window.ShortestMm, "mm");
                json.Quantity("longest", window.LongestMm, "mm");
            });
        }
        else
        {
            json.WriteNull("window");
        }

        json.Objects("pulleys", result.Pulleys.Zip(belt.Loop.Pulleys), pair =>
        {
            json.WriteString("name", pair.Second.Title);
            json.WriteString("side", pair.Second.Side == BeltSide.Back ? "back" : "grooved");
            json.Quantity("wrap", double.RadiansToDegrees(pair.First.WrapRad), "°");
            json.Quantity("span", pair.First.SpanToNextMm, "mm");
        });
    }

    private void Wiring(Utf8JsonWriter json)
    {
        if (sheet.Wiring is not { } wiring)
        {
            json.WriteNull("wiring");
            return;
        }

        json.Object("wiring", () =>
        {
            json.Object("plugs", () =>
            {
                json.WriteNumber("straightIn", wiring.Counts.StraightIn);
                json.WriteNumber("rePinned", wiring.Counts.RePinned);
                json.WriteNumber("changed", wiring.Counts.Changed);
                json.WriteNumber("lead", wiring.Counts.Lead);
                json.WriteNumber("added", wiring.Counts.Added);
                json.WriteNumber("extended", wiring.Counts.Extended);
                json.WriteNumber("extendedOnly", wiring.Counts.ExtendedOnly);
                json.WriteNumber("joined", wiring.Counts.Joined);
                json.WriteNumber("capped", wiring.Counts.Capped);
            });
            json.Objects("terminals", wiring.Bill.Terminals, line =>
            {
                json.WriteString("connector", line.Connector);
                json.WriteString("terminal", line.Terminal);
                json.WriteNumber("count", line.Count);
                json.WriteNumber("seals", line.Seals);
            });
            json.WriteNumber("splices", wiring.Bill.Splices);
            json.Objects("wire", wiring.Bill.Wire, line =>
            {
                json.Quantity("size", line.SizeMm2, "mm²", 2);
                json.WriteString("colour", line.Colour);
                json.Quantity("length", line.LengthMm, "mm", 0);
                json.WriteNumber("pieces", line.Pieces);
            });
            json.Objects("devices", wiring.Plugs, plug => Plug(json, plug));
            json.Objects("adapter", (wiring.EcuAdapter?.Rows ?? []).Concat(wiring.BodyAdapter?.Rows ?? []), row =>
            {
                json.WriteString("signal", row.Signal);
                json.Text("from", row.From);
                json.Text("to", row.To);
                json.WriteString("action", WiringWords.Action(row.Action));
            });
        });
    }

    private static void Plug(Utf8JsonWriter json, PlugWork plug)
    {
        json.WriteString("device", plug.Role);
        json.WriteString("title", plug.Title);
        json.WriteString("outcome", WiringWords.Outcome(plug.Outcome));
        json.Text("harnessConnector", plug.HarnessConnector);
        json.Text("deviceConnector", plug.DeviceConnector);
        json.Quantity("distance", plug.DistanceMm, "mm", 0);
        json.WriteBoolean("extended", plug.Extended);
        json.WriteBoolean("joined", plug.Joined);
        json.Text("lead", plug.LeadPart);
        json.Objects("wires", plug.Wires, wire =>
        {
            json.WriteString("cavity", wire.Cavity);
            json.WriteString("signal", wire.Signal);
            json.WriteString("action", WiringWords.Action(wire.Action));
            json.Text("fromCavity", wire.FromCavity);
            json.WriteString("colour", wire.Colour);
            json.Quantity("size", wire.SizeMm2, "mm²", 2);
            json.Quantity("extension", wire.ExtensionMm, "mm", 0);
            json.Text("run", wire.Run);
        });
    }
}
