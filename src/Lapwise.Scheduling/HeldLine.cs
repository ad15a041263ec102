namespace Lapwise.Scheduling;

/// <summary>
/// The longest line at one piece of gear that is held by one job after the other, each from the start of its first visit to the
/// end of its last; some piece has at least so many in its line as there are holds for each piece. Whatever a hold is, from a
/// moment on it ends no earlier than the quickest of all would; so the last of the line begins no earlier than that many of the
/// quickest one after the other, and its job ends no earlier than the quickest then.
/// </summary>
/// <param name="Jobs">How many hold it.</param>
/// <param name="Pieces">How many can hold it at once.</param>
/// <param name="Fit">How many fit one after the other, up to as many as must.</param>
/// <param name="Ended">When the last of the line ends at the soonest; null: not so many fit.</param>
internal readonly record struct HeldLine(int Gear, int Jobs, int Pieces, int Fit, long? Ended)
{
    /// <param name="heads">Earliest starts with nobody in the way.</param>
    public static HeldLine At(ScheduleProblem problem, IReadOnlyList<Hold> held, long[] heads)
    {
        var pieces = problem.Gear[held[0].Gear].Count / held.Min(h => h.Amount);
        var jobs = held.Select(h => new HeldJob(problem, h, heads)).ToList();
        var line = new HeldLine(held[0].Gear, jobs.Count, pieces, 0, null);
        var longest = (jobs.Count + pieces - 1) / pieces;
        for (var from = jobs.Min(j => j.Earliest); line.Fit < longest; line = line with { Fit = line.Fit + 1 })
        {
            var after = jobs.Select(j => j.After(from)).OfType<(long Released, long Ended)>().ToList();
            if (after.Count == 0) return line;
            from = after.Min(a => a.Released);
            if (line.Fit == longest - 1) line = line with { Ended = after.Min(a => a.Ended) };
        }

        return line;
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
            if (LeastEnd.Stuck(problem, alone, places, lags) is not null) return null;
            return (places[hold.To] + problem.Visits[hold.To].Length, visits.Max(i => places[i] + problem.Visits[i].Length));
        }
    }
}
