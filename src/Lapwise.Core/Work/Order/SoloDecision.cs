namespace Lapwise.Core.Work.Order;

/// <summary>
/// Decides for one person: is there an order in which every lap age is at most T? Exact, resumable, deterministic.
/// </summary>
/// <remarks>
/// Depth-first over what to roll next. A started section gives each neighbour the deadline start + T; deadlines run on
/// through the laps (a section that must end by d starts by d − p, so its own neighbours must end by d − p + T).
/// A branch dies when the pending sections, taken in deadline order, cannot all end in time; per set of done sections
/// the deadline vectors already refuted are kept, and a vector no looser than one of them is refuted at once.
/// Times here are in the problem's own grain (greatest common divisor of all its times).
/// </remarks>
internal sealed class SoloDecision : IDecision
{
    private const int MostVectorsPerSet = 200;

    private readonly SoloModel _model;
    private readonly long _limit;
    private readonly (int First, int Then) _mirror;
    private readonly RefutedStates _refuted;
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
    private int _depth;
    private bool _entered;

    /// <param name="mirror">Of these two the first comes first; negative: either.</param>
    public SoloDecision(SoloModel model, long limit, int mostVectors, (int First, int Then) mirror)
    {
        _mirror = mirror;
        _model = model;
        _limit = limit;
        _refuted = new RefutedStates(mostVectors, MostVectorsPerSet);
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

    /// <summary>Sections in the order found, with their starts; valid after <see cref="Verdict.Found"/>.</summary>
    public SoloOrder Found { get; private set; } = SoloOrder.None;

    public long Steps { get; private set; }

    /// <summary>Goes on for at most so many steps (sections placed).</summary>
    public Verdict Run(long steps)
    {
        if (!_entered)
        {
            _entered = true;
            if (!EveryPairFits() || !Enter(_frames[0])) return Verdict.Refuted;
        }

        while (true)
        {
            var frame = _frames[_depth];
            if (_depth == _model.FreeCount)
            {
                Found = Collect();
                return Verdict.Found;
            }

            if (frame.Next == frame.Count)
            {
                if (frame.Memorable) _refuted.Add(StateOf(frame), _open, _direct);
                if (_depth == 0) return Verdict.Refuted;
                _depth--;
                Unplace(_frames[_depth]);
                continue;
            }

            if (steps-- <= 0) return Verdict.OutOfSteps;
            Steps++;
            var choice = frame.Choices[frame.Next++];
            if (!Place(frame, choice)) continue;
            _depth++;
            if (!Enter(_frames[_depth]))
            {
                _depth--;
                Unplace(_frames[_depth]);
            }
        }
    }

    /// <summary>Two sections that share a lap take at least both their times; the deadline order rests on it.</summary>
    private bool EveryPairFits()
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
        // The first batch is mixed before the first section, so it adds to no age.
        frame.Left = mixing.FirstUsableMl;
        frame.UseBy = frame.Now + mixing.Life;
        frame.Now += mixing.Mix;
    }

    /// <summary>Checks the state and lists what may come next, earliest deadline first; false: refuted.</summary>
    private bool Enter(Frame frame)
    {
        frame.Next = 0;
        frame.Count = 0;
        frame.Memorable = false;
        var pending = Horizon(frame, out var timely);
        if (!timely) return false;
        if (_model.Count <= SectionSet.MostSections && _depth > 0 && _depth < _model.FreeCount - 1)
        {
            if (_refuted.Covers(StateOf(frame), _open, _direct)) return false;
            frame.Memorable = true;
        }

        ListChoices(frame, pending);
        return true;
    }

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
        return (long)Math.Ceiling(((volume - frame.Left) / mixing.UsableMl) - 1e-9) * mixing.Mix;
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
        if (frame.Batch + 1 < mixing.MostBatches && _depth > 0) frame.Add(new Choice(u, true));
    }

    private bool Place(Frame frame, Choice choice)
    {
        var u = choice.Section;
        var next = _frames[_depth + 1] ??= new Frame();
        if (_mirror.First >= 0 && u == _mirror.Then && !_done[_mirror.First]) return false;
        var now = frame.Now;
        next.Left = frame.Left;
        next.UseBy = frame.UseBy;
        next.Batch = frame.Batch;
        if (choice.MixFirst)
        {
            var mixing = _model.Mixing!;
            next.UseBy = now + mixing.Life;
            now += mixing.Mix;
            next.Left = mixing.UsableMl;
            next.Batch = frame.Batch + 1;
        }

        var start = Math.Max(now, _model.Release[u]);
        var end = start + _model.Duration[u];
        if (end > _direct[u]) return false;
        if (_model.Mixing is not null)
        {
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
        _model.Mixing is { AgeShare: > 0 } mixing ? mixing.Used(start - (frame.UseBy - mixing.Life + mixing.Mix)) : 0;

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

    private SearchState StateOf(Frame frame)
    {
        var life = frame.UseBy == LapGraph.Unlimited ? 0 : frame.UseBy - frame.Now;
        return new SearchState(_set, frame.Batch, frame.Now, frame.Left, life);
    }

    private SoloOrder Collect()
    {
        var sections = new int[_depth];
        var batches = new int[_depth];
        for (var i = 0; i < _depth; i++)
        {
            sections[i] = _frames[i].Placed;
            batches[i] = _frames[i + 1].Batch;
        }

        return new SoloOrder(sections, batches);
    }

    private readonly record struct Choice(int Section, bool MixFirst);

    /// <summary>One depth of the search: the state before its choice, and the choices left.</summary>
    private sealed class Frame
    {
        public Choice[] Choices = new Choice[8];
        public int Count;
        public int Next;
        public long Now;
        public double Left;
        public long UseBy;
        public int Batch;
        public int Placed;
        public int TrailMark;
        public bool Memorable;

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
