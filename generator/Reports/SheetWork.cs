using System.Globalization;
using System.Text.Json;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Worksheets.Effort;

namespace Swapwright.Reports;

/// <summary>Effort, order of work and shopping of a sheet as JSON.</summary>
internal static class SheetWork
{
    public static void Write(Utf8JsonWriter json, Sheet sheet, string currency)
    {
        Sum(json, "money", sheet.Effort.Money, currency, 0);
        Sum(json, "hours", sheet.Effort.Hours, "h", 1);
        Sum(json, "handHours", sheet.Effort.HandHours, "h", 1);
        json.Object("days", () =>
        {
            json.WriteNumber("onePerson", sheet.Effort.DaysAlone);
            json.WriteNumber("twoPeople", sheet.Effort.DaysTogether);
        });
        json.Texts("criticalPath", sheet.Effort.CriticalPath.Select(job => job.Id));
        json.Texts("tasks", sheet.Tasks.Select(task => task.Id));
        json.Objects("work", sheet.Effort.Times, times =>
        {
            var task = sheet.Tasks.First(task => task.Id == times.Job.Id);
            json.WriteString("task", task.Id);
            json.WriteString("phase", task.Phase);
            json.Range("hours", task.Hours, "h");
            json.WriteNumber("people", task.People);
            json.Texts("after", task.After.Select(after => after.Id).Where(id => sheet.Tasks.Any(other => other.Id == id)));
            json.Quantity("earliestStart", times.Start, "h");
            json.Quantity("slack", times.Slack, "h");
        });
        json.Objects("shopping", sheet.Shopping, line =>
        {
            json.WriteString("part", line.Part.Id);
            json.WriteNumber("amount", line.Amount);
            json.Texts("sizes", line.Sizes);
            json.WriteString("from", line.Part.From);
            json.Range("price", line.Part.Price ?? default, currency);
        });
        json.Texts("tools", sheet.ToolNames);
        json.Texts("consumables", sheet.Tasks.SelectMany(task => task.Consumables).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        json.Objects("refresh", sheet.Tasks.Where(task => task.Refresh), task =>
        {
            json.WriteString("task", task.Id);
            json.Text("whyNow", task.WhyNow);
        });
    }

    /// <summary>A row a task with its hours, a row a part with its money, and the three sums.</summary>
    public static string Csv(Sheet sheet, string currency) => CsvForm.Write(
        ["kind", "id", "title", "group", "amount", "people", "least", "likely", "most", "unit", "begins-h", "slack-h"],
        [
            .. sheet.Effort.Times.Select(times => (Times: times, Task: sheet.Tasks.First(task => task.Id == times.Job.Id))).Select(one => (IReadOnlyList<string>)
            [
                "task", one.Task.Id, one.Task.Title, one.Task.Phase, "1", Number(one.Task.People), Number(one.Task.Hours.Least), Number(one.Task.Hours.Likely), Number(one.Task.Hours.Most), "h",
                Number((decimal)one.Times.Start), Number((decimal)one.Times.Slack),
            ]),
            .. sheet.Shopping.Select(line => (IReadOnlyList<string>)
            [
                "part", line.Part.Id, line.Sizes.IsEmpty ? line.Part.Title : $"{line.Part.Title}: {string.Join(", ", line.Sizes)}", line.Part.From, Number(line.Amount), "", Number(line.Price?.Least), Number(line.Price?.Likely), Number(line.Price?.Most), line.Price is null ? "" : currency, "", "",
            ]),
            Row("hours", "Hours of work, nine builds in ten", sheet.Effort.Hours, "h"),
            Row("hand-hours", "Hours of all hands together, nine builds in ten", sheet.Effort.HandHours, "h"),
            Row("money", "Parts, nine builds in ten", sheet.Effort.Money, currency),
        ]);

    private static string[] Row(string id, string title, EstimateSum sum, string unit) =>
        ["sum", id, title, "", "", "", Number((decimal)sum.Low), Number((decimal)sum.Mean), Number((decimal)sum.High), unit, "", ""];

    private static string Number(decimal? value) => value is { } known ? Math.Round(known, 2).ToString("0.##", CultureInfo.InvariantCulture) : "";

    private static void Sum(Utf8JsonWriter json, string name, EstimateSum sum, string unit, int decimals) => json.Object(name, () =>
    {
        void Number(string what, double value) => json.WriteNumber(what, Math.Round((decimal)value, decimals));
        Number("least", sum.Low);
        Number("likely", sum.Mean);
        Number("most", sum.High);
        json.WriteString("unit", unit);
        Number("outerLeast", sum.OuterLeast);
        Number("outerMost", sum.OuterMost);
    });
}
