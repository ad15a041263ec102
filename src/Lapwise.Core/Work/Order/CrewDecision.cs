using System.Runtime.InteropServices;

namespace Lapwise.Core.Work.Order;

/// <summary>
/// Decides for several people: is there a plan in which every lap age is at most T? Exact, resumable, deterministic.
/// </summary>
/// <remarks>
/// Waiting can help a crew (a later start makes its own laps younger), so starts are not fixed while branching: the
/// search chooses who takes which section next, in the order of starts, and keeps a system of difference constraints
/// over the starts that still matter. A branch dies on a positive cycle, or when, seen from a started section, the
/// pending sections in deadline order do not fit between the people's free times and their deadlines. States with the
/// same done and running sections are refuted by a kept one that was at least as loose. Mixing a batch is a task like a
/// section: somebody does it, with no more batches ahead of the one in use than there are people; batches are used up in the
/// order of starts.
/// </remarks>
internal sealed class CrewDecision : IDecision
{
    private const int MostActive = 56;
    private const int MostPerState = 24;
    private const int Clock = int.MaxValue;

    private readonly CrewModel _model;
    private readonly long _limit;
    private readonly int _mostKept;
    private readonly Dictionary<StateKey, List<(long[] System, double Left)>> _refuted = [];
    private readonly bool[] _done;
    private readonly int[] _openNeighbours;   // pending neighbours and successors of a section
    private readonly int[] _waitingFor;
    private readonly long[] _deadline;
    private readonly int[] _byDeadline;
    private readonly int[] _place;
    private readonly Frame[] _frames;
    private readonly int _capacity;
    private readonly long[] _took;            // time of each started task by whoever has it
    private SectionSet _set;
    private int _kept;
    private int _depth;
    private int _left;                        // sections not yet started
    private bool _entered;

    public CrewDecision(CrewModel model, long limit, int mostKept)
    {
        (_model, _limit, _mostKept) = (model, limit, mostKept);
        var n = model.Count;
        _done = new bool[n];
        _openNeighbours = [.. Enumerable.Range(0, n).Select(i => model.Graph.Neighbours[i].Length + model.Successors[i].Length)];
        _waitingFor = [.. model.Predecessors.Select(p => p.Length)];
        _took = new long[model.Tasks];
        _deadline = new long[n];
        _byDeadline = new int[n];
        _place = new int[n];
        _frames = new Frame[model.Tasks + 1];
        _capacity = Math.Min(MostActive, model.Tasks + 1);
        _frames[0] = new Frame(model.Crew, _capacity);
    }

    /// <summary>Who does what, in the order of starts; valid after <see cref="Verdict.Found"/>.</summary>
    public IReadOnlyList<CrewTask> Found { get; private set; } = [];
    public long Steps { get; private set; }

    /// <summary>The search met a state too wide for it: a refutation would prove nothing.</summary>
    public bool GaveUp { get; private set; }

    public Verdict Run(long steps)
    {
        if (!_entered)
        {
            _entered = true;
            if (!Begin() || !Enter(_frames[0])) return Verdict.Refuted;
        }

        while (true)
        {
            var frame = _frames[_depth];
            if (_left == 0)
            {
                Found = [.. Enumerable.Range(0, _depth).Select(i => new CrewTask(_frames[i].Choice.Task, _frames[i].Choice.Person, _frames[i + 1].Batch))];
                return Verdict.Found;
            }

            if (frame.Next == frame.Count)
            {
                if (frame.Memorable) Keep(frame);
                if (_depth == 0) return Verdict.Refuted;
                _depth--;
                Undo(_frames[_depth].Choice.Task);
                continue;
            }

            if (steps-- <= 0) return Verdict.OutOfSteps;
            Steps++;
            frame.Choice = frame.Choices[frame.Next++];
            var child = _frames[_depth + 1] ??= new Frame(_model.Crew, _capacity);
            if (!Place(frame, child)) continue;
            _depth++;
            if (!Enter(child))
            {
                _depth--;
                Undo(frame.Choice.Task);
            }
        }
    }

    /// <summary>What has begun stands on the clock before anything is chosen.</summary>
    private bool Begin()
    {
        var frame = _frames[0];
        Array.Fill(frame.Running, -1);
        frame.Last = -1;
        frame.Batch = -1;
        frame.Mixed = 0;
        _left = _model.Count;
        if (!_model.IsTimed) return true;

        var clock = frame.System.Add(Clock);
        var ends = new long[_model.Crew];
        Array.Fill(ends, long.MinValue);
        foreach (var u in Enumerable.Range(0, _model.Count).Where(u => _model.StartedAt[u] is not null).OrderBy(u => _model.StartedAt[u]))
        {
            if (frame.System.IsFull) { GaveUp = true; return false; }
            var at = frame.System.Add(u);
            var start = _model.StartedAt[u]!.Value;
            if (!frame.System.Require(clock, at, start) || !frame.System.Require(at, clock, -start)) return false;
            var person = Array.IndexOf(ends, ends.Min());
            ends[person] = start + _model.Duration[person][u];
            Do(u, _model.Duration[person][u]);
            frame.Running[person] = u;
            frame.Last = u;
        }

        return true;
    }

    private bool Place(Frame frame, Frame child)
    {
        var (w, k, batch) = frame.Choice;
        if (frame.System.IsFull) { GaveUp = true; return false; }
        var system = child.System;
        system.CopyFrom(frame.System);
        frame.Running.CopyTo(child.Running, 0);
        var at = system.Add(w);
        (child.Batch, child.Mixed, child.Left) = (frame.Batch, frame.Mixed, frame.Left);
        child.Running[k] = w;
        child.Last = w;

        if (frame.Last >= 0 && !system.Require(system.PlaceOf(frame.Last), at, 0)) return false;
        if (!FreeFor(frame, system, k, at)) return false;
        if (w >= _model.Count)
        {
            _took[w] = _model.Mix[k];
            child.Mixed++;
            return PendingKeep(system, at) && DropIdle(child);
        }

        var takes = _model.Duration[k][w];
        if (_model.IsTimed && !system.Require(system.PlaceOf(Clock), at, _model.Release[w])) return false;
        if (_model.Mixing is not null && !Takes(child, w, batch, at, takes)) return false;
        foreach (var other in _model.Apart[w])
            if (frame.Running.AsSpan().Contains(other) && !system.Require(system.PlaceOf(other), at, TimeOf(other))) return false;
        foreach (var first in _model.Predecessors[w])
            if (!system.Require(system.PlaceOf(first), at, TimeOf(first))) return false;

        var neighbours = _model.Graph.Neighbours[w];
        for (var i = 0; i < neighbours.Length; i++)
        {
            var u = neighbours[i];
            var limit = Math.Min(_limit, _model.Limits[w][i]);
            if (takes > limit) return false;
            if (!_done[u]) continue;
            var of = system.PlaceOf(u);
            if (!system.Require(at, of, takes - limit) || !system.Require(of, at, TimeOf(u) - limit)) return false;
        }

        Do(w, takes);
        if (PendingKeep(system, at) && DropIdle(child)) return true;
        Undo(w);
        return false;
    }

    /// <summary>A section takes from its batch: mixed before it starts, alive until it ends, enough left.</summary>
    private bool Takes(Frame child, int w, int batch, int at, long takes)
    {
        var mixing = _model.Mixing!;
        if (batch != child.Batch) (child.Batch, child.Left) = (batch, mixing.Usable(batch));
        child.Left -= _model.Volume[w];
        if (child.Left < -1e-9) return false;
        var (task, mix) = (_model.Count + batch, child.System.PlaceOf(_model.Count + batch));
        return child.System.Require(mix, at, TimeOf(task)) && child.System.Require(at, mix, takes - mixing.Life);
    }

    /// <summary>The person must have ended; among people alike the one who ends first takes the next section.</summary>
    private bool FreeFor(Frame frame, StartSystem system, int k, int at)
    {
        var running = frame.Running[k];
        if (running < 0) return true;
        var of = system.PlaceOf(running);
        if (!system.Require(of, at, TimeOf(running))) return false;
        for (var j = 0; j < _model.Crew; j++)
        {
            if (j == k || !_model.Alike[k][j] || frame.Running[j] < 0) continue;
            var other = frame.Running[j];
            if (!system.Require(of, system.PlaceOf(other), TimeOf(running) - TimeOf(other))) return false;
        }

        return true;
    }

    /// <summary>Whatever is pending starts no earlier than the last start: its started neighbours must allow for it.</summary>
    private bool PendingKeep(StartSystem system, int last)
    {
        for (var of = 0; of < system.Count; of++)
        {
            var u = system.Nodes[of];
            if (!IsOpen(u)) continue;
            var neighbours = _model.Graph.Neighbours[u];
            for (var i = 0; i < neighbours.Length; i++)
            {
                var v = neighbours[i];
                if (!_done[v] && !system.Require(last, of, _model.Shortest[v] - Math.Min(_limit, _model.Limits[u][i]))) return false;
            }
        }

        return true;
    }

    private bool DropIdle(Frame frame)
    {
        for (var i = frame.System.Count - 1; i >= 0; i--)
        {
            var u = frame.System.Nodes[i];
            var isBatchInUse = u != Clock && u - _model.Count >= Math.Max(0, frame.Batch);
            if (u != Clock && !isBatchInUse && !IsOpen(u) && !frame.Running.AsSpan().Contains(u)) frame.System.RemoveAt(i);
        }

        return true;
    }

    /// <summary>A started section with a lap or a successor still to come.</summary>
    private bool IsOpen(int node) => node < _model.Count && _openNeighbours[node] > 0;

    private bool Enter(Frame frame)
    {
        frame.Next = 0;
        frame.Count = 0;
        frame.Memorable = false;
        if (_left == 0) return true;
        if (_model.Count <= SectionSet.MostSections && _model.Tasks < byte.MaxValue && _depth > 0 && _left > 1)
        {
            if (_refuted.TryGetValue(KeyOf(frame), out var all))
                foreach (var (kept, left) in all)
                    if (frame.Left <= left + 1e-9 && frame.System.IsNoLooserThan(kept)) return false;
            frame.Memorable = true;
        }

        var listed = false;
        for (var of = 0; of < frame.System.Count; of++)
        {
            if (!IsOpen(frame.System.Nodes[of])) continue;
            var (timely, pending) = Horizon(frame, of);
            if (!timely) return false;
            if (listed) continue;
            listed = true;
            ListChoices(frame, pending);
        }

        if (!listed) ListChoices(frame, 0);
        return true;
    }

    /// <summary>
    /// Seen from one started section: deadlines of all pending sections as far as they are certain, in ascending order,
    /// and whether their work fits between the people's earliest free times and each deadline.
    /// </summary>
    private (bool Timely, int Pending) Horizon(Frame frame, int from)
    {
        var system = frame.System;
        var count = 0;
        Array.Fill(_place, -1);
        Array.Fill(_deadline, LapGraph.Unlimited);
        for (var of = 0; of < system.Count; of++)
        {
            var u = system.Nodes[of];
            if (!IsOpen(u)) continue;
            var back = system.Least(of, from);
            if (!StartSystem.IsKnown(back)) continue;
            count = Spread(u, -back, count, -1);
        }

        Span<long> free = stackalloc long[_model.Crew];
        FreeTimes(frame, from, free);
        long work = 0;
        for (var i = 0; i < count; i++)
        {
            var u = _byDeadline[i];
            work += _model.Shortest[u];
            long room = 0;
            foreach (var at in free) room += Math.Max(0, _deadline[u] - at);
            if (work > room) return (false, count);
            count = Spread(u, _deadline[u] - _model.Shortest[u], count, i);
        }

        return (true, count);
    }

    private void FreeTimes(Frame frame, int from, Span<long> free)
    {
        var system = frame.System;
        var last = frame.Last < 0 ? 0 : system.Least(from, system.PlaceOf(frame.Last));
        for (var k = 0; k < free.Length; k++)
        {
            free[k] = last;
            if (frame.Running[k] is var r && r >= 0) free[k] = Math.Max(last, system.Least(from, system.PlaceOf(r)) + TimeOf(r));
        }
    }

    /// <summary>A section that starts by <paramref name="latestStart"/> gives its pending neighbours their deadlines.</summary>
    private int Spread(int u, long latestStart, int count, int settled)
    {
        var neighbours = _model.Graph.Neighbours[u];
        for (var i = 0; i < neighbours.Length; i++)
        {
            var v = neighbours[i];
            if (_done[v] || (_place[v] >= 0 && _place[v] <= settled)) continue;
            var deadline = latestStart + Math.Min(_limit, _model.Limits[u][i]);
            if (settled >= 0) deadline = Math.Max(deadline, _deadline[_byDeadline[settled]]);
            if (deadline >= _deadline[v]) continue;
            _deadline[v] = deadline;
            var at = _place[v] >= 0 ? _place[v] : count++;
            while (at > settled + 1 && _deadline[_byDeadline[at - 1]] > deadline)
            {
                _byDeadline[at] = _byDeadline[at - 1];
                _place[_byDeadline[at]] = at;
                at--;
            }

            _byDeadline[at] = v;
            _place[v] = at;
        }

        return count;
    }

    private void ListChoices(Frame frame, int pending)
    {
        for (var i = 0; i < pending; i++) AddChoices(frame, _byDeadline[i]);
        foreach (var u in _model.ByPromise)
            if (!_done[u] && (pending == 0 || _place[u] < 0)) AddChoices(frame, u);
        AddMixing(frame);
    }

    private void AddMixing(Frame frame)
    {
        if (_model.Mixing is not { } mixing || frame.Mixed >= mixing.MostBatches || frame.Mixed > frame.Batch + _model.MostAhead) return;
        for (var k = 0; k < _model.Crew; k++)
            if (!IsStandIn(frame, k)) frame.Add(new Choice(_model.Count + frame.Mixed, k, frame.Batch));
    }

    private void AddChoices(Frame frame, int u)
    {
        if (_waitingFor[u] > 0 || (u == _model.MirrorThen && !_done[_model.MirrorFirst])) return;
        for (var k = 0; k < _model.Crew; k++)
        {
            if (IsStandIn(frame, k)) continue;
            if (_model.Mixing is null)
            {
                frame.Add(new Choice(u, k, -1));
                continue;
            }

            if (frame.Batch >= 0) frame.Add(new Choice(u, k, frame.Batch));
            if (frame.Mixed > frame.Batch + 1) frame.Add(new Choice(u, k, frame.Batch + 1));
        }
    }

    /// <summary>Somebody alike has not begun at all, or has the same free hands and a lower number.</summary>
    private bool IsStandIn(Frame frame, int k)
    {
        for (var j = 0; j < _model.Crew; j++)
            if (j != k && _model.Alike[k][j] && frame.Running[j] < 0 && (frame.Running[k] >= 0 || j < k)) return true;
        return false;
    }

    private void Do(int u, long takes)
    {
        _left--;
        _done[u] = true;
        _set = _set.Toggle(u);
        _took[u] = takes;
        foreach (var v in _model.Graph.Neighbours[u]) _openNeighbours[v]--;
        foreach (var first in _model.Predecessors[u]) _openNeighbours[first]--;
        foreach (var then in _model.Successors[u]) _waitingFor[then]--;
    }

    private void Undo(int u)
    {
        if (u >= _model.Count) return;
        _left++;
        _done[u] = false;
        _set = _set.Toggle(u);
        foreach (var v in _model.Graph.Neighbours[u]) _openNeighbours[v]++;
        foreach (var first in _model.Predecessors[u]) _openNeighbours[first]++;
        foreach (var then in _model.Successors[u]) _waitingFor[then]++;
    }

    private void Keep(Frame frame)
    {
        if (_kept >= _mostKept) return;
        ref var all = ref CollectionsMarshal.GetValueRefOrAddDefault(_refuted, KeyOf(frame), out _);
        all ??= new List<(long[], double)>(1);
        if (all.Count >= MostPerState) return;
        all.Add((frame.System.Canonical(), frame.Left));
        _kept++;
    }

    private StateKey KeyOf(Frame frame)
    {
        Span<int> running = stackalloc int[_model.Crew];
        frame.Running.CopyTo(running);
        // People alike may be swapped: among them the running sections are a set.
        for (var k = 1; k < running.Length; k++)
            for (var j = 0; j < k; j++)
                if (_model.Alike[j][k] && running[j] > running[k]) (running[j], running[k]) = (running[k], running[j]);
        ulong packed = 0;
        foreach (var u in running) packed = (packed << 8) | (uint)(u + 1);
        return new StateKey(_set, packed, frame.Last, frame.Batch, frame.Mixed, AheadKey(frame));
    }

    /// <summary>How long each batch that is not yet in use takes to mix; of one in use every section to come starts later.</summary>
    private long AheadKey(Frame frame)
    {
        long key = 0;
        for (var batch = frame.Batch + 1; batch < frame.Mixed; batch++) key = (key * (_model.Crew + 1)) + 1 + Array.IndexOf(_model.Mix, TimeOf(_model.Count + batch));
        return key;
    }

    private long TimeOf(int started) => _took[started];

    private readonly record struct StateKey(SectionSet Done, ulong Running, int Last, int Batch, int Mixed, long Ahead);

    /// <param name="Task">A section, or past them the mixing of a batch.</param>
    private readonly record struct Choice(int Task, int Person, int Batch);

    private sealed class Frame(int crew, int capacity)
    {
        public Choice[] Choices = new Choice[8];
        public readonly int[] Running = new int[crew];
        public readonly StartSystem System = new(capacity);
        public Choice Choice;
        public int Count;
        public int Next;
        public int Last;
        public bool Memorable;
        /// <summary>The batch in use, what is left of it, and how many have been mixed.</summary>
        public int Batch;
        public int Mixed;
        public double Left;

        public void Add(Choice choice)
        {
            if (Count == Choices.Length) Array.Resize(ref Choices, 2 * Count);
            Choices[Count++] = choice;
        }
    }
}

/// <summary>Somebody rolls a section from a batch, or (past the sections) mixes one.</summary>
internal readonly record struct CrewTask(int Task, int Person, int Batch);
