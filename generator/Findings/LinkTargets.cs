using Markdig.Syntax;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>What links of texts can reach. A file that cannot be read is there all the same: what is wrong with it is told once.</summary>
internal sealed class LinkTargets(SourceTree tree, KnowledgeBase kb)
{
    private readonly Dictionary<string, HashSet<string>> _ids = OwnLink.Kinds.ToDictionary(
        kind => kind,
        kind => kind switch
        {
            "position" => kb.Positions.Ids.ToHashSet(StringComparer.Ordinal),
            "source" => kb.Sources.Ids.ToHashSet(StringComparer.Ordinal),
            "term" => kb.Terms.Ids.ToHashSet(StringComparer.Ordinal),
            _ => tree.Files.Where(file => file.Kind == (kind == "donor" ? "engine" : kind)).Select(file => file.Id).ToHashSet(StringComparer.Ordinal),
        },
        StringComparer.Ordinal);

    private readonly Dictionary<string, HashSet<string>> _anchors = kb.Articles.All.ToDictionary(article => article.Id, article => AnchorsOf(MarkdownForm.Parse(article.Body)), StringComparer.Ordinal);

    public IReadOnlySet<string> Ids(string kind) => _ids[kind];

    /// <summary>The headings of an article that links can name; null where the article could not be read.</summary>
    public IReadOnlySet<string>? Anchors(string article) => _anchors.GetValueOrDefault(article);

    /// <summary>A picture with a mistake is there all the same.</summary>
    public IReadOnlySet<string> Pictures { get; } = tree.Files.Where(file => file.Kind == KnowledgeLayout.PictureKind).Select(file => file.Id).ToHashSet(StringComparer.Ordinal);

    private static HashSet<string> AnchorsOf(MarkdownDocument? document) =>
        (document?.Descendants<HeadingBlock>().Select(MarkdownForm.AnchorOf).OfType<string>() ?? []).ToHashSet(StringComparer.Ordinal);
}
