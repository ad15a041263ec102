namespace Lapwise.Core.Work.Order;

/// <summary>
/// The system of difference constraints over the starts that still matter: for each ordered pair the least time by which
/// one starts after the other, closed under addition. A positive cycle means no starts fit.
/// </summary>
internal sealed class StartSystem
{
    private const long None = long.MinValue / 4;

    private readonly int _capacity;
    private readonly long[] _least;
    private readonly int[] _node;

    public StartSystem(int capacity)
    {
        _capacity = capacity;
        _least = new long[capacity * capacity];
        _node = new int[capacity];
    }

    public int Count { get; private set; }
    public bool IsFull => Count == _capacity;
    public ReadOnlySpan<int> Nodes => _node.AsSpan(0, Count);

    public int PlaceOf(int node) => _node.AsSpan(0, Count).IndexOf(node);

    /// <summary>Least start of the section at place <paramref name="to"/> after that at <paramref name="from"/>; very negative: unknown.</summary>
    public long Least(int from, int to) => _least[(from * _capacity) + to];

    public static bool IsKnown(long least) => least > None / 2;

    public void CopyFrom(StartSystem other)
    {
        Count = other.Count;
        other._node.AsSpan(0, Count).CopyTo(_node);
        for (var i = 0; i < Count; i++)
            other._least.AsSpan(i * _capacity, Count).CopyTo(_least.AsSpan(i * _capacity, Count));
    }

    public int Add(int node)
    {
        var at = Count++;
        _node[at] = node;
        for (var i = 0; i < Count; i++)
        {
            _least[(i * _capacity) + at] = None;
            _least[(at * _capacity) + i] = None;
        }

        _least[(at * _capacity) + at] = 0;
        return at;
    }

    /// <summary>start(to) ≥ start(from) + gap; false: a positive cycle.</summary>
    public bool Require(int from, int to, long gap)
    {
        if (Least(from, to) >= gap) return true;
        if (from == to) return gap <= 0;
        var back = Least(to, from);
        if (IsKnown(back) && gap + back > 0) return false;
        for (var a = 0; a < Count; a++)
        {
            var ahead = Least(a, from);
            if (!IsKnown(ahead)) continue;
            ahead += gap;
            var row = a * _capacity;
            var tail = to * _capacity;
            for (var b = 0; b < Count; b++)
            {
                var after = _least[tail + b];
                if (!IsKnown(after)) continue;
                if (ahead + after > _least[row + b]) _least[row + b] = ahead + after;
            }
        }

        return true;
    }

    /// <summary>Drops a section that no coming constraint touches; what it implied stays.</summary>
    public void RemoveAt(int place)
    {
        var last = --Count;
        if (place == last) return;
        _node[place] = _node[last];
        for (var i = 0; i <= last; i++) _least[(i * _capacity) + place] = _least[(i * _capacity) + last];
        for (var i = 0; i <= last; i++) _least[(place * _capacity) + i] = _least[(last * _capacity) + i];
        _least[(place * _capacity) + place] = 0;
    }

    /// <summary>The matrix with its sections in ascending order, so that equal states compare in step.</summary>
    public long[] Canonical()
    {
        Span<int> order = stackalloc int[Count];
        Ascending(order);
        var matrix = new long[Count * Count];
        for (var i = 0; i < Count; i++)
            for (var j = 0; j < Count; j++)
                matrix[(i * Count) + j] = Least(order[i], order[j]);
        return matrix;
    }

    /// <summary>Every least gap is at least that of a kept matrix: no looser than it.</summary>
    public bool IsNoLooserThan(long[] kept)
    {
        Span<int> order = stackalloc int[Count];
        Ascending(order);
        var at = 0;
        for (var i = 0; i < Count; i++)
            for (var j = 0; j < Count; j++)
                if (Least(order[i], order[j]) < kept[at++]) return false;
        return true;
    }

    private void Ascending(Span<int> order)
    {
        for (var i = 0; i < order.Length; i++)
        {
            var at = i;
            while (at > 0 && _node[order[at - 1]] > _node[i])
            {
                order[at] = order[at - 1];
                at--;
            }

            order[at] = i;
        }
    }
}
