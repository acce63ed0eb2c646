using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Swapwright.Fitting;
using Swapwright.Sheets;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Reports;

/// <summary>The belts of a sheet as JSON and as a table.</summary>
internal static class SheetBelts
{
    public static void Write(Utf8JsonWriter json, FittedBelt belt)
    {
        var result = belt.Result;
        json.WriteString("loop", belt.Loop.Id);
        json.WriteString("profile", belt.Loop.Profile);
        json.WriteNumber("ribs", result.Ribs);
        json.Quantity("length", result.Recommended?.Belt.LengthMm ?? result.Nominal?.LengthMm ?? 0, "mm");
        json.Text("designation", result.Recommended?.Designation);
        json.Text("runnerUp", result.RunnerUp?.Designation);
        json.Text("adjuster", BeltWords.Adjuster(belt.Loop));
        json.Objects("choices", Choices(result), choice => Choice(json, choice));
        if (result.Problems.OfType<TrimmedBelt>().FirstOrDefault() is { } trim)
        {
            json.Object("trim", () =>
            {
                json.WriteNumber("from", trim.FromRibs);
                json.WriteNumber("to", trim.Ribs);
            });
        }
        else
        {
            json.WriteNull("trim");
        }

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

        Tone(json, result.Tone);
        json.Objects("shims", result.Shims, shim =>
        {
            json.WriteString("pulley", shim.StationId);
            json.Quantity("move", shim.MoveMm, "mm");
            json.WriteString("towards", shim.MoveMm < 0 ? "timing-side" : "gearbox-side");
        });
        json.Objects("pulleys", result.Pulleys.Zip(belt.Loop.Pulleys), pair =>
        {
            json.WriteString("id", pair.Second.Id);
            json.WriteString("name", pair.Second.Title);
            json.WriteString("side", pair.Second.Side == BeltSide.Back ? "back" : "grooved");
            json.Quantity("wrap", double.RadiansToDegrees(pair.First.WrapRad), "°");
            json.Quantity("span", pair.First.SpanToNextMm, "mm");
            json.Quantity("planeOffset", pair.First.PlaneOffsetToNextMm, "mm");
            json.Quantity("planeAllowed", pair.First.AllowedPlaneOffsetMm, "mm");
        });
    }

    /// <summary>A row a pulley, with the belt's own numbers repeated, so that a spreadsheet can be filtered.</summary>
    public static string Csv(ImmutableArray<FittedBelt> belts) => CsvForm.Write(
        ["loop", "belt", "runner-up", "ribs", "position-percent", "new-hz", "run-in-hz", "pulley", "side", "diameter-mm", "wrap-deg", "span-mm", "plane-offset-mm", "shim-mm"],
        from belt in belts
        from pair in belt.Result.Pulleys.Zip(belt.Loop.Pulleys)
        let result = belt.Result
        select (IReadOnlyList<string>)
        [
            belt.Loop.Id,
            result.Recommended?.Designation ?? "",
            result.RunnerUp?.Designation ?? "",
            Number(result.Ribs, "0"),
            Number(result.Recommended?.TravelPercent, "0"),
            Number(result.Tone?.New.MiddleHz, "0"),
            Number(result.Tone?.RunIn.MiddleHz, "0"),
            pair.Second.Id,
            pair.Second.Side == BeltSide.Back ? "back" : "grooved",
            Number(pair.Second.DiameterMm, "0.#"),
            Number(double.RadiansToDegrees(pair.First.WrapRad), "0.0"),
            Number(pair.First.SpanToNextMm, "0.0"),
            Number(pair.First.PlaneOffsetToNextMm, "0.0"),
            Number(result.Shims.FirstOrDefault(shim => shim.StationId == pair.Second.Id)?.MoveMm, "0.0"),
        ]);

    private static IEnumerable<BeltChoice> Choices(BeltResult result) => new[] { result.Recommended, result.RunnerUp }.OfType<BeltChoice>();

    private static void Choice(Utf8JsonWriter json, BeltChoice choice)
    {
        json.WriteString("designation", choice.Designation);
        json.WriteString("part", choice.Belt.PartId);
        json.WriteString("reason", BeltWords.Reason(choice.Reason));
        if (choice.TravelPercent is { } percent)
        {
            json.Quantity("position", percent, "%");
        }
        else
        {
            json.WriteNull("position");
        }

        json.Quantity("installRoom", choice.InstallRoomMm, "mm");
        json.Quantity("takeUpRoom", choice.TakeUpRoomMm, "mm");
    }

    private static void Tone(Utf8JsonWriter json, BeltTone? tone)
    {
        if (tone is null)
        {
            json.WriteNull("tone");
            return;
        }

        void Range(string name, ToneRange range) => json.Object(name, () =>
        {
            json.Quantity("low", range.LowHz, "Hz");
            json.Quantity("middle", range.MiddleHz, "Hz");
            json.Quantity("high", range.HighHz, "Hz");
        });
        json.Object("tone", () =>
        {
            json.WriteString("from", tone.FromId);
            json.WriteString("to", tone.ToId);
            json.Quantity("span", tone.SpanMm, "mm");
            Range("new", tone.New);
            Range("runIn", tone.RunIn);
        });
    }

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";
}
