namespace Lapwise.Scheduling;

/// <summary>Visits that only some crews can do, beside the hours those crews have: what no order of them can get round.</summary>
internal sealed class CrewLoad
{
    /// <summary>Ways of weighing that are tried at the most; each is a bound of its own.</summary>
    private const int MostWeighings = 48;

    private readonly ScheduleProblem problem;
    private readonly IReadOnlyList<int> visits;
    private readonly IReadOnlyList<IReadOnlyList<Window>> hours;

    private CrewLoad(ScheduleProblem problem, IReadOnlyList<int> crews, IReadOnlyList<int> visits)
    {
        (this.problem, this.visits, Crews) = (problem, visits, crews);
        var open = Merged(visits.Select(i => problem.Visits[i].Open is { Count: > 0 } given ? given : [new Window(0, problem.Horizon)]).Distinct().SelectMany(o => o));
        hours = [.. crews.Select(c => Without(open, Merged(problem.Crews[c].Away.Concat(Settled(problem, c)))))];
    }

    public IReadOnlyList<int> Crews { get; }

    /// <summary>What has to be done before a moment, and what can be: more than can be never fits.</summary>
    /// <param name="Least">Shorter visits are left out of the count, and a visit that leaves a day no room for one as long takes all of it; 0: all count as they are.</param>
    internal readonly record struct Excess(CrewLoad Of, long Work, long Room, long Least)
    {
        public long By => Work - Room;
    }

    /// <summary>For all crews together, and for those that some job can be given to, where not all can.</summary>
    public static IReadOnlyList<CrewLoad> Of(ScheduleProblem problem)
    {
        // What stays may stay outside the hours; it takes its time from its crew instead.
        var free = Enumerable.Range(0, problem.Visits.Count).Where(i => problem.Visits[i] is { NeedsCrew: true, Length: > 0, Locked: null }).ToList();
        var able = free.GroupBy(i => problem.Visits[i].Together ?? problem.Visits[i].Id).SelectMany(g =>
        {
            var all = g.Select(i => problem.CrewsFor(problem.Visits[i])).Distinct().Aggregate((a, b) => [.. a.Intersect(b)]);
            return g.Select(i => (Visit: i, Crews: all));
        }).ToList();
        var sets = able.Select(a => a.Crews).Append([.. Enumerable.Range(0, problem.Crews.Count)]).DistinctBy(s => string.Join(' ', s));
        return [.. sets.Select(s => new CrewLoad(problem, s, [.. able.Where(a => a.Crews.All(s.Contains)).Select(a => a.Visit)])).Where(l => l.visits.Count > 0)];
    }

    /// <summary>No schedule of these ends earlier; null: they never fit, by at least what is told.</summary>
    public long? End(IReadOnlyList<long> heads, IReadOnlyList<long> tails, out Excess excess)
    {
        var worked = visits.OrderByDescending(i => tails[i]).ThenBy(i => i).ToList();
        var (best, most) = (0L, default(Excess));
        foreach (var least in Weighings())
        {
            var weighing = new Weighing(hours, least);
            var (load, first) = (0L, long.MaxValue);
            foreach (var i in worked)
            {
                load += weighing.Of(problem.Visits[i].Length);
                first = Math.Min(first, heads[i]);
                // All of them end before their tails begin.
                if (weighing.Room(first, best - tails[i]) >= load) continue;
                if (weighing.Room(first, problem.Horizon - tails[i]) is var room && room >= load) best = weighing.Done(first, load, problem.Horizon - tails[i]) + tails[i];
                else if (load - room > most.By) most = new Excess(this, load, room, least);
            }

            // What the plain count of hours shows is the easier to follow.
            if (most.By > 0) break;
        }

        excess = most;
        return most.By > 0 ? null : best;
    }

    /// <summary>What each job weighs, the heaviest first.</summary>
    public IReadOnlyList<long> Jobs(long least)
    {
        var weighing = new Weighing(hours, least);
        return [.. visits.GroupBy(i => problem.Visits[i].Job).Select(g => g.Sum(i => weighing.Of(problem.Visits[i].Length))).OrderDescending()];
    }

    /// <summary>Plain hours first.</summary>
    private IEnumerable<long> Weighings()
    {
        var day = hours.SelectMany(h => h).Select(h => h.To - h.From).DefaultIfEmpty(0).Max();
        var steps = visits.Select(i => problem.Visits[i].Length).SelectMany(l => (long[])[l, day - l + 1]).Where(l => l > 0 && l <= day / 2).Distinct().Order().ToList();
        var every = Math.Max(1, (steps.Count + MostWeighings - 1) / MostWeighings);
        return steps.Where((_, i) => i % every == 0).Prepend(0);
    }

    private static IEnumerable<Window> Settled(ScheduleProblem problem, int crew) =>
        problem.Visits.Where(v => v.Locked?.Crew == crew && v.Length > 0).Select(v => new Window(v.Locked!.Start, v.Locked.Start + v.Length));

    private static List<Window> Merged(IEnumerable<Window> windows)
    {
        List<Window> merged = [];
        foreach (var window in windows.Distinct().OrderBy(w => w.From).ThenBy(w => w.To))
        {
            if (merged.Count > 0 && window.From <= merged[^1].To) merged[^1] = merged[^1] with { To = Math.Max(merged[^1].To, window.To) };
            else merged.Add(window);
        }

        return merged;
    }

    private static List<Window> Without(IReadOnlyList<Window> open, IReadOnlyList<Window> taken)
    {
        List<Window> left = [];
        foreach (var window in open)
        {
            var from = window.From;
            foreach (var other in taken.Where(t => t.From < window.To && window.From < t.To))
            {
                if (from < other.From) left.Add(new Window(from, other.From));
                from = Math.Max(from, other.To);
            }

            if (from < window.To) left.Add(new Window(from, window.To));
        }

        return left;
    }

    /// <summary>
    /// Time as it counts where visits are not split: with a least length, what is shorter counts nothing and what leaves a whole
    /// day no room for the least counts as a day. Whatever fits into a stretch weighs no more than the stretch does, so weights
    /// bound as hours do (a dual feasible function, as for packing bins).
    /// </summary>
    private sealed class Weighing
    {
        private readonly long least;
        private readonly long day;
        // For each crew: its stretches, and what those before each weigh.
        private readonly List<(IReadOnlyList<Window> Hours, long[] Before)> crews;

        public Weighing(IReadOnlyList<IReadOnlyList<Window>> hours, long least)
        {
            this.least = least;
            day = hours.SelectMany(h => h).Select(h => h.To - h.From).DefaultIfEmpty(0).Max();
            crews = [.. hours.Select(h =>
            {
                var before = new long[h.Count + 1];
                for (var i = 0; i < h.Count; i++) before[i + 1] = before[i] + Of(h[i].To - h[i].From);
                return (h, before);
            })];
        }

        public long Of(long length) => length < least ? 0 : least > 0 && length > day - least ? Math.Max(day, length) : length;

        public long Room(long from, long to) => crews.Sum(c => Room(c.Hours, c.Before, from, to));

        /// <summary>The first moment by which there is room for a load that has room by the last.</summary>
        public long Done(long from, long load, long last)
        {
            var (low, high) = (from, last);
            while (low < high)
            {
                var middle = low + ((high - low) / 2);
                if (Room(from, middle) >= load) high = middle;
                else low = middle + 1;
            }

            return low;
        }

        private long Room(IReadOnlyList<Window> hours, long[] before, long from, long to)
        {
            if (to <= from) return 0;
            var (first, last) = (After(hours, from), After(hours, to));
            // The stretch that holds the beginning is cut there, the one that holds the end is cut there.
            if (first == hours.Count) return 0;
            if (first == last) return Of(Math.Max(0, to - Math.Max(from, hours[first].From)));
            var room = Of(hours[first].To - Math.Max(from, hours[first].From)) + before[last] - before[first + 1];
            return last == hours.Count ? room : room + Of(Math.Max(0, to - hours[last].From));
        }

        /// <summary>The first stretch that ends later.</summary>
        private static int After(IReadOnlyList<Window> hours, long moment)
        {
            var (low, high) = (0, hours.Count);
            while (low < high)
            {
                var middle = (low + high) / 2;
                if (hours[middle].To <= moment) low = middle + 1;
                else high = middle;
            }

            return low;
        }
    }
}
