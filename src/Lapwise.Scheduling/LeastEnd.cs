using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>
/// A bound on the last end that needs no search. Each visit as early as lags and hours let it, with nobody in the way;
/// for every tail: the crews must work off all visits that have at least that much after them, and then that tail is left;
/// and for gear that is held: the longest line at one piece of it. What comes to more than the days hold is proven not to fit.
/// </summary>
/// <param name="End">No schedule ends earlier.</param>
/// <param name="Against">Why there is none, each by itself; empty: none of this rules one out.</param>
internal readonly record struct LeastEnd(long End, IReadOnlyList<Reason> Against)
{
    public static LeastEnd Of(ScheduleProblem problem)
    {
        if (Heads(problem) is not { } heads) return new LeastEnd(0, [Refusals.NoPlace(problem)]);
        var ends = problem.Visits.Select((v, i) => heads[i] + v.Length).DefaultIfEmpty(0).Max();
        List<Reason> against = [];
        var tails = Tails(problem);
        foreach (var load in CrewLoad.Of(problem))
        {
            if (load.End(heads, tails, out var excess) is { } end) ends = Math.Max(ends, end);
            else against.Add(Shortfalls.OfWork(problem, excess));
        }

        foreach (var held in problem.Holds.Where(h => h.Amount > 0).GroupBy(h => h.Gear))
        {
            var line = HeldLine.At(problem, [.. held], heads);
            if (line.Ended is { } ended) ends = Math.Max(ends, ended);
            else against.Add(Shortfalls.OfGear(problem, line));
        }

        return new LeastEnd(ends, against);
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

        return Stuck(problem, alone, heads, problem.Lags) is null ? heads : null;
    }

    /// <summary>Pushes every visit forward until its lags let it be.</summary>
    /// <returns>One that has no place; null: all have theirs.</returns>
    public static int? Stuck(ScheduleProblem problem, Placing alone, long[] heads, IReadOnlyList<Lag> lags)
    {
        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var lag in lags)
            {
                if (heads[lag.To] >= heads[lag.From] + lag.Least) continue;
                if (alone.First(lag.To, heads[lag.From] + lag.Least, null) is not { } next) return lag.To;
                heads[lag.To] = next;
                moved = true;
            }
        }

        return null;
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
}
