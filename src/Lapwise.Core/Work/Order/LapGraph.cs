namespace Lapwise.Core.Work.Order;

/// <summary>The laps of a problem as neighbour lists, with each lap's own limit. Pairs are merged, the tighter limit wins.</summary>
internal sealed class LapGraph
{
    /// <summary>No limit of its own.</summary>
    public const long Unlimited = long.MaxValue / 4;

    public LapGraph(int sections, IEnumerable<OrderLap> laps)
    {
        Count = sections;
        var limits = new SortedDictionary<(int A, int B), long>();
        foreach (var lap in laps)
        {
            if (lap.A == lap.B) continue;
            var key = (Math.Min(lap.A, lap.B), Math.Max(lap.A, lap.B));
            var limit = lap.LimitMs ?? Unlimited;
            limits[key] = limits.TryGetValue(key, out var known) ? Math.Min(known, limit) : limit;
        }

        var degree = new int[sections];
        foreach (var (a, b) in limits.Keys)
        {
            degree[a]++;
            degree[b]++;
        }

        Neighbours = new int[sections][];
        Limits = new long[sections][];
        for (var i = 0; i < sections; i++)
        {
            Neighbours[i] = new int[degree[i]];
            Limits[i] = new long[degree[i]];
        }

        var filled = new int[sections];
        foreach (var ((a, b), limit) in limits)
        {
            Neighbours[a][filled[a]] = b;
            Limits[a][filled[a]++] = limit;
            Neighbours[b][filled[b]] = a;
            Limits[b][filled[b]++] = limit;
        }
    }

    public int Count { get; }
    public int[][] Neighbours { get; }
    /// <summary>Limit of the lap to each neighbour, in the order of <see cref="Neighbours"/>.</summary>
    public long[][] Limits { get; }
    public bool HasLimits => Limits.Any(l => l.Any(x => x != Unlimited));

    /// <summary>The connected parts, each in ascending order.</summary>
    public IEnumerable<IReadOnlyList<int>> Parts()
    {
        var seen = new bool[Count];
        for (var i = 0; i < Count; i++)
        {
            if (seen[i]) continue;
            var part = Rings(i).SelectMany(r => r).Order().ToArray();
            foreach (var v in part) seen[v] = true;
            yield return part;
        }
    }

    /// <summary>Sections by their distance in laps from <paramref name="from"/>; unreachable ones are left out.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Rings(int from)
    {
        var seen = new bool[Count];
        seen[from] = true;
        var rings = new List<IReadOnlyList<int>> { new[] { from } };
        while (true)
        {
            var next = new List<int>();
            foreach (var u in rings[^1])
            {
                foreach (var v in Neighbours[u])
                {
                    if (seen[v]) continue;
                    seen[v] = true;
                    next.Add(v);
                }
            }

            if (next.Count == 0) return rings;
            rings.Add(next);
        }
    }
}
