using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>
/// Worksheets of combinations that differ in little, each worked out once. A worksheet sees a combination through the answers
/// it asks for and a few things besides, which are its key: where those are the same, so is what it finds. For one worker,
/// and for the combinations of one chassis and donor.
/// </summary>
internal sealed class SheetMemory
{
    private readonly Dictionary<(string Worksheet, string Key), List<(List<(string Position, Answer? Answer)> Asked, object? Found)>> _known = [];

    /// <summary>The rules that may hold here at all; null until a sheet is made.</summary>
    public NearRules? Near { get; set; }

    /// <param name="key">Everything besides the answers that the worksheet goes by.</param>
    /// <param name="make">Works it out; asks for answers only by what it is given.</param>
    public T Recall<T>(string worksheet, string key, Func<string, Answer?> at, Func<Func<string, Answer?>, T> make)
    {
        if (!_known.TryGetValue((worksheet, key), out var cases))
        {
            _known.Add((worksheet, key), cases = []);
        }

        foreach (var (asked, found) in cases)
        {
            if (asked.TrueForAll(one => ReferenceEquals(at(one.Position), one.Answer)))
            {
                return (T)found!;
            }
        }

        var asking = new Dictionary<string, Answer?>(StringComparer.Ordinal);
        var made = make(position =>
        {
            var answer = at(position);
            asking[position] = answer;
            return answer;
        });
        cases.Add(([.. asking.Select(one => (one.Key, one.Value)).OrderBy(one => one.Key, StringComparer.Ordinal)], made));
        return made;
    }
}
