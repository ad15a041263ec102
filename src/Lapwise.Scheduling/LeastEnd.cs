namespace Lapwise.Scheduling;

/// <summary>
/// A bound on the last end that needs no search. Each visit as early as lags and hours let it, with nobody in the way;
/// for every tail: the crews must work off all visits that have at least that much after them, and then that tail is left;
/// and for gear that is held: the longest line at one piece of it.
/// </summary>
internal static class LeastEnd
{
    /// <summary>The bound; null: some visit has no place even alone.</summary>
    public static long? Of(ScheduleProblem problem)
    {
        if (Heads(problem) is not { } heads) return null;
        var ends = problem.Visits.Select((v, i) => heads[i] + v.Length).DefaultIfEmpty(0).Max();
        if (problem.Crews.Count > 0) ends = Math.Max(ends, ByLoad(problem, heads));
        return ByHeld(problem, heads) is { } held ? Math.Max(ends, held) : null;
    }

    /// <summary>Earliest starts with nobody in the way; null: one has no place.</summary>
    public static long[]? Heads(ScheduleProblem problem)
    {
        // With nothing placed, the first place minds hours and gear alone.
        var alone = new Placing(problem);
        var heads = new long[problem.Visits.Count];
        for (var i = 0; i < heads.Length; i++)
        {
            if (alone.First(i, 0, null) is not { } first) return null;
            heads[i] = first;
        }

        return Pushed(problem, alone, heads, problem.Lags) ? heads : null;
    }

    /// <summary>
    /// A piece of gear is held by one job after the other, each from the start of its first visit to the end of its last; some
    /// piece has at least so many in its line as there are holds for each piece. Whatever a hold is, from a moment on it ends no
    /// earlier than the quickest of all would; so the last of the line begins no earlier than that many of the quickest one
    /// after the other, and its job ends no earlier than the quickest then.
    /// </summary>
    /// <returns>0: nothing is held; null: some line has no room.</returns>
    private static long? ByHeld(ScheduleProblem problem, long[] heads)
    {
        var bound = 0L;
        foreach (var held in problem.Holds.Where(h => h.Amount > 0).GroupBy(h => h.Gear))
        {
            var pieces = problem.Gear[held.Key].Count / held.Min(h => h.Amount);
            if (pieces == 0) return null;
            var jobs = held.Select(h => new HeldJob(problem, h, heads)).ToList();
            var from = jobs.Min(j => j.Earliest);
            for (var before = (jobs.Count + pieces - 1) / pieces - 1; before > 0; before--)
            {
                if (jobs.Min(j => j.After(from)?.Released ?? long.MaxValue) is not (< long.MaxValue and var released)) return null;
                from = released;
            }

            if (jobs.Min(j => j.After(from)?.Ended ?? long.MaxValue) is not (< long.MaxValue and var ended)) return null;
            bound = Math.Max(bound, ended);
        }

        return bound;
    }

    /// <summary>A job that holds gear, with nobody in its way.</summary>
    private sealed class HeldJob
    {
        private readonly ScheduleProblem problem;
        private readonly Hold hold;
        private readonly long[] heads;
        private readonly Placing alone;
        private readonly List<int> visits;
        private readonly List<Lag> lags;

        public HeldJob(ScheduleProblem problem, Hold hold, long[] heads)
        {
            (this.problem, this.hold, this.heads, alone) = (problem, hold, heads, new Placing(problem));
            // What is bound to the hold by lags moves with it; the rest of the problem stays at its earliest.
            var bound = new HashSet<int> { hold.From, hold.To };
            for (var grown = true; grown;)
            {
                grown = false;
                foreach (var lag in problem.Lags)
                    if (bound.Contains(lag.From) != bound.Contains(lag.To)) grown |= bound.Add(lag.From) | bound.Add(lag.To);
            }

            visits = [.. bound.Order()];
            lags = [.. problem.Lags.Where(l => bound.Contains(l.From))];
        }

        public long Earliest => heads[hold.From];

        /// <summary>Not begun before a moment: when the gear is free again at the soonest, and when the last of the job has ended; null: there is no room.</summary>
        public (long Released, long Ended)? After(long moment)
        {
            var places = (long[])heads.Clone();
            if (alone.First(hold.From, Math.Max(moment, heads[hold.From]), null) is not { } begun) return null;
            places[hold.From] = begun;
            if (!Pushed(problem, alone, places, lags)) return null;
            return (places[hold.To] + problem.Visits[hold.To].Length, visits.Max(i => places[i] + problem.Visits[i].Length));
        }
    }

    /// <summary>Pushes every visit forward until its lags let it be; false: one has no place.</summary>
    private static bool Pushed(ScheduleProblem problem, Placing alone, long[] heads, IReadOnlyList<Lag> lags)
    {

        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var lag in lags)
            {
                if (heads[lag.To] >= heads[lag.From] + lag.Least) continue;
                if (alone.First(lag.To, heads[lag.From] + lag.Least, null) is not { } next) return false;
                heads[lag.To] = next;
                moved = true;
            }
        }

        return true;
    }

    private static long ByLoad(ScheduleProblem problem, long[] heads)
    {
        var tails = Tails(problem);
        var worked = Enumerable.Range(0, problem.Visits.Count).Where(i => problem.Visits[i].NeedsCrew && problem.Visits[i].Length > 0).OrderByDescending(i => tails[i]).ThenBy(i => i).ToList();
        var hours = Hours(problem, worked);
        var (best, load, first) = (0L, 0L, long.MaxValue);
        foreach (var i in worked)
        {
            load += problem.Visits[i].Length;
            first = Math.Min(first, heads[i]);
            best = Math.Max(best, WorkedOff(hours, first, load, problem.Crews.Count) + tails[i]);
        }

        return best;
    }

    /// <summary>From the end of a visit to the end of the last that must follow it.</summary>
    private static long[] Tails(ScheduleProblem problem)
    {
        // From its start first; every such tail is at least its own length.
        var after = problem.Visits.Select(v => v.Length).ToArray();
        for (var (round, moved) = (0, true); moved && round <= after.Length; round++)
        {
            moved = false;
            foreach (var lag in problem.Lags)
            {
                if (after[lag.From] >= lag.Least + after[lag.To]) continue;
                after[lag.From] = lag.Least + after[lag.To];
                moved = true;
            }
        }

        return [.. after.Select((a, i) => a - problem.Visits[i].Length)];
    }

    /// <summary>All hours in which some of them may be done, merged.</summary>
    private static List<Window> Hours(ScheduleProblem problem, IReadOnlyList<int> visits)
    {
        if (visits.Any(i => problem.Visits[i].Open.Count == 0)) return [new Window(0, problem.Horizon)];
        List<Window> merged = [];
        foreach (var window in visits.Select(i => problem.Visits[i].Open).Distinct().SelectMany(o => o).Distinct().OrderBy(w => w.From).ThenBy(w => w.To))
        {
            if (merged.Count > 0 && window.From <= merged[^1].To) merged[^1] = merged[^1] with { To = Math.Max(merged[^1].To, window.To) };
            else merged.Add(window);
        }

        return merged;
    }

    private static long WorkedOff(List<Window> hours, long from, long load, int crews)
    {
        var left = (load + crews - 1) / crews;
        foreach (var hour in hours)
        {
            var begin = Math.Max(hour.From, from);
            if (begin >= hour.To) continue;
            if (left <= hour.To - begin) return begin + left;
            left -= hour.To - begin;
        }

        return hours.Count == 0 ? from : hours[^1].To;
    }
}
