using System.Globalization;
using System.Text;
using Swapwright.Source;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Hostile;

/// <summary>
/// A good base that is spoilt by chance: either along its structure, so that most of it stays readable and what is wrong gets far, or
/// as bytes. The same seed spoils it the same way.
/// </summary>
internal sealed class SpoiltBase
{
    // Values that fit where nobody expects them.
    private static readonly string[] s_odd =
    [
        "0", "-1", "1e999", "-1e-999", "99999999999999999999999999999", "0.0000000000000000000000001", "true", "null", "~", "\"\"", "[]", "{}", "2026-02-30", "0001-01-01", "9999-12-31",
        "[[[]]]", "{a: {b: {c: {}}}}", "\"\\u0000\"", "\"\\u202E\"", "\"\\uD83D\\uDE00\"", "\"<script>\"", "\"javascript:alert(1)\"", "\"../../etc/passwd\"", "a", "donor.variant", "choice", "answer.radiator",
        "{from: 9, to: 1}", "{above: chassis.no, below: 3}", "any: []", "1 mm", "1 furlong", "-0", ".inf", ".nan", "0x10", "\"=1+1\"", "[a, a, a]", "{a: 1, a: 2}",
    ];

    private static readonly string[] s_pieces =
    [
        "[", "]", "{", "}", ":", ": ", "-", "- ", "\n", "\r", "\t", "&a ", "*a", "!!map ", "|", ">", "'", "\"", "\\", "%", "@", "#", "? ", "---\n", "...\n", "\0", "\u202E", "\uFEFF", "😀", ",", "<<: *a", "<svg>", "</", "<!--", "]]>", "&lt;", "{{", "}}",
    ];

    private readonly Random _random;

    private SpoiltBase(int seed, IReadOnlyDictionary<string, byte[]> good)
    {
        _random = new Random(seed);
        Files = new SortedDictionary<string, byte[]>(good.ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    public SortedDictionary<string, byte[]> Files { get; }

    /// <summary>What was done, for the message of a test that fails.</summary>
    public List<string> Done { get; } = [];

    public static SpoiltBase Draw(int seed, IReadOnlyDictionary<string, byte[]> good)
    {
        var spoilt = new SpoiltBase(seed, good);
        var structured = spoilt._random.Next(4) != 0;
        for (var times = spoilt._random.Next(1, 3); times > 0; times--)
        {
            if (structured)
            {
                spoilt.SpoilStructure();
            }
            else
            {
                spoilt.SpoilBytes();
            }
        }

        return spoilt;
    }

    public static SortedDictionary<string, byte[]> Read(string folder) => new(
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).ToDictionary(file => Path.GetRelativePath(folder, file), File.ReadAllBytes, StringComparer.Ordinal),
        StringComparer.Ordinal);

    /// <summary>Good bases to begin with: small ones, and one with templates, a picture and pages of its own.</summary>
    public static IReadOnlyList<SortedDictionary<string, byte[]>> Good()
    {
        var small = Read(Reports.SmallBase.Folder);
        foreach (var (path, text) in new (string, string)[]
        {
            ("articles/look.md", "---\ntitle: A look\nsummary: What to see.\n---\n## Seen\n\n![An arrow](picture:arrow)\n\nSee [the plate](rule:front-mount).\n"),
            ("pages/help.md", "---\ntitle: Help\n---\nMeasure *something*.\n"),
            ("pictures/arrow.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 80\"><title>An arrow</title><desc>It points down.</desc><path d=\"M0 0L10 10\"/></svg>\n"),
            ("glossary.yaml", "terms:\n  shim: {term: Shim, short: A thin plate, about: A thin plate between two parts.}\n"),
            ("site-template/not-found.sbn-html", "<h1>{{ page.title }}</h1>\n"),
        })
        {
            small[path] = Encoding.UTF8.GetBytes(text);
        }

        return [small, .. KnowledgeBaseCase.Good.Select(name => Read(KnowledgeBaseCase.GoodFolder(name)))];
    }

    private void SpoilStructure()
    {
        var path = Pick([.. Files.Keys]);
        switch (_random.Next(12))
        {
            case 0:
                Files.Remove(path);
                Done.Add($"remove {path}");
                return;
            case 1:
                var other = $"{Path.GetDirectoryName(Pick([.. Files.Keys]))}/{Pick(["copy", "a", "Bad Id", "none"])}{Path.GetExtension(path)}".TrimStart('/');
                Files[other] = Files[path];
                Done.Add($"copy {path} to {other}");
                return;
        }

        var nodes = Nodes(path);
        if (nodes.Count == 0)
        {
            SpoilBytes();
            return;
        }

        if (_random.Next(3) == 0)
        {
            Reword(path, nodes);
            return;
        }

        var node = Pick(nodes);
        var text = Encoding.UTF8.GetString(Files[path]);
        var (from, to) = (Offset(text, node.Place.Line, node.Place.Column), Offset(text, node.Place.EndLine, node.Place.EndColumn));
        var with = _random.Next(5) switch
        {
            0 or 1 => Pick(s_odd),
            2 => "",
            // What stands at another place, of this file or another.
            _ => Pick(Texts(Pick([.. Files.Keys]))),
        };
        Files[path] = Encoding.UTF8.GetBytes(string.Concat(text.AsSpan(0, from), with, text.AsSpan(to)));
        Done.Add($"{path}:{node.Place.Line.ToString(CultureInfo.InvariantCulture)}: {text[from..to]} > {with}");
    }

    /// <summary>Another number, or a text with more in it: most of these leave a base sound, so that what comes after reading gets its share.</summary>
    private void Reword(string path, List<SourceNode> nodes)
    {
        if (nodes.OfType<ScalarNode>().Where(node => !node.IsBlock && node.Kind is ScalarKind.Integer or ScalarKind.Number or ScalarKind.Text && node.Place.Line == node.Place.EndLine).ToList() is not { Count: > 0 } scalars)
        {
            return;
        }

        var node = Pick(scalars);
        var text = Encoding.UTF8.GetString(Files[path]);
        var (from, to) = (Offset(text, node.Place.Line, node.Place.Column), Offset(text, node.Place.EndLine, node.Place.EndColumn));
        var with = node.Kind == ScalarKind.Text ? $"\"{node.Text.Replace("\\", "", StringComparison.Ordinal).Replace("\"", "", StringComparison.Ordinal)}{Pick(["", " <b>", " 😀", " a | b", " [x](y)", " =1+1", new string('w', 300)])}\""
            : node.TryGetDecimal(out var number) ? (number * Pick([0m, 1m, 2m, 0.5m, 1000m, -1m])).ToString(CultureInfo.InvariantCulture) : "0";
        Files[path] = Encoding.UTF8.GetBytes(string.Concat(text.AsSpan(0, from), with, text.AsSpan(to)));
        Done.Add($"{path}:{node.Place.Line.ToString(CultureInfo.InvariantCulture)}: {text[from..to]} > {with}");
    }

    private void SpoilBytes()
    {
        var path = Pick([.. Files.Keys]);
        var bytes = Files[path].ToList();
        var at = _random.Next(bytes.Count + 1);
        switch (_random.Next(5))
        {
            case 0 when at < bytes.Count:
                bytes[at] = (byte)_random.Next(256);
                break;
            case 1:
                bytes.RemoveRange(at, Math.Min(_random.Next(1, 40), bytes.Count - at));
                break;
            case 2:
                bytes.InsertRange(at, bytes.GetRange(at, Math.Min(_random.Next(1, 200), bytes.Count - at)));
                break;
            case 3:
                var noise = new byte[_random.Next(1, 200)];
                _random.NextBytes(noise);
                bytes.InsertRange(at, noise);
                break;
            default:
                bytes.InsertRange(at, Encoding.UTF8.GetBytes(Pick(s_pieces)));
                break;
        }

        Files[path] = [.. bytes];
        Done.Add(string.Create(CultureInfo.InvariantCulture, $"bytes of {path} at {at}"));
    }

    private string[] Texts(string path)
    {
        var text = Encoding.UTF8.GetString(Files[path]);
        string[] texts = [.. Nodes(path).Select(node => text[Offset(text, node.Place.Line, node.Place.Column)..Offset(text, node.Place.EndLine, node.Place.EndColumn)])];
        return texts.Length == 0 ? s_odd : texts;
    }

    private List<SourceNode> Nodes(string path) =>
        path.EndsWith(".yaml", StringComparison.Ordinal) && SourceReader.Parse(path, Files[path]).Root is { } root ? [.. Below(root)] : [];

    private static IEnumerable<SourceNode> Below(SourceNode node) => node switch
    {
        MappingNode mapping => mapping.Entries.SelectMany(entry => Below(entry.Value).Prepend(entry.Key)),
        SequenceNode sequence => sequence.Items.SelectMany(Below).Append(node),
        _ => [node],
    };

    private static int Offset(string text, int line, int column)
    {
        var at = 0;
        for (var number = 1; number < line; number++)
        {
            at = text.IndexOf('\n', at) is var end and >= 0 ? end + 1 : text.Length;
        }

        return Math.Min(at + column - 1, text.Length);
    }

    private T Pick<T>(IReadOnlyList<T> from) => from[_random.Next(from.Count)];
}
