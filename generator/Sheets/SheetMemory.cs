using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>
/// Worksheets of combinations that differ in little, each worked out once. A worksheet sees a combination through the answers
/// it asks for and a few things besides, which are its key: where those are the same, so is what it finds. For one worker at a
/// time, and for the combinations of one chassis and donor.
/// </summary>
internal sealed class SheetMemory
{
    private static readonly object s_nothing = new();

    private readonly Dictionary<(string Worksheet, MadeFrom Key), Question> _asked = [];
    private readonly Dictionary<object, object?> _cases = [];

    /// <param name="key">Everything besides the answers that the worksheet goes by.</param>
    /// <param name="make">Works it out; asks for answers only by what it is given, and goes by nothing else.</param>
    public T Recall<T>(string worksheet, MadeFrom key, Func<string, Answer?> at, Func<Func<string, Answer?>, T> make)
    {
        if (!_asked.TryGetValue((worksheet, key), out var question))
        {
            _asked.Add((worksheet, key), question = new Question());
        }

        // After the same answers a worksheet asks the same next, so what was asked before is followed as far as it goes.
        while (question.Position is { } position && question.After.TryGetValue(at(position) ?? s_nothing, out var next))
        {
            question = next;
        }

        if (question.IsFound)
        {
            return (T)question.Found!;
        }

        var asking = new HashSet<string>(StringComparer.Ordinal);
        var path = new List<(string Position, Answer? Answer)>();
        var made = make(position =>
        {
            var answer = at(position);
            if (asking.Add(position))
            {
                path.Add((position, answer));
            }

            return answer;
        });
        Note((worksheet, key), path, made);
        return made;
    }

    /// <summary>The same for a worksheet that goes by nothing but its key.</summary>
    public T Recall<TCase, T>(TCase one, Func<TCase, T> make)
        where TCase : class
    {
        if (!_cases.TryGetValue(one, out var found))
        {
            _cases.Add(one, found = make(one));
        }

        return (T)found!;
    }

    private void Note((string Worksheet, MadeFrom Key) worksheet, List<(string Position, Answer? Answer)> path, object? made)
    {
        var question = _asked[worksheet];
        foreach (var (position, answer) in path)
        {
            question.Position ??= position;
            if (!question.After.TryGetValue(answer ?? s_nothing, out var next))
            {
                question.After.Add(answer ?? s_nothing, next = new Question());
            }

            question = next;
        }

        question.IsFound = true;
        question.Found = made;
    }

    /// <summary>What a worksheet asks next, or, where it has asked enough, what it found.</summary>
    private sealed class Question
    {
        public string? Position { get; set; }

        // Answers are of one base: the same is the same object.
        public Dictionary<object, Question> After { get; } = new(ReferenceEqualityComparer.Instance);

        public bool IsFound { get; set; }

        public object? Found { get; set; }
    }
}
