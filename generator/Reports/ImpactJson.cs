using System.Globalization;
using System.Numerics;
using System.Text.Json;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Impact;
using Swapwright.Knowledge;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>An impact as JSON; its form is schema/reports/impact.schema.json.</summary>
public static class ImpactJson
{
    public static string Write(KnowledgeImpact impact, ImpactNames names) => JsonForm.Write(json =>
    {
        json.WriteString("tool", Product.Name);
        json.WriteString("version", Product.Version);
        json.Object("old", () => Base(json, impact.Old, names.Old));
        json.Object("new", () => Base(json, impact.New, names.New));
        json.WriteBoolean("changed", impact.Changed);
        json.Object("combinations", () =>
        {
            Count(json, "compared", impact.Compared);
            Count(json, "answered", impact.Answered);
            Count(json, "gained", impact.Gained.All);
            Count(json, "lost", impact.Lost.All);
        });
        json.Object("guides", () =>
        {
            json.Objects("gained", impact.Guides.Gained, guide => Guide(json, guide));
            json.Objects("lost", impact.Guides.Lost, guide => Guide(json, guide));
            json.Objects("changed", impact.Guides.Changed, changed =>
            {
                Guide(json, changed.Guide);
                json.Texts("kinds", changed.Kinds);
            });
        });
        json.Objects("positions", impact.Answers, change =>
        {
            json.WriteString("position", change.Position.Id);
            json.WriteString("system", change.Position.System);
            json.Object("from", () => Told(json, change.From));
            json.Object("to", () => Told(json, change.To));
            Extent(json, change.Extent);
        });
        json.Object("exclusions", () =>
        {
            json.Objects("gained", impact.Lost.Exclusions, exclusion => Exclusion(json, exclusion));
            json.Objects("lifted", impact.Gained.Exclusions, exclusion => Exclusion(json, exclusion));
        });
        json.Objects("work", impact.Work, change =>
        {
            json.WriteString("kind", change.Kind);
            json.WriteString("change", change.Change);
            json.Text("about", change.About);
            json.Text("text", change.Text);
            json.Text("was", change.Was);
            Extent(json, change.Extent);
        });
        Numbers(json, impact.Numbers);
        json.Objects("words", impact.Words.Where(change => change.What is not ("standing" or "sources")), change =>
        {
            json.WriteString("position", change.Position.Id);
            json.WriteString("what", change.What);
            json.WriteString("from", change.From);
            json.WriteString("to", change.To);
            Extent(json, change.Extent);
        });
        json.Object("standing", () =>
        {
            json.Objects("raised", impact.Words.Where(StandingOrder.Raised), change => Standing(json, change));
            json.Objects("lowered", impact.Words.Where(StandingOrder.Lowered), change => Standing(json, change));
        });
        json.Objects("sources", impact.Words.Where(change => change.What == "sources"), change =>
        {
            json.WriteString("position", change.Position.Id);
            json.Texts("from", change.From.Split(", ", StringSplitOptions.RemoveEmptyEntries));
            json.Texts("to", change.To.Split(", ", StringSplitOptions.RemoveEmptyEntries));
            Extent(json, change.Extent);
        });
        json.Object("findings", () =>
        {
            json.Objects("introduced", impact.Findings.Introduced, finding => Finding(json, finding));
            json.Objects("mended", impact.Findings.Mended, finding => Finding(json, finding));
        });
        json.Object("entries", () =>
        {
            json.Objects("gained", impact.Entries.Gained, entry => Entry(json, entry));
            json.Objects("lost", impact.Entries.Lost, entry => Entry(json, entry));
            json.Objects("changed", impact.Entries.Changed, changed =>
            {
                Entry(json, changed.Entry);
                json.Texts("what", changed.What);
            });
        });
    });

    private static void Base(Utf8JsonWriter json, Proof proof, BaseName name)
    {
        var counts = Counts.Of(proof);
        json.WriteString("name", name.Given);
        json.Text("commit", name.Commit);
        json.WriteString("knowledgeBase", proof.Base.Settings.Title);
        json.WriteNumber("guides", counts.Guides);
        Count(json, "combinations", counts.Combinations);
        Count(json, "buildable", counts.Buildable);
        json.WriteNumber("errors", counts.Errors);
        json.WriteNumber("warnings", counts.Warnings);
        json.WriteNumber("notes", counts.Notes);
    }

    private static void Count(Utf8JsonWriter json, string name, BigInteger count) => json.WriteString(name, count.ToString(CultureInfo.InvariantCulture));

    private static void Extent(Utf8JsonWriter json, Extent extent)
    {
        Count(json, "touches", extent.Combinations);
        json.Combination("witness", extent.Witness);
        json.WriteString("region", extent.Where);
    }

    private static void Guide(Utf8JsonWriter json, GuideName guide)
    {
        json.WriteString("chassis", guide.Chassis);
        json.WriteString("donor", guide.Donor);
        Options(json, "options", guide.Options);
    }

    private static void Options(Utf8JsonWriter json, string name, IEnumerable<KeyValuePair<string, string>> options) => json.Object(name, () =>
    {
        foreach (var (choice, option) in options)
        {
            json.WriteString(choice, option);
        }
    });

    private static void Told(Utf8JsonWriter json, Told told)
    {
        json.WriteBoolean("asked", told.Asked);
        json.Objects("answers", told.Answers, answer =>
        {
            json.WriteString("source", answer.Source);
            json.WriteString("treatment", answer.Treatment);
            json.WriteString("verb", AnswerWording.Word(AnswerWording.Verb(answer)));
            json.Text("part", answer.Part);
            json.Texts("also", answer.Also);
        });
    }

    private static void Exclusion(Utf8JsonWriter json, ExclusionChange exclusion)
    {
        json.WriteString("rule", exclusion.Rule.Id);
        json.Text("because", exclusion.Rule.WhyExcluded);
        json.Place("place", exclusion.Rule.Place);
        Extent(json, exclusion.Extent);
    }

    private static void Numbers(Utf8JsonWriter json, NumberChanges numbers)
    {
        json.Objects("numbers", numbers.Moved, change =>
        {
            json.Object("guide", () => Guide(json, change.Guide));
            json.WriteString("name", change.Name);
            json.WriteString("title", change.Title);
            json.WriteString("unit", change.Unit);
            Number(json, "old", change.Old);
            Number(json, "new", change.New);
        });
        json.Objects("defaults", numbers.Defaults, change =>
        {
            json.Object("guide", () => Guide(json, change.Guide));
            Options(json, "from", change.Old);
            Options(json, "to", change.New);
        });
        json.Object("numbersCompared", () =>
        {
            json.WriteNumber("guides", numbers.Compared);
            json.WriteNumber("of", numbers.Candidates);
        });
    }

    private static void Number(Utf8JsonWriter json, string name, decimal? number)
    {
        if (number is { } value)
        {
            json.WriteNumber(name, value);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Standing(Utf8JsonWriter json, WordChange change)
    {
        json.WriteString("position", change.Position.Id);
        json.WriteString("from", change.From);
        json.WriteString("to", change.To);
        Extent(json, change.Extent);
    }

    private static void Finding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("id", finding.Id);
        json.WriteString("severity", SeverityWords.Of(finding.Severity));
        json.WriteString("message", finding.Message);
        json.Place("place", finding.Place);
    }

    private static void Entry(Utf8JsonWriter json, Entry entry)
    {
        json.WriteString("kind", entry.Kind);
        json.WriteString("id", entry.Id);
        json.WriteString("title", entry.Title);
    }
}
