namespace Lapwise.Core.Work.Order;

/// <summary>
/// Lower bounds on the worst lap age from neighbourhoods: the weighted form of the local-density and first-vertex
/// bounds of graph bandwidth, turned from finish→finish to start→finish ages.
/// </summary>
/// <remarks>
/// If every lap age is at most T, a section k laps away from c ends at most k·T − i after c starts, i being the time of the
/// k − 1 sections in between (<see cref="Ways"/>), and c ends at most so long after it starts. All sections for which that is
/// at most d therefore lie in a span of 2d − p(c), and their work, shared by the crew, must fit in it.
/// </remarks>
internal static class AgeBound
{
    /// <summary>A bound in ms that no order can beat.</summary>
    public static long Of(OrderProblem problem, LapGraph graph)
    {
        // What has already begun takes no more of anyone's time.
        var shortest = problem.Sections.Select(s => s.StartedAtMs is null ? s.ShortestMs : 0).ToArray();
        var anyStarted = problem.Sections.Any(s => s.StartedAtMs is not null);
        var crew = Math.Max(1, problem.Crew);
        long bound = 0;
        var tightest = -1;
        foreach (var part in graph.Parts())
        {
            var asFirst = long.MaxValue;
            foreach (var c in part)
            {
                foreach (var v in graph.Neighbours[c])
                    bound = Math.Max(bound, crew == 1 ? shortest[c] + shortest[v] : Math.Max(shortest[c], shortest[v]));

                var around = new Neighbourhood(new Ways(graph, shortest, c), shortest, crew);
                var age = around.Least(bound, around.SurelyEnough, isFirst: false);
                if (age > bound) (bound, tightest) = (age, c);
                if (asFirst > bound) asFirst = around.Least(bound, Math.Min(asFirst, around.SurelyEnough), isFirst: true);
            }

            // Some section of each connected part is its first: the smallest of their bounds holds whichever it is.
            if (!anyStarted) bound = Math.Max(bound, asFirst);
        }

        return crew == 1 && tightest >= 0 ? LapBound.Around(tightest, graph, shortest, bound) : bound;
    }

    /// <summary>The sections around one, and the span they must lie in.</summary>
    private sealed class Neighbourhood
    {
        private readonly Ways _ways;
        private readonly long _own;
        private readonly int _crew;
        private readonly int[] _others;
        private readonly long[] _work;
        private readonly long[] _farthest;
        private readonly long[] _sorted;

        public Neighbourhood(Ways ways, long[] shortest, int crew)
        {
            (_ways, _own, _crew) = (ways, shortest[ways.From], crew);
            _others = [.. Enumerable.Range(0, shortest.Length).Where(v => v != ways.From && ways.Reaches(v))];
            _work = [.. _others.Select(v => shortest[v])];
            _farthest = new long[_work.Length];
            _sorted = new long[_work.Length];
        }

        public long SurelyEnough => 2 * (_own + _work.Sum());

        /// <summary>The least worst age from <paramref name="low"/> on that all of them can have, or <paramref name="high"/> where that is less.</summary>
        /// <param name="isFirst">The one they are around is the first of all.</param>
        public long Least(long low, long high, bool isFirst) => LeastAge.That(age => Fit(age, isFirst), low, high);

        private bool Fit(long age, bool isFirst)
        {
            for (var i = 0; i < _others.Length; i++) _farthest[i] = _ways.Longest(_others[i], age);
            Array.Copy(_work, _sorted, _work.Length);
            Array.Sort(_farthest, _sorted);
            var work = _own;
            for (var i = 0; i < _sorted.Length; i++)
            {
                work += _sorted[i];
                var span = isFirst ? _farthest[i] : (2 * _farthest[i]) - _own;
                if (work > _crew * span && (i + 1 == _sorted.Length || _farthest[i + 1] > _farthest[i])) return false;
            }

            return true;
        }
    }
}
