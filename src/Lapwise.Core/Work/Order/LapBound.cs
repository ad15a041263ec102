namespace Lapwise.Core.Work.Order;

/// <summary>
/// A lower bound on one person's worst lap age from the neighbourhood of a lap. One of its two sections is rolled first; an
/// order read backwards has the same ages, so it is the same which. Every section then has a window from the one and from the
/// other, and all must fit into theirs, each even in pieces. What else ties sections together is left out: that only lowers a bound.
/// </summary>
internal static class LapBound
{
    /// <summary>The best bound of the laps of one section, in ms, no less than <paramref name="bound"/>, which is proven.</summary>
    /// <param name="work">The least time that each section takes, ms.</param>
    public static long Around(int section, LapGraph graph, long[] work, long bound)
    {
        var first = new Ways(graph, work, section);
        foreach (var neighbour in graph.Neighbours[section])
        {
            var windows = new Windows(first, new Ways(graph, work, neighbour), work);
            bound = LeastAge.That(windows.Fit, bound, bound + work.Sum());
        }

        return bound;
    }

    private sealed class Windows
    {
        private readonly Ways _first;
        private readonly Ways _then;
        private readonly long[] _work;
        private readonly int[] _sections;
        private readonly long[] _from;
        private readonly long[] _until;
        private readonly PriorityQueue<long, long> _open = new();   // work left, by where its window ends

        public Windows(Ways first, Ways then, long[] work)
        {
            (_first, _then, _work) = (first, then, work);
            _sections = [.. Enumerable.Range(0, work.Length).Where(first.Reaches)];
            _from = new long[work.Length];
            _until = new long[work.Length];
        }

        /// <summary>Whether all fit, taken up earliest end first, as it is best for one who may break off.</summary>
        public bool Fit(long age)
        {
            foreach (var v in _sections) (_from[v], _until[v]) = WindowOf(v, age);
            Array.Sort(_sections, (a, b) => _from[a].CompareTo(_from[b]));
            _open.Clear();
            var now = long.MinValue;
            for (var next = 0; next < _sections.Length || _open.Count > 0;)
            {
                if (_open.Count == 0) now = Math.Max(now, _from[_sections[next]]);
                for (; next < _sections.Length && _from[_sections[next]] <= now; next++) _open.Enqueue(_work[_sections[next]], _until[_sections[next]]);
                if (!TakeUp(ref now, next < _sections.Length ? _from[_sections[next]] : long.MaxValue)) return false;
            }

            return true;
        }

        /// <summary>The one whose window ends first goes on, until it is done or another window begins.</summary>
        private bool TakeUp(ref long now, long nextBegins)
        {
            _open.TryDequeue(out var left, out var end);
            var done = Math.Min(left, nextBegins - now);
            now += done;
            if (done < left) _open.Enqueue(left - done, end);
            return now <= end;
        }

        /// <summary>Counted from the start of the first.</summary>
        private (long From, long Until) WindowOf(int v, long age)
        {
            var (first, then) = (_work[_first.From], _work[_then.From]);
            if (v == _first.From) return (0, first);
            if (v == _then.From) return (first, age);
            return (Math.Max(first - _first.Longest(v, age), first + then - _then.Longest(v, age)),
                Math.Min(_first.Longest(v, age), age - then + _then.Longest(v, age)));
        }
    }
}
