using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>Another answer at a position for the same chassis and donor, and the fewest choices to change for it.</summary>
public sealed record Alternative(Rule Rule, Answer Answer, ImmutableArray<KeyValuePair<string, string>> Changes);

/// <summary>What else could hold in a sheet, and the nearest way to it. Computed on the diagram; choices are never tried one by one.</summary>
/// <param name="memory">Of other sheets of the same space; without one, what this sheet asks is known to it alone.</param>
/// <remarks>It asks the space, which one worker may do at a time: it takes the lock itself. One is for one worker.</remarks>
public sealed class Alternatives(Resolution resolution, Sheet sheet, AlternativesMemory? memory = null)
{
    private readonly AlternativesMemory _memory = memory ?? new();

    // A character for the value of each choice.
    private readonly string _choices = string.Concat(sheet.Combination.Values.Skip(SpaceModel.Entities).Select(value => (char)value));

    /// <summary>The other answers at a position that some buildable combination of this chassis and donor takes.</summary>
    public ImmutableArray<Alternative> At(SheetAnswer at)
    {
        var found = ImmutableArray.CreateBuilder<Alternative>();
        lock (resolution.Store)
        {
            foreach (var (other, where) in Standing(at))
            {
                if (at.Answer is not { } given || !other.Answer.Agrees(given))
                {
                    // Many rules say "with this gearbox" of different positions: what is left of them with the two vehicles is the same region.
                    found.Add(new Alternative(other.Rule, other.Answer, _memory.Changes(where, _choices, () => Changes(resolution, sheet, where))));
                }
            }
        }

        return found.ToImmutable();
    }

    /// <summary>What the alternatives to an answer go by besides the answer: where it is the same objects and texts, so are they.</summary>
    internal object?[] GoesBy(SheetAnswer at)
    {
        lock (resolution.Store)
        {
            return [ImmutableCollectionsMarshal.AsArray(Standing(at)), _choices];
        }
    }

    private ImmutableArray<AnswerSomewhere> Standing(SheetAnswer at) =>
        _memory.Standing(resolution, sheet.Combination.Values[resolution.Space.Chassis], sheet.Combination.Values[resolution.Space.Donor], at.Position.Id);

    /// <summary>The fewest changes of choices that make a combination buildable with the same chassis and donor; null where none do.</summary>
    public static ImmutableArray<KeyValuePair<string, string>>? NearestBuildable(Resolution resolution, Sheet sheet)
    {
        var region = PairSpace.Buildable(resolution, sheet.Chassis.Id, sheet.Donor.Id);
        return region.IsNone ? null : Changes(resolution, sheet, region);
    }

    private static ImmutableArray<KeyValuePair<string, string>> Changes(Resolution resolution, Sheet sheet, Region region)
    {
        var nearest = resolution.Store.Nearest(region, sheet.Combination.Values.AsSpan());
        return
        [
            .. resolution.Space.Base.Choices.All.Where(choice => nearest[resolution.Space.LevelOf(choice.Id)] != sheet.Combination.Values[resolution.Space.LevelOf(choice.Id)])
                .Select(choice => KeyValuePair.Create(choice.Id, resolution.Space.OptionOf(nearest, choice.Id))),
        ];
    }
}
