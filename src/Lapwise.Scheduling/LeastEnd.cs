namespace Lapwise.Scheduling;

/// <summary>
/// A bound on the last end that needs no search. Each visit as early as lags and hours let it, with nobody in the way; and
/// for every tail: the crews must work off all visits that have at least that much after them, and then that tail is left.
/// </summary>
internal static class LeastEnd
{
    /// <summary>The bound; null: some visit has no place even alone.</summary>
    public static long? Of(ScheduleProblem problem)
    {
        if (Heads(problem) is not { } heads) return null;
        var ends = problem.Visits.Select((v, i) => heads[i] + v.Length).DefaultIfEmpty(0).Max();
        return problem.Crews.Count == 0 ? ends : Math.Max(ends, ByLoad(problem, heads));
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

        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var lag in problem.Lags)
            {
                if (heads[lag.To] >= heads[lag.From] + lag.Least) continue;
                if (alone.First(lag.To, heads[lag.From] + lag.Least, null) is not { } next) return null;
                heads[lag.To] = next;
                moved = true;
            }
        }

        return heads;
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
