using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>The bytes of one file to nodes. Never throws, whatever the bytes are: what is wrong comes back as findings.</summary>
public static class SourceReader
{
    /// <summary>Reads a YAML file.</summary>
    /// <param name="path">Relative to the knowledge base, with forward slashes; used for the places only.</param>
    /// <returns>The root is null where the file cannot be read.</returns>
    public static (MappingNode? Root, ImmutableArray<Finding> Findings) Parse(string path, ReadOnlySpan<byte> bytes, SourceLimits? limits = null)
    {
        var (file, findings) = ReadFile(path, string.Empty, string.Empty, bytes, limits ?? SourceLimits.Default);
        return (file.Root, findings);
    }

    /// <summary>Reads a file of any kind; an article is YAML between two lines of <c>---</c>, then Markdown.</summary>
    internal static (SourceFile File, ImmutableArray<Finding> Findings) ReadFile(string path, string kind, string id, ReadOnlySpan<byte> bytes, SourceLimits limits)
    {
        var findings = new FindingList(path, limits.MaxFindingsPerFile);
        var text = SourceDecoder.Decode(bytes, limits, findings);
        if (text is null)
        {
            return (new SourceFile(path, kind, id, string.Empty, null, null, 0), findings.ToImmutable());
        }

        var lines = new LineIndex(text);
        if (!SourceDecoder.Accepts(path, text, lines, findings))
        {
            return (new SourceFile(path, kind, id, text, null, null, 0), findings.ToImmutable());
        }

        if (kind == KnowledgeLayout.PictureKind)
        {
            if (text.Length == 0)
            {
                findings.Add(findings.WholeFile, "the file is empty", "Draw something, or remove it.");
            }

            return (new SourceFile(path, kind, id, text, null, null, 0), findings.ToImmutable());
        }

        if (kind is not (KnowledgeLayout.ArticleKind or KnowledgeLayout.PageKind))
        {
            var root = PlainTree.Read(path, text, lines, limits) ?? new TreeBuilder(path, text, lines, limits, findings).Build();
            return (new SourceFile(path, kind, id, text, root, null, 0), findings.ToImmutable());
        }

        var matter = FrontMatter.Split(text, lines, findings);
        if (matter is not { } split)
        {
            return (new SourceFile(path, kind, id, text, null, null, 0), findings.ToImmutable());
        }

        // The front matter is parsed with its opening line, which YAML reads as the start of a document: lines stay right.
        var head = text[..split.HeadEnd];
        var headLines = new LineIndex(head);
        var articleRoot = PlainTree.Read(path, head, headLines, limits, firstLine: 2) ?? new TreeBuilder(path, head, headLines, limits, findings).Build();
        return (new SourceFile(path, kind, id, text, articleRoot, text[split.BodyStart..], split.BodyLine), findings.ToImmutable());
    }
}
