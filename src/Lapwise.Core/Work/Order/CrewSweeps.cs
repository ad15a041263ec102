namespace Lapwise.Core.Work.Order;

/// <summary>
/// Good orders for several people at once: whoever is free next goes on where a lap has been open longest, all along one
/// sweep or each along their own from another end; a batch is mixed when the next section does not fit, or one by each before the
/// first section.
/// </summary>
internal static class CrewSweeps
{
    private const int MostStarts = 12;

    /// <summary>The best sweep; null where none keeps the batches, or where something is fixed to the clock.</summary>
    public static FoundOrder? Best(CrewModel model)
    {
        if (model.IsTimed) return null;
        (IReadOnlyList<CrewTask> Tasks, FoundOrder Order)? best = null;
        // A sweep looks at every section for each: of very many sections only a few starts are tried.
        var starts = Math.Clamp(2_000_000 / ((long)model.Count * model.Count), 1, MostStarts);
        foreach (var start in model.ByPromise.Take((int)starts))
        {
            foreach (var apart in (ReadOnlySpan<bool>)[false, true])
            {
                foreach (var ahead in MixedAhead(model))
                {
                    if (new Sweep(model, start, apart, ahead).Tasks() is not { } tasks) continue;
                    var order = CrewTimeline.Of(model, tasks, model.WholeTime + 1);
                    if (order.KeepsLimits && (best is null || order.WorstLapAgeMs < best.Value.Order.WorstLapAgeMs)) best = (tasks, order);
                }
            }
        }

        return best is { } found ? Waiting(model, found.Tasks, found.Order) : null;
    }

    /// <summary>How many batches are mixed before the first section, each by somebody else.</summary>
    private static IEnumerable<int> MixedAhead(CrewModel model) =>
        model.Mixing is { } mixing ? new[] { 1, Math.Min(model.MostAhead, mixing.MostBatches) }.Distinct() : [0];

    /// <summary>The same order with its starts put off where that makes the worst lap younger.</summary>
    private static FoundOrder Waiting(CrewModel model, IReadOnlyList<CrewTask> tasks, FoundOrder soonest)
    {
        // Each try runs over all sections for each: of very many only a few are made.
        var tries = Math.Clamp(4_000_000 / ((long)model.Count * model.Count), 4, 20);
        var best = soonest;
        var (low, high) = (0L, soonest.WorstLapAgeMs / model.GrainMs);
        while (tries-- > 0 && low < high)
        {
            var middle = low + ((high - low) / 2);
            if (CrewTimeline.Of(model, tasks, middle) is { KeepsLimits: true } younger) (best, high) = (younger, Math.Min(middle, younger.WorstLapAgeMs / model.GrainMs));
            else low = middle + 1;
        }

        return best;
    }

    private sealed class Sweep
    {
        private readonly CrewModel _model;
        private readonly bool _isOwn;              // each goes on where they themselves have a lap open
        private readonly int[] _first;             // where each begins
        private readonly long[][] _opened;         // by person, or for all: since when a lap of a section has been open
        private readonly long[] _end;
        private readonly bool[] _done;
        private readonly int[] _waiting;
        private readonly long[] _free;
        private readonly bool[] _hasBegun;
        private readonly List<(long MixedAt, long UseBy)> _mixed = [];
        private readonly int _ahead;
        private int _batch = -1;
        private double _leftMl;

        public Sweep(CrewModel model, int start, bool isOwn, int ahead)
        {
            _ahead = ahead;
            (_model, _isOwn) = (model, isOwn);
            _first = isOwn ? Ends(model, start) : [.. Enumerable.Repeat(start, model.Crew)];
            _opened = [.. Enumerable.Range(0, isOwn ? model.Crew : 1).Select(_ => Enumerable.Repeat(LapGraph.Unlimited, model.Count).ToArray())];
            (_end, _done) = (new long[model.Count], new bool[model.Count]);
            _waiting = [.. model.Predecessors.Select(p => p.Length)];
            (_free, _hasBegun) = (new long[model.Crew], new bool[model.Crew]);
        }

        public IReadOnlyList<CrewTask>? Tasks()
        {
            var tasks = new List<CrewTask>(_model.Tasks);
            for (var k = 0; k < _ahead; k++) Mix(k, tasks);
            for (var placed = 0; placed < _model.Count; placed++)
            {
                var k = Array.IndexOf(_free, _free.Min());
                var (u, start) = Next(k);
                if (_model.Mixing is { } mixing)
                {
                    if (_batch < 0 || !Fits(u, k, start))
                    {
                        if (++_batch == mixing.MostBatches) return null;
                        if (_batch == _mixed.Count) Mix(k, tasks);
                        _leftMl = mixing.Usable(_batch);
                        if (!Fits(u, k, start)) return null;
                    }

                    start = Math.Max(start, _mixed[_batch].MixedAt);
                    _leftMl -= _model.Volume[u];
                }

                tasks.Add(new CrewTask(u, k, _batch));
                Take(u, k, start);
            }

            return tasks;
        }

        private bool Fits(int u, int k, long start) =>
            _model.Volume[u] <= _leftMl + 1e-9 && Math.Max(start, _mixed[_batch].MixedAt) + _model.Duration[k][u] <= _mixed[_batch].UseBy;

        private void Mix(int k, List<CrewTask> tasks)
        {
            tasks.Add(new CrewTask(_model.Count + _mixed.Count, k, _batch));
            _mixed.Add((_free[k] + _model.Mix[k], _free[k] + _model.Mixing!.Life));
            _free[k] += _model.Mix[k];
        }

        private (int Section, long Start) Next(int k)
        {
            var opened = _opened[_isOwn ? k : 0];
            if (!_hasBegun[k] && !_done[_first[k]] && _waiting[_first[k]] == 0) return (_first[k], EarliestOf(_first[k], k));
            (int Section, long Start) best = (-1, 0);
            (long, long, int, int) bestKey = default;
            for (var i = 0; i < _model.ByPromise.Length; i++)
            {
                var u = _model.ByPromise[i];
                if (_done[u] || _waiting[u] > 0) continue;
                var start = EarliestOf(u, k);
                // Waiting for somebody to step aside costs what it takes.
                var key = (opened[u] == LapGraph.Unlimited ? opened[u] : opened[u] + (2 * (start - _free[k])), start, _model.Graph.Neighbours[u].Count(v => !_done[v]), u);
                if (best.Section >= 0 && key.CompareTo(bestKey) >= 0) continue;
                (best, bestKey) = ((u, start), key);
            }

            return best;
        }

        private long EarliestOf(int u, int k)
        {
            var start = _free[k];
            foreach (var first in _model.Predecessors[u]) start = Math.Max(start, _end[first]);
            foreach (var other in _model.Apart[u])
                if (_done[other]) start = Math.Max(start, _end[other]);
            return start;
        }

        private void Take(int u, int k, long start)
        {
            _done[u] = _hasBegun[k] = true;
            _free[k] = _end[u] = start + _model.Duration[k][u];
            var opened = _opened[_isOwn ? k : 0];
            foreach (var v in _model.Graph.Neighbours[u]) opened[v] = Math.Min(opened[v], start);
            foreach (var then in _model.Successors[u]) _waiting[then]--;
        }

        /// <summary>Ends far from one another, one for each.</summary>
        private static int[] Ends(CrewModel model, int start)
        {
            var ends = new List<int> { start };
            var nearest = Enumerable.Repeat(int.MaxValue, model.Count).ToArray();
            while (ends.Count < model.Crew)
            {
                var rings = model.Graph.Rings(ends[^1]);
                for (var d = 0; d < rings.Count; d++)
                    foreach (var u in rings[d]) nearest[u] = Math.Min(nearest[u], d);
                ends.Add(Array.IndexOf(nearest, nearest.Max()));
            }

            return [.. ends];
        }
    }
}
