using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>One file of a knowledge base as it was read.</summary>
public sealed class SourceFile
{
    private readonly Lazy<LineIndex> _lines;

    internal SourceFile(string path, string kind, string id, string text, MappingNode? root, string? body, int bodyLine)
    {
        Path = path;
        Kind = kind;
        Id = id;
        Text = text;
        Root = root;
        Body = body;
        BodyLine = bodyLine;
        _lines = new Lazy<LineIndex>(() => new LineIndex(Text));
    }

    /// <summary>Relative to the knowledge base, with forward slashes.</summary>
    public string Path { get; }

    /// <summary>What the file describes, as its folder says: <c>chassis</c>, <c>engine</c>, <c>rule</c>, …</summary>
    public string Kind { get; }

    /// <summary>The file's name without its extension.</summary>
    public string Id { get; }

    /// <summary>The whole text without a byte order mark; empty where the file could not be decoded.</summary>
    public string Text { get; }

    /// <summary>Null in a picture, and where the file could not be read; the tree's findings say why.</summary>
    public MappingNode? Root { get; }

    /// <summary>The Markdown after an article's front matter; null in every other file.</summary>
    public string? Body { get; }

    /// <summary>The line on which <see cref="Body"/> begins; 0 without a body.</summary>
    public int BodyLine { get; }

    /// <summary>A line for quoting, without its line end; null where the file has no such line.</summary>
    public string? Line(int number) => number >= 1 && number <= _lines.Value.Count ? _lines.Value.Line(number).ToString() : null;
}

/// <summary>Everything that was read of a knowledge base.</summary>
/// <param name="Folder">The folder as it was named.</param>
/// <param name="Files">In ordinal order of their paths.</param>
/// <param name="Findings">In order of place.</param>
public sealed record SourceTree(string Folder, ImmutableArray<SourceFile> Files, ImmutableArray<Finding> Findings)
{
    public SourceFile? Find(string path)
    {
        var (low, high) = (0, Files.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var order = string.CompareOrdinal(Files[middle].Path, path);
            if (order == 0)
            {
                return Files[middle];
            }

            (low, high) = order < 0 ? (middle + 1, high) : (low, middle - 1);
        }

        return null;
    }
}
