namespace Lapwise.Scheduling;

/// <summary>Visits that only some crews can do, beside the hours those crews have: what no order of them can get round.</summary>
internal sealed class CrewLoad
{
    /// <summary>Ways of weighing that are tried at the most; each is a bound of its own.</summary>
    private const int MostWeighings = 48;

    private readonly ScheduleProblem problem;
    private readonly IReadOnlyList<int> visits;
    private readonly IReadOnlyList<IReadOnlyList<Window>> hours;
    private readonly List<Weighing> weighings;

    private CrewLoad(ScheduleProblem problem, IReadOnlyList<int> crews, IReadOnlyList<int> visits)
    {
        (this.problem, this.visits, Crews) = (problem, visits, crews);
        var open = Merged(visits.Select(i => problem.Visits[i].Open is { Count: > 0 } given ? given : [new Window(0, problem.Horizon)]).Distinct().SelectMany(o => o));
        hours = [.. crews.Select(c => Without(open, Merged(problem.Crews[c].Away.Concat(Settled(problem, c)))))];
        weighings = Weighings();
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

    /// <summary>How much of what must be done at its places is too much; nothing: it may fit.</summary>
    public Excess Beyond(Places places)
    {
        var most = default(Excess);
        var byEnd = visits.GroupBy(places.LatestEnd).OrderBy(g => g.Key).Select(g => (g.Key, First: g.Min(places.Earliest), Lengths: g.Select(i => problem.Visits[i].Length).ToList())).ToList();
        foreach (var weighing in weighings)
        {
            var (load, first) = (0L, long.MaxValue);
            foreach (var (end, earliest, lengths) in byEnd)
            {
                load += lengths.Sum(weighing.Of);
                first = Math.Min(first, earliest);
                var room = weighing.Room(first, end);
                if (load - room > most.By) most = new Excess(this, load, room, weighing.Least);
            }

            // What the plain count of hours shows is the easier to follow.
            if (most.By > 0) break;
        }

        return most;
    }

    /// <summary>What each job weighs, the heaviest first.</summary>
    public IReadOnlyList<long> Jobs(long least)
    {
        var weighing = weighings.First(w => w.Least == least);
        return [.. visits.GroupBy(i => problem.Visits[i].Job).Select(g => g.Sum(i => weighing.Of(problem.Visits[i].Length))).OrderDescending()];
    }

    /// <summary>Plain hours first.</summary>
    private List<Weighing> Weighings()
    {
        var day = hours.SelectMany(h => h).Select(h => h.To - h.From).DefaultIfEmpty(0).Max();
        var steps = visits.Select(i => problem.Visits[i].Length).SelectMany(l => (long[])[l, day - l + 1]).Where(l => l > 0 && l <= day / 2).Distinct().Order().ToList();
        var every = Math.Max(1, (steps.Count + MostWeighings - 1) / MostWeighings);
        return [.. steps.Where((_, i) => i % every == 0).Prepend(0).Select(least => new Weighing(hours, least))];
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

        public long Least => least;

        public long Of(long length) => length < least ? 0 : least > 0 && length > day - least ? Math.Max(day, length) : length;

        public long Room(long from, long to) => crews.Sum(c => Room(c.Hours, c.Before, from, to));

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
