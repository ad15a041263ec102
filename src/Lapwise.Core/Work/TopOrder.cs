using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>
/// One way of doing a top: how it is cut and in which order its sections are rolled by one person.
/// Comparable by how simple it is to follow. With several people the sequence is that of the starts.
/// </summary>
/// <param name="Sequence">Indices of the cut's sections in the order of work.</param>
/// <param name="WorstAgeMs">The worst of its lap and section ages, mixing left out.</param>
internal sealed record TopOrder(CutTop Cut, OrderProblem Problem, IReadOnlyList<int> Sequence, long WorstAgeMs)
{
    /// <summary>How hard it is to follow: sections, jumps to a section that shares no lap, changes of place, metres walked.</summary>
    public (int Sections, int Jumps, int Walks, double WalkedM) Complexity => Measure(Cut, Sequence);

    public bool IsSimplerThan(TopOrder other) => Complexity.CompareTo(other.Complexity) is var c && (c < 0 || (c == 0 && WorstAgeMs < other.WorstAgeMs));

    public bool IsSameAs(TopOrder other) => ReferenceEquals(Cut, other.Cut) && Sequence.SequenceEqual(other.Sequence);

    /// <summary>The order problem of a cut for those who roll, without mixing.</summary>
    public static OrderProblem ProblemOf(CutTop cut, IReadOnlyList<Pace> rollers, ApplicationMethod method) => new(
        [.. cut.Sections.Select(s => new OrderSection($"{s.Index}", [.. rollers.Select(pace => SectionTime.Of(s, pace, method).TotalMs)]))],
        [.. cut.Seams.Where(s => s.Kind != LapKind.Break).Select(s => new OrderLap(s.A, s.B))],
        [.. cut.Sections.SelectMany(s => s.LeansOver.Select(over => (s.Index, over)))],
        rollers.Count)
    {
        Apart = rollers.Count == 1 ? [] : [.. ElbowToElbow(cut)],
    };

    /// <summary>Two people need this much along a side. Common practice, no source.</summary>
    private const double ElbowRoomM = 0.6;

    private static IEnumerable<(int, int)> ElbowToElbow(CutTop cut) =>
        from a in cut.Sections
        from b in cut.Sections
        where a.Index < b.Index && a.StandAt.DistanceTo(b.StandAt) < ElbowRoomM
        select (a.Index, b.Index);

    /// <summary>One person takes the sections in this sequence without a pause.</summary>
    public static TopOrder Of(CutTop cut, OrderProblem problem, IReadOnlyList<int> sequence)
    {
        var start = new long[sequence.Count];
        var end = new long[sequence.Count];
        long now = 0, worst = 0;
        foreach (var u in sequence)
        {
            start[u] = now;
            now += problem.Sections[u].DurationMs[0];
            end[u] = now;
            worst = Math.Max(worst, end[u] - start[u]);
        }

        foreach (var lap in problem.Laps)
            worst = Math.Max(worst, Math.Max(end[lap.A], end[lap.B]) - Math.Min(start[lap.A], start[lap.B]));
        return new TopOrder(cut, problem, sequence, worst);
    }

    private static (int, int, int, double) Measure(CutTop cut, IReadOnlyList<int> sequence)
    {
        var together = cut.Seams.Select(s => (Math.Min(s.A, s.B), Math.Max(s.A, s.B))).ToHashSet();
        int jumps = 0, walks = 0;
        var walkedM = 0.0;
        for (var i = 1; i < sequence.Count; i++)
        {
            var (a, b) = (cut.Sections[sequence[i - 1]], cut.Sections[sequence[i]]);
            if (!together.Contains((Math.Min(a.Index, b.Index), Math.Max(a.Index, b.Index)))) jumps++;
            if (a.StandSide != b.StandSide) walks++;
            walkedM += a.StandAt.DistanceTo(b.StandAt);
        }

        return (cut.Sections.Count, jumps, walks, Math.Round(walkedM, 3));
    }
}

/// <summary>The simple orders of a cut: sweeps that begin somewhere and always go on where a lap has been open longest.</summary>
internal static class TopSweeps
{
    private const int MostStarts = 40;

    public static IEnumerable<TopOrder> Of(CutTop cut, OrderProblem problem)
    {
        var count = cut.Sections.Count;
        var neighbours = new List<int>[count];
        for (var i = 0; i < count; i++) neighbours[i] = [];
        foreach (var lap in problem.Laps)
        {
            neighbours[lap.A].Add(lap.B);
            neighbours[lap.B].Add(lap.A);
        }

        PointM[] places = [.. cut.Sections.Select(PlaceOf)];
        return Starts(cut).Select(start => TopOrder.Of(cut, problem, Sweep(problem, places, neighbours, start)));
    }

    /// <summary>All sections, or of very many those nearest to the corners of the plan.</summary>
    private static IEnumerable<int> Starts(CutTop cut)
    {
        if (cut.Sections.Count <= MostStarts) return cut.Sections.Select(s => s.Index);
        ReadOnlySpan<(double X, double Y)> outward = [(-1, -1), (1, -1), (1, 1), (-1, 1), (-1, 0), (1, 0), (0, -1), (0, 1)];
        var starts = new SortedSet<int>();
        foreach (var (x, y) in outward)
            starts.Add(cut.Sections.MaxBy(s => (x * s.StandAt.X) + (y * s.StandAt.Y))!.Index);
        return starts;
    }

    private static List<int> Sweep(OrderProblem problem, PointM[] places, List<int>[] neighbours, int start)
    {
        var count = places.Length;
        var opened = new int[count];
        var waiting = new int[count];
        var done = new bool[count];
        Array.Fill(opened, int.MaxValue);
        foreach (var (_, then) in problem.Before) waiting[then]++;
        var order = new List<int>(count);
        var at = start;
        while (order.Count < count)
        {
            var next = order.Count == 0 && waiting[start] == 0 ? start : Next(at);
            done[next] = true;
            foreach (var v in neighbours[next]) opened[v] = Math.Min(opened[v], order.Count);
            foreach (var (first, then) in problem.Before)
                if (first == next) waiting[then]--;
            order.Add(next);
            at = next;
        }

        return order;

        // Where a lap has been open longest; among several the nearest.
        int Next(int from)
        {
            var (next, nextM) = (-1, 0.0);
            for (var u = 0; u < count; u++)
            {
                if (done[u] || waiting[u] > 0 || (next >= 0 && opened[u] > opened[next])) continue;
                var metres = Math.Round(places[from].DistanceTo(places[u]), 6);
                if (next < 0 || opened[u] < opened[next] || metres < nextM) (next, nextM) = (u, metres);
            }

            return next;
        }
    }

    private static PointM PlaceOf(SectionShape section) => section.Face.Kind is Measure.FaceKind.Flat ? section.CentreM : section.StandAt;
}
