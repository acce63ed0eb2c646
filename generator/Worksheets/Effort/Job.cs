using System.Collections.Immutable;

namespace Swapwright.Worksheets.Effort;

/// <summary>A piece of work.</summary>
/// <param name="Hours">From start to end with <paramref name="People"/> at it.</param>
/// <param name="Phase">Work of a phase begins when the phase before is done; phases count from 0.</param>
/// <param name="After">Jobs that have to be done before; ids that are not among the jobs are passed over.</param>
public sealed record Job(string Id, string Title, Estimate Hours, int People, int Phase, ImmutableArray<string> After);

/// <summary>When a job can be done; hours from the start of the whole.</summary>
/// <param name="Slack">By how long it can be put off without putting off the end.</param>
public sealed record JobTimes(Job Job, double Start, double End, double Slack)
{
    // Sums of sixths of hours: less than a second is no slack.
    private const double Nothing = 1.0 / 3600;

    public bool IsCritical => Slack < Nothing;
}

/// <summary>A job as a crew of given size does it.</summary>
public sealed record JobTurn(Job Job, double Start, double End);
