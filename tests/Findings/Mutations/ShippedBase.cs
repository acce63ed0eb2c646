using System.Collections.Immutable;
using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Source;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>The knowledge base that is shipped, kept in memory, with the trees that mutations make of it.</summary>
internal sealed class ShippedBase
{
    private readonly SourceTree _tree = KnowledgeFolder.Read(Path.Combine(Reading.Repository(), "swap-kb"));

    public ShippedBase()
    {
        Proof = Proof.Of(_tree);
        Told = Told.By(Proof);
    }

    public Proof Proof { get; }

    /// <summary>What readers are told before anything is changed.</summary>
    public Told Told { get; }

    public ImmutableArray<SourceFile> Files => _tree.Files;

    public IEnumerable<SourceFile> Of(params string[] kinds) => _tree.Files.Where(file => kinds.Contains(file.Kind));

    public SourceFile File(string path) => _tree.Find(path) ?? throw new InvalidOperationException($"the shipped base has no {path}");

    public SourceFile Rule(string id) => _tree.Files.Single(file => file.Kind == "rule" && file.Id == id);

    /// <summary>Whether any entity of the base, of whatever kind, has this id or any text says it as a word.</summary>
    public bool Says(string id) => _tree.Files.Any(file => file.Id == id || file.Text.Contains(id, StringComparison.Ordinal));

    /// <summary>Files that are not changed are not read again.</summary>
    public SourceTree With(Mutation mutation)
    {
        var read = mutation.Changes.Where(change => change.Text is not null).Select(change => Read(change.Path, change.Text!)).ToList();
        var files = _tree.Files.Where(file => !mutation.Touches(file.Path)).Concat(read.Select(one => one.File)).OrderBy(file => file.Path, StringComparer.Ordinal);
        return _tree with { Files = [.. files], Findings = [.. _tree.Findings, .. read.SelectMany(one => one.Findings)] };
    }

    private static (SourceFile File, ImmutableArray<Finding> Findings) Read(string path, string text)
    {
        var slash = path.IndexOf('/', StringComparison.Ordinal);
        var kind = slash < 0 ? KnowledgeLayout.TopFiles[path] : KnowledgeLayout.Folders[path[..slash]];
        return SourceReader.ReadFile(path, kind, Path.GetFileNameWithoutExtension(path), Encoding.UTF8.GetBytes(text), SourceLimits.Default);
    }
}
