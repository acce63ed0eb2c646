using System.Globalization;

namespace Swapwright.Tests.Hostile;

/// <summary>How much of a hostile test is done: little in a test run, all of it where a variable of the environment asks for it.</summary>
internal static class LongRun
{
    /// <param name="variable">Its value is how often; <c>all</c> for the full number.</param>
    public static int Times(string variable, int usual, int all) => Environment.GetEnvironmentVariable(variable) switch
    {
        null or "" => usual,
        "all" => all,
        var number => int.Parse(number, CultureInfo.InvariantCulture),
    };
}
