using Lapwise.Core.Conditions.Drying;

namespace Lapwise.Core.Work.Order;

/// <summary>A one-person problem in arrays, with times in its own grain.</summary>
internal sealed class SoloModel
{
    public SoloModel(OrderProblem problem, LapGraph graph)
    {
        Graph = graph;
        Count = problem.Sections.Count;
        GrainMs = OrderGrain.Of(problem);
        Duration = problem.Sections.Select(s => s.DurationOf(0) / GrainMs).ToArray();
        Volume = problem.Sections.Select(s => s.VolumeMl).ToArray();
        Release = problem.Sections.Select(s => s.NotBeforeMs / GrainMs).ToArray();
        StartedAt = problem.Sections.Select(s => s.StartedAtMs / GrainMs).ToArray();
        FreeSections = [.. Enumerable.Range(0, Count).Where(i => StartedAt[i] is null)];
        FreeFrom = Math.Max(0, Enumerable.Range(0, Count).Where(i => StartedAt[i] is not null).Select(i => StartedAt[i]!.Value + Duration[i]).DefaultIfEmpty(0).Max());
        LastRelease = FreeSections.Select(i => Release[i]).DefaultIfEmpty(0).Max();
        ShortestDuration = FreeSections.Select(i => Duration[i]).DefaultIfEmpty(0).Min();
        Limits = [.. graph.Limits.Select(l => l.Select(x => x == LapGraph.Unlimited ? x : x / GrainMs).ToArray())];
        Predecessors = Lists(problem.Before.Select(b => (b.Then, b.First)));
        Successors = Lists(problem.Before);
        PredecessorCount = [.. Predecessors.Select(p => p.Length)];
        Mixing = problem.Mixing is { } m ? new GrainedMixing(m, FreeFrom, GrainMs) : null;
        ByPromise = [.. FreeSections.OrderByDescending(Eccentricity).ThenBy(i => graph.Neighbours[i].Length).ThenBy(i => i)];
        Mirrors = FarPairs();
    }

    public LapGraph Graph { get; }
    public int Count { get; }
    public long GrainMs { get; }
    public long[] Duration { get; }
    public double[] Volume { get; }
    public long[] Release { get; }
    public long?[] StartedAt { get; }
    public int[] FreeSections { get; }
    public int FreeCount => FreeSections.Length;
    public long FreeFrom { get; }
    public long LastRelease { get; }
    public long ShortestDuration { get; }
    /// <summary>No age is larger than this: all the work, all the mixing, all the waiting.</summary>
    public long WholeTime => FreeFrom + LastRelease + Duration.Sum() + (Mixing is { } m ? (m.Mix * m.MostBatches) + m.Used(m.Life) : 0) - Math.Min(0, StartedAt.Min() ?? 0);
    public long[][] Limits { get; }
    public int[][] Predecessors { get; }
    public int[][] Successors { get; }
    public int[] PredecessorCount { get; }
    public GrainedMixing? Mixing { get; }
    /// <summary>Where a sweep is likely to begin: the far ends first.</summary>
    public int[] ByPromise { get; }

    /// <summary>Only laps tie sections together: an order read backwards has the same lap ages.</summary>
    public bool IsReversible => Mixing is null && FreeCount == Count && LastRelease == 0 && PredecessorCount.All(c => c == 0);

    /// <summary>
    /// An order read backwards has the same lap ages, so of two far sections one may be asked to come first. Which pair is
    /// asked: a far end first finds orders, the section with the most work around it first refutes them. A single pair of
    /// negatives where something (a start already made, precedence, mixing) tells the directions apart.
    /// </summary>
    public IReadOnlyList<(int First, int Then)> Mirrors { get; }

    private int Eccentricity(int section) => Graph.Rings(section).Count;

    private IReadOnlyList<(int First, int Then)> FarPairs()
    {
        if (!IsReversible || Count < 2) return [(-1, -1)];
        var busiest = FreeSections.MaxBy(u => Duration[u] + Graph.Neighbours[u].Sum(v => Duration[v]));
        return [.. new[] { ByPromise[0], busiest }.Distinct().Select(first => (first, Farthest(first)))];
    }

    private int Farthest(int from) => Graph.Rings(from)[^1] is [var far, ..] && far != from ? far : ByPromise.First(u => u != from);

    private int[][] Lists(IEnumerable<(int From, int To)> pairs)
    {
        var lists = Enumerable.Range(0, Count).Select(_ => new SortedSet<int>()).ToArray();
        foreach (var (from, to) in pairs) lists[from].Add(to);
        return [.. lists.Select(l => l.ToArray())];
    }
}

/// <summary>The mixing rule in the model's grain; the grain divides a whole second.</summary>
internal sealed record GrainedMixing(MixingRule Rule, long FreeFrom, long GrainMs)
{
    public long Mix { get; } = Rule.MixMs / GrainMs;
    public long Life { get; } = Rule.LifeMs / GrainMs;
    public double UsableMl => Rule.UsableMl;
    public int MostBatches => Rule.MostBatches;
    public int Ahead => Rule.Ahead;

    /// <summary>When the first section may begin.</summary>
    public long Begin { get; } = FreeFrom + (Rule.BeginMs / GrainMs);

    /// <summary>When the mixing of a batch begins that is wanted now.</summary>
    public long MixedFrom(int batch, long now) => batch < Ahead ? FreeFrom + (Rule.MixedFromMs(batch, 0) / GrainMs) : now;

    /// <summary>Open time that the age of a batch has used, so long after it could be used first.</summary>
    public long Used(long sinceReady) => Rule.AgeShare > 0 ? BatchAgeing.UsedMs(Rule.AgeShare, (sinceReady * GrainMs) + Rule.StandMs) / GrainMs : 0;

    public double Usable(int batch) => batch == 0 ? Rule.FirstUsableMl ?? UsableMl : UsableMl;
}
