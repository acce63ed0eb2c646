using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Names in results of plugs that belong to no device and to no ECU in use.</summary>
internal static class Places
{
    public const string Body = "body";
    public const string HarnessBody = "harness body";
    public const string HarnessEcu = "harness side";

    /// <summary>Where a device in the cabin is grounded, and the terminal for it, which belongs to no family of plugs.</summary>
    public const string BodyMetal = "body metal";
    public const string Ring = "ring";

    /// <summary>Where a cable that is renewed in one piece ends.</summary>
    public const string CableEnd = "cable end";

    public const string RelayBase = "relay";

    /// <summary>Where the contact of an added relay is fed; also what its wire carries, for which a base need have no signal.</summary>
    public const string Battery = "battery post";

    public static string AddedRelay(int number) => $"{RelayBase} {number.ToString(System.Globalization.CultureInfo.InvariantCulture)}";

    public static bool IsAddedRelay(string place) => place.StartsWith(RelayBase + " ", StringComparison.Ordinal);
}

/// <summary>Collects problems, each once.</summary>
internal sealed class ProblemList
{
    private readonly HashSet<WiringProblem> problems = [];

    public void Add(WiringProblemKind kind, string subject, string? cavity, string? signal, string message) =>
        problems.Add(new WiringProblem(kind, subject, cavity, signal, message));

    /// <summary>By kind, subject, cavity and signal.</summary>
    public ImmutableArray<WiringProblem> Sorted() =>
    [
        .. problems
            .OrderBy(problem => problem.Kind)
            .ThenBy(problem => problem.Subject, StringComparer.Ordinal)
            .ThenBy(problem => problem.Cavity, CavityOrder.Instance)
            .ThenBy(problem => problem.Signal, StringComparer.Ordinal)
            .ThenBy(problem => problem.Message, StringComparer.Ordinal),
    ];
}
