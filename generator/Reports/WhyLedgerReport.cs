using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Reports;

/// <summary>How the numbers of a worksheet were got in one combination: formula, what went in and whose it is, source, and what rules state beside them.</summary>
/// <param name="asked">A worksheet, or a worksheet and one of its numbers, as in <c>gearing.top-speed</c> or <c>belt.accessory.length</c>.</param>
/// <param name="forced">What the builder's own decisions left no choice of.</param>
public sealed class WhyLedgerReport(Sheet sheet, Resolution resolution, string asked, ImmutableArray<KeyValuePair<string, string>> forced = default)
{
    private readonly Ledger? _ledger = Workings.Of(sheet, resolution.Space.Base, Workings.IdOf(asked.Split('.')[0]));

    public string LedgerId => Workings.IdOf(asked.Split('.')[0]);

    /// <summary>The number asked about; null for all of them. Dots and dashes are the same, since rules state <c>belt.accessory.length</c>.</summary>
    public string? Figure => asked.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot ? asked[(dot + 1)..].Replace('.', '-') : null;

    /// <summary>The numbers that the worksheet has in this combination.</summary>
    public IEnumerable<string> Known => _ledger?.Figures.Select(figure => figure.Id) ?? [];

    private IEnumerable<Figure> Figures => _ledger?.Figures.Where(figure => Figure is null || figure.Id == Figure) ?? [];

    // Gaps belong to the worksheet as a whole: a number that is there is not missing.
    private IEnumerable<LedgerGap> Gaps => Figure is null ? _ledger?.Gaps ?? [] : [];

    /// <summary>Its form is schema/reports/why.schema.json.</summary>
    public string Json() => JsonForm.Write(json =>
    {
        json.Combination("combination", resolution.Space.Witness([.. sheet.Combination.Values]));
        json.Decisions(sheet, resolution, forced);
        json.WriteString("worksheet", LedgerId);
        json.Objects("figures", Figures, figure => SheetLedgers.Figure(json, figure));
        json.Objects("missing", Gaps, gap =>
        {
            json.WriteString("about", gap.About);
            json.WriteString("reason", gap.Reason);
            json.WriteString("mend", gap.Mend);
        });
        json.Objects("values", Figures.SelectMany(Stated), value =>
        {
            var unit = ComputedValues.UnitOf(value.Stated.Value.Name).Symbol;
            json.WriteString("name", value.Stated.Value.Name);
            if (value.Computed is { } computed)
            {
                json.Quantity("computed", (double)computed, unit);
            }

            json.Quantity("stated", (double)value.Stated.Value.Value, unit);
            json.Quantity("tolerance", (double)value.Stated.Value.Tolerance, unit);
            json.WriteString("rule", value.Stated.Rule.Id);
            if (value.Stated.Value.WrittenDown)
            {
                json.WriteBoolean("writtenDown", true);
            }
        });
    });

    public string Text()
    {
        var text = new StringBuilder();
        void Line(string line) => text.Append(PlainText.Tame(line)).Append('\n');
        if (!sheet.Buildable)
        {
            Line($"This combination cannot be built, by {string.Join(", ", sheet.ExcludedBy.Select(rule => rule.Id))}.");
            Line("");
        }

        if (_ledger is not { } ledger)
        {
            Line($"The base says nothing that {LedgerId} could be worked out from.");
            return text.ToString();
        }

        Line($"{ledger.Title}.");
        foreach (var figure in Figures)
        {
            Line("");
            Line($"{figure.Title} ({LedgerId}.{figure.Id}): {LedgerWords.Value(figure)}");
            if (figure.Remark.Length > 0)
            {
                Line($"  {figure.Remark}");
            }

            if (figure.Formula.Length > 0)
            {
                Line($"  formula: {figure.Formula}");
            }

            foreach (var input in figure.From)
            {
                Line($"  from: {(input.IsName ? input.Title : LedgerWords.InLine(input.Title))} {LedgerWords.Input(input)}, {input.Origin}");
            }

            if (figure.Source.Length > 0)
            {
                Line($"  source: {figure.Source}");
            }

            foreach (var value in Stated(figure))
            {
                var unit = ComputedValues.UnitOf(value.Stated.Value.Name).Symbol;
                Line(string.Create(CultureInfo.InvariantCulture, $"  stated: {value.Stated.Value.Value} ± {value.Stated.Value.Tolerance}{(unit.Length > 0 ? $" {unit}" : "")} by {value.Stated.Rule.Id}, which {value.Verdict}"));
            }
        }

        foreach (var gap in Gaps)
        {
            Line("");
            Line($"{gap.About}: not computed, for {gap.Reason}. {gap.Mend}");
        }

        return text.ToString();
    }

    private IEnumerable<ValueComparison> Stated(Figure figure) => sheet.Values.Where(value => value.Stated.Value.Name.Split('.') is [var ledger, .. var name] && ledger == LedgerId && string.Join('-', name) == figure.Id);
}
