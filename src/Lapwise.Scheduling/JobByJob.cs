namespace Lapwise.Scheduling;

/// <summary>
/// A good schedule at once: locked visits first, then job by job by its deadline, each on the crew that ends it soonest,
/// every visit pushed forward until its lags and what stands already let it be.
/// </summary>
internal sealed class JobByJob
{
    private readonly ScheduleProblem problem;
    private readonly List<Job> jobs;
    private readonly List<int> usual;

    private JobByJob(ScheduleProblem problem)
    {
        this.problem = problem;
        jobs = [.. Enumerable.Range(0, problem.Visits.Count).GroupBy(i => problem.Visits[i].Job).Select(g => new Job([.. g], [], [], CrewsOf(problem, [.. g])))];
        var jobOf = new int[problem.Visits.Count];
        for (var j = 0; j < jobs.Count; j++) foreach (var v in jobs[j].Visits) jobOf[v] = j;
        foreach (var lag in problem.Lags) if (jobOf[lag.From] == jobOf[lag.To]) jobs[jobOf[lag.From]].Lags.Add(lag);
        foreach (var hold in problem.Holds) jobs[jobOf[hold.From]].Holds.Add(hold);
        usual =
        [
            .. Enumerable.Range(0, jobs.Count)
                .OrderBy(j => jobs[j].Visits.Any(v => problem.Visits[v].Locked is not null) ? 0 : 1)
                .ThenBy(j => jobs[j].Visits.Min(v => problem.Visits[v].DueBy ?? long.MaxValue))
                .ThenByDescending(j => jobs[j].Visits.Any(v => problem.Stood(v) is not null))
                .ThenBy(j => jobs[j].Visits.Min(v => problem.Stood(v)?.Start ?? long.MaxValue))
                .ThenByDescending(j => jobs[j].Visits.Sum(v => problem.Visits[v].Length))
                .ThenBy(j => jobs[j].Visits[0]),
        ];
    }

    /// <summary>Null where some job finds no place; then nothing is said of whether there is one.</summary>
    public static IReadOnlyList<PlacedVisit>? Place(ScheduleProblem problem, CancellationToken stop)
    {
        var placing = new JobByJob(problem);
        return placing.InOrder(placing.usual, Wishes.None, long.MaxValue, stop);
    }

    /// <summary>
    /// The same in other orders, on other crews, and with visits that leave room for others: a job is put elsewhere in the order or
    /// given to a crew, or one of its visits is held back for some hours; what ends no later is gone on from. The same number of tries gives the same answer.
    /// </summary>
    /// <param name="first">What is to be bettered.</param>
    /// <param name="enough">Nothing ends earlier than this.</param>
    /// <param name="better">Told each that ends earlier.</param>
    public static IReadOnlyList<PlacedVisit> Shuffle(ScheduleProblem problem, IReadOnlyList<PlacedVisit> first, long enough, int tries, Action<IReadOnlyList<PlacedVisit>> better, CancellationToken stop)
    {
        var placing = new JobByJob(problem);
        var free = placing.usual.Count(j => placing.jobs[j].Visits.All(v => problem.Visits[v].Locked is null));
        var held = placing.usual.Count - free;
        if (free < 2) return first;
        var random = new Random(1);
        var (order, wishes) = (placing.usual.ToList(), Wishes.None);
        var (best, score) = (first, placing.Score(first));
        for (var i = 0; i < tries && score.LastEnd > enough && !stop.IsCancellationRequested; i++)
        {
            var (nextOrder, nextWishes) = (order, wishes);
            var from = held + random.Next(free);
            var job = placing.jobs[order[from]];
            switch (random.Next(4))
            {
                case 0 when job.Crews.Count > 1:
                    // One more than there are: by whoever ends it soonest.
                    var crew = random.Next(job.Crews.Count + 1);
                    nextWishes = wishes.By(job.Visits[0], crew == job.Crews.Count ? null : job.Crews[crew]);
                    break;
                case 1 or 2:
                    nextWishes = wishes.HeldBack(job.Visits[random.Next(job.Visits.Count)], HoldBackStep * random.Next(MostHoldBackSteps + 1));
                    break;
                default:
                    nextOrder = [.. order];
                    nextOrder.RemoveAt(from);
                    nextOrder.Insert(held + random.Next(free), order[from]);
                    break;
            }

            if (placing.InOrder(nextOrder, nextWishes, score.LastEnd, stop) is not { } tried || placing.Score(tried) is var now && now.CompareTo(score) > 0) continue;
            (order, wishes) = (nextOrder, nextWishes);
            var isEarlier = now.LastEnd < score.LastEnd;
            (best, score) = (tried, now);
            if (isEarlier) better(best);
        }

        return best;
    }

    /// <summary>How late deadlines are missed in all, when the last visit ends, and when the jobs end in all.</summary>
    private (long Late, long LastEnd, long Ends) Score(IReadOnlyList<PlacedVisit> placed)
    {
        long End(int v) => placed[v].Start + problem.Visits[v].Length;
        var ends = jobs.Select(j => j.Visits.Max(End)).ToList();
        return (Enumerable.Range(0, placed.Count).Sum(v => Math.Max(0, End(v) - (problem.Visits[v].DueBy ?? long.MaxValue))), ends.Max(), ends.Sum());
    }

    private IReadOnlyList<PlacedVisit>? InOrder(IReadOnlyList<int> order, Wishes wishes, long noLaterThan, CancellationToken stop)
    {
        var placing = new Placing(problem);
        var placed = new PlacedVisit?[problem.Visits.Count];
        foreach (var visit in Enumerable.Range(0, problem.Visits.Count))
        {
            if (problem.Visits[visit].Locked is not { } locked) continue;
            // One without a named crew is placed with its job.
            if (problem.Visits[visit].NeedsCrew && locked.Crew is null) continue;
            placing.Put(visit, new PlacedVisit(locked.Start, locked.Crew));
            placed[visit] = new PlacedVisit(locked.Start, locked.Crew);
        }

        foreach (var job in order)
        {
            if (stop.IsCancellationRequested || !PlaceJob(problem, placing, placed, jobs[job], wishes)) return null;
            foreach (var visit in jobs[job].Visits) if (placed[visit]!.Value.Start + problem.Visits[visit].Length > noLaterThan) return null;
        }

        return [.. placed.Select(p => p!.Value)];
    }

    /// <param name="Crews">Those that can do all of it.</param>
    private sealed record Job(IReadOnlyList<int> Visits, List<Lag> Lags, List<Hold> Holds, IReadOnlyList<int> Crews);

    // In ticks; a shop counts minutes: up to six hours, by the half hour.
    private const int HoldBackStep = 30;
    private const int MostHoldBackSteps = 12;

    /// <summary>What is asked beyond the problem. Never altered: each try has its own.</summary>
    /// <param name="Crews">Crew of a job, by its first visit.</param>
    /// <param name="Back">How long a visit is held back beyond what it waits for.</param>
    private sealed record Wishes(IReadOnlyDictionary<int, int> Crews, IReadOnlyDictionary<int, long> Back)
    {
        public static readonly Wishes None = new(new Dictionary<int, int>(), new Dictionary<int, long>());

        public long HoldBack(int visit) => Back.GetValueOrDefault(visit);

        public Wishes By(int job, int? crew) => this with { Crews = Without(Crews, job, crew) };

        public Wishes HeldBack(int visit, long ticks) => this with { Back = Without(Back, visit, ticks == 0 ? null : ticks) };

        private static Dictionary<int, T> Without<T>(IReadOnlyDictionary<int, T> had, int key, T? value) where T : struct
        {
            var next = new Dictionary<int, T>(had);
            next.Remove(key);
            if (value is { } given) next[key] = given;
            return next;
        }
    }

    private static IReadOnlyList<int> CrewsOf(ScheduleProblem problem, IReadOnlyList<int> visits)
    {
        var able = visits.Where(v => problem.Visits[v].NeedsCrew).Select(v => problem.CrewsFor(problem.Visits[v])).ToList();
        return able.Count == 0 ? [] : [.. able.Aggregate((IEnumerable<int>)able[0], (all, a) => all.Intersect(a))];
    }

    private static bool PlaceJob(ScheduleProblem problem, Placing placing, PlacedVisit?[] placed, Job job, Wishes wishes)
    {
        // By the crew that is wished, else by the one that moves the least and ends soonest.
        int? asked = wishes.Crews.TryGetValue(job.Visits[0], out var wished) ? wished : null;
        if (job.Crews.Count == 0 && job.Visits.Any(v => problem.Visits[v].NeedsCrew && problem.CrewsFor(problem.Visits[v]).Count == 0)) return false;
        (int Moved, long End, Dictionary<int, PlacedVisit> At)? best = null;
        // One crew for the whole job where one can do it all; else each visit's first able crew.
        foreach (var crew in asked is not null ? [asked] : job.Crews.Count > 0 ? job.Crews.Select(c => (int?)c) : [null])
        {
            if (Pushed(problem, placing, placed, job, crew, wishes) is not { } at) continue;
            var end = at.Max(p => p.Value.Start + problem.Visits[p.Key].Length);
            var moved = at.Count(p => problem.Stood(p.Key) is { } stood && stood != p.Value);
            if (best is null || (moved, end).CompareTo((best.Value.Moved, best.Value.End)) < 0) best = (moved, end, at);
        }

        if (best is null) return false;
        foreach (var (visit, at) in best.Value.At)
        {
            if (placed[visit] is null) placing.Put(visit, at);
            placed[visit] = at;
        }

        foreach (var hold in job.Holds)
            placing.Keep(hold, best.Value.At[hold.From].Start, best.Value.At[hold.To].Start + problem.Visits[hold.To].Length);
        return true;
    }

    private static Dictionary<int, PlacedVisit>? Pushed(ScheduleProblem problem, Placing placing, PlacedVisit?[] placed, Job job, int? crew, Wishes wishes)
    {
        var at = new Dictionary<int, PlacedVisit>();
        foreach (var visit in job.Visits)
        {
            int? by = !problem.Visits[visit].NeedsCrew ? null : crew ?? problem.CrewsFor(problem.Visits[visit])[0];
            if (placed[visit] is { } fixedAt) at[visit] = fixedAt;
            else if (placing.First(visit, Before(problem, visit), by) is { } first) at[visit] = new PlacedVisit(first, by);
            else return null;
        }

        bool Push(int visit, long earliest)
        {
            if (placed[visit] is not null || placing.First(visit, earliest, at[visit].Crew) is not { } next) return false;
            at[visit] = at[visit] with { Start = next };
            return true;
        }

        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var lag in job.Lags)
            {
                var earliest = at[lag.From].Start + lag.Least + (lag.Least > 0 ? wishes.HoldBack(lag.To) : 0);
                if (at[lag.To].Start >= earliest) continue;
                if (!Push(lag.To, earliest)) return null;
                moved = true;
            }

            foreach (var a in job.Visits)
            {
                foreach (var b in job.Visits)
                {
                    if (a >= b || at[a].Crew is null || at[a].Crew != at[b].Crew) continue;
                    var (endA, endB) = (at[a].Start + problem.Visits[a].Length, at[b].Start + problem.Visits[b].Length);
                    if (at[a].Start >= endB || at[b].Start >= endA) continue;
                    if (!Push(b, endA)) return null;
                    moved = true;
                }
            }

            foreach (var hold in job.Holds)
            {
                if (placing.WhenFree(hold, at[hold.From].Start, at[hold.To].Start + problem.Visits[hold.To].Length) is not { } free) continue;
                if (!Push(hold.From, Math.Max(free, at[hold.From].Start + 1))) return null;
                moved = true;
            }
        }

        return at;
    }

    /// <summary>What stood somewhere is not pulled forward: it moves only where it must.</summary>
    private static long Before(ScheduleProblem problem, int visit) => problem.Stood(visit)?.Start ?? 0;
}
