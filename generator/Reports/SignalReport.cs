using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Reports;

/// <summary>The way of a signal through one combination: from its devices through plugs, harness and adapters to the ECU and the cabin.</summary>
/// <param name="forced">What the builder's own decisions left no choice of.</param>
public sealed class SignalReport(Sheet sheet, Resolution resolution, string signal, ImmutableArray<KeyValuePair<string, string>> forced = default)
{
    private SignalTrace? Trace => sheet.Wiring is { } wiring ? SignalTrace.Of(wiring, signal) : null;

    /// <summary>Whether a name asks for a signal and not for a position.</summary>
    public static bool Covers(KnowledgeBase kb, string name) => !kb.Positions.Has(name) && name != SignalDeclaration.Unused && kb.Vocabulary.Signals.Has(name);

    /// <summary>Its form is schema/reports/why.schema.json.</summary>
    public string Json() => JsonForm.Write(json =>
    {
        json.Combination("combination", resolution.Space.Witness([.. sheet.Combination.Values]));
        json.Decisions(sheet, resolution, forced);
        json.WriteString("signal", signal);
        if (Trace is not { } trace)
        {
            json.WriteNull("trace");
            return;
        }

        json.Object("trace", () =>
        {
            json.WriteString("title", trace.Signal.Title);
            json.WriteString("kind", WiringWords.Kind(trace.Signal.Kind));
            json.Objects("devices", trace.Devices, step => Step(json, step));
            json.Objects("ecu", trace.Ecu, step => Step(json, step));
            json.Objects("cabin", trace.Cabin, step => Step(json, step));
            json.Texts("gaps", trace.Gaps);
        });
    });

    public string Text()
    {
        var text = new StringBuilder();
        void Line(string line) => text.Append(PlainText.Tame(line)).Append('\n');
        if (Trace is not { } trace)
        {
            Line("This combination has no harness to follow a signal through.");
            return text.ToString();
        }

        Line($"{trace.Signal.Title} ({WiringWords.Kind(trace.Signal.Kind)}{(trace.Signal.Shielded ? $", {WiringWords.Screen}" : "")})");
        if (!trace.IsUsed)
        {
            Line("Nothing in this combination has it or asks for it.");
        }

        foreach (var (heading, steps) in new[] { ("From the devices", trace.Devices), ("At the ECU", trace.Ecu), ("At the bulkhead, to the cabin", trace.Cabin) })
        {
            if (!steps.IsEmpty)
            {
                Line("");
                Line(heading);
                foreach (var step in steps)
                {
                    Line($"  {Words(step)}");
                }
            }
        }

        foreach (var gap in trace.Gaps)
        {
            Line("");
            Line($"Broken: {gap}");
        }

        return text.ToString();
    }

    private static string Words(TraceStep step)
    {
        var wire = step.Wire is { Colour.Length: > 0 } known ? string.Create(CultureInfo.InvariantCulture, $", {known.Colour} {known.SizeMm2:0.##} mm²") : "";
        var length = step.LengthMm is { } mm ? string.Create(CultureInfo.InvariantCulture, $", {mm:0} mm of new wire") : "";
        return $"{Words(step.From)}{(step.To is { } to ? $" -> {Words(to)}" : "")}: {step.Work}{wire}{length}";
    }

    private static string Words(TracePoint point) => $"{point.Title}{(point.Cavity.Length > 0 ? $" cavity {point.Cavity}" : "")}{(point.Connector.Length > 0 ? $" ({point.Connector})" : "")}";

    private static void Step(Utf8JsonWriter json, TraceStep step)
    {
        json.Object("from", () => Point(json, step.From));
        if (step.To is { } to)
        {
            json.Object("to", () => Point(json, to));
        }
        else
        {
            json.WriteNull("to");
        }

        json.WriteString("work", step.Work);
        json.Text("colour", step.Wire?.Colour);
        if (step.Wire is { } wire)
        {
            json.Quantity("size", wire.SizeMm2, "mm²", 2);
        }
        else
        {
            json.WriteNull("size");
        }

        if (step.LengthMm is { } length)
        {
            json.Quantity("length", length, "mm", 0);
        }
        else
        {
            json.WriteNull("length");
        }
    }

    private static void Point(Utf8JsonWriter json, TracePoint point)
    {
        json.WriteString("place", point.Place);
        json.WriteString("title", point.Title);
        json.Text("connector", point.Connector);
        json.Text("cavity", point.Cavity);
    }
}
