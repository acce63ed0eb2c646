using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Swapwright.Source;

/// <summary>
/// YAML events to nodes. The library's own tree is not used: it drops the ends of nodes, resolves aliases (which is how a
/// small file becomes a large one) and stops at the first fault.
/// </summary>
internal sealed class TreeBuilder(string path, string text, LineIndex lines, SourceLimits limits, FindingList findings)
{
    private readonly List<(int First, int Last)> _multiLine = [];
    private readonly Stack<Mark> _openFlow = new();
    private int _nodes;
    private bool _stopped;

    /// <summary>Null, with a finding, where the text is no readable mapping.</summary>
    public MappingNode? Build()
    {
        SourceNode? root = null;
        YamlFault? fault = null;
        using var reader = new StringReader(text);
        var parser = new Parser(new Scanner(reader, skipComments: true));
        try
        {
            root = Document(parser);
        }
        catch (YamlException error)
        {
            fault = YamlFault.Of(error, lines);
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            // The parser has faults of its own on hostile text (an unclosed list ends in an InvalidOperationException, an
            // escape beyond Unicode in an ArgumentException); whatever it throws, the file is what is wrong.
            fault = YamlFault.WithoutPlace(parser.Current?.End ?? Mark.Empty);
        }

        if (_stopped)
        {
            return null;
        }

        var tabs = TabIndentation.Report(path, lines, fault?.Reached ?? lines.Count, fault?.IsTab ?? false, _multiLine, findings);
        if (!tabs && fault is not null)
        {
            findings.Add(fault.ToFinding(path, lines, _openFlow.TryPeek(out var open) ? open : null));
        }

        return fault is null ? root as MappingNode : null;
    }

    private SourceNode? Document(Parser parser)
    {
        parser.MoveNext(); // to the start of the stream
        parser.MoveNext();
        if (parser.Current is not DocumentStart)
        {
            Empty();
            return null;
        }

        parser.MoveNext();
        var root = Node(parser, 1);
        if (_stopped)
        {
            return null;
        }

        if (parser.Current is DocumentEnd)
        {
            parser.MoveNext();
        }

        if (parser.Current is DocumentStart second)
        {
            findings.Add(PlaceOf(second.Start, second.End), "a second document begins here", "Keep one document a file: move the second one into a file of its own.");
            _stopped = true;
            return null;
        }

        if (root is ScalarNode { Kind: ScalarKind.Null, IsStandIn: false })
        {
            Empty();
        }
        else if (root is not (MappingNode or ScalarNode { IsStandIn: true }))
        {
            findings.Add(root.Place, "the file must hold a mapping", "Write `key: value` lines.");
        }

        return root;
    }

    private void Empty() => findings.Add(findings.WholeFile, "the file is empty", "Fill it, or remove it.");

    private SourceNode Node(Parser parser, int depth)
    {
        if (++_nodes > limits.MaxNodesPerFile)
        {
            return Stop(parser, string.Create(CultureInfo.InvariantCulture, $"the file holds more than {limits.MaxNodesPerFile} values"), "Split it into several files.");
        }

        if (parser.Current is AnchorAlias alias)
        {
            var place = PlaceOf(alias.Start, alias.End);
            findings.Add(place, $"the alias `*{alias.Value}` is refused: what a file says must stand where it is read", "Write the value out in place of the alias.");
            parser.MoveNext();
            return StandIn(place);
        }

        if (parser.Current is NodeEvent node)
        {
            RefuseMarks(node);
        }

        switch (parser.Current)
        {
            case Scalar scalar:
                parser.MoveNext();
                return Scalar(scalar);
            case SequenceStart or MappingStart when depth > limits.MaxDepth:
                return Stop(parser, string.Create(CultureInfo.InvariantCulture, $"lists and mappings are nested deeper than {limits.MaxDepth}"), "Write the content flatter.");
            case SequenceStart start:
                return Sequence(parser, start, depth);
            case MappingStart start:
                return Mapping(parser, start, depth);
            default:
                throw new InvalidOperationException("the parser gave no node");
        }
    }

    private void RefuseMarks(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
        {
            var place = PlaceAt(node.Start, node.Anchor.Value.Length + 1, '&');
            findings.Add(place, $"the anchor `&{node.Anchor.Value}` is refused: aliases are not read", $"Remove `&{node.Anchor.Value}`.");
        }

        if (!node.Tag.IsEmpty)
        {
            var place = PlaceAt(node.Start, 1, '!');
            findings.Add(place, "a tag is refused: the form of a value follows from its kind of file", "Remove the tag (the word that begins with `!`); put text in quotes.");
        }
    }

    private ScalarNode Stop(Parser parser, string message, string mend)
    {
        var current = parser.Current!;
        var place = PlaceOf(current.Start, current.End);
        findings.Add(place, message, mend);
        _stopped = true;
        return StandIn(place);
    }

    private ScalarNode Scalar(Scalar scalar)
    {
        var isBlock = scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded;
        var isQuoted = scalar.Style is ScalarStyle.SingleQuoted or ScalarStyle.DoubleQuoted;
        var place = isBlock ? Trimmed(scalar) : PlaceOf(scalar.Start, scalar.End);
        if (place.EndLine > place.Line)
        {
            _multiLine.Add((place.Line + 1, place.EndLine));
        }

        if (scalar.Value.Length > limits.MaxScalarLength)
        {
            findings.Add(place, string.Create(CultureInfo.InvariantCulture, $"the text is longer than {limits.MaxScalarLength} characters"), "Shorten it, or move it to an article.");
            return StandIn(place);
        }

        if (scalar.Style == ScalarStyle.DoubleQuoted && SourceDecoder.RefusedIn(scalar.Value) is { } refused)
        {
            findings.Add(place, $"the text holds the character {refused} as an escape, which is not allowed", "Remove the escape.");
            return StandIn(place);
        }

        var kind = isBlock || isQuoted ? ScalarKind.Text : PlainScalar.KindOf(scalar.Value);
        if (kind is ScalarKind.Integer or ScalarKind.Number && !PlainScalar.TryDecimal(scalar.Value, out _))
        {
            findings.Add(place, $"the number `{Shortened(scalar.Value)}` is beyond what can be computed with", "Put it in quotes if it is a name, or correct it.");
            return StandIn(place);
        }

        return new ScalarNode(place, scalar.Value, kind, isQuoted, isBlock);
    }

    private SequenceNode Sequence(Parser parser, SequenceStart start, int depth)
    {
        var isFlow = start.Style == SequenceStyle.Flow;
        Open(isFlow, start.Start);
        parser.MoveNext();
        var items = ImmutableArray.CreateBuilder<SourceNode>();
        while (!_stopped && parser.Current is not SequenceEnd)
        {
            if (items.Count == limits.MaxItemsPerList)
            {
                Stop(parser, string.Create(CultureInfo.InvariantCulture, $"the list has more than {limits.MaxItemsPerList} items"), "Split it.");
                break;
            }

            items.Add(Node(parser, depth + 1));
        }

        if (_stopped)
        {
            return new SequenceNode(PlaceOf(start.Start, start.End), []);
        }

        var place = isFlow
            ? Closed(start.Start, parser.Current!.Start)
            : Until(PlaceOf(start.Start, start.End), items.Count > 0 ? items[^1].Place : PlaceOf(start.Start, start.End));
        parser.MoveNext();
        return new SequenceNode(place, items.DrainToImmutable());
    }

    private MappingNode Mapping(Parser parser, MappingStart start, int depth)
    {
        var isFlow = start.Style == MappingStyle.Flow;
        Open(isFlow, start.Start);
        parser.MoveNext();
        var entries = new MappingEntries();
        var last = PlaceOf(start.Start, start.End);
        while (!_stopped && parser.Current is not MappingEnd)
        {
            var key = Node(parser, depth + 1);
            var value = _stopped ? key : Node(parser, depth + 1);
            last = value.Place;
            if (_stopped || Key(key) is not { } name)
            {
                continue;
            }

            if (entries.Find(name.Text) is { } first)
            {
                findings.Add(new Finding(FindingKinds.Schema, $"the key `{Shortened(name.Text)}` stands twice in one mapping", name.Place)
                {
                    Related = [new RelatedPlace("the first one is here", first.Place)],
                    Mend = "Remove one of the two, or join them.",
                });
                continue;
            }

            entries.Add(name, value);
        }

        if (_stopped)
        {
            return new MappingNode(last, [], null);
        }

        var whole = isFlow ? Closed(start.Start, parser.Current!.Start) : Until(PlaceOf(start.Start, start.Start), last);
        parser.MoveNext();
        return entries.ToNode(whole);
    }

    private void Open(bool isFlow, Mark start)
    {
        if (isFlow)
        {
            _openFlow.Push(start);
        }
    }

    /// <summary>The parser's mark for the end of a list in brackets stands before the bracket.</summary>
    private Place Closed(Mark start, Mark bracket)
    {
        _openFlow.Pop();
        return new Place(path, (int)start.Line, (int)start.Column, (int)bracket.Line, (int)bracket.Column + 1);
    }

    private ScalarNode? Key(SourceNode key)
    {
        if (key is ScalarNode { IsStandIn: true })
        {
            return null; // reported already
        }

        if (key is not ScalarNode name)
        {
            findings.Add(key.Place, "a key must be a single word or text, not a list or a mapping", "Write `key: value`.");
            return null;
        }

        if (name.Text.Length == 0)
        {
            findings.Add(name.Place, "a key is empty", "Write the key before the colon.");
            return null;
        }

        return name;
    }

    private static ScalarNode StandIn(Place place) => new(place, string.Empty, ScalarKind.Null, isQuoted: false, isBlock: false) { IsStandIn = true };

    private static string Shortened(string value) => value.Length <= 60 ? value : string.Concat(value.AsSpan(0, char.IsHighSurrogate(value[56]) ? 56 : 57), "…");

    private static Place Until(Place start, Place last) => start with { EndLine = last.EndLine, EndColumn = last.EndColumn };

    private Place PlaceOf(Mark start, Mark end) => new(path, (int)start.Line, (int)start.Column, (int)end.Line, (int)end.Column);

    /// <summary>A mark such as an anchor stands before its node, on the node's first line, possibly after another mark.</summary>
    private Place PlaceAt(Mark start, int length, char sign)
    {
        var line = lines.Line((int)start.Line);
        var from = Math.Clamp((int)start.Column - 1, 0, line.Length);
        var found = line[from..].IndexOf(sign);
        var column = found < 0 ? (int)start.Column : from + found + 1;
        return new Place(path, (int)start.Line, column, (int)start.Line, column + length);
    }

    /// <summary>A block of text ends with its last letter, not where the next key begins.</summary>
    private Place Trimmed(Scalar scalar)
    {
        var place = PlaceOf(scalar.Start, scalar.End);
        var line = Math.Min(place.EndLine, lines.Count);
        if (place.EndColumn == 1 || line < place.EndLine)
        {
            line = Math.Min(line, place.EndLine - 1);
        }

        while (line > place.Line && lines.Line(line).IsWhiteSpace())
        {
            line--;
        }

        return line < place.Line ? place : place with { EndLine = line, EndColumn = lines.Line(line).TrimEnd().Length + 1 };
    }
}
