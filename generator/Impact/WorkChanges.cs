using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>A task, caution, mistake or piece of advice that more, fewer or other combinations get.</summary>
/// <param name="Kind">task, caution, mistake or advice.</param>
/// <param name="Change">gained, lost or reworded.</param>
/// <param name="About">Id of the task; what a caution is about; the option or donor that is advised.</param>
/// <param name="Was">The text that stood in the same combinations before, where it is reworded.</param>
public sealed record WorkChange(string Kind, string Change, string About, string Text, string? Was, Extent Extent);

/// <summary>Compares what a builder is told to do and to mind besides the answers.</summary>
internal sealed class WorkChanges(SharedSpace shared)
{
    private readonly Ruler _ruler = new(shared, shared.Both, shared.New);

    private sealed record Item(string Kind, string About, string Text);

    /// <summary>The changes, and where in the space they are.</summary>
    public (ImmutableArray<WorkChange> Changes, Region Region) All()
    {
        var (old, @new) = (Said(shared.Old), Said(shared.New));
        var lost = Missing(old, @new);
        var gained = Missing(@new, old);
        var changes = ImmutableArray.CreateBuilder<WorkChange>();
        foreach (var (item, region) in gained)
        {
            var was = lost.FindIndex(one => one.Item.Kind == item.Kind && one.Item.About == item.About && one.Region == region);
            var text = was < 0 ? null : lost[was].Item.Text;
            changes.Add(new WorkChange(item.Kind, was < 0 ? "gained" : "reworded", item.About, item.Text, text, _ruler.Measure(region)!));
            if (was >= 0)
            {
                lost.RemoveAt(was);
            }
        }

        changes.AddRange(lost.Select(one => new WorkChange(one.Item.Kind, "lost", one.Item.About, one.Item.Text, null, _ruler.Measure(one.Region)!)));
        return
        (
            [
                .. changes.OrderBy(change => Kinds.IndexOf(change.Kind)).ThenBy(change => change.About, StringComparer.Ordinal)
                    .ThenBy(change => change.Text, StringComparer.Ordinal).ThenBy(change => change.Change, StringComparer.Ordinal),
            ],
            shared.Store.OrAll(gained.Concat(lost).Select(one => one.Region))
        );
    }

    /// <summary>The kinds in the order of a report.</summary>
    public static readonly ImmutableArray<string> Kinds = ["task", "caution", "mistake", "advice"];

    private List<(Item Item, Region Region)> Missing(Dictionary<Item, Region> from, Dictionary<Item, Region> among) =>
    [
        .. from one in @from
           let region = shared.Both.Narrow(shared.Store.Minus(one.Value, among.GetValueOrDefault(one.Key, Region.None)))
           where !region.IsNone
           orderby Kinds.IndexOf(one.Key.Kind), one.Key.About, one.Key.Text
           select (one.Key, region),
    ];

    private static Dictionary<Item, Region> Said(Side side)
    {
        var resolution = side.Resolution;
        var said = new Dictionary<Item, List<Region>>();
        void Say(string kind, string about, string text, Region region)
        {
            var item = new Item(kind, about, text);
            if (!said.TryGetValue(item, out var regions))
            {
                said.Add(item, regions = []);
            }

            regions.Add(region);
        }

        foreach (var caution in side.Base.Settings.Cautions)
        {
            Say("caution", caution.About, caution.Text, Region.All);
        }

        // A task goes by its id: that its title changed is told of the task.
        foreach (var (task, wanted) in side.Base.Tasks.All.Select(task => (task, side.Resolution.Wanted(task))))
        {
            Say("task", task.Id, "", wanted);
            OfTask(task, wanted, Say);
        }

        foreach (var rule in side.Base.Rules.All)
        {
            OfRule(resolution, rule, Say);
        }

        return said.ToDictionary(one => one.Key, one => side.Of(resolution.Store.OrAll(one.Value)));
    }

    private static void OfTask(WorkTask task, Region wanted, Action<string, string, string, Region> say)
    {
        foreach (var caution in task.Cautions)
        {
            say("caution", caution.About, caution.Text, wanted);
        }

        foreach (var mistake in task.Mistakes)
        {
            say("mistake", "", mistake, wanted);
        }
    }

    private static void OfRule(Resolution resolution, Rule rule, Action<string, string, string, Region> say)
    {
        foreach (var answer in rule.Answers.Where(answer => !answer.Mistakes.IsEmpty && resolution.Space.Base.Positions.Has(answer.Position)))
        {
            foreach (var standing in resolution.At(answer.Position).Where(standing => standing.Rule == rule))
            {
                foreach (var mistake in answer.Mistakes)
                {
                    say("mistake", "", mistake, standing.Region);
                }
            }
        }

        if (rule is { Cautions.IsEmpty: true, Mistakes.IsEmpty: true, Advises.IsEmpty: true })
        {
            return;
        }

        var speaks = resolution.Speaks(rule);
        foreach (var caution in rule.Cautions)
        {
            say("caution", caution.About, caution.Text, speaks);
        }

        foreach (var mistake in rule.Mistakes)
        {
            say("mistake", "", mistake, speaks);
        }

        foreach (var advice in rule.Advises)
        {
            say("advice", advice.Option ?? advice.Donor ?? "", advice.Text, speaks);
        }
    }
}
