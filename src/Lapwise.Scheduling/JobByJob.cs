namespace Lapwise.Scheduling;

/// <summary>
/// A good schedule at once: locked visits first, then job by job by its deadline, each on the crew that ends it soonest,
/// every visit pushed forward until its lags and what stands already let it be.
/// </summary>
internal static class JobByJob
{
    /// <summary>Null where some job finds no place; then nothing is said of whether there is one.</summary>
    public static IReadOnlyList<PlacedVisit>? Place(ScheduleProblem problem, CancellationToken stop)
    {
        var placing = new Placing(problem);
        var placed = new PlacedVisit?[problem.Visits.Count];
        var jobs = Enumerable.Range(0, problem.Visits.Count).GroupBy(i => problem.Visits[i].Job)
            .Select(g => new Job([.. g], [])).ToList();
        var jobOf = new int[problem.Visits.Count];
        for (var j = 0; j < jobs.Count; j++) foreach (var v in jobs[j].Visits) jobOf[v] = j;
        foreach (var lag in problem.Lags) if (jobOf[lag.From] == jobOf[lag.To]) jobs[jobOf[lag.From]].Lags.Add(lag);

        foreach (var visit in Enumerable.Range(0, problem.Visits.Count))
        {
            if (problem.Visits[visit].Locked is not { } locked) continue;
            // One without a named crew is placed with its job.
            if (problem.Visits[visit].NeedsCrew && locked.Crew is null) continue;
            placing.Put(visit, new PlacedVisit(locked.Start, locked.Crew));
            placed[visit] = new PlacedVisit(locked.Start, locked.Crew);
        }

        var order = jobs
            .OrderBy(j => j.Visits.Any(v => problem.Visits[v].Locked is not null) ? 0 : 1)
            .ThenBy(j => j.Visits.Min(v => problem.Visits[v].DueBy ?? long.MaxValue))
            .ThenByDescending(j => j.Visits.Count > 0 && j.Visits.Any(v => problem.Before.ContainsKey(problem.Visits[v].Id)))
            .ThenBy(j => j.Visits.Min(v => problem.Before.TryGetValue(problem.Visits[v].Id, out var before) ? before.Start : long.MaxValue))
            .ThenByDescending(j => j.Visits.Sum(v => problem.Visits[v].Length))
            .ThenBy(j => j.Visits[0]);
        foreach (var job in order)
        {
            if (stop.IsCancellationRequested || !PlaceJob(problem, placing, placed, job)) return null;
        }

        return [.. placed.Select(p => p!.Value)];
    }

    private sealed record Job(IReadOnlyList<int> Visits, List<Lag> Lags);

    private static bool PlaceJob(ScheduleProblem problem, Placing placing, PlacedVisit?[] placed, Job job)
    {
        // One crew for the whole job where one can do it all; else each visit's first able crew.
        var able = job.Visits.Where(v => problem.Visits[v].NeedsCrew).Select(v => problem.CrewsFor(problem.Visits[v])).ToList();
        if (able.Any(a => a.Count == 0)) return false;
        var whole = able.Count == 0 ? [] : able.Aggregate((IEnumerable<int>)able[0], (all, a) => all.Intersect(a)).ToList();
        (int Moved, long End, Dictionary<int, PlacedVisit> At)? best = null;
        foreach (var crew in whole.Count > 0 ? whole.Select(c => (int?)c) : [null])
        {
            if (Pushed(problem, placing, placed, job, crew) is not { } at) continue;
            var end = at.Max(p => p.Value.Start + problem.Visits[p.Key].Length);
            var moved = at.Count(p => problem.Before.TryGetValue(problem.Visits[p.Key].Id, out var before) && before != p.Value);
            if (best is null || (moved, end).CompareTo((best.Value.Moved, best.Value.End)) < 0) best = (moved, end, at);
        }

        if (best is null) return false;
        foreach (var (visit, at) in best.Value.At)
        {
            if (placed[visit] is null) placing.Put(visit, at);
            placed[visit] = at;
        }

        foreach (var hold in problem.Holds.Where(h => best.Value.At.ContainsKey(h.From)))
            placing.Keep(hold, best.Value.At[hold.From].Start, best.Value.At[hold.To].Start + problem.Visits[hold.To].Length);
        return true;
    }

    private static Dictionary<int, PlacedVisit>? Pushed(ScheduleProblem problem, Placing placing, PlacedVisit?[] placed, Job job, int? crew)
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
                if (at[lag.To].Start >= at[lag.From].Start + lag.Least) continue;
                if (!Push(lag.To, at[lag.From].Start + lag.Least)) return null;
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

            foreach (var hold in problem.Holds.Where(h => at.ContainsKey(h.From)))
            {
                if (placing.WhenFree(hold, at[hold.From].Start, at[hold.To].Start + problem.Visits[hold.To].Length) is not { } free) continue;
                if (!Push(hold.From, Math.Max(free, at[hold.From].Start + 1))) return null;
                moved = true;
            }
        }

        return at;
    }

    /// <summary>What stood somewhere is not pulled forward: it moves only where it must.</summary>
    private static long Before(ScheduleProblem problem, int visit) => problem.Before.TryGetValue(problem.Visits[visit].Id, out var before) ? before.Start : 0;
}
