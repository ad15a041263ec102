namespace Lapwise.Core.Work.Order;

/// <summary>The shortest ways from one section to every other: how many laps, and the most time in between on so short a way.</summary>
internal sealed class Ways
{
    private readonly int[] _laps;             // -1: no way
    private readonly long[] _between;

    /// <param name="work">The least time that each section takes.</param>
    public Ways(LapGraph graph, long[] work, int from)
    {
        From = from;
        _laps = Enumerable.Repeat(-1, graph.Count).ToArray();
        _between = new long[graph.Count];
        foreach (var (k, ring) in graph.Rings(from).Index())
        {
            foreach (var v in ring) _laps[v] = k;
            if (k < 2) continue;
            foreach (var v in ring)
            {
                foreach (var u in graph.Neighbours[v])
                {
                    if (_laps[u] == k - 1) _between[v] = Math.Max(_between[v], _between[u] + work[u]);
                }
            }
        }
    }

    public int From { get; }

    public bool Reaches(int section) => _laps[section] >= 0;

    /// <summary>
    /// From the start of either to the end of the other at most, where no lap age is more than <paramref name="age"/>: of every
    /// section in between, its own time counts for two laps.
    /// </summary>
    public long Longest(int section, long age) => (_laps[section] * age) - _between[section];
}
