namespace Lapwise.Core.Work.Order;

/// <summary>
/// One person's sections, placed one after another and taken back: the deadlines that started sections give with every lap
/// age at most T, whether what is pending still fits them, and what may come next.
/// </summary>
/// <remarks>
/// A started section gives each neighbour the deadline start + T; deadlines run on through the laps (a section that must
/// end by d starts by d − p, so its own neighbours must end by d − p + T). The pending sections, taken in deadline order,
/// must all end in time. Times here are in the problem's own grain (greatest common divisor of all its times).
/// </remarks>
internal sealed class SoloWalk
{
    private readonly SoloModel _model;
    private readonly long _limit;
    private readonly (int First, int Then) _mirror;
    private readonly long[] _direct;          // deadline given by started neighbours
    private readonly bool[] _done;
    private SectionSet _set;                  // the same, as a key
    private readonly OpenSections _open;      // not done, with a deadline
    private readonly int[] _waitingFor;       // predecessors not yet done
    private readonly long[] _reach;           // deadline run on through the laps, filled by Horizon
    private readonly int[] _byDeadline;
    private readonly int[] _place;
    private readonly Frame[] _frames;
    private int _asked;                       // places of _byDeadline filled by Horizon
    private readonly Stack<(int Section, long Deadline)> _trail = new();

    /// <param name="mirror">Of these two the first comes first; negative: either.</param>
    public SoloWalk(SoloModel model, long limit, (int First, int Then) mirror)
    {
        _mirror = mirror;
        _model = model;
        _limit = limit;
        var n = model.Count;
        _direct = new long[n];
        _done = new bool[n];
        _waitingFor = (int[])model.PredecessorCount.Clone();
        _open = new OpenSections(n);
        _reach = new long[n];
        _byDeadline = new int[n];
        _place = new int[n];
        Array.Fill(_reach, LapGraph.Unlimited);
        Array.Fill(_place, -1);
        _frames = new Frame[n + 1];
        _frames[0] = new Frame();
        Array.Fill(_direct, LapGraph.Unlimited);
        SeedStarted();
    }

    /// <summary>Sections placed.</summary>
    public int Depth { get; private set; }
    public bool IsWhole => Depth == _model.FreeCount;

    /// <summary>What may come next, earliest deadline first; valid after <see cref="Look"/>.</summary>
    public ReadOnlySpan<Choice> Choices => _frames[Depth].Choices.AsSpan(0, _frames[Depth].Count);

    /// <summary>What the state is known by; with the deadlines of the open sections it says all.</summary>
    public SearchState State
    {
        get
        {
            var frame = _frames[Depth];
            var life = frame.UseBy == LapGraph.Unlimited ? 0 : frame.UseBy - frame.Now;
            var standing = _model.Mixing is { } mixing && frame.Batch + 1 < mixing.Ahead ? -frame.Now : 0;
            return new SearchState(_set, frame.Batch, frame.Now, frame.Left, life, standing);
        }
    }

    public OpenSections Open => _open;
    public long[] Deadlines => _direct;

    /// <summary>Two sections that share a lap take at least both their times; the deadline order rests on it.</summary>
    public bool EveryPairFits()
    {
        foreach (var u in _model.FreeSections)
        {
            var neighbours = _model.Graph.Neighbours[u];
            for (var k = 0; k < neighbours.Length; k++)
            {
                if (_done[neighbours[k]]) continue;
                if (_model.Duration[u] + _model.Duration[neighbours[k]] > Math.Min(_limit, _model.Limits[u][k])) return false;
            }
        }

        return true;
    }

    private void SeedStarted()
    {
        var frame = _frames[0];
        frame.Now = _model.FreeFrom;
        frame.UseBy = LapGraph.Unlimited;
        for (var u = 0; u < _model.Count; u++)
        {
            if (_model.StartedAt[u] is not { } at) continue;
            Mark(u, true);
            GiveDeadlines(u, at);
            foreach (var then in _model.Successors[u]) _waitingFor[then]--;
        }

        if (_model.Mixing is not { } mixing) return;
        // What is mixed before the first section adds to no age.
        frame.Left = mixing.Usable(0);
        frame.UseBy = frame.Now + mixing.Life;
        frame.Now = mixing.Begin;
    }

    /// <summary>Whether all pending sections can still end in time; if so it lists what may come next.</summary>
    public bool Look()
    {
        var frame = _frames[Depth];
        frame.Count = 0;
        var pending = Horizon(frame, out var timely);
        if (timely) ListChoices(frame, pending);
        return timely;
    }

    /// <summary>Of what may come next, what has the first of these places is put first; the rest stays as it was.</summary>
    public void PutFirst(int[] places)
    {
        var choices = _frames[Depth].Choices.AsSpan(0, _frames[Depth].Count);
        if (choices.IsEmpty) return;
        var at = 0;
        for (var i = 1; i < choices.Length; i++)
            if (places[choices[i].Section] < places[choices[at].Section]) at = i;
        var first = choices[at];
        choices[..at].CopyTo(choices[1..]);
        choices[0] = first;
    }

    /// <summary>How little room the pending sections have, summed: one that fits just so counts 1, one with much time next to nothing. Valid after <see cref="Look"/>.</summary>
    public double Tightness()
    {
        var frame = _frames[Depth];
        long work = 0;
        double volume = 0, sum = 0;
        for (var i = 0; i < _asked; i++)
        {
            var u = _byDeadline[i];
            work += _model.Duration[u];
            volume += _model.Volume[u];
            sum += _limit / (_limit + (2.0 * (_reach[u] - frame.Now - work - MixingNeeded(frame, volume))));
        }

        return sum;
    }

    /// <summary>Places a choice; false and as before where its own deadline, its batch or the mirror forbids it.</summary>
    public bool Place(Choice choice)
    {
        if (!Place(_frames[Depth], choice)) return false;
        Depth++;
        return true;
    }

    /// <summary>Takes the last section back.</summary>
    public void TakeBack() => Unplace(_frames[--Depth]);

    /// <summary>
    /// Runs deadlines through the laps in ascending order and checks that the work up to each fits.
    /// Settling in ascending order is what makes one pass enough.
    /// </summary>
    private int Horizon(Frame frame, out bool timely)
    {
        Forget();
        var count = 0;
        foreach (var u in _open) count = Demand(u, _direct[u], count, -1);
        long work = 0;
        double volume = 0;
        for (var i = 0; i < count; i++)
        {
            var u = _byDeadline[i];
            work += _model.Duration[u];
            volume += _model.Volume[u];
            timely = frame.Now + work + MixingNeeded(frame, volume) <= _reach[u];
            if (!timely) return _asked = count;
            var latestStart = _reach[u] - _model.Duration[u];
            var neighbours = _model.Graph.Neighbours[u];
            var limits = _model.Limits[u];
            for (var k = 0; k < neighbours.Length; k++)
            {
                var v = neighbours[k];
                if (!_done[v]) count = Demand(v, latestStart + Math.Min(_limit, limits[k]), count, i);
            }
        }

        timely = true;
        return _asked = count;
    }

    /// <summary>Clears what the state before was asked; most sections never are.</summary>
    private void Forget()
    {
        for (var i = 0; i < _asked; i++)
        {
            _reach[_byDeadline[i]] = LapGraph.Unlimited;
            _place[_byDeadline[i]] = -1;
        }
    }

    /// <summary>
    /// Asks a section to end by a deadline, and what must come before it to end by its latest start; returns the new
    /// count. <paramref name="settled"/> is the last settled place: nothing is put before it.
    /// </summary>
    private int Demand(int u, long deadline, int count, int settled)
    {
        if (settled >= 0) deadline = Math.Max(deadline, _reach[_byDeadline[settled]]);
        if (deadline >= _reach[u] || (_place[u] >= 0 && _place[u] <= settled)) return count;
        _reach[u] = deadline;
        count = Insert(u, count, settled + 1);
        foreach (var first in _model.Predecessors[u])
            if (!_done[first]) count = Demand(first, deadline - _model.Duration[u], count, settled);
        return count;
    }

    private int Insert(int u, int count, int from)
    {
        var at = _place[u] >= 0 ? _place[u] : count++;
        while (at > from && _reach[_byDeadline[at - 1]] > _reach[u])
        {
            _byDeadline[at] = _byDeadline[at - 1];
            _place[_byDeadline[at]] = at;
            at--;
        }

        _byDeadline[at] = u;
        _place[u] = at;
        return count;
    }

    private long MixingNeeded(Frame frame, double volume)
    {
        if (_model.Mixing is not { } mixing || volume <= frame.Left + 1e-9) return 0;
        var further = (long)Math.Ceiling(((volume - frame.Left) / mixing.UsableMl) - 1e-9);
        return Math.Max(0, further - Math.Max(0, mixing.Ahead - 1 - frame.Batch)) * mixing.Mix;
    }

    private void ListChoices(Frame frame, int pending)
    {
        // A section with the i-th deadline delays all before it; the least slack seen so far says how much they bear.
        var slack = LapGraph.Unlimited;
        long work = 0;
        for (var i = 0; i < pending; i++)
        {
            var u = _byDeadline[i];
            if (_model.Duration[u] <= slack && _waitingFor[u] == 0) AddChoices(frame, u);
            work += _model.Duration[u];
            slack = Math.Min(slack, _reach[u] - frame.Now - work);
            if (slack < _model.ShortestDuration) return;
        }

        // Leaving a part of the job with laps open for another part only ages those laps; mixing alone may want it.
        if (pending > 0 && _model.Mixing is null) return;
        foreach (var u in _model.ByPromise)
        {
            if (_done[u] || _place[u] >= 0 || _waitingFor[u] > 0 || _model.Duration[u] > slack) continue;
            AddChoices(frame, u);
        }
    }

    private void AddChoices(Frame frame, int u)
    {
        if (_model.Mixing is not { } mixing)
        {
            frame.Add(new Choice(u, false));
            return;
        }

        var fits = _model.Volume[u] <= frame.Left + 1e-9 && Math.Max(frame.Now, _model.Release[u]) + _model.Duration[u] <= frame.UseBy;
        if (fits) frame.Add(new Choice(u, false));
        if (frame.Batch + 1 < mixing.MostBatches && Depth > 0) frame.Add(new Choice(u, true));
    }

    private bool Place(Frame frame, Choice choice)
    {
        var u = choice.Section;
        var next = _frames[Depth + 1] ??= new Frame();
        if (_mirror.First >= 0 && u == _mirror.Then && !_done[_mirror.First]) return false;
        var now = frame.Now;
        next.Left = frame.Left;
        next.UseBy = frame.UseBy;
        next.Batch = frame.Batch;
        if (choice.MixFirst)
        {
            var mixing = _model.Mixing!;
            next.Batch = frame.Batch + 1;
            var mixedFrom = mixing.MixedFrom(next.Batch, now);
            next.UseBy = mixedFrom + mixing.Life;
            now = Math.Max(now, mixedFrom + mixing.Mix);
            next.Left = mixing.UsableMl;
        }

        var start = Math.Max(now, _model.Release[u]);
        var end = start + _model.Duration[u];
        if (end > _direct[u]) return false;
        if (_model.Mixing is { } rule)
        {
            // Nothing is mixed ahead for no section.
            if (Depth + 1 == _model.FreeCount && next.Batch + 1 < rule.Ahead) return false;
            if (end > next.UseBy || _model.Volume[u] > next.Left + 1e-9) return false;
            next.Left -= _model.Volume[u];
        }

        frame.Placed = u;
        frame.TrailMark = _trail.Count;
        Mark(u, true);
        GiveDeadlines(u, start - Used(next, start));
        foreach (var then in _model.Successors[u]) _waitingFor[then]--;
        next.Now = end;
        return true;
    }

    /// <summary>What the age of the batch in use takes off the open time of film begun now: as if it had begun sooner.</summary>
    private long Used(Frame frame, long start) =>
        _model.Mixing is { } mixing ? mixing.Used(start - (frame.UseBy - mixing.Life + mixing.Mix)) : 0;

    private void GiveDeadlines(int u, long start)
    {
        var neighbours = _model.Graph.Neighbours[u];
        var limits = _model.Limits[u];
        for (var k = 0; k < neighbours.Length; k++)
        {
            var v = neighbours[k];
            if (_done[v]) continue;
            var deadline = start + Math.Min(_limit, limits[k]);
            if (deadline >= _direct[v]) continue;
            _trail.Push((v, _direct[v]));
            _direct[v] = deadline;
            _open.Add(v);
        }
    }

    private void Unplace(Frame frame)
    {
        while (_trail.Count > frame.TrailMark)
        {
            var (v, deadline) = _trail.Pop();
            _direct[v] = deadline;
            if (deadline == LapGraph.Unlimited) _open.Remove(v);
        }

        Mark(frame.Placed, false);
        foreach (var then in _model.Successors[frame.Placed]) _waitingFor[then]++;
    }

    private void Mark(int u, bool done)
    {
        _done[u] = done;
        _set = _set.Toggle(u);
        if (done) _open.Remove(u);
        else if (_direct[u] != LapGraph.Unlimited) _open.Add(u);
    }

    /// <summary>What is placed.</summary>
    public SoloOrder Collect()
    {
        var sections = new int[Depth];
        var batches = new int[Depth];
        for (var i = 0; i < Depth; i++)
        {
            sections[i] = _frames[i].Placed;
            batches[i] = _frames[i + 1].Batch;
        }

        return new SoloOrder(sections, batches);
    }

    internal readonly record struct Choice(int Section, bool MixFirst);

    /// <summary>One depth: the state before its choice, and what may come next.</summary>
    private sealed class Frame
    {
        public Choice[] Choices = new Choice[8];
        public int Count;
        public long Now;
        public double Left;
        public long UseBy;
        public int Batch;
        public int Placed;
        public int TrailMark;

        public void Add(Choice choice)
        {
            if (Count == Choices.Length) Array.Resize(ref Choices, 2 * Count);
            Choices[Count++] = choice;
        }
    }
}

/// <summary>An order for one person: free sections in sequence and the batch each is rolled from.</summary>
internal sealed record SoloOrder(IReadOnlyList<int> Sections, IReadOnlyList<int> Batches)
{
    public static readonly SoloOrder None = new([], []);
}
