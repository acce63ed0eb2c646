using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Swapwright.Benchmarks.Bases;

/// <summary>
/// A large knowledge base drawn from a seed, sound by construction but for the faults that are planted: every position
/// that applies has exactly one answer in every buildable combination, and every rule is met by one.
/// </summary>
internal sealed class LargeBase
{
    private const int Parts = 60;
    private readonly Draw _draw;
    private readonly BaseSize _size;
    private readonly DrawnSpace _space;
    private readonly SortedDictionary<string, string> _files = new(StringComparer.Ordinal);
    private readonly List<Group> _groups = [];
    private readonly StringBuilder _positions = new("positions:\n");
    private int _answers;
    private int _rules;

    private LargeBase(BaseSize size)
    {
        _size = size;
        _draw = new Draw(size.Seed);
        var entities = new DrawnEntities(_draw, size, _files);
        _space = new DrawnSpace(_draw, size, entities, _files);
        var limits = size.Rules / 25;
        var remarks = size.Rules * 3 / 100;
        _space.Exclude(limits);
        Positions(size.Rules - limits - remarks);
        Grow(size.Rules - limits - remarks);
        WriteGroups();
        Remarks(remarks);
        Files = _files;
        Planted = new Planting(_draw, _space, entities, _files, _positions).Plant(size.Faults);
        Frame();
    }

    /// <summary>Path → text.</summary>
    public IReadOnlyDictionary<string, string> Files { get; }

    public ImmutableArray<PlantedFault> Planted { get; }

    public static LargeBase Of(BaseSize size) => new(size);

    /// <summary>Groups of positions that general rules answer together, with the rules that hold where nothing is said about exceptions.</summary>
    private void Positions(int budget)
    {
        var largest = Math.Max(3, (int)Math.Ceiling(_size.Positions / (budget * 0.6)));
        for (var (at, left) = (0, _size.Positions); left > 0; at++)
        {
            var system = at % _space.Systems;
            var count = Math.Min(left, largest > 3 ? largest : _draw.Of(1, 1, 1, 2, 3));
            ImmutableArray<string> ids = [.. Enumerable.Range(_size.Positions - left, count).Select(position => Draw.Text($"position-{position:000}"))];
            left -= count;
            var applies = _draw.Chance(15) ? _space.Questions.OfFacts().Ways.First(way => _space.Trials.Any(way.Holds)) : null;
            // A rule that is met only where the position does not apply would settle nothing.
            ImmutableArray<Trial> trials = [.. _space.Trials.Where(trial => applies?.Holds(trial) != false)];
            foreach (var id in ids)
            {
                _positions.Append(CultureInfo.InvariantCulture, $"  {id}: {{title: {Title(id)}, system: {DrawnSpace.SystemName(system)}{(applies is null ? "" : $", applies: {{{applies}}}")}, about: \"Look behind the panel on the left.\"}}\n");
            }

            var group = new Group(at, system, ids, applies);
            _groups.Add(group);
            // A group takes three of the rules that are left at most, where every group still gets one.
            var spare = budget - _answers - (left + count);
            var question = _draw.Chance(40) && spare > 6 ? _space.Questions.Any(system) : null;
            if (question is { IsTotal: true } && question.Ways.Length <= 6 && question.Ways.All(way => trials.Any(way.Holds)))
            {
                group.Roots.AddRange(question.Ways.Select(way => new AnswerNode(NextId(group), null, [way], [.. trials.Where(way.Holds)], Answer(null))));
            }
            else
            {
                group.Roots.Add(new AnswerNode(NextId(group), null, [], trials, Answer(null)));
            }

            group.Nodes.AddRange(group.Roots);
        }
    }

    /// <summary>
    /// Adds exceptions. The groups whose answers others ask for come first: what a trial is answered there must not
    /// change after a rule was written for it.
    /// </summary>
    private void Grow(int budget)
    {
        var asked = _groups.Where(IsAsked).ToList();
        Grow(asked, _answers + ((budget - _answers) * asked.Count / _groups.Count));
        Grow([.. _groups.Where(group => !IsAsked(group))], budget);
    }

    private void Grow(List<Group> groups, int budget)
    {
        for (var idle = 0; _answers < budget; idle++)
        {
            if (idle > 20 * budget)
            {
                throw new InvalidOperationException("so many rules cannot be drawn for this size; ask for more positions or choices");
            }

            var group = groups[_draw.Next(groups.Count)];
            var node = group.Nodes[_draw.Next(group.Nodes.Count)];
            if (node.Asks.Length < 4 && node.Trials.Length > 1 && node.Except(Draw.Text($"r-{group.At:000}-{group.Named:00}"), () => Ask(group), Answer) is { } exception)
            {
                _answers++;
                group.Named++;
                group.Nodes.Add(exception);
                idle = 0;
            }
        }
    }

    private static bool IsAsked(Group group) => group.At % 3 == 1;

    private Question Ask(Group group)
    {
        if (_draw.Chance(6))
        {
            return _space.Questions.Family(_draw.Of("chassis", "donor"));
        }

        // Answers are asked for only where the rules of the other group ask for none: so none goes in a loop.
        if (group.At % 3 == 0 && _draw.Chance(25) && _groups.Where(other => IsAsked(other) && other.System % 2 == group.System % 2).ToList() is { Count: > 0 } others)
        {
            var other = _draw.Of(others);
            var position = other.Positions[0];
            return new Question(
                [
                    .. other.Nodes.Select(node => node.Answer.Source).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                        .Select(source => new Ask($"answer.{position}", $"{{source: {source}}}", trial => other.AnswerOf(trial)?.Source == source)),
                ],
                IsTotal: false);
        }

        return _space.Questions.Any(group.System);
    }

    private DrawnAnswer Answer(DrawnAnswer? general)
    {
        var answer = new DrawnAnswer(_draw.Of("chassis", "donor", "new", "made", "other"), _draw.Of("as-is", "refresh", "modify", "move"), _draw.Chance(40) ? Part(_draw.Next(Parts)) : null);
        return answer == general ? Answer(general) : answer;
    }

    private string NextId(Group group)
    {
        _answers++;
        return Draw.Text($"r-{group.At:000}-{group.Named++:00}");
    }

    private void WriteGroups()
    {
        foreach (var group in _groups)
        {
            foreach (var node in group.Nodes)
            {
                WriteRule(DrawnSpace.SystemName(group.System), node.Id, node.Asks, string.Concat(group.Positions.Select(position => AnswerText(position, node.Answer)).Prepend("  answers:\n")), [.. node.Overrides]);
            }
        }
    }

    private static string AnswerText(string position, DrawnAnswer answer) =>
        $"    {position}:\n      source: {answer.Source}\n      treatment: {answer.Treatment}\n{(answer.Part is null ? "" : $"      part: {answer.Part}\n")}      steps:\n        - Take the old one off and compare it with the new one on the bench.\n        - Fit it with a new seal, and tighten it after a warm run.\n";

    /// <summary>Rules that answer nothing: tasks, cautions, advice.</summary>
    private void Remarks(int count)
    {
        for (var at = 0; at < count; at++)
        {
            var trial = _draw.Of(_space.Trials);
            var way = _space.Questions.Any(at % _space.Systems).Ways.First(one => one.Holds(trial));
            WriteRule("remarks", Draw.Text($"remark-{at:0000}"), [way], "  tasks: [look-over]\n  cautions:\n    - {about: general, text: Let it cool before it is opened.}\n", []);
        }
    }

    private void WriteRule(string folder, string id, ImmutableArray<Ask> asks, string then, ImmutableArray<string> overrides)
    {
        var text = new StringBuilder(Draw.Text($"# yaml-language-server: $schema=../../../schema/rule.schema.json\ntitle: What holds here ({id})\n"));
        if (!asks.IsEmpty)
        {
            text.Append("when:\n").AppendJoin("", asks.Select(ask => $"  {ask}\n"));
        }

        text.Append("then:\n").Append(then);
        if (!overrides.IsEmpty)
        {
            text.Append(CultureInfo.InvariantCulture, $"overrides: [{string.Join(", ", overrides)}]\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"because: Measured on two cars and compared with the donor's own bay; the difference is {3 + (_rules % 20)} mm.\nsources: [{_draw.Of("bench", "build")}]\nstanding: {_draw.Of("measured", "built")}\nchecked: 2025-{1 + (_rules++ % 12):00}-01\n");
        _files[$"rules/{folder}/{id}.yaml"] = text.ToString();
    }

    private void Frame()
    {
        _files["kb.yaml"] = "title: Drawn for measuring\nlabel: Invented scenario, drawn from a seed.\nas-of: 2026-03-01\nheadline: [gearbox]\n";
        _files["sources.yaml"] = "sources:\n  bench: {title: On the bench, kind: measurement, date: 2025-01-01, by: Ines Okafor, invented: true}\n  build: {title: A build, kind: build-log, date: 2025-02-01, by: Joris Tamm, invented: true}\n";
        _files["tasks/look-over.yaml"] = "title: Look everything over\nphase: assess\nhours: 1\nsteps:\n  - Look at every joint with a lamp.\n";
        _files["positions.yaml"] = $"systems:\n{string.Concat(Enumerable.Range(0, _space.Systems).Select(system => $"  {DrawnSpace.SystemName(system)}: {{title: {Title(DrawnSpace.SystemName(system))}}}\n"))}{_positions}";
        var used = _groups.SelectMany(group => group.Nodes).Select(node => node.Answer.Part).ToHashSet(StringComparer.Ordinal);
        foreach (var at in Enumerable.Range(0, Parts).Where(at => used.Contains(Part(at))))
        {
            _files[$"parts/{Part(at)}.yaml"] = Draw.Text($"title: Part {at}\nprice: {5 + at}\nfrom: parts-shop\n");
        }
    }

    private static string Part(int at) => Draw.Text($"part-{at:00}");

    private static string Title(string id) => string.Concat(id[..1].ToUpperInvariant(), id[1..].Replace('-', ' '));

    private sealed record Group(int At, int System, ImmutableArray<string> Positions, Ask? Applies)
    {
        public List<AnswerNode> Roots { get; } = [];

        public List<AnswerNode> Nodes { get; } = [];

        public int Named { get; set; }

        public DrawnAnswer? AnswerOf(Trial trial) =>
            Applies?.Holds(trial) == false ? null : Roots.First(root => root.Asks.All(ask => ask.Holds(trial))).AnswerOf(trial);
    }
}
