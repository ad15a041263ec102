namespace Lapwise.Core.Work.Order;

/// <summary>
/// Looks for one person's order in which every lap age is at most T among the roomiest: of all orders begun only the few
/// whose pending sections have most room are gone on with: first one, going on only next to what is wet, then one that also
/// begins elsewhere, then more in the way that came farther. It finds where depth-first search is lost, as on shallow trees; it refutes nothing.
/// </summary>
internal sealed class SoloBeam
{
    private const int Widen = 4;
    private const int Widest = 64;

    private readonly SoloWalk _walk;
    private int _width = 1;
    private bool _goesElsewhere;
    private int _farthestNearby;
    private List<Begun> _parents = [Begun.Nothing];
    private readonly Dictionary<(ulong Sections, int Batch), Begun> _children = [];
    private Begun _here = Begun.Nothing;
    private int _parent;
    private int _next = -1;                   // choice of the parent that is tried next; negative: not come to yet

    public SoloBeam(SoloModel model, long limit)
    {
        _walk = new SoloWalk(model, limit, (-1, -1));
        IsOver = !_walk.EveryPairFits();
    }

    /// <summary>Valid after <see cref="Run"/> has found.</summary>
    public SoloOrder Found { get; private set; } = SoloOrder.None;

    /// <summary>Sections placed so far.</summary>
    public long Steps { get; private set; }

    /// <summary>Nothing found, and it looks no further.</summary>
    public bool IsOver { get; private set; }

    /// <summary>It has tried both ways with one order.</summary>
    public bool HasTried => _width > 1;

    /// <summary>Goes on for at most so many steps (sections placed), to the end of a pass at most; true: found.</summary>
    public bool Run(long steps)
    {
        while (true)
        {
            if (_parent == _parents.Count)
            {
                if (NextDepth()) continue;
                NextPass();
                return false;
            }

            if (_next < 0) GoTo(_parents[_parent]);
            if (_next == _walk.Choices.Length)
            {
                _parent++;
                _next = -1;
                continue;
            }

            if (!MayGoTo(_walk.Choices[_next].Section))
            {
                _next++;
                continue;
            }

            if (steps-- <= 0) return false;
            Steps++;
            if (Try(_walk.Choices[_next++])) return true;
        }
    }

    private bool MayGoTo(int section) => _goesElsewhere || _walk.Open.Count == 0 || _walk.Deadlines[section] != LapGraph.Unlimited;

    private bool Try(SoloWalk.Choice choice)
    {
        if (!_walk.Place(choice)) return false;
        if (_walk.Look())
        {
            if (_walk.IsWhole)
            {
                Found = _walk.Collect();
                return true;
            }

            var child = new Begun(_here, choice, _here.Depth + 1, _here.Key ^ KeyOf(choice.Section), _walk.Tightness());
            var key = (child.Key, _walk.State.Batch);
            if (!_children.TryGetValue(key, out var like) || child.Tightness < like.Tightness) _children[key] = child;
        }

        _walk.TakeBack();
        return false;
    }

    /// <summary>The roomiest go on; false: none is left.</summary>
    private bool NextDepth()
    {
        if (_children.Count == 0) return false;
        _parents = [.. _children.Values.OrderBy(c => c.Tightness).Take(_width)];
        _parent = 0;
        _children.Clear();
        return true;
    }

    /// <summary>Again from nothing.</summary>
    private void NextPass()
    {
        var cameTo = _parents[0].Depth;
        _parents = [Begun.Nothing];
        _parent = 0;
        if (_width == 1 && !_goesElsewhere)
        {
            _farthestNearby = cameTo;
            _goesElsewhere = true;
            return;
        }

        if (_width == 1) _goesElsewhere = cameTo > _farthestNearby;
        _width *= Widen;
        IsOver = _width > Widest;
    }

    /// <summary>Takes back as far as both have in common, then places the rest.</summary>
    private void GoTo(Begun there)
    {
        var rest = new Stack<SoloWalk.Choice>();
        for (var (a, b) = (_here, there); a != b;)
        {
            if (a.Depth > b.Depth || (a.Depth == b.Depth && a.Depth > 0))
            {
                _walk.TakeBack();
                a = a.Before!;
            }

            if (b.Depth > a.Depth)
            {
                rest.Push(b.Last);
                b = b.Before!;
            }
        }

        while (rest.TryPop(out var choice)) _walk.Place(choice);
        _walk.Look();
        _here = there;
        _next = 0;
    }

    /// <summary>A number for each section, so that a set is known by all of its numbers together. Two sets of one key cost an order, never a truth.</summary>
    private static ulong KeyOf(int section)
    {
        var x = unchecked((ulong)(section + 1) * 0x9E3779B97F4A7C15);
        x = unchecked((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9);
        x = unchecked((x ^ (x >> 27)) * 0x94D049BB133111EB);
        return x ^ (x >> 31);
    }

    /// <summary>An order begun, by its last section and the one before.</summary>
    private sealed class Begun(Begun? before, SoloWalk.Choice last, int depth, ulong key, double tightness)
    {
        public static readonly Begun Nothing = new(null, default, 0, 0, 0);

        public Begun? Before => before;
        public SoloWalk.Choice Last => last;
        public int Depth => depth;
        public ulong Key => key;
        public double Tightness => tightness;
    }
}
