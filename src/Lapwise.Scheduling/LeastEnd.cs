using Lapwise.Core.Explain;

namespace Lapwise.Scheduling;

/// <summary>
/// A bound on the last end that needs no search. Each visit as early as lags and hours let it, with nobody in the way; for gear
/// that is held: the longest line at one piece of it; and the first end by which the crews have hours for all that must be done
/// before each moment, if everything is to end by then. What comes to more than the days hold is proven not to fit.
/// </summary>
/// <param name="End">No schedule ends earlier.</param>
/// <param name="Against">Why there is none, each by itself; empty: none of this rules one out.</param>
internal readonly record struct LeastEnd(long End, IReadOnlyList<Reason> Against)
{
    /// <summary>A single visit has no place; it is not work or gear that is beyond the days.</summary>
    public bool IsStuck { get; private init; }

    // Where there are too many visits to search, the bound is not worth a long wait either.
    private const int StepsOfMany = 8;

    public static LeastEnd Of(ScheduleProblem problem)
    {
        if (Heads(problem) is not { } heads) return new LeastEnd(0, [Refusals.NoPlace(problem)]) { IsStuck = true };
        var ends = problem.Visits.Select((v, i) => heads[i] + v.Length).DefaultIfEmpty(0).Max();
        List<Reason> against = [];
        foreach (var held in problem.Holds.Where(h => h.Amount > 0).GroupBy(h => h.Gear))
        {
            var line = HeldLine.At(problem, [.. held], heads);
            if (line.Ended is { } ended) ends = Math.Max(ends, ended);
            else against.Add(Shortfalls.OfGear(problem, line));
        }

        var loads = CrewLoad.Of(problem);
        if (loads.Count == 0) return new LeastEnd(ends, against);
        var places = Places.Until(problem, problem.Horizon);
        if (places.Nowhere is { } nowhere) return new LeastEnd(ends, [.. against, Refusals.NoPlaceBetween(problem, nowhere)]) { IsStuck = true };
        against.InsertRange(0, loads.Select(l => l.Beyond(places)).Where(e => e.By > 0).Select(e => Shortfalls.OfWork(problem, e)));
        return new LeastEnd(against.Count > 0 ? ends : FirstNotRefuted(problem, loads, ends), against);
    }

    /// <summary>The first end that is left once it is asked of each whether all work could be done by then.</summary>
    private static long FirstNotRefuted(ScheduleProblem problem, IReadOnlyList<CrewLoad> loads, long from)
    {
        var (low, high) = (from, problem.Horizon);
        var near = problem.Visits.Count > Scheduler.MostSearched ? problem.Horizon / StepsOfMany : 0;
        while (low + near < high)
        {
            var middle = low + ((high - low) / 2);
            var places = Places.Until(problem, middle);
            if (places.Nowhere is not null || loads.Any(l => l.Beyond(places).By > 0)) low = middle + 1;
            else high = middle;
        }

        return low;
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
}
