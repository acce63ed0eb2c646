using System.Collections.Immutable;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>Where, in the choices of one chassis and donor, each answer stands in something buildable. Asks the space: for who holds the store's lock.</summary>
/// <param name="chassis">As the variable of the space numbers it, and so the donor.</param>
internal sealed class PairAnswers(Resolution resolution, int chassis, int donor)
{
    private readonly Dictionary<string, ImmutableArray<AnswerSomewhere>> _at = new(StringComparer.Ordinal);
    private readonly Region _pair = resolution.Store.Point([(resolution.Space.Chassis, chassis), (resolution.Space.Donor, donor)]);
    private Region? _possible;

    public bool IsOf(int ofChassis, int ofDonor) => chassis == ofChassis && donor == ofDonor;

    /// <summary>The answers at a position that stand somewhere, in the order of the base.</summary>
    /// <param name="same">Gives the list of another pair that has the same in it.</param>
    public ImmutableArray<AnswerSomewhere> At(string position, Func<ImmutableArray<AnswerSomewhere>, ImmutableArray<AnswerSomewhere>> same)
    {
        if (!_at.TryGetValue(position, out var standing))
        {
            _at.Add(position, standing = same(Find(position)));
        }

        return standing;
    }

    private ImmutableArray<AnswerSomewhere> Find(string position)
    {
        var (store, space) = (resolution.Store, resolution.Space);
        var found = ImmutableArray.CreateBuilder<AnswerSomewhere>();
        foreach (var answer in resolution.At(position))
        {
            // Most answers hold for other vehicles, which is seen from the box around their condition.
            var box = store.BoundsOf(resolution.When(answer.Rule));
            if (box.Has(space.Chassis, chassis) && box.Has(space.Donor, donor))
            {
                var where = store.And(store.Slice(answer.Region, _pair), _possible ??= resolution.BuildableParts.At(_pair));
                if (!where.IsNone)
                {
                    found.Add(new AnswerSomewhere(answer, where));
                }
            }
        }

        return found.ToImmutable();
    }
}

/// <param name="Where">Depends on choices alone, so that many pairs have the same.</param>
internal readonly record struct AnswerSomewhere(StandingAnswer Answer, Region Where);
