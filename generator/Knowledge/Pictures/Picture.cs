using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge.Pictures;

/// <summary>What a drawing consists of: elements and the text between them.</summary>
public abstract record PictureNode;

/// <summary>Words inside a drawing, unescaped.</summary>
public sealed record PictureWords(string Text) : PictureNode;

/// <summary>An element of SVG that is on the list of allowed ones, with attributes whose values have been held against their form.</summary>
/// <param name="Attributes">In the order in which they are written. Classes and ids stand here as the author wrote them.</param>
public sealed record PictureElement(string Name, ImmutableArray<KeyValuePair<string, string>> Attributes, ImmutableArray<PictureNode> Children) : PictureNode;

/// <summary>
/// A drawing that articles may show. It is never passed on as text: the site writes it anew from this tree, in which
/// nothing can stand that <see cref="PictureForm"/> does not know.
/// </summary>
/// <param name="Title">What it shows, in a few words.</param>
/// <param name="Description">What there is to see, for those who do not see it.</param>
/// <param name="Content">Everything inside the outermost element besides title and description.</param>
public sealed record Picture(string Id, string Title, string Description, Place Place, decimal Width, decimal Height, ImmutableArray<PictureNode> Content);
