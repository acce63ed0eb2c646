using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Sheets.Questions;

namespace Swapwright.Site.Pages;

/// <summary>
/// What the finder of the start page narrows by, as a script that only sets one value: a page opened from disk may load a script beside
/// it but may not fetch a file. The encoder leaves no character that could end a text or a script.
/// </summary>
/// <remarks>
/// Variants, guides and rules are named by their number in their list. <c>steps</c> of a side: at an end <c>{variants, differs}</c>, else
/// <c>{variants, ask, how, replies: [{words, to}]}</c>; <c>roots</c> lead into them. <c>pairs</c>: chassis, donor and the rules that keep all
/// of the pair from being built. <c>options</c>: the same for one option of a headline choice.
/// </remarks>
internal sealed class FinderData(SiteKnowledge site, ClosedWays closed, WhichPages which)
{
    private readonly List<Rule> _rules = [];

    public SiteFile File() => new(SitePaths.FinderData, Encoding.UTF8.GetBytes($"globalThis.swapwrightFinder = {Json()};\n"));

    private string Json()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("currency", site.Base.Settings.Currency);
            Side(json, "chassis", site.Base.Chassis.All, chassis => SitePaths.Chassis(chassis.Id));
            Side(json, "donor", site.Base.Donors.All, donor => SitePaths.Donor(donor.Id));
            Choices(json);
            Guides(json);
            Pairs(json);
            Rules(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private void Side<T>(Utf8JsonWriter json, string subject, ImmutableArray<T> variants, Func<T, string> path)
        where T : Variant
    {
        var numbers = variants.Select((variant, at) => (variant.Id, at)).ToDictionary(pair => pair.Id, pair => pair.at, StringComparer.Ordinal);
        var steps = new List<(QuestionStep<T> Step, List<int> To)>();
        json.WriteStartObject(subject);
        json.WriteStartArray("variants");
        foreach (var variant in variants)
        {
            json.WriteStartArray();
            json.WriteStringValue(variant.Title);
            json.WriteStringValue(path(variant));
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteStartArray("roots");
        foreach (var family in variants.GroupBy(variant => variant.Family, StringComparer.Ordinal).OrderBy(family => family.Key, StringComparer.Ordinal))
        {
            Root(WhichPages.FamilyTitle(family.Key), [.. family]);
        }

        Root("", variants);
        json.WriteEndArray();
        json.WriteStartArray("steps");
        foreach (var (step, to) in steps)
        {
            Step(json, subject, step, to, numbers);
        }

        json.WriteEndArray();
        json.WriteEndObject();

        // The root without a title asks over all families.
        void Root(string title, ImmutableArray<T> members)
        {
            json.WriteStartArray();
            json.WriteStringValue(title);
            json.WriteNumberValue(Add(VariantQuestions.Of(site.Base.Vocabulary, subject, members)));
            json.WriteEndArray();
        }

        int Add(QuestionStep<T> step)
        {
            var at = steps.Count;
            var to = new List<int>();
            steps.Add((step, to));
            to.AddRange(step.Replies.Select(reply => Add(reply.Next)));
            return at;
        }
    }

    private void Step<T>(Utf8JsonWriter json, string subject, QuestionStep<T> step, List<int> to, Dictionary<string, int> numbers)
        where T : Variant
    {
        json.WriteStartObject();
        Numbers(json, "variants", step.Variants.Select(variant => numbers[variant.Id]));
        if (step.Question is { } question)
        {
            json.WriteString("ask", WhichPages.Question(question));
            json.WriteString("how", site.Plain(WhichPages.HowToTell(question)));
            json.WriteStartArray("replies");
            foreach (var (reply, next) in step.Replies.Zip(to))
            {
                json.WriteStartArray();
                json.WriteStringValue(which.ReplyWords(question, reply.Reply));
                json.WriteNumberValue(next);
                json.WriteEndArray();
            }

            json.WriteEndArray();
        }
        else if (step.Variants.Length > 1)
        {
            json.WriteStartArray("differs");
            foreach (var difference in which.Differences(subject, step.Variants))
            {
                json.WriteStringValue($"{difference.Name}: {difference.Value}");
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private IEnumerable<Choice> Headline => site.Base.Settings.Headline.Select(named => site.Base.Choices.Find(named.Id)).OfType<Choice>().Distinct();

    private void Choices(Utf8JsonWriter json)
    {
        json.WriteStartArray("choices");
        foreach (var choice in Headline)
        {
            json.WriteStartObject();
            json.WriteString("title", choice.Title);
            json.WriteStartArray("options");
            foreach (var option in choice.Options)
            {
                json.WriteStringValue(option.Title);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static int OptionAt(Choice choice, string option) => choice.Options.Select(one => one.Id).ToList().IndexOf(option);

    private void Guides(Utf8JsonWriter json)
    {
        json.WriteStartArray("guides");
        foreach (var guide in site.Guides)
        {
            var counts = site.BriefOf(guide).Counts;
            json.WriteStartObject();
            json.WriteNumber("c", site.Base.Chassis.All.IndexOf(guide.Headline.Chassis));
            json.WriteNumber("d", site.Base.Donors.All.IndexOf(guide.Headline.Donor));
            Numbers(json, "o", guide.Headline.Options.Select(option => OptionAt(site.Base.Choices[option.Key], option.Value)));
            json.WriteString("path", guide.Path);
            json.WriteString("options", guide.Options);
            json.WriteNumber("money", counts.Money.Likely);
            json.WriteNumber("hours", counts.Hours.Likely);
            if (counts.Power is { } power)
            {
                json.WriteNumber("power", power);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void Pairs(Utf8JsonWriter json)
    {
        var (chassis, donors) = (site.Base.Chassis.All, site.Base.Donors.All);
        var guides = site.Guides.ToLookup(guide => (guide.Headline.Chassis.Id, guide.Headline.Donor.Id));
        json.WriteStartArray("pairs");
        foreach (var (c, d) in All().Where(pair => !guides.Contains((chassis[pair.C].Id, donors[pair.D].Id))))
        {
            Closed(json, [c, d], closed.OfPair(chassis[c].Id, donors[d].Id));
        }

        json.WriteEndArray();
        json.WriteStartArray("options");
        foreach (var (c, d) in All())
        {
            foreach (var (choice, at) in Headline.Select((choice, at) => (choice, at)))
            {
                var taken = guides[(chassis[c].Id, donors[d].Id)].Select(guide => guide.Headline.Options.First(option => option.Key == choice.Id).Value).ToHashSet(StringComparer.Ordinal);
                foreach (var option in choice.Options.Where(option => taken.Count > 0 && !taken.Contains(option.Id)))
                {
                    if (closed.OfOption(chassis[c].Id, donors[d].Id, choice.Id, option.Id) is { IsEmpty: false } rules)
                    {
                        Closed(json, [c, d, at, OptionAt(choice, option.Id)], rules);
                    }
                }
            }
        }

        json.WriteEndArray();

        IEnumerable<(int C, int D)> All() => Enumerable.Range(0, chassis.Length).SelectMany(c => Enumerable.Range(0, donors.Length).Select(d => (c, d)));
    }

    private void Closed(Utf8JsonWriter json, ReadOnlySpan<int> where, ImmutableArray<Rule> rules)
    {
        json.WriteStartArray();
        foreach (var number in where)
        {
            json.WriteNumberValue(number);
        }

        json.WriteStartArray();
        foreach (var rule in rules)
        {
            var at = _rules.IndexOf(rule);
            if (at < 0)
            {
                at = _rules.Count;
                _rules.Add(rule);
            }

            json.WriteNumberValue(at);
        }

        json.WriteEndArray();
        json.WriteEndArray();
    }

    private void Rules(Utf8JsonWriter json)
    {
        json.WriteStartArray("rules");
        foreach (var rule in _rules)
        {
            json.WriteStartArray();
            json.WriteStringValue(rule.Title);
            json.WriteStringValue(SitePaths.Rule(rule.Id));
            json.WriteStringValue(site.Plain(rule.WhyExcluded));
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    private static void Numbers(Utf8JsonWriter json, string name, IEnumerable<int> numbers)
    {
        json.WriteStartArray(name);
        foreach (var number in numbers)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
    }
}
