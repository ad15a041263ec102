namespace Lapwise.Core.Work.Order;

/// <summary>
/// A lower bound on the worst lap age from windows: a few sections that lie together, searched alone. Whatever order the
/// whole is rolled in, leaving the other sections out makes no age larger, so no order of the whole has a smaller worst
/// age than the best order of a window.
/// </summary>
/// <remarks>
/// Windows grow around each section, ring by ring, from small to large; of one size those that looked worst come first.
/// A window is only searched until it keeps the bound so far. Resumable in counted steps, deterministic.
/// </remarks>
internal sealed class WindowBound
{
    /// <summary>A smaller problem is searched as a whole before its windows would tell anything.</summary>
    public const int LeastSections = 24;

    private const int Smallest = 16;
    private const int SmallestOfACrew = 8;
    private const long Patience = 200_000;
    private const long StepsOfASweep = 50;

    private readonly OrderProblem _problem;
    private readonly LapGraph _graph;
    private readonly Func<OrderPart, AgeSearch> _search;
    private readonly long[] _looked;          // the worst age known of the last window around a section
    private readonly Queue<int[]> _windows = new();
    private int _size;
    private AgeSearch? _now;
    private int _around;

    private WindowBound(OrderProblem problem, LapGraph graph, Func<OrderPart, AgeSearch> search)
    {
        _problem = problem;
        _graph = graph;
        _search = search;
        _size = problem.Crew == 1 ? Smallest : SmallestOfACrew;
        _looked = [.. problem.Sections.Select((s, i) => s.ShortestMs + graph.Neighbours[i].Sum(v => problem.Sections[v].ShortestMs))];
        Cut();
    }

    /// <summary>
    /// Null where leaving sections out may age a lap: what waits, or has begun, does not move together with the rest; a first
    /// batch that gives less than the others may not be the first of a window, nor one mixed ahead be there for it. Null too where there are too few sections.
    /// </summary>
    public static WindowBound? Of(OrderProblem problem, LapGraph graph, Func<OrderPart, AgeSearch> search)
    {
        if (problem.Sections.Count < LeastSections || problem.Sections.Any(s => s.StartedAtMs is not null || s.NotBeforeMs > 0)) return null;
        var mixesAlike = problem is { Crew: 1, Mixing: null or { FirstUsableMl: null, Ahead: 1 } };
        return new(mixesAlike ? problem : problem with { Mixing = null }, graph, search);
    }

    public long BoundMs { get; private set; }
    public long Steps { get; private set; }
    public bool IsDone => _now is null && _windows.Count == 0;

    /// <summary>Goes on for about so many steps.</summary>
    /// <param name="knownMs">What is proven otherwise: windows that keep it tell nothing.</param>
    public void Step(long steps, long knownMs)
    {
        BoundMs = Math.Max(BoundMs, knownMs);
        while (steps > 0 && !IsDone)
        {
            var used = _now is null ? Open(_windows.Dequeue()) : Search(_now, steps);
            Steps += used;
            steps -= used;
            if (_windows.Count == 0 && _now is null) Grow();
        }
    }

    private long Open(int[] window)
    {
        _around = window[0];
        var search = _search(OrderParts.Sub(_problem, [.. window.Order()]));
        _looked[_around] = search.WorstLapAgeMs;
        search.SettleFor(BoundMs);
        _now = IsAnswered(search) ? null : search;
        return StepsOfASweep;
    }

    private long Search(AgeSearch search, long steps)
    {
        var before = search.Steps;
        search.Step(Math.Min(steps, Patience - before));
        _looked[_around] = search.WorstLapAgeMs;
        if (IsAnswered(search)) _now = null;
        return search.Steps - before;
    }

    /// <summary>Whether a window has told what it can: its bound is taken, or it keeps the bound that was known when it was opened, or it is too hard.</summary>
    private bool IsAnswered(AgeSearch search)
    {
        BoundMs = Math.Max(BoundMs, search.BoundMs);
        return search.IsDone || search.Steps >= Patience;
    }

    private void Grow()
    {
        _size += _size / 4;
        if (_size < _problem.Sections.Count) Cut();
    }

    private void Cut()
    {
        var seen = new HashSet<long>();
        foreach (var around in Enumerable.Range(0, _looked.Length).OrderByDescending(i => _looked[i]).ThenBy(i => i))
        {
            var window = _graph.Rings(around).SelectMany(r => r).Take(_size).ToArray();
            // Two windows that only share a key are taken for one: that costs a bound, never its truth.
            if (seen.Add(window.Order().Aggregate(0L, (key, section) => unchecked((key * 31) + section + 1)))) _windows.Enqueue(window);
        }
    }
}
