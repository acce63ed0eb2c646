using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>The rules that spoke at one position of one combination, the ones overridden, and the values they state.</summary>
/// <param name="forced">What the builder's own decisions left no choice of.</param>
public sealed class WhyReport(Sheet sheet, Resolution resolution, RegionWords words, string position, ImmutableArray<KeyValuePair<string, string>> forced = default)
{
    private SheetAnswer? At => sheet.At(position);

    /// <summary>Its form is schema/reports/why.schema.json.</summary>
    public string Json() => JsonForm.Write(json =>
    {
        json.Combination("combination", resolution.Space.Witness([.. sheet.Combination.Values]));
        json.Decisions(sheet, resolution, forced);
        json.WriteString("position", position);
        if (At is { Answer: not null } at)
        {
            json.Object("answer", () => SheetJson.Answer(json, at, new Alternatives(resolution, sheet).At(at)));
        }
        else
        {
            json.WriteNull("answer");
        }

        json.Objects("spoke", Spoke(), spoke =>
        {
            json.WriteString("rule", spoke.Rule.Id);
            json.Place("place", spoke.Answer.Place);
            json.WriteString("outcome", spoke.By.Count == 0 ? "stands" : "overridden");
            json.Texts("by", spoke.By.Select(rule => rule.Id));
        });
        json.Objects("values", Values(), value =>
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
        var title = resolution.Space.Base.Positions[position].Title;
        if (!sheet.Buildable)
        {
            Line($"This combination cannot be built, by {string.Join(", ", sheet.ExcludedBy.Select(rule => rule.Id))}.");
            Line(Alternatives.NearestBuildable(resolution, sheet) is { IsEmpty: false } nearest ? $"The nearest way: {Pairs(nearest)}." : "No choice changes that for this chassis and donor.");
            Line("");
        }

        if (forced is { IsDefaultOrEmpty: false })
        {
            Line($"No other way is left for {Pairs(forced)}.");
            Line("");
        }

        if (At is null)
        {
            Line($"{title} does not apply in this combination: it applies where {words.Describe(resolution.Applies(position), resolution.Domain)}.");
            return text.ToString();
        }

        Line(At.Answer is not { } answer ? $"{title}: no rule answers."
            : At.Standing.All(standing => standing.Answer.Agrees(answer)) ? $"{title}: {AnswerWording.Sentence(answer)}."
            : $"{title}: the rules that stand give different answers; `swapwright check` says how to mend it.");
        foreach (var (rule, given, by) in Spoke())
        {
            Line("");
            Line(by.Count == 0 ? $"{rule.Id} stands ({given.Place})" : $"{rule.Id} is overridden by {string.Join(", ", by.Select(over => over.Id))} ({given.Place})");
            Line($"  says: {AnswerWording.Sentence(given)}{(given.Part is { } part ? $", {part}" : "")}");
            Line($"  where: {words.Describe(resolution.When(rule), resolution.Domain)}");
            Line($"  because: {rule.Because}");
            Line($"  standing: {rule.Standing}{(rule.Checked is { } date ? $", checked {date}" : "")}; sources: {string.Join(", ", rule.Sources)}");
        }

        // An answer for which nothing has to be decided otherwise is no other way: it contradicts the one that is told.
        foreach (var other in new Alternatives(resolution, sheet).At(At).Where(other => !other.Changes.IsEmpty))
        {
            Line("");
            Line($"{AnswerWording.Sentence(other.Answer)} instead, by {other.Rule.Id}, with {string.Join(' ', other.Changes.Select(change => $"{change.Key}={change.Value}"))}");
        }

        foreach (var value in Values())
        {
            Line("");
            Line(string.Create(CultureInfo.InvariantCulture, $"{value.Stated.Value.Name}: stated {value.Stated.Value.Value}, computed {(value.Computed is { } computed ? computed.ToString("0.#", CultureInfo.InvariantCulture) : "nothing")} {ComputedValues.UnitOf(value.Stated.Value.Name).Symbol} ({value.Stated.Rule.Id})"));
        }

        return text.ToString();
    }

    private static string Pairs(ImmutableArray<KeyValuePair<string, string>> options) => string.Join(", ", options.Select(one => $"{one.Key}={one.Value}"));

    private IEnumerable<(Rule Rule, Answer Answer, IReadOnlyList<Rule> By)> Spoke() => At is null
        ? []
        : At.Standing.Select(standing => (standing.Rule, standing.Answer, (IReadOnlyList<Rule>)[]))
            .Concat(At.Overridden.Select(over => (over.Rule, over.Rule.AnswerAt(position)!, (IReadOnlyList<Rule>)over.By)));

    // Values that the standing rules state belong to the reason of the answer.
    private IEnumerable<ValueComparison> Values() => At is null ? [] : sheet.Values.Where(value => At.Standing.Any(standing => standing.Rule.Id == value.Stated.Rule.Id));
}
