namespace Lapwise.Core.Work.Order;

/// <summary>Puts a crew's order on the clock: the earliest starts at which no lap is older than the age decided.</summary>
internal static class CrewTimeline
{
    /// <param name="order">Who takes what, in the order of starts; what has begun is left out.</param>
    public static FoundOrder Of(CrewModel model, IReadOnlyList<CrewTask> order, long age)
    {
        var person = Persons(model, order);
        var took = Enumerable.Range(0, model.Tasks).Select(u => u < model.Count ? model.Duration[person[u]][u] : model.Mix[person[u]]).ToArray();
        var (start, fits) = EarliestStarts(model, order, person, took, age);
        var batch = new int[model.Count];
        foreach (var task in order.Where(t => t.Task < model.Count)) batch[task.Task] = Math.Max(0, task.Batch);
        long worst = 0;
        var kept = fits && (model.Mixing is null || order.Any(t => t.Task >= model.Count));
        for (var u = 0; u < model.Count; u++)
        {
            for (var i = 0; i < model.Graph.Neighbours[u].Length; i++)
            {
                var v = model.Graph.Neighbours[u][i];
                var lapAge = Math.Max(start[u] + took[u], start[v] + took[v]) - Math.Min(start[u], start[v]);
                worst = Math.Max(worst, lapAge);
                kept &= lapAge <= model.Limits[u][i];
            }
        }

        var g = model.GrainMs;
        return new FoundOrder(worst * g, 0, kept,
            [.. Enumerable.Range(0, model.Count).OrderBy(u => start[u]).ThenBy(u => u).Select(u => new Placed(u, person[u], start[u] * g, (start[u] + took[u]) * g, batch[u]))],
            [.. order.Where(t => t.Task >= model.Count).Select(t => new PlacedMix(t.Task - model.Count, t.Person, start[t.Task] * g, (start[t.Task] + took[t.Task]) * g))]);
    }

    /// <summary>Everything by the first person in order of precedence: always possible, rarely good.</summary>
    public static FoundOrder InTurn(CrewModel model)
    {
        var waiting = model.Predecessors.Select(p => p.Length).ToArray();
        var order = new List<CrewTask>();
        var left = new SortedSet<int>(Enumerable.Range(0, model.Count).Where(u => model.StartedAt[u] is null));
        foreach (var u in Enumerable.Range(0, model.Count).Where(u => model.StartedAt[u] is not null)) Release(u);
        while (left.Count > 0)
        {
            var u = left.First(u => waiting[u] == 0);
            left.Remove(u);
            order.Add(new CrewTask(u, 0, -1));
            Release(u);
        }

        return Of(model, order, model.WholeTime + 1);

        void Release(int u)
        {
            foreach (var then in model.Successors[u]) waiting[then]--;
        }
    }

    private static int[] Persons(CrewModel model, IReadOnlyList<CrewTask> order)
    {
        var person = new int[model.Tasks];
        var ends = new long[model.Crew];
        Array.Fill(ends, long.MinValue);
        foreach (var u in Begun(model))
        {
            person[u] = Array.IndexOf(ends, ends.Min());
            ends[person[u]] = model.StartedAt[u]!.Value + model.Duration[person[u]][u];
        }

        foreach (var (u, k, _) in order) person[u] = k;
        return person;
    }

    private static IEnumerable<int> Begun(CrewModel model) =>
        Enumerable.Range(0, model.Count).Where(u => model.StartedAt[u] is not null).OrderBy(u => model.StartedAt[u]);

    /// <returns>The starts, and whether there are any that keep the age and every batch's life.</returns>
    private static (long[] Start, bool Fits) EarliestStarts(CrewModel model, IReadOnlyList<CrewTask> order, int[] person, long[] took, long age)
    {
        var gaps = new List<(int From, int To, long Gap)>();
        var lastOf = new int[model.Crew];
        Array.Fill(lastOf, -1);
        foreach (var u in Begun(model)) lastOf[person[u]] = u;
        var begun = new List<int>(Begun(model));
        var opens = new Dictionary<int, int>();   // the first section rolled from a batch
        foreach (var (u, k, batch) in order)
        {
            if (lastOf[k] >= 0) gaps.Add((lastOf[k], u, took[lastOf[k]]));
            lastOf[k] = u;
            if (u >= model.Count)
            {
                // No more batches are mixed ahead than the search allows: it proves nothing of other orders.
                if (opens.TryGetValue(u - model.Count - model.MostAhead, out var inUse)) gaps.Add((inUse, u, 0));
                continue;
            }

            opens.TryAdd(batch, u);
            foreach (var other in model.Apart[u].Where(begun.Contains)) gaps.Add((other, u, took[other]));
            begun.Add(u);
            if (model.Mixing is not { } mixing || batch < 0) continue;
            gaps.Add((model.Count + batch, u, took[model.Count + batch]));
            gaps.Add((u, model.Count + batch, took[u] - mixing.Life));
        }

        for (var u = 0; u < model.Count; u++)
        {
            foreach (var then in model.Successors[u]) gaps.Add((u, then, took[u]));
            for (var i = 0; i < model.Graph.Neighbours[u].Length; i++)
            {
                var v = model.Graph.Neighbours[u][i];
                gaps.Add((v, u, took[v] - Math.Min(age, model.Limits[u][i])));
            }
        }

        var start = Enumerable.Range(0, model.Tasks).Select(u => u < model.Count ? model.StartedAt[u] ?? model.Release[u] : 0).ToArray();
        var moved = true;
        for (var round = 0; moved && round <= model.Tasks; round++)
        {
            moved = false;
            foreach (var (from, to, gap) in gaps)
            {
                // What has begun cannot move; the age it makes is counted as it is.
                if ((to < model.Count && model.StartedAt[to] is not null) || start[from] + gap <= start[to]) continue;
                start[to] = start[from] + gap;
                moved = true;
            }
        }

        MixLate(model, order, took, start);
        return (start, !moved);
    }

    /// <summary>A batch is mixed as late as keeps everything else where it is: fresh film stays open longer.</summary>
    private static void MixLate(CrewModel model, IReadOnlyList<CrewTask> order, long[] took, long[] start)
    {
        var wanted = new Dictionary<int, long>();   // of a person what they do next, of a batch its first section
        var opened = new Dictionary<int, long>();
        foreach (var (u, k, batch) in order.Reverse())
        {
            if (u < model.Count) opened[batch] = Math.Min(start[u], opened.GetValueOrDefault(batch, long.MaxValue));
            else if (opened.TryGetValue(u - model.Count, out var first)) start[u] = Math.Max(start[u], Math.Min(first, wanted.GetValueOrDefault(k, long.MaxValue)) - took[u]);
            wanted[k] = start[u];
        }
    }
}
