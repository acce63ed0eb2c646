using System.Collections.Immutable;

namespace Swapwright.Worksheets.Effort;

/// <summary>
/// Jobs by what has to wait for what. Earliest and latest times by the critical path method (Kelley and Walker, Critical-path
/// planning and scheduling, Proceedings of the Eastern Joint Computer Conference 1959), with mean hours.
/// </summary>
public sealed class Network
{
    private readonly ImmutableArray<Job> _jobs;
    private readonly ImmutableArray<ImmutableArray<int>> _before;

    // A job waits for all of earlier phases: for as many as stand before the first of its own.
    private readonly int[] _fence;

    /// <param name="jobs">In an order in which they can be done; a job that waits for a later one (a loop, which is a finding elsewhere) does not wait for it.</param>
    public Network(IEnumerable<Job> jobs)
    {
        // A phase is a fence, so jobs are taken phase by phase; within one the given order holds.
        _jobs = [.. jobs.OrderBy(job => job.Phase)];
        var places = _jobs.Select((job, at) => (job.Id, at)).ToDictionary(pair => pair.Id, pair => pair.at, StringComparer.Ordinal);
        _before = [.. _jobs.Select((job, at) => job.After.Where(places.ContainsKey).Select(id => places[id]).Where(other => other < at).Distinct().Order().ToImmutableArray())];
        _fence = new int[_jobs.Length];
        for (var at = 1; at < _jobs.Length; at++)
        {
            _fence[at] = _jobs[at].Phase == _jobs[at - 1].Phase ? _fence[at - 1] : at;
        }

        Times = Work();
    }

    /// <summary>Each job at its earliest, with as many hands as it takes.</summary>
    public ImmutableArray<JobTimes> Times { get; }

    /// <summary>Hours from start to end with as many hands as it takes.</summary>
    public double Length => Times.IsEmpty ? 0 : Times.Max(one => one.End);

    /// <summary>One chain of jobs that decides the length, in order.</summary>
    public ImmutableArray<Job> CriticalPath()
    {
        var path = new List<Job>();
        var end = Length;
        while (end > 0 && Times.LastOrDefault(one => one.IsCritical && one.End > one.Start && Math.Abs(one.End - end) < 1e-9) is { } last)
        {
            path.Add(last.Job);
            end = last.Start;
        }

        path.Reverse();
        return [.. path];
    }

    /// <summary>
    /// The jobs as a crew does them: whenever hands are free, the job that can begin and has least slack begins. A job for
    /// more people than the crew has takes the whole crew; the helper it wants is told beside it.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Nobody is there.</exception>
    public ImmutableArray<JobTurn> Turns(int people)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(people, 1);
        var ends = new double?[_jobs.Length];
        var left = Enumerable.Range(0, _jobs.Length).OrderBy(at => Times[at].Slack).ThenBy(at => at).ToList();
        var busy = new List<JobTurn>();
        var turns = ImmutableArray.CreateBuilder<JobTurn>(_jobs.Length);
        var now = 0.0;
        var done = 0;
        bool IsOver(int at) => ends[at] <= now;
        while (left.Count > 0)
        {
            while (done < ends.Length && IsOver(done))
            {
                done++;
            }

            busy.RemoveAll(turn => turn.End <= now);
            var free = people - busy.Sum(turn => Math.Min(turn.Job.People, people));
            var next = free <= 0 ? -1 : left.FindIndex(at => Math.Min(_jobs[at].People, people) <= free && _fence[at] <= done && _before[at].All(IsOver));
            if (next >= 0)
            {
                var job = _jobs[left[next]];
                var turn = new JobTurn(job, now, now + job.Hours.Mean);
                ends[left[next]] = turn.End;
                left.RemoveAt(next);
                turns.Add(turn);
                busy.Add(turn);
            }
            else
            {
                now = busy.Min(turn => turn.End);
            }
        }

        return turns.ToImmutable();
    }

    private ImmutableArray<JobTimes> Work()
    {
        var start = new double[_jobs.Length];
        var end = new double[_jobs.Length];

        // By how many jobs are counted: when the last of so many ends.
        var ended = new double[_jobs.Length + 1];
        for (var at = 0; at < _jobs.Length; at++)
        {
            start[at] = _before[at].Aggregate(ended[_fence[at]], (latest, before) => Math.Max(latest, end[before]));
            end[at] = start[at] + _jobs[at].Hours.Mean;
            ended[at + 1] = Math.Max(ended[at], end[at]);
        }

        var latest = new double[_jobs.Length];
        var whole = ended[^1];
        Array.Fill(latest, whole);

        // By place: when the first of the jobs from there on has to begin.
        var begun = new double[_jobs.Length + 1];
        Array.Fill(begun, whole);
        var next = _jobs.Length;
        for (var at = _jobs.Length - 1; at >= 0; at--)
        {
            next = at + 1 < _jobs.Length && _jobs[at + 1].Phase != _jobs[at].Phase ? at + 1 : next;
            latest[at] = Math.Min(latest[at], begun[next]);
            var begins = latest[at] - _jobs[at].Hours.Mean;
            foreach (var before in _before[at])
            {
                latest[before] = Math.Min(latest[before], begins);
            }

            begun[at] = Math.Min(begun[at + 1], begins);
        }

        return [.. _jobs.Select((job, at) => new JobTimes(job, start[at], end[at], latest[at] - end[at]))];
    }
}
