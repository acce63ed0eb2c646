using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using Swapwright.Diagnostics;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Space;

namespace Swapwright.Reports;

/// <summary>A sheet as JSON; its form is schema/reports/sheet.schema.json.</summary>
/// <param name="forced">What the builder's own decisions left no choice of; left out where nobody decided anything.</param>
/// <param name="known">What was written of answers before, for many sheets.</param>
public sealed class SheetJson(Sheet sheet, Resolution resolution, ImmutableArray<KeyValuePair<string, string>> forced = default, SheetForms? known = null)
{
    private readonly Alternatives _alternatives = new(resolution, sheet, known?.Memory);

    /// <param name="part">One member of the sheet to write alone, such as <c>wiring</c>; null for all.</param>
    public string Write(string? part = null) => JsonForm.Write(json => Members(json, part));

    /// <summary>The whole sheet as UTF-8.</summary>
    public void Write(ArrayBufferWriter<byte> buffer) => JsonForm.Write(buffer, json => Members(json, null));

    private void Members(Utf8JsonWriter json, string? part)
    {
        json.Combination("combination", resolution.Space.Witness([.. sheet.Combination.Values]));
        json.WriteBoolean("buildable", sheet.Buildable);
        json.Objects("excludedBy", sheet.ExcludedBy, rule =>
        {
            json.WriteString("rule", rule.Id);
            json.Text("because", rule.WhyExcluded);
            json.Place("place", rule.Place);
        });
        json.Decisions(sheet, resolution, forced);
        foreach (var (name, write) in Parts(json).Where(one => part is null || one.Name == part))
        {
            write();
        }
    }

    private static ImmutableArray<string> LedgerIds => LedgerAssembly.Ids;

    /// <summary>The members that <c>--part</c> may name.</summary>
    public static readonly ImmutableArray<string> PartNames = ["answers", "belts", "wiring", "hoses", .. LedgerIds, "effort", "cautions", "mistakes", "advice"];

    private IEnumerable<(string Name, Action Write)> Parts(Utf8JsonWriter json) =>
    [
        ("answers", () => json.Array("answers", sheet.Answers.Where(answer => answer.Answer is not null), answer => Answer(json, answer))),
        ("belts", () => json.Objects("belts", sheet.Belts, belt => SheetBelts.Write(json, belt))),
        ("wiring", () => SheetWiring.Write(json, sheet.Wiring)),
        ("hoses", () => SheetHoses.Write(json, sheet.Hoses)),
        .. LedgerIds.Select(id => (id, (Action)(() => SheetLedgers.Write(json, id, sheet.Ledger(id))))),
        ("effort", () => Alike(json, "effort", SheetForms.EffortFrom, effort => effort.Object("effort", () => SheetWork.Write(effort, sheet, resolution.Space.Base.Settings.Currency)))),
        ("cautions", () => Alike(json, "cautions", SheetTexts.CautionsFrom, Cautions)),
        ("mistakes", () => Alike(json, "mistakes", SheetTexts.MistakesFrom, Mistakes)),
        ("advice", () => json.Objects("advice", sheet.Speaking.SelectMany(rule => rule.Advises.Select(advice => (rule, advice))), pair =>
        {
            json.WriteString("text", pair.advice.Text);
            json.Text("option", pair.advice.Option);
            json.Text("donor", pair.advice.Donor);
            json.Text("rule", pair.rule.Id);
        })),
    ];

    /// <summary>Writes a member that many sheets have alike.</summary>
    /// <param name="from">All that it goes by of a sheet.</param>
    private void Alike(Utf8JsonWriter json, string name, Func<Sheet, object?[]> from, Action<Utf8JsonWriter> write)
    {
        if (known is null)
        {
            write(json);
        }
        else
        {
            json.WritePropertyName(name);
            json.WriteRawValue(known.Member(name, from(sheet), write), skipInputValidation: true);
        }
    }

    private void Cautions(Utf8JsonWriter json) => json.Objects("cautions", SheetTexts.Cautions(sheet, resolution.Space.Base), caution =>
    {
        json.WriteString("about", caution.Caution.About);
        json.WriteString("text", caution.Caution.Text);
        json.Text("rule", caution.Rule?.Id);
    });

    private void Mistakes(Utf8JsonWriter json) => json.Objects("mistakes", SheetTexts.Mistakes(sheet), mistake =>
    {
        json.WriteString("text", mistake.Text);
        json.Text("rule", mistake.Rule?.Id);
    });

    private void Answer(Utf8JsonWriter json, SheetAnswer at)
    {
        if (known is null)
        {
            json.WriteStartObject();
            Answer(json, at, _alternatives.At(at));
            json.WriteEndObject();
        }
        else
        {
            json.WriteRawValue(known.Object(at, _alternatives), skipInputValidation: true);
        }
    }

    /// <summary>The members of an answer.</summary>
    internal static void Answer(Utf8JsonWriter json, SheetAnswer at, ImmutableArray<Alternative> alternatives)
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
        json.Texts("sources", rule.Sources);
        json.Text("standing", rule.Standing);
        json.Texts("overridden", at.Overridden.Select(over => over.Rule.Id));
        json.Objects("alternatives", alternatives, alternative =>
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
}
