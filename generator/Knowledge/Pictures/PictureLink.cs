using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Knowledge.Texts;

namespace Swapwright.Knowledge.Pictures;

/// <summary>How a text shows a picture: <c>![words](picture:id)</c>, alone in its paragraph.</summary>
public static class PictureLink
{
    private const string Scheme = "picture:";

    /// <summary>The id of the picture that an address names; null for every other address.</summary>
    public static string? IdOf(string written) => written.StartsWith(Scheme, StringComparison.Ordinal) ? written[Scheme.Length..] : null;

    /// <summary>The paragraph that a picture is all of; null where other words stand beside it.</summary>
    public static ParagraphBlock? ParagraphOf(LinkInline link) =>
        link.PreviousSibling is null && link.NextSibling is null && link.Parent is { Parent: null, ParentBlock: ParagraphBlock paragraph } ? paragraph : null;

    /// <summary>The pictures that a text shows, by id, in its order.</summary>
    public static IEnumerable<string> ShownIn(MarkdownDocument document) =>
        document.Descendants<LinkInline>().Where(link => link.IsImage).Select(link => IdOf(MarkdownForm.AddressOf(link))).OfType<string>();
}
