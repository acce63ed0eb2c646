using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The guides of one chassis against each other: what each position asks for, where they do not all ask the same.</summary>
internal sealed class DifferPages(SiteKnowledge site)
{
    // An answer stands in many guides of many chassis; it is known by being the same one.
    private readonly ConcurrentDictionary<Answer, (Verb Verb, string Words)> _asked = new(ReferenceEqualityComparer.Instance);

    public DifferPage Of(ChassisVariant chassis)
    {
        var guides = site.GuidesOfChassis[chassis.Id].OrderBy(guide => guide.Headline.Donor.Family, StringComparer.Ordinal).ThenBy(guide => guide.Headline.Donor.Years.From).ThenBy(guide => guide.Path, StringComparer.Ordinal).ToImmutableArray();
        var briefs = guides.Select(site.BriefOf).ToImmutableArray();
        var asked = guides.Select(site.AnswersOf).ToImmutableArray();
        var positions = site.Base.PositionOrder.Select((position, at) => (Position: position, Answers: Answers(at, asked))).Where(pair => !pair.Answers.IsEmpty).ToList();
        var differing = positions.Where(pair => pair.Answers.Length > 1).ToList();
        return new DifferPage
        {
            Frame = site.Frame(SitePaths.Differ(chassis.Id), $"{chassis.Title}: what differs", $"The guides of {chassis.Title} against each other.", SiteKnowledge.Link(chassis)),
            Title = $"{chassis.Title}: what differs between its guides",
            Chassis = SiteKnowledge.Link(chassis),
            Words = string.Create(CultureInfo.InvariantCulture, $"All {guides.Length} guides ask the same at {positions.Count - differing.Count} of {positions.Count} positions; the other {differing.Count} are below, for each guide's recommended choices."),
            Guides = [.. guides.Select((guide, at) => new DifferGuide(Number(at), new PageLink(guide.Headline.Donor.Title + (guide.Options.Length > 0 ? $", {InSentence.Lower(guide.Options)}" : ""), guide.Path), Sums(briefs[at].Counts)))],
            Systems =
            [
                .. site.Base.Systems.Select(system => new DifferSystem(
                    system.Title,
                    [.. differing.Where(pair => pair.Position.System == system.Id).Select(pair => new DifferPosition(SiteKnowledge.Link(pair.Position), pair.Answers))]))
                    .Where(system => system.Positions.Count > 0),
            ],
        };
    }

    private ImmutableArray<ComparedCell> Sums(GuideCounts counts) =>
    [
        Sum($"{SiteKnowledge.Number(counts.Money.Likely)} {site.Base.Settings.Currency}", counts.Money.Likely),
        Sum($"{SiteKnowledge.Number(counts.Hours.Likely)} h", counts.Hours.Likely),
        Sum(SiteKnowledge.Number(counts.PlugsChanged), counts.PlugsChanged),
        Sum(SiteKnowledge.Number(counts.WiresAdded), counts.WiresAdded),
        Sum(SiteKnowledge.Number(counts.PartsBought), counts.PartsBought),
    ];

    private static ComparedCell Sum(string text, decimal value) => new(text, value.ToString("0.##", CultureInfo.InvariantCulture));

    /// <summary>What is asked for at a position, each with the guides that ask it; empty where it arises in none.</summary>
    private ImmutableArray<DifferAnswer> Answers(int position, ImmutableArray<ImmutableArray<Answer?>> guides)
    {
        var asked = guides.Select((answers, at) => (Guide: at + 1, Answer: answers[position])).ToList();
        return asked.TrueForAll(one => one.Answer is null) ? [] :
        [
            .. asked.GroupBy(one => one.Answer is { } answer ? _asked.GetOrAdd(answer, known => (ShopWords.Verb(known), Words(known))) : ((Verb, string)?)null)
                .Select(group => new DifferAnswer(
                    group.Key?.Item1,
                    group.Key?.Item2 ?? "Does not arise",
                    string.Join(' ', group.Select(one => one.Guide.ToString(CultureInfo.InvariantCulture))),
                    Runs([.. group.Select(one => one.Guide)]))),
        ];
    }

    private string Words(Answer answer)
    {
        var parts = new[] { answer.Part }.Concat(answer.Also).OfType<string>().Select(id => site.Base.Parts.Find(id)?.Title ?? id).ToList();
        return ShopWords.Sentence(answer) + (parts.Count == 0 ? "" : $": {string.Join("; ", parts)}");
    }

    private static string Runs(ImmutableArray<int> numbers)
    {
        var runs = new List<(int First, int Last)>();
        foreach (var number in numbers)
        {
            if (runs.Count > 0 && runs[^1].Last + 1 == number)
            {
                runs[^1] = (runs[^1].First, number);
            }
            else
            {
                runs.Add((number, number));
            }
        }

        return string.Join(", ", runs.Select(run => string.Create(CultureInfo.InvariantCulture, $"{run.First}{(run.First == run.Last ? "" : run.Last == run.First + 1 ? $", {run.Last}" : $" to {run.Last}")}")));
    }

    private static string Number(int at) => (at + 1).ToString(CultureInfo.InvariantCulture);
}
