namespace Lapwise.Core.Work.Order;

/// <summary>A problem for several people in arrays, with times in a grain.</summary>
internal sealed class CrewModel
{
    public CrewModel(OrderProblem problem, LapGraph graph, long grainMs)
    {
        Graph = graph;
        GrainMs = grainMs;
        Count = problem.Sections.Count;
        Crew = problem.Crew;
        Duration = [.. Enumerable.Range(0, Crew).Select(k => problem.Sections.Select(s => s.DurationOf(k) / grainMs).ToArray())];
        Shortest = [.. Enumerable.Range(0, Count).Select(i => Duration.Min(d => d[i]))];
        Mix = [.. Enumerable.Range(0, Crew).Select(k => (problem.Mixing?.MixMsOf(k) ?? 0) / grainMs)];
        Alike = [.. Enumerable.Range(0, Crew).Select(k => Enumerable.Range(0, Crew).Select(j => Mix[j] == Mix[k] && Duration[j].AsSpan().SequenceEqual(Duration[k])).ToArray())];
        Release = [.. problem.Sections.Select(s => s.NotBeforeMs / grainMs)];
        StartedAt = [.. problem.Sections.Select(s => s.StartedAtMs / grainMs)];
        Limits = [.. graph.Limits.Select(l => l.Select(x => x == LapGraph.Unlimited ? x : x / grainMs).ToArray())];
        Predecessors = Lists(problem.Before.Select(b => (b.Then, b.First)));
        Successors = Lists(problem.Before);
        Apart = Lists(problem.Apart.Concat(problem.Apart.Select(p => (p.B, p.A))));
        Volume = [.. problem.Sections.Select(s => s.VolumeMl)];
        Mixing = problem.Mixing is { } m ? new GrainedMixing(m, 0, grainMs) : null;
        WholeTime = Duration.Max(d => d.Sum()) + Release.Max() - Math.Min(0, StartedAt.Min() ?? 0) + (Mixing is { } rule ? Mix.Max() * rule.MostBatches : 0);
        IsTimed = StartedAt.Any(s => s is not null) || Release.Any(r => r > 0);
        ByPromise = [.. Enumerable.Range(0, Count).OrderByDescending(i => graph.Rings(i).Count).ThenBy(i => graph.Neighbours[i].Length).ThenBy(i => i)];
        (MirrorFirst, MirrorThen) = Mirror(problem);
    }

    public LapGraph Graph { get; }
    public long GrainMs { get; }
    public int Count { get; }
    public int Crew { get; }
    /// <summary>By person, then section.</summary>
    public long[][] Duration { get; }
    /// <summary>Of each section, by the quickest person.</summary>
    public long[] Shortest { get; }
    /// <summary>To mix a batch, by person.</summary>
    public long[] Mix { get; }
    /// <summary>Two people with the same time for every section and for mixing can stand in for each other.</summary>
    public bool[][] Alike { get; }
    public long[] Release { get; }
    public long?[] StartedAt { get; }
    public long[][] Limits { get; }
    public int[][] Predecessors { get; }
    public int[][] Successors { get; }
    /// <summary>Sections that may not run at the same time as each section.</summary>
    public int[][] Apart { get; }
    public double[] Volume { get; }
    public GrainedMixing? Mixing { get; }
    /// <summary>Batches that may stand mixed and not yet in use: one for each of the crew.</summary>
    public int MostAhead => Crew;
    /// <summary>Number of tasks: sections, then one mixing for each batch.</summary>
    public int Tasks => Count + (Mixing?.MostBatches ?? 0);
    public long WholeTime { get; }
    /// <summary>Something is fixed to the clock, so the beginning of the clock takes part.</summary>
    public bool IsTimed { get; }
    public int[] ByPromise { get; }

    /// <summary>
    /// A plan read backwards has the same ages. Of two sections of which the first takes no less time, one direction
    /// or the other starts the first no later: it may be asked to. Negative where something tells the directions apart.
    /// </summary>
    public int MirrorFirst { get; }
    public int MirrorThen { get; }

    private (int, int) Mirror(OrderProblem problem)
    {
        if (Count < 2 || IsTimed || Mixing is not null || problem.Before.Count > 0 || !Alike.All(a => a.All(x => x))) return (-1, -1);
        var first = ByPromise[0];
        var far = Graph.Rings(first)[^1][0];
        if (far == first) far = ByPromise[1];
        return Shortest[first] >= Shortest[far] ? (first, far) : (far, first);
    }

    private int[][] Lists(IEnumerable<(int From, int To)> pairs)
    {
        var lists = Enumerable.Range(0, Count).Select(_ => new SortedSet<int>()).ToArray();
        foreach (var (from, to) in pairs) lists[from].Add(to);
        return [.. lists.Select(l => l.ToArray())];
    }
}
