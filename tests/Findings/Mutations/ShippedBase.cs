using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>The knowledge base that is shipped, kept in memory, with the trees that mutations make of it.</summary>
internal sealed class ShippedBase
{
    private readonly Lazy<Told> _told;
    private readonly Lazy<ILookup<string, string>> _words;

    // Every word of the base once: a tenth of its texts.
    private readonly Lazy<string> _tokens;
    private readonly ConcurrentDictionary<string, ImmutableArray<Spot>> _spots = new(StringComparer.Ordinal);

    public ShippedBase()
    {
        _told = new(() => Told.By(Proof));
        _words = new(() => Files.SelectMany(file => Spot.All(file).SelectMany(Words).Distinct(StringComparer.Ordinal).Select(word => (word, file.Path))).ToLookup(pair => pair.word, pair => pair.Path, StringComparer.Ordinal));
        _tokens = new(() => string.Join(' ', Files.SelectMany(file => file.Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Append(file.Id)).Distinct(StringComparer.Ordinal)));
    }

    public Proof Proof { get; } = ShippedKnowledge.Proof();

    /// <summary>What readers are told before anything is changed.</summary>
    public Told Told => _told.Value;

    public ImmutableArray<SourceFile> Files => Proof.Tree.Files;

    public IEnumerable<SourceFile> Of(params string[] kinds) => Proof.Tree.Files.Where(file => kinds.Contains(file.Kind));

    public SourceFile File(string path) => Proof.Tree.Find(path) ?? throw new InvalidOperationException($"the shipped base has no {path}");

    public SourceFile Rule(string id) => Proof.Tree.Files.Single(file => file.Kind == "rule" && file.Id == id);

    /// <summary>Whether any entity of the base, of whatever kind, has this id or any text says it as a word.</summary>
    public bool Says(string id) => id.Any(char.IsWhiteSpace)
        ? Files.Any(file => file.Text.Contains(id, StringComparison.Ordinal))
        : _tokens.Value.Contains(id, StringComparison.Ordinal);

    /// <summary>All nodes of the files of some kinds, found once for all patterns of ways.</summary>
    public ImmutableArray<Spot> Spots(string kinds) => _spots.GetOrAdd(kinds, wanted => [.. Of(wanted.Split(' ')).SelectMany(Spot.All)]);

    /// <summary>The files that have the word as a value or at the end of a key.</summary>
    public IEnumerable<string> FilesWith(string word) => _words.Value[word];

    /// <summary>Files that are not changed are not read again.</summary>
    public SourceTree With(Mutation mutation)
    {
        var read = mutation.Changes.Where(change => change.Text is not null).Select(change => Read(change.Path, change.Text!)).ToList();
        var files = Proof.Tree.Files.Where(file => !mutation.Touches(file.Path)).Concat(read.Select(one => one.File)).OrderBy(file => file.Path, StringComparer.Ordinal);
        return Proof.Tree with { Files = [.. files], Findings = [.. Proof.Tree.Findings, .. read.SelectMany(one => one.Findings)] };
    }

    private static IEnumerable<string> Words(Spot spot) => new[] { spot.Word, spot.Entry?.Key.Text.Split('.')[^1] }.OfType<string>();

    private static (SourceFile File, ImmutableArray<Finding> Findings) Read(string path, string text)
    {
        var slash = path.IndexOf('/', StringComparison.Ordinal);
        var kind = slash < 0 ? KnowledgeLayout.TopFiles[path] : KnowledgeLayout.Folders[path[..slash]];
        return SourceReader.ReadFile(path, kind, Path.GetFileNameWithoutExtension(path), Encoding.UTF8.GetBytes(text), SourceLimits.Default);
    }
}
