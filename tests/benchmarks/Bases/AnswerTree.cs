using System.Collections.Immutable;

namespace Swapwright.Benchmarks.Bases;

/// <summary>What a drawn rule answers.</summary>
internal sealed record DrawnAnswer(string Source, string Treatment, string? Part);

/// <summary>
/// A rule that answers a group of positions, and its exceptions. Exceptions part the rule's combinations by one question,
/// leave one way of it to the rule itself, and override it and everything above it: so exactly one answer stands everywhere.
/// </summary>
internal sealed class AnswerNode(string id, AnswerNode? above, ImmutableArray<Ask> asks, ImmutableArray<Trial> trials, DrawnAnswer answer)
{
    private readonly List<(Ask Way, AnswerNode Node)> _exceptions = [];
    private List<Ask>? _open;

    public string Id => id;

    public ImmutableArray<Ask> Asks => asks;

    public DrawnAnswer Answer => answer;

    /// <summary>Trials that meet the rule.</summary>
    public ImmutableArray<Trial> Trials => trials;

    /// <summary>The rules that this one overrides.</summary>
    public IEnumerable<string> Overrides
    {
        get
        {
            for (var node = above; node is not null; node = node.Above)
            {
                yield return node.Id;
            }
        }
    }

    private AnswerNode? Above => above;

    public DrawnAnswer AnswerOf(Trial trial)
    {
        foreach (var (way, node) in _exceptions)
        {
            if (way.Holds(trial))
            {
                return node.AnswerOf(trial);
            }
        }

        return answer;
    }

    /// <summary>A further exception; null where there is no way left for one.</summary>
    public AnswerNode? Except(string name, Func<Question> question, Func<DrawnAnswer, DrawnAnswer> other)
    {
        _open ??= Ways(question());
        if (_open is not [var way, ..])
        {
            _open = _exceptions.Count == 0 ? null : _open; // ask something else the next time
            return null;
        }

        _open.RemoveAt(0);
        var node = new AnswerNode(name, this, asks.Add(way), [.. trials.Where(way.Holds)], other(answer));
        _exceptions.Add((way, node));
        return node;
    }

    /// <summary>The ways that trials go, without one of them; none where a key of the question is already asked above.</summary>
    private List<Ask> Ways(Question question) =>
        asks.Any(ask => question.Asks(ask.Key)) ? [] : [.. question.Ways.Where(way => trials.Any(way.Holds)).Skip(1)];
}
