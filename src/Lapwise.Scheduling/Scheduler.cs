using Google.OrTools.Sat;
using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>
/// Schedules many jobs over one calendar: names what contradicts, gives a good answer at once, and then lets the solver better
/// it and prove how far it can still be bettered. Deterministic where one worker is asked for and the count of work stops it.
/// </summary>
public static class Scheduler
{
    /// <summary>More than this is not answered: plan them in parts.</summary>
    public const int MostVisits = 12_000;

    /// <summary>Beyond this the solver is not asked; the answer at once stands, with its bound.</summary>
    public const int MostSearched = 1_500;

    /// <summary>Share of the effort that goes to a few jobs at a time, where there are many.</summary>
    private const double ByParts = 0.2;
    /// <summary>Share of the effort that goes to each crew by itself.</summary>
    private const double ByCrews = 0.6;

    /// <summary>Orders tried for each unit of the solver's own count, in a shop of thirty jobs; one of more visits takes longer for each.</summary>
    private const int TriesPerEffort = 200;
    private const int VisitsOfThirtyJobs = 180;

    /// <summary>So small a part of them is tried before anything that takes longer.</summary>
    private const int SoonOf = 20;

    /// <summary>Where no first answer fits, one is sought in so many times the days.</summary>
    public const int MoreDays = 2;

    /// <summary>Without a first answer the solver loses itself in more visits than this, and is not asked.</summary>
    private const int MostSearchedUnled = 150;

    /// <param name="better">Told each better schedule, on the solver's own thread.</param>
    /// <param name="told">Told how far from the days planned the best is, while none fits into them.</param>
    public static Answer Solve(ScheduleProblem problem, Effort effort, Action<Schedule>? better = null, Action<Reason>? told = null, CancellationToken stop = default)
    {
        if (Refusals.Of(problem) is { Count: > 0 } refused) return new Answer.Refused(refused);
        if (Cycles.Contradiction(problem) is { } cycle) return new Answer.Impossible([Cycles.Say(cycle)]);
        var least = LeastEnd.Of(problem);
        if (least.Against.Count > 0) return new Answer.Impossible([.. least.Against, .. least.IsStuck ? Kept.Against(problem, IsRefuted) : []]);
        var bound = least.End;

        // A search without crews has no use for a first answer: the solver is there as soon.
        var (first, without) = problem.Crews.Count == 0 ? default : First(problem, effort, told, stop);
        var undecided = new Answer.Undecided(without is null ? [] : [without]);
        // What misses a deadline is no first answer to be bettered, but it is better than none.
        var late = first is null ? [] : Deadlines.Missed(problem, first);
        var started = first is null || late.Count > 0 ? null : Made(problem, first, bound, []);
        if (first is not null) better?.Invoke(Made(problem, first, bound, late));

        if (problem.Visits.Count > (without is null ? MostSearched : MostSearchedUnled) || effort.Deterministic <= 0)
            return started is not null ? new Answer.Found(started) : first is not null ? new Answer.Found(Made(problem, first, bound, late)) : undecided;
        if (problem.Before.Count > 0 && !problem.EndsFirst && started is not null) return new Answer.Found(Settled(problem, effort, started, better, stop));
        if (started is not null && problem.Crews.Count > 0)
        {
            void Told(IReadOnlyList<PlacedVisit> found) => better?.Invoke(Made(problem, found, bound, []));
            var isMany = PartByPart.IsOfUse(problem);
            // Something better soon, for who looks on; a whole crew takes longer.
            var soon = isMany ? JobByJob.Shuffle(problem, started.Visits, bound, Tries(problem, effort) / SoonOf, Told, stop) : started.Visits;
            var byCrews = !isMany ? null : CrewByCrew.Place(problem, LastEndOf(problem, soon), bound, effort with { Deterministic = effort.Deterministic * ByCrews }, Told, stop);
            var tried = byCrews ?? JobByJob.Shuffle(problem, started.Visits, bound, Tries(problem, effort), Told, stop);
            // Stopped by hand, those tries ended where they began.
            if (LastEndOf(problem, soon) < LastEndOf(problem, tried)) tried = soon;
            if (isMany)
            {
                tried = PartByPart.Better(problem, tried, bound, effort.Deterministic * (byCrews is null ? ByCrews + ByParts : ByParts), Told, stop);
                effort = effort with { Deterministic = effort.Deterministic * (1 - ByCrews - ByParts) };
            }

            if (Checking.Broken(problem, tried).Count == 0) started = Made(problem, tried, bound, []);
        }

        if (started is { IsProven: true }) return new Answer.Found(HasWishes(problem) ? Calmer(problem, AfterEnd(effort), started, better: null, stop) : started);

        return Search(problem, effort, bound, started, first, better, stop) is var answer and not Answer.Undecided ? answer : undecided;
    }

    /// <summary>A first answer; where none is there at once, one in more days than are planned, bettered until it fits into them.</summary>
    /// <param name="told">Told how far it is, each time it is nearer.</param>
    private static (IReadOnlyList<PlacedVisit>? Placed, Reason? Without) First(ScheduleProblem problem, Effort effort, Action<Reason>? told, CancellationToken stop)
    {
        if (JobByJob.Place(problem, stop) is { } atOnce) return Checking.Broken(problem, atOnce).Count == 0 ? (atOnce, null) : default;
        var jobs = problem.Visits.Select(v => v.Job).Distinct().Count();
        var longer = problem with { Horizon = MoreDays * problem.Horizon };
        if (JobByJob.Place(longer, stop) is not { } found) return (null, Shortfalls.NotFound(jobs, null));
        Told(found);
        found = JobByJob.Shuffle(longer, found, problem.Horizon, Tries(longer, effort), Told, stop);
        if (PartByPart.IsOfUse(longer)) found = PartByPart.Better(longer, found, problem.Horizon, effort.Deterministic * ByParts, Told, stop);
        return Beyond(found) > 0 ? (null, Shortfalls.NotFound(jobs, Beyond(found))) : Checking.Broken(problem, found).Count == 0 ? (found, null) : default;

        long Beyond(IReadOnlyList<PlacedVisit> placed) => LastEndOf(problem, placed) - problem.Horizon;
        void Told(IReadOnlyList<PlacedVisit> placed)
        {
            if (Beyond(placed) > 0) told?.Invoke(Shortfalls.NotFound(jobs, Beyond(placed)));
        }
    }

    private static int Tries(ScheduleProblem problem, Effort effort)
    {
        var size = Math.Max(1.0, (double)problem.Visits.Count / VisitsOfThirtyJobs);
        return (int)(effort.Deterministic * TriesPerEffort / (size * size));
    }

    private static Answer Search(ScheduleProblem problem, Effort effort, long bound, Schedule? started, IReadOnlyList<PlacedVisit>? first, Action<Schedule>? better, CancellationToken stop)
    {
        using var model = new VisitModel(problem, bound);
        var ran = model.EarliestEnd(effort, started?.Visits, found => better?.Invoke(Made(problem, found.Visits!, Math.Max(bound, found.Bound), [])), stop);
        switch (ran.Status)
        {
            case CpSolverStatus.Optimal or CpSolverStatus.Feasible:
                var schedule = Best(started, Made(problem, ran.Visits!, Math.Max(bound, ran.Bound), []) with { IsRepeatable = ran.IsRepeatable });
                if (problem.Crews.Count == 0 || stop.IsCancellationRequested) return new Answer.Found(schedule);
                return new Answer.Found(Calmer(problem, AfterEnd(effort), schedule, better: null, stop));
            case CpSolverStatus.Infeasible when problem.Visits.Any(v => v.DueBy is not null):
                return Latest(problem, effort, bound, first, stop);
            case CpSolverStatus.Infeasible:
                return new Answer.Impossible([Refusals.NoSchedule, .. Kept.Against(problem, p => JobByJob.Place(p, stop) is null)]);
            default:
                return started is not null ? new Answer.Found(started with { Bound = Math.Max(started.Bound, ran.Bound), IsRepeatable = ran.IsRepeatable })
                    : first is not null ? new Answer.Found(Made(problem, first, bound, Deadlines.Missed(problem, first))) : new Answer.Undecided([]);
        }
    }

    private static bool IsRefuted(ScheduleProblem problem) => Cycles.Contradiction(problem) is not null || LeastEnd.Of(problem).Against.Count > 0;

    /// <summary>
    /// With settled visits: few moves first, for they were told to people. Where that leaves it open whether all could end sooner,
    /// it is looked for as well, and told with how many more visits it would move; which of the two it shall be is not for a search to say.
    /// </summary>
    private static Schedule Settled(ScheduleProblem problem, Effort effort, Schedule started, Action<Schedule>? better, CancellationToken stop)
    {
        var calm = Calmer(problem, effort, started, better, stop);
        if (calm.IsProven || stop.IsCancellationRequested) return calm;
        better?.Invoke(calm);
        return Solve(problem with { EndsFirst = true }, effort, s => better?.Invoke(Beside(s)), stop: stop) is Answer.Found(var free) ? Beside(free) : calm;

        Schedule Beside(Schedule free) => calm with
        {
            Bound = Math.Max(calm.Bound, free.Bound),
            IsRepeatable = calm.IsRepeatable && free.IsRepeatable,
            Sooner = free.Reasons.Count == 0 && free.LastEnd < calm.LastEnd ? new Sooner(free.LastEnd, problem.Moved(free.Visits)) : null,
        };
    }

    /// <summary>Whether more is wished for than an early end.</summary>
    private static bool HasWishes(ScheduleProblem problem) => problem.Before.Count > 0 || problem.Stretches.Count > 0;

    /// <summary>What is spent on the wishes once the end is settled.</summary>
    private static Effort AfterEnd(Effort effort) => effort with { Deterministic = effort.Deterministic / 4 };

    /// <summary>With no later end: of all such schedules one in which few visits move, few households stay opened for long, and jobs end early.</summary>
    private static Schedule Calmer(ScheduleProblem problem, Effort effort, Schedule schedule, Action<Schedule>? better, CancellationToken stop)
    {
        using var model = new VisitModel(problem, schedule.Bound);
        var ran = model.FewMoves(effort, schedule, found => better?.Invoke(Made(problem, found.Visits!, schedule.Bound, [])), stop);
        var isMade = ran.Visits is not null && Checking.Broken(problem, ran.Visits).Count == 0;
        var calmer = isMade ? schedule with { Visits = ran.Visits!, LastEnd = LastEndOf(problem, ran.Visits!) } : schedule;
        // Where the whole was too much, a job at a time with all others in place.
        if (ran.Status != CpSolverStatus.Optimal && HasWishes(problem)) calmer = OneByOne(problem, AfterEnd(effort), calmer, stop);
        return calmer with { IsRepeatable = schedule.IsRepeatable && ran.IsRepeatable && !stop.IsCancellationRequested };
    }

    private static Schedule OneByOne(ScheduleProblem problem, Effort effort, Schedule schedule, CancellationToken stop)
    {
        var jobs = Enumerable.Range(0, problem.Visits.Count).GroupBy(i => problem.Visits[i].Job).Select(g => g.ToHashSet()).ToList();
        foreach (var job in jobs)
        {
            var (visits, last) = (schedule.Visits, schedule.LastEnd);
            var alone = problem with { Visits = [.. problem.Visits.Select((v, i) => job.Contains(i) ? v : v with { Locked = new Locked(visits[i].Start, visits[i].Crew) })] };
            using var model = new VisitModel(alone, Math.Min(schedule.Bound, last));
            var ran = model.FewMoves(effort with { Deterministic = effort.Deterministic / jobs.Count }, schedule, null, stop);
            if (ran.Visits is { } placed && Checking.Broken(problem, placed).Count == 0) schedule = schedule with { Visits = placed, LastEnd = LastEndOf(problem, placed) };
        }

        return schedule;
    }

    /// <summary>No schedule keeps every deadline: the one that misses them by the least, and by how much.</summary>
    private static Answer Latest(ScheduleProblem problem, Effort effort, long bound, IReadOnlyList<PlacedVisit>? first, CancellationToken stop)
    {
        using var model = new VisitModel(problem, bound);
        var ran = model.LeastLate(effort, first, stop);
        if (ran.Status == CpSolverStatus.Infeasible) return new Answer.Impossible([Refusals.NoSchedule]);
        return ran.Visits is { } visits ? new Answer.Found(Made(problem, visits, bound, Deadlines.Missed(problem, visits)) with { IsRepeatable = ran.IsRepeatable }) : new Answer.Undecided([]);
    }

    private static Schedule Best(Schedule? one, Schedule other) => one is not null && one.LastEnd <= other.LastEnd ? one with { Bound = other.Bound, IsRepeatable = other.IsRepeatable } : other;

    private static Schedule Made(ScheduleProblem problem, IReadOnlyList<PlacedVisit> visits, long bound, IReadOnlyList<Reason> reasons) => new(visits, LastEndOf(problem, visits), bound, reasons);

    private static long LastEndOf(ScheduleProblem problem, IReadOnlyList<PlacedVisit> visits) => visits.Select((p, i) => p.Start + problem.Visits[i].Length).DefaultIfEmpty(0).Max();
}
