using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Source;
using Swapwright.Space;

namespace Swapwright.Commands;

/// <summary>Words of a command line that name nothing, with what is known in their place.</summary>
public sealed class ArgumentProblemException(string message) : Exception(message);

/// <summary>A combination as named on a command line: what is not said follows the recommendations.</summary>
internal static class CombinationArguments
{
    /// <exception cref="ArgumentProblemException">A word names nothing known, or a choice that does not apply.</exception>
    public static int[] Read(Resolution resolution, string chassis, string donor, IEnumerable<string> pairs)
    {
        var kb = resolution.Space.Base;
        Know(kb.Chassis.Ids, chassis, "chassis");
        Know(kb.Donors.Ids, donor, "donor");
        var region = PairSpace.Domain(resolution, chassis, donor);
        foreach (var (choice, option) in pairs.Select(Pair))
        {
            Know(kb.Choices.Ids, choice, "choice");
            Know([.. kb.Choices[choice].Options.Select(one => one.Id), Choice.None], option, $"option of `{choice}`");
            var taken = resolution.Store.And(region, resolution.Space.WhereChoice(choice, [option]));
            if (taken.IsNone)
            {
                throw new ArgumentProblemException(option == Choice.None ? $"`{choice}` has to be chosen here: {Options(kb.Choices[choice])}" : $"there is no choice of `{choice}` here, given the chassis, the donor and the options before it");
            }

            region = taken;
        }

        var buildable = resolution.Store.And(region, PairSpace.Buildable(resolution, chassis, donor));
        return new Headlines(resolution).Default(buildable.IsNone ? region : buildable);
    }

    public static void Know(IEnumerable<string> known, string given, string what)
    {
        var names = known.ToImmutableArray();
        if (!names.Contains(given))
        {
            throw new ArgumentProblemException(NearestName.Of(given, names) is { } near
                ? $"no {what} `{given}`; did you mean `{near}`?"
                : $"no {what} `{given}`; known: {string.Join(", ", names)}");
        }
    }

    /// <summary>Choice id → option id, as written.</summary>
    public static ImmutableArray<KeyValuePair<string, string>> Decided(IEnumerable<string> pairs) => [.. pairs.Select(Pair).Select(pair => KeyValuePair.Create(pair.Choice, pair.Option))];

    private static (string Choice, string Option) Pair(string text)
    {
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        return equals > 0 ? (text[..equals], text[(equals + 1)..]) : throw new ArgumentProblemException($"`{text}` is no choice: write `choice=option`, as in `gearbox=keep`");
    }

    private static string Options(Choice choice) => string.Join(", ", choice.Options.Select(option => option.Id));
}
