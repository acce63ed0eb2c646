using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Reports;

/// <summary>A sheet for reading: the same content as plain text, as Markdown or as a table for a spreadsheet.</summary>
/// <param name="forced">What the builder's own decisions left no choice of; see <see cref="Forced"/>.</param>
public sealed class SheetLines(Sheet sheet, Resolution resolution, ImmutableArray<KeyValuePair<string, string>> forced = default)
{
    private static readonly string[] s_columns = ["system", "position", "verb", "source", "treatment", "part", "also", "steps", "rule", "standing", "sources"];

    private KnowledgeBase Base => resolution.Space.Base;

    public string Text() => Render(new PlainLayout());

    public string Markdown() => Render(new MarkdownLayout());

    /// <summary>One row an answer (RFC 4180), every cell safe to open in a spreadsheet.</summary>
    public string Csv() => CsvForm.OfRows(s_columns, sheet.Answers.Where(answer => answer.Answer is not null).Select(Row));

    /// <summary>The same as UTF-8.</summary>
    /// <param name="known">What was written before, for many sheets.</param>
    public void Csv(ArrayBufferWriter<byte> buffer, SheetForms known)
    {
        Encoding.UTF8.GetBytes(CsvForm.Row(s_columns), buffer);
        foreach (var answer in sheet.Answers)
        {
            if (answer.Answer is not null)
            {
                buffer.Write(known.Row(answer));
            }
        }
    }

    internal static string Row(SheetAnswer at) => CsvForm.Row(
    [
        at.Position.System, at.Position.Id, AnswerWording.Word(AnswerWording.Verb(at.Answer!)), at.Answer!.Source, at.Answer.Treatment, at.Answer.Part ?? "",
        string.Join(' ', at.Answer.Also), string.Join(" | ", at.Answer.Steps), at.Rule!.Id, at.Rule.Standing, string.Join(' ', at.Rule.Sources),
    ]);

    private string Render(Layout layout)
    {
        layout.Title($"{sheet.Donor.Title} into {sheet.Chassis.Title}");
        layout.Paragraph(string.Join(", ", sheet.Choices.Where(choice => choice.Value != Choice.None).Select(choice => $"{Base.Choices[choice.Key].Title}: {Base.Choices[choice.Key].Option(choice.Value)?.Title ?? choice.Value}")));
        if (forced is { IsDefaultOrEmpty: false })
        {
            layout.Paragraph($"No other way is left for {string.Join(", ", forced.Select(one => $"{one.Key}={one.Value}"))}.");
        }

        if (!sheet.Buildable)
        {
            NotBuildable(layout);
        }

        foreach (var system in Base.Systems)
        {
            var answers = sheet.Answers.Where(answer => answer.Position.System == system.Id).ToList();
            if (answers.Count > 0)
            {
                layout.Heading(system.Title);
                answers.ForEach(answer => Answer(layout, answer));
            }
        }

        Belts(layout);
        Wiring(layout);
        Hoses(layout);
        SheetLedgers.Print(layout.Heading, layout.Item, layout.Detail, layout.Paragraph, sheet.Ledgers);
        Work(layout);
        return layout.ToString();
    }

    private void NotBuildable(Layout layout)
    {
        layout.Heading("This combination cannot be built");
        foreach (var rule in sheet.ExcludedBy)
        {
            layout.Item($"{rule.Title} ({rule.Id}, {rule.Place})");
            layout.Written(rule.WhyExcluded);
        }

        layout.Detail(Alternatives.NearestBuildable(resolution, sheet) is { IsEmpty: false } changes
            ? $"The nearest way: {string.Join(", ", changes.Select(change => $"{change.Key}={change.Value}"))}."
            : "No choice changes that for this chassis and donor.");
    }

    private void Answer(Layout layout, SheetAnswer at)
    {
        if (at.Answer is not { } answer)
        {
            layout.Item($"{at.Position.Title}: no answer");
            return;
        }

        var parts = new[] { answer.Part }.Concat(answer.Also).OfType<string>().Select(id => Base.Parts.Find(id)?.Title ?? id).ToList();
        layout.Item($"{at.Position.Title}: {AnswerWording.Sentence(answer)}{(parts.Count == 0 ? "" : $" ({string.Join("; ", parts)})")}");
        foreach (var step in answer.Steps)
        {
            layout.Written(step);
        }
    }

    private void Belts(Layout layout)
    {
        if (sheet.Belts.IsEmpty)
        {
            return;
        }

        layout.Heading("Belts");
        foreach (var belt in sheet.Belts)
        {
            var window = belt.Result.Window is { } limits ? string.Create(CultureInfo.InvariantCulture, $", loop {limits.ShortestMm:#,0} to {limits.LongestMm:#,0} mm") : "";
            layout.Item($"{belt.Loop.Title}: {belt.Result.Recommended?.Designation ?? "no stocked belt fits"}{(belt.Result.RunnerUp is { } second ? $", else {second.Designation}" : "")}{window}");
            if (belt.Result.Recommended is { } first)
            {
                layout.Detail(BeltWords.Chosen(first));
            }

            if (belt.Result.RunnerUp is { } other)
            {
                layout.Detail($"{other.Designation}: {BeltWords.Chosen(other)}");
            }

            if (belt.Result.Problems.OfType<TrimmedBelt>().FirstOrDefault() is { } trim)
            {
                layout.Detail(BeltWords.Trim(trim));
            }

            if (belt.Result.Tone is { } tone)
            {
                layout.Detail(string.Create(CultureInfo.InvariantCulture, $"Plucked between {BeltWords.Title(belt, tone.FromId)} and {BeltWords.Title(belt, tone.ToId)} ({tone.SpanMm:0} mm): {BeltWords.Hertz(tone.New)} new, {BeltWords.Hertz(tone.RunIn)} run in"));
            }

            foreach (var shim in belt.Result.Shims)
            {
                layout.Detail(BeltWords.Shim(belt, shim));
            }
        }
    }

    private void Wiring(Layout layout)
    {
        if (sheet.Wiring is not { } wiring)
        {
            return;
        }

        layout.Heading("Wiring");
        var counts = wiring.Counts;
        layout.Paragraph(string.Create(CultureInfo.InvariantCulture, $"Plugs: {counts.StraightIn} straight in, {counts.RePinned} re-pinned, {counts.Changed} changed, {counts.Lead} by a lead, {counts.Added} added, {counts.Extended} lengthened, {counts.Capped} capped. {wiring.Bill.Splices} splices, {wiring.Bill.TotalLengthMm / 1000:0.0} m of wire."));
        foreach (var plug in wiring.Plugs)
        {
            layout.Item($"{plug.Title}: {WiringWords.Outcome(plug.Outcome)}{(plug is { Extended: true, Outcome: not PlugOutcome.Extended } ? ", extended" : "")}");
        }

        Protection(layout, wiring);
    }

    private static void Protection(Layout layout, WiringSheet wiring)
    {
        foreach (var fuse in LoadProtection.Fuses(wiring))
        {
            layout.Item($"Fuse. {WiringWords.Fuse(fuse)}");
        }

        foreach (var relay in LoadProtection.Relays(wiring))
        {
            layout.Item($"Relay. {WiringWords.Relay(relay)}");
        }

        foreach (var (feed, at) in wiring.Overloads.Select((feed, at) => (feed, at)))
        {
            layout.Item($"Feed. {WiringWords.Shared(feed, wiring.Data!, at + 1)}");
        }

        foreach (var feed in wiring.BulkheadFeeds)
        {
            layout.Item($"Feed. {WiringWords.Bulkhead(feed, wiring.Data!)}");
        }

        foreach (var feed in ThinFeeds.Of(wiring))
        {
            layout.Item($"Feed. {WiringWords.Thin(feed, wiring.Data!.TitleOf(feed.Place))}");
        }

        foreach (var end in LooseEnds.Of(wiring).Where(end => end.Action is not LooseAction.LeaveOff))
        {
            layout.Item($"Without a counterpart: {end.Title} at {wiring.Data?.TitleOf(end.Place) ?? end.Place}, {end.Cavity}: {WiringWords.Loose(end.Action)}: {end.Reason}");
        }
    }

    private void Hoses(Layout layout)
    {
        if (sheet.Hoses is not { IsEmpty: false } hoses)
        {
            return;
        }

        layout.Heading("Hoses");
        foreach (var run in hoses.Runs)
        {
            layout.Item(string.Join(", ", new[]
            {
                $"{run.Title}: {HoseWords.Size(run)}",
                HoseWords.Length(run.LengthMm),
                HoseWords.Class(run.LeastClass),
                SheetHoses.Action(run.Action),
                run.Joiner is { } joiner ? $"joined by {Base.Parts.Find(joiner.Part)?.Title ?? joiner.Part}" : "",
                run.CutIn.IsEmpty ? "" : $"cut into it: {string.Join("; ", run.CutIn.Select(one => Base.Parts.Find(one.Part)?.Title ?? one.Part))}, {run.MoreClips.ToString(CultureInfo.InvariantCulture)} more clips",
            }.Where(part => part.Length > 0)));
        }

        foreach (var blank in hoses.Blanked)
        {
            layout.Item($"{blank.Port.Title}: {HoseWords.Blank(blank.Port)}");
        }

        foreach (var port in hoses.Open)
        {
            layout.Item($"{port.Title}: open. {port.Open}");
        }
    }

    private void Work(Layout layout)
    {
        if (sheet.Tasks.IsEmpty)
        {
            return;
        }

        layout.Heading("Order of work");
        var (hours, money) = (sheet.Effort.Hours, sheet.Effort.Money);
        layout.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{hours.Low:0} to {hours.High:0} hours of work, {hours.Mean:0} on average; {sheet.Effort.DaysAlone} {(sheet.Effort.DaysAlone == 1 ? "day" : "days")} for one person, {sheet.Effort.DaysTogether} for two; parts {money.Low:0} to {money.High:0} {Base.Settings.Currency}, {money.Mean:0} on average. Nine builds in ten should fall within, if the single guesses are right; everything at its best or worst gives {hours.OuterLeast:0} to {hours.OuterMost:0} hours, {money.OuterLeast:0} to {money.OuterMost:0} {Base.Settings.Currency}."));
        foreach (var task in sheet.Tasks)
        {
            layout.Item(task.Title);
        }
    }

    private abstract class Layout
    {
        protected StringBuilder Text { get; } = new();

        public abstract void Title(string text);

        public abstract void Heading(string text);

        public abstract void Item(string text);

        public abstract void Detail(string text);

        /// <summary>A detail that contributors write as Markdown.</summary>
        public abstract void Written(string text);

        public abstract void Paragraph(string text);

        public override string ToString() => Text.ToString().TrimEnd('\n') + "\n";
    }

    private sealed class PlainLayout : Layout
    {
        public override void Title(string text) => Text.Append(PlainText.Tame(text)).Append("\n\n");

        public override void Heading(string text) => Text.Append(Text.Length > 0 && Text[^2] != '\n' ? "\n" : "").Append(PlainText.Tame(text).ToUpperInvariant()).Append('\n');

        public override void Item(string text) => Text.Append("  ").Append(PlainText.Tame(text)).Append('\n');

        public override void Detail(string text) => Text.Append("      ").Append(PlainText.Tame(text)).Append('\n');

        public override void Written(string text) => Detail(text);

        public override void Paragraph(string text) => Text.Append(PlainText.Tame(text)).Append("\n\n");
    }

    private sealed class MarkdownLayout : Layout
    {
        public override void Title(string text) => Text.Append("# ").Append(Shown(text)).Append("\n\n");

        public override void Heading(string text) => Text.Append(Text.Length > 0 && Text[^2] != '\n' ? "\n" : "").Append("## ").Append(Shown(text)).Append("\n\n");

        public override void Item(string text) => Text.Append("- ").Append(Shown(text)).Append('\n');

        public override void Detail(string text) => Text.Append("  - ").Append(Shown(text)).Append('\n');

        public override void Written(string text) => Text.Append("  - ").Append(MarkdownForm.Written(text)).Append('\n');

        public override void Paragraph(string text) => Text.Append(Shown(text)).Append("\n\n");

        private static string Shown(string text) => MarkdownForm.Escape(text.Trim());
    }
}
