using System.Collections.Immutable;
using System.Text;
using Swapwright.Knowledge;

namespace Swapwright.Impact;

/// <summary>An entity by kind and id, as the register and the files name it.</summary>
public sealed record Entry(string Kind, string Id, string Title);

/// <summary>An entity that says something else than before.</summary>
/// <param name="What">Its members that differ, in the spelling of files.</param>
public sealed record ChangedEntry(Entry Entry, ImmutableArray<string> What);

/// <summary>Entities that came, went or say something else: what has a page of its own, or words that pages show.</summary>
public sealed record EntryChanges(ImmutableArray<Entry> Gained, ImmutableArray<Entry> Lost, ImmutableArray<ChangedEntry> Changed)
{
    // What is accepted shows as findings; lines of files and the order in which ports are declared are no content.
    private static readonly ImmutableHashSet<string> s_besides = [nameof(Entity.Accepts), nameof(Article.BodyLine)];

    public bool None => Gained.IsEmpty && Lost.IsEmpty && Changed.IsEmpty;

    public static EntryChanges Between(KnowledgeBase old, KnowledgeBase @new)
    {
        var gained = ImmutableArray.CreateBuilder<Entry>();
        var lost = ImmutableArray.CreateBuilder<Entry>();
        var changed = ImmutableArray.CreateBuilder<ChangedEntry>();
        foreach (var ((kind, before), (_, now)) in Kinds(old).Zip(Kinds(@new)))
        {
            foreach (var id in before.Keys.Union(now.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal))
            {
                switch (before.GetValueOrDefault(id), now.GetValueOrDefault(id))
                {
                    case (null, { } came):
                        gained.Add(new Entry(kind, id, came.Title));
                        break;
                    case ({ } went, null):
                        lost.Add(new Entry(kind, id, went.Title));
                        break;
                    case ({ } was, { } still):
                        ImmutableArray<string> what = [.. Content.Differing(was.Holder, still.Holder, Besides(kind)).Select(Spelled).Distinct(StringComparer.Ordinal)];
                        if (!what.IsEmpty)
                        {
                            changed.Add(new ChangedEntry(new Entry(kind, id, still.Title), what));
                        }

                        break;
                }
            }
        }

        return new EntryChanges(gained.ToImmutable(), lost.ToImmutable(), changed.ToImmutable());
    }

    public bool Has(string kind) => Gained.Concat(Lost).Concat(Changed.Select(one => one.Entry)).Any(entry => entry.Kind == kind);

    public IEnumerable<string> ChangedOf(string kind) => Changed.Where(one => one.Entry.Kind == kind).Select(one => one.Entry.Id);

    private static ImmutableHashSet<string> Besides(string kind) => kind is "port" or "hose" ? s_besides.Add(nameof(PortRole.Order)) : s_besides;

    /// <summary>The kinds that are compared.</summary>
    internal static IEnumerable<string> LookedAt(KnowledgeBase kb) => Kinds(kb).Select(one => one.Kind);

    private static IEnumerable<(string Kind, Dictionary<string, (string Title, object Holder)?> Entries)> Kinds(KnowledgeBase kb)
    {
        yield return ("base", new Dictionary<string, (string, object)?>(StringComparer.Ordinal) { ["kb"] = (kb.Settings.Title, kb.Settings) });
        yield return Of("chassis", kb.Chassis.All, one => one.Id, one => one.Title);
        yield return Of("engine", kb.Donors.All, one => one.Id, one => one.Title);
        yield return Of("gearbox", kb.Gearboxes.All, one => one.Id, one => one.Title);
        yield return Of("ecu", kb.Ecus.All, one => one.Id, one => one.Title);
        yield return Of("connector", kb.Connectors.All, one => one.Id, one => one.Title);
        yield return Of("part", kb.Parts.All, one => one.Id, one => one.Title);
        yield return Of("choice", kb.Choices.All, one => one.Id, one => one.Title);
        yield return Of("system", kb.Systems, one => one.Id, one => one.Title);
        yield return Of("position", kb.Positions.All, one => one.Id, one => one.Title);
        yield return Of("rule", kb.Rules.All, one => one.Id, one => one.Title);
        yield return Of("task", kb.Tasks.All, one => one.Id, one => one.Title);
        yield return Of("article", kb.Articles.All, one => one.Id, one => one.Title);
        yield return Of("page", kb.Pages.All, one => one.Id, one => one.Title);
        yield return Of("picture", kb.Pictures.All, one => one.Id, one => one.Title);
        yield return Of("term", kb.Terms.All, one => one.Id, one => one.Term);
        yield return Of("source", kb.Sources.All, one => one.Id, one => one.Title);
        yield return Of("fact", kb.Vocabulary.Facts.All, one => one.Name, one => one.Title);
        yield return Of("signal", kb.Vocabulary.Signals.All, one => one.Id, one => one.Title);
        yield return Of("device", kb.Vocabulary.Devices.All, one => one.Id, one => one.Title);
        yield return Of("port", kb.Vocabulary.Ports.All, one => one.Id, one => one.Title);
        yield return Of("hose", kb.Vocabulary.Hoses.All, one => one.Id, one => one.Title);
    }

    private static (string, Dictionary<string, (string Title, object Holder)?>) Of<T>(string kind, IEnumerable<T> all, Func<T, string> id, Func<T, string> title)
        where T : notnull =>
        (kind, all.ToDictionary(id, one => ((string, object)?)(title(one), one), StringComparer.Ordinal));

    /// <summary>As in <c>because</c>, <c>price-date</c>: a member in the spelling of files, without the unit that its name may end in.</summary>
    internal static string Spelled(string member)
    {
        var name = member;
        foreach (var unit in s_units)
        {
            name = name.Length > unit.Length && name.EndsWith(unit, StringComparison.Ordinal) ? name[..^unit.Length] : name;
        }

        var text = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && text.Length > 0)
            {
                text.Append('-');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }

    private static readonly ImmutableArray<string> s_units = ["Mm2", "Mm", "Kg", "Litres", "Months"];
}
