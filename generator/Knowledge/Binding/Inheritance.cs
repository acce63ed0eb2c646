using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Binding;

/// <summary>
/// Resolves <c>like</c>: an entity takes everything of another of its kind; mappings merge key by key, everything else
/// replaces, and <c>null</c> removes. Nodes keep the places where they were written.
/// </summary>
internal sealed class Inheritance(BindingContext context)
{
    private const string Like = "like";

    /// <summary>The files of one kind with <c>like</c> worked out; a loop or an unknown name is reported and left as written.</summary>
    public IReadOnlyDictionary<string, MappingNode> Resolve(string kind, IReadOnlyList<SourceFile> files)
    {
        // Of two files with one id, which the reader reports, the first one counts.
        var roots = files.Where(file => file.Root is not null).DistinctBy(file => file.Id, StringComparer.Ordinal).ToDictionary(file => file.Id, file => file.Root!, StringComparer.Ordinal);
        var done = new Dictionary<string, MappingNode>(StringComparer.Ordinal);
        foreach (var id in roots.Keys.Order(StringComparer.Ordinal))
        {
            ResolveOne(kind, id, roots, done, []);
        }

        return done;
    }

    private MappingNode ResolveOne(string kind, string id, Dictionary<string, MappingNode> roots, Dictionary<string, MappingNode> done, List<string> chain)
    {
        if (done.TryGetValue(id, out var ready))
        {
            return ready;
        }

        var own = roots[id];
        var result = own;
        if (own[Like] is ScalarNode parent)
        {
            if (parent.Text == id || chain.Contains(parent.Text))
            {
                context.Report(FindingKinds.Reference, $"`like` goes in a loop through `{parent.Text}`", parent.Place, "Let one of them stand on its own.");
            }
            else if (!roots.ContainsKey(parent.Text))
            {
                context.Unknown(FindingKinds.Reference, kind, parent.Text, roots.Keys, parent.Place);
            }
            else
            {
                chain.Add(id);
                result = Merge(ResolveOne(kind, parent.Text, roots, done, chain), own);
                chain.RemoveAt(chain.Count - 1);
            }
        }

        done[id] = result;
        return result;
    }

    private MappingNode Merge(MappingNode below, MappingNode above)
    {
        var entries = ImmutableArray.CreateBuilder<MappingEntry>(below.Entries.Length + above.Entries.Length);
        foreach (var entry in below.Entries)
        {
            // What is said of one entity alone does not pass on.
            if (entry.Key.Text is "accept" or "notes" or Like && !above.TryGet(entry.Key.Text, out _))
            {
                continue;
            }

            if (!above.TryGet(entry.Key.Text, out var over))
            {
                entries.Add(entry);
            }
            else if (entry.Value is MappingNode lower && over.Value is MappingNode upper)
            {
                entries.Add(new MappingEntry(over.Key, Merge(lower, upper)));
            }
            else if (over.Value is not ScalarNode { Kind: ScalarKind.Null })
            {
                entries.Add(over);
            }
        }

        foreach (var entry in above.Entries)
        {
            if (below.TryGet(entry.Key.Text, out _))
            {
                continue;
            }

            if (entry.Value is ScalarNode { Kind: ScalarKind.Null })
            {
                // Mistyped, it would leave in place what was to go.
                context.Unknown(FindingKinds.Reference, "inherited entry", entry.Key.Text, below.Entries.Select(one => one.Key.Text), entry.Key.Place);
            }
            else
            {
                entries.Add(entry);
            }
        }

        return new MappingNode(above.Place, entries.ToImmutable(), index: null);
    }
}
