namespace Lapwise.Core.Work.Order;

/// <summary>
/// Lower bounds on the worst lap age from neighbourhoods: the weighted form of the local-density and first-vertex
/// bounds of graph bandwidth, turned from finish→finish to start→finish ages.
/// </summary>
/// <remarks>
/// If every lap age is at most T, a section k laps away from c ends at most k·T − (k−1)·p after c starts, p being the
/// shortest time in between. All sections of the ball around c therefore lie in a span of 2(k·T − (k−1)p) − p(c), and
/// their work, shared by the crew, must fit in it.
/// </remarks>
internal static class AgeBound
{
    /// <summary>A bound in ms that no order can beat.</summary>
    public static long Of(OrderProblem problem, LapGraph graph)
    {
        var crew = Math.Max(1, problem.Crew);
        // What has already begun takes no more of anyone's time.
        var shortest = problem.Sections.Select(s => s.StartedAtMs is null ? s.ShortestMs : 0).ToArray();
        var anyStarted = problem.Sections.Any(s => s.StartedAtMs is not null);
        long bound = 0;
        foreach (var part in graph.Parts())
        {
            var firstInPart = long.MaxValue;
            foreach (var c in part)
            {
                foreach (var v in graph.Neighbours[c])
                    bound = Math.Max(bound, crew == 1 ? shortest[c] + shortest[v] : Math.Max(shortest[c], shortest[v]));

                var (around, asFirst) = BallBounds(graph, shortest, c, crew);
                bound = Math.Max(bound, around);
                firstInPart = Math.Min(firstInPart, asFirst);
            }

            // Some section of each connected part is its first: the smallest of their bounds holds whichever it is.
            if (!anyStarted) bound = Math.Max(bound, firstInPart);
        }

        return bound;
    }

    private static (long Around, long AsFirst) BallBounds(LapGraph graph, long[] shortest, int c, int crew)
    {
        long around = 0, asFirst = 0, work = 0;
        var least = long.MaxValue;
        var rings = graph.Rings(c);
        work += shortest[c];
        for (var k = 1; k < rings.Count; k++)
        {
            foreach (var v in rings[k]) work += shortest[v];
            var between = (k - 1) * (least == long.MaxValue ? 0 : least);
            var span = CeilingDiv(work, crew);
            around = Math.Max(around, CeilingDiv(span + shortest[c] + (2 * between), 2 * k));
            asFirst = Math.Max(asFirst, CeilingDiv(span + between, k));
            foreach (var v in rings[k]) least = Math.Min(least, shortest[v]);
        }

        return (around, asFirst);
    }

    private static long CeilingDiv(long a, long b) => (a + b - 1) / b;
}
