using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Sheets.Questions;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The pages that lead an owner to their chassis or donor by what can be seen.</summary>
internal sealed class WhichPages(SiteKnowledge site)
{
    private const string All = "any";

    public WhichPage Chassis() => Page(SitePaths.WhichChassis, "Which chassis do I have?", "chassis", "car", site.Base.Chassis.All, SiteKnowledge.Link);

    public WhichPage Donor() => Page(SitePaths.WhichDonor, "Which donor do I have?", "donor", "engine", site.Base.Donors.All, SiteKnowledge.Link);

    /// <summary>Where a family's questions begin.</summary>
    public static string Anchor(Variant variant) => variant.Family.Length == 0 ? "no-family" : $"family-{variant.Family}";

    public static string FamilyTitle(string family) => family.Length == 0 ? "Others" : ShopWords.Capital(family.Replace('-', ' '));

    private WhichPage Page<T>(string path, string title, string subject, string thing, ImmutableArray<T> variants, Func<T, PageLink> link)
        where T : Variant
    {
        var families = variants.GroupBy(variant => variant.Family, StringComparer.Ordinal).OrderBy(family => family.Key, StringComparer.Ordinal)
            .Select(family => Section(FamilyTitle(family.Key), Anchor(family.First()), path, subject, [.. family], link));
        return new WhichPage
        {
            Frame = site.Frame(path, title, $"A few questions about what can be seen, until one {subject} is left."),
            Title = title,
            Intro = site.Block(
                $"Stand before the {thing} and answer from the top of its family. Every answer leads to the next question or to the page of the {subject}. Where the family itself is not known, begin with [any of them](#{All}).",
                path),
            Sections = [.. families, .. variants.Select(variant => variant.Family).Distinct(StringComparer.Ordinal).Count() > 1 ? [Section("Any of them", All, path, subject, variants, link)] : Array.Empty<KeySection>()],
            Method = site.Block(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Asked is only what can be seen without tools or stands in the papers, and only where it is known of everything that is still possible. Up to {QuestionPlan.MostExact} variants the order is the one with the fewest questions on average that there is, every variant being taken as equally likely; more are first divided by what tells most within two questions. Of questions that do equally well, the year comes last: papers can belong to another {thing}."),
                path),
        };
    }

    private KeySection Section<T>(string title, string anchor, string path, string subject, ImmutableArray<T> variants, Func<T, PageLink> link)
        where T : Variant
    {
        var root = VariantQuestions.Of(site.Base.Vocabulary, subject, variants);
        var steps = new List<KeyStep>();
        if (root.Question is not null)
        {
            Walk(root, null, 0);
        }

        return new KeySection(title, anchor, Words(root), steps, root.Question is null ? End(root, subject, link) : null);

        // Depth first, so that a question stands near the answer that leads to it; its number is its place in the list.
        void Walk(QuestionStep<T> step, PageLink? from, int depth)
        {
            var at = steps.Count;
            var here = Place(at);
            steps.Add(null!);
            var replies = new List<KeyReply>();
            foreach (var (reply, next) in step.Replies)
            {
                var words = ReplyWords(step.Question!, reply);
                if (next.Question is null)
                {
                    replies.Add(new KeyReply(words, null, End(next, subject, link)));
                    continue;
                }

                replies.Add(new KeyReply(words, new PageLink($"go to {Number(steps.Count)}", $"#{Place(steps.Count)}"), null));
                Walk(next, new PageLink($"{Number(at)}: {words}", $"#{here}"), depth + 1);
            }

            steps[at] = new KeyStep(Number(at), here, from, depth, Question(step.Question!), HowToTell(step.Question!, path), [.. step.Same.Select(same => new KeyHint(Question(same), HowToTell(same, path)))], replies);
        }

        string Place(int at) => $"{anchor}-{Number(at)}";
    }

    private static string Number(int at) => (at + 1).ToString(CultureInfo.InvariantCulture);

    private static string Words<T>(QuestionStep<T> root)
        where T : Variant
    {
        var (asked, most) = Count(root);
        return most == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{root.Variants.Length} variants; {asked / (double)root.Variants.Length:0.#} questions on average, {most} at most.");
    }

    private static (int Asked, int Most) Count<T>(QuestionStep<T> step)
        where T : Variant
    {
        var below = step.Replies.Select(reply => Count(reply.Next)).ToList();
        return below.Count == 0 ? (0, 0) : (step.Variants.Length + below.Sum(one => one.Asked), 1 + below.Max(one => one.Most));
    }

    public static string Question(VariantQuestion question) => question.Fact is { } fact ? fact.Title : "Year of manufacture";

    public HtmlString HowToTell(VariantQuestion question, string path) => site.Inline(HowToTell(question), path);

    public static string HowToTell(VariantQuestion question) => question.Fact is { } fact ? fact.HowToTell : "From the papers or the maker's plate.";

    public string ReplyWords(VariantQuestion question, Reply reply) => question.Fact is { } fact ? FactWords(fact, reply.Value!.Value) : reply.Years.ToString();

    private string FactWords(FactDeclaration fact, FactValue value) => fact.Type == FactType.Flag ? value.Number == 1 ? "Yes" : "No" : site.FactText(fact, value);

    private KeyEnd End<T>(QuestionStep<T> leaf, string subject, Func<T, PageLink> link)
        where T : Variant =>
        new([.. leaf.Variants.Select(link)], leaf.Variants.Length == 1 ? [] : Differences(subject, leaf.Variants));

    /// <summary>What differs between variants that nothing to be seen tells apart: facts that are measured or read from papers, and overlapping years.</summary>
    public IReadOnlyList<NamedValue> Differences<T>(string subject, ImmutableArray<T> variants)
        where T : Variant
    {
        var facts = site.Base.Vocabulary.Facts.All.Where(fact => fact.Subject == subject).OrderBy(fact => fact.Place)
            .Where(fact => variants.Select(variant => variant.Fact(fact.Id) is { } value ? $"{value.Text} {value.Number.ToString(CultureInfo.InvariantCulture)}" : null).Distinct(StringComparer.Ordinal).Count() > 1)
            .Select(fact => new NamedValue(
                fact.Title,
                string.Join("; ", variants.Select(variant => $"{variant.Title}: {(variant.Fact(fact.Id) is { } value ? InSentence.Lower(FactWords(fact, value)) : "not stated")}")),
                fact.HowToTell.Length > 0 ? site.Plain(fact.HowToTell) : null));
        return variants.Select(variant => variant.Years).Distinct().Count() > 1
            ? [.. facts, new NamedValue("Years", string.Join("; ", variants.Select(variant => $"{variant.Title}: {variant.Years}")))]
            : [.. facts];
    }
}
