namespace Lapwise.Core.Work.Order;

/// <summary>
/// Looks for one person's order in which every lap age is at most T, among orders that roll every section about when a known
/// one does: depth by depth only the roomiest begun orders go on. For jobs where nothing but laps ties sections together.
/// </summary>
/// <remarks>
/// The deadlines of a begun order are kept run on through the laps, and a section more changes only a few of them. They are
/// changed in place, looked at and put back; only those that go on are copied. That makes a step much cheaper than one of
/// <see cref="SoloBeam"/>, which works all of them out anew. No lap may have less time than its two sections take. Times in the model's grain.
/// </remarks>
internal sealed class NearBeam
{
    private readonly SoloModel _model;
    private readonly long _limit;
    private readonly int[] _places;
    private readonly int _spread;
    private readonly long[][] _ages;          // most age of the lap to each neighbour
    private readonly RunOn _runOn;
    private readonly List<Child> _children = [];
    private readonly Dictionary<SectionSet, int> _known = [];
    private Begun[] _begun;
    private Begun[] _next;
    private int _count = 1;                   // of _begun
    private int _parent;
    private int _depth;

    /// <param name="places">Where each section comes in the known order.</param>
    /// <param name="spread">By how many places a section may come sooner or later than there.</param>
    public NearBeam(SoloModel model, long limit, int width, int[] places, int spread)
    {
        _model = model;
        _limit = limit;
        _places = places;
        _spread = spread;
        _ages = [.. model.Limits.Select(l => l.Select(x => Math.Min(x, limit)).ToArray())];
        _runOn = new RunOn(model, _ages);
        _begun = Several(width);
        _next = Several(width);
        Array.Fill(_begun[0].Deadline, LapGraph.Unlimited);
    }

    /// <summary>Sections placed so far.</summary>
    public long Steps { get; private set; }

    /// <summary>None is left to go on.</summary>
    public bool IsOver => _count == 0;

    /// <summary>All sections in order; null: not yet, or never.</summary>
    public int[]? Found { get; private set; }

    /// <summary>Tries what may come next after one begun order; after the last of a depth the roomiest go on.</summary>
    public void Step()
    {
        TryNext(_parent++);
        if (_parent == _count) Deepen();
    }

    private void Deepen()
    {
        _children.Sort(Child.ByRoom);
        _count = Math.Min(_begun.Length, _children.Count);
        for (var i = 0; i < _count; i++) GoOn(_children[i], _next[i]);
        (_begun, _next) = (_next, _begun);
        _children.Clear();
        _known.Clear();
        _parent = 0;
        _depth++;
        if (_count > 0 && _depth == _model.Count) Found = [.. _begun[0].Last!.Sections().Reverse()];
    }

    private Begun[] Several(int width) => [.. Enumerable.Range(0, width).Select(_ => new Begun(_model.Count))];

    private void TryNext(int parent)
    {
        var begun = _begun[parent];
        if (begun.Count == 0)
        {
            for (var u = 0; u < _model.Count; u++)
                if (!begun.Done.Holds(u)) Try(parent, u);
            return;
        }

        // A section with the i-th deadline delays all before it; the least slack seen so far says how much they bear.
        var slack = LapGraph.Unlimited;
        var end = begun.Now;
        for (var i = 0; i < begun.Count && slack >= _model.ShortestDuration; i++)
        {
            var u = begun.Pending[i];
            if (_model.Duration[u] <= slack) Try(parent, u);
            end += _model.Duration[u];
            slack = Math.Min(slack, begun.Deadline[u] - end);
        }
    }

    private void Try(int parent, int section)
    {
        if (Math.Abs(_places[section] - _depth) > _spread || !MayGoOnAt(_begun[parent], section)) return;
        Steps++;
        var begun = _begun[parent];
        _runOn.Place(begun, section);
        var tightness = Tightness(begun.Now + _model.Duration[section], begun.Deadline);
        _runOn.TakeBack(begun);
        if (tightness is not { } tight) return;
        var set = begun.Done.Toggle(section);
        var child = new Child(tight, _children.Count, parent, section);
        if (_known.TryAdd(set, child.Number)) _children.Add(child);
        else if (_known[set] is var like && tight < _children[like].Tightness) _children[like] = child with { Number = like };
    }

    /// <summary>Next to what is done; elsewhere only at the end of a run, where orders that fold a branch in begin it.</summary>
    private bool MayGoOnAt(Begun begun, int section)
    {
        var neighbours = _model.Graph.Neighbours[section];
        if (_depth == 0 || neighbours.Length <= 1) return true;
        foreach (var v in neighbours)
            if (begun.Done.Holds(v)) return true;
        return false;
    }

    /// <summary>
    /// How little room the pending sections have: one that fits just so counts its own time, one with much room next to nothing; null
    /// where one cannot end in time. Squares put more weight on the tightest than the plain sum, which leads less far.
    /// </summary>
    private double? Tightness(long end, long[] deadline)
    {
        double sum = 0;
        foreach (var u in _runOn.Pending)
        {
            end += _model.Duration[u];
            var slack = deadline[u] - end;
            if (slack < 0) return null;
            var share = _limit / (_limit + (2.0 * slack));
            sum += _model.Duration[u] * share * share;
        }

        return sum;
    }

    private void GoOn(Child child, Begun into)
    {
        var begun = _begun[child.Parent];
        _runOn.Place(begun, child.Section);
        into.Take(begun, child.Section, begun.Now + _model.Duration[child.Section], _runOn.Pending);
        _runOn.TakeBack(begun);
    }

    /// <summary>An order begun and one section more; the roomiest comes first.</summary>
    private readonly record struct Child(double Tightness, int Number, int Parent, int Section)
    {
        public static int ByRoom(Child a, Child b) => a.Tightness.CompareTo(b.Tightness) is var order and not 0 ? order : a.Number.CompareTo(b.Number);
    }

    private sealed record Placed(Placed? Before, int Section)
    {
        /// <summary>From the last back to the first.</summary>
        public IEnumerable<int> Sections()
        {
            for (var at = this; at is not null; at = at.Before) yield return at.Section;
        }
    }

    /// <summary>An order begun.</summary>
    private sealed class Begun(int sections)
    {
        /// <summary>Of each section, run on through the laps; 0 where it is done, so that no other is less.</summary>
        public readonly long[] Deadline = new long[sections];
        /// <summary>Not done, with a deadline, earliest first.</summary>
        public readonly int[] Pending = new int[sections];
        public int Count { get; private set; }
        public long Now { get; private set; }
        public SectionSet Done { get; private set; }
        public Placed? Last { get; private set; }

        public void Take(Begun before, int section, long now, ReadOnlySpan<int> pending)
        {
            before.Deadline.CopyTo(Deadline, 0);
            pending.CopyTo(Pending);
            Count = pending.Length;
            Now = now;
            Done = before.Done.Toggle(section);
            Last = new Placed(before.Last, section);
        }
    }

    /// <summary>Runs the deadlines on that a section gives, in place, and takes them back.</summary>
    private sealed class RunOn(SoloModel model, long[][] ages)
    {
        private readonly int[] _changed = new int[model.Count];
        private readonly long[] _before = new long[model.Count];   // of what is changed
        private readonly bool[] _isChanged = new bool[model.Count];
        private readonly Queue<int> _toRunOn = new();
        private readonly int[] _pending = new int[model.Count];
        private int _changes;
        private int _count;

        /// <summary>Pending sections, earliest deadline first.</summary>
        public ReadOnlySpan<int> Pending => _pending.AsSpan(0, _count);

        public void Place(Begun begun, int section)
        {
            var deadline = begun.Deadline;
            _changes = 0;
            Change(deadline, section, 0);
            Give(deadline, section, begun.Now);
            while (_toRunOn.TryDequeue(out var u)) Give(deadline, u, deadline[u] - model.Duration[u]);
            Merge(begun);
        }

        public void TakeBack(Begun begun)
        {
            for (var i = 0; i < _changes; i++)
            {
                var u = _changed[i];
                begun.Deadline[u] = _before[u];
                _isChanged[u] = false;
            }
        }

        private void Give(long[] deadline, int section, long latestStart)
        {
            var neighbours = model.Graph.Neighbours[section];
            for (var k = 0; k < neighbours.Length; k++)
            {
                var v = neighbours[k];
                var end = latestStart + ages[section][k];
                if (end >= deadline[v]) continue;
                Change(deadline, v, end);
                _toRunOn.Enqueue(v);
            }
        }

        private void Change(long[] deadline, int section, long to)
        {
            if (!_isChanged[section])
            {
                _isChanged[section] = true;
                _before[section] = deadline[section];
                _changed[_changes++] = section;
            }

            deadline[section] = to;
        }

        /// <summary>What is changed goes between what is not; the section placed, the first changed, goes out.</summary>
        private void Merge(Begun begun)
        {
            var deadline = begun.Deadline;
            var changed = _changed.AsSpan(1, _changes - 1);
            SortByDeadline(changed, deadline);
            var at = 0;
            _count = 0;
            for (var i = 0; i < begun.Count; i++)
            {
                var u = begun.Pending[i];
                if (_isChanged[u]) continue;
                while (at < changed.Length && deadline[changed[at]] < deadline[u]) _pending[_count++] = changed[at++];
                _pending[_count++] = u;
            }

            while (at < changed.Length) _pending[_count++] = changed[at++];
        }

        /// <summary>They come nearly in order, so going back a few places is quicker than any other sorting.</summary>
        private static void SortByDeadline(Span<int> sections, long[] deadline)
        {
            for (var i = 1; i < sections.Length; i++)
            {
                var u = sections[i];
                var at = i;
                for (; at > 0 && deadline[sections[at - 1]] > deadline[u]; at--) sections[at] = sections[at - 1];
                sections[at] = u;
            }
        }
    }
}
