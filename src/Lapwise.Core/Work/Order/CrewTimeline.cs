namespace Lapwise.Core.Work.Order;

/// <summary>Puts a crew's order on the clock: the earliest starts at which no lap is older than the age decided.</summary>
internal static class CrewTimeline
{
    /// <param name="order">Who takes what, in the order of starts; what has begun is left out.</param>
    public static FoundOrder Of(CrewModel model, IReadOnlyList<(int Section, int Person)> order, long age)
    {
        var person = Persons(model, order);
        var took = Enumerable.Range(0, model.Count).Select(u => model.Duration[person[u]][u]).ToArray();
        var start = EarliestStarts(model, order, person, took, age);
        long worst = 0;
        var kept = true;
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
            [.. Enumerable.Range(0, model.Count).OrderBy(u => start[u]).ThenBy(u => u).Select(u => new Placed(u, person[u], start[u] * g, (start[u] + took[u]) * g))],
            []);
    }

    /// <summary>Everything by the first person in order of precedence: always possible, rarely good.</summary>
    public static FoundOrder InTurn(CrewModel model)
    {
        var waiting = model.Predecessors.Select(p => p.Length).ToArray();
        var order = new List<(int, int)>();
        var left = new SortedSet<int>(Enumerable.Range(0, model.Count).Where(u => model.StartedAt[u] is null));
        foreach (var u in Enumerable.Range(0, model.Count).Where(u => model.StartedAt[u] is not null)) Release(u);
        while (left.Count > 0)
        {
            var u = left.First(u => waiting[u] == 0);
            left.Remove(u);
            order.Add((u, 0));
            Release(u);
        }

        return Of(model, order, model.WholeTime + 1);

        void Release(int u)
        {
            foreach (var then in model.Successors[u]) waiting[then]--;
        }
    }

    private static int[] Persons(CrewModel model, IReadOnlyList<(int Section, int Person)> order)
    {
        var person = new int[model.Count];
        var ends = new long[model.Crew];
        Array.Fill(ends, long.MinValue);
        foreach (var u in Begun(model))
        {
            person[u] = Array.IndexOf(ends, ends.Min());
            ends[person[u]] = model.StartedAt[u]!.Value + model.Duration[person[u]][u];
        }

        foreach (var (u, k) in order) person[u] = k;
        return person;
    }

    private static IEnumerable<int> Begun(CrewModel model) =>
        Enumerable.Range(0, model.Count).Where(u => model.StartedAt[u] is not null).OrderBy(u => model.StartedAt[u]);

    private static long[] EarliestStarts(CrewModel model, IReadOnlyList<(int Section, int Person)> order, int[] person, long[] took, long age)
    {
        var gaps = new List<(int From, int To, long Gap)>();
        var lastOf = new int[model.Crew];
        Array.Fill(lastOf, -1);
        foreach (var u in Begun(model)) lastOf[person[u]] = u;
        foreach (var (u, k) in order)
        {
            if (lastOf[k] >= 0) gaps.Add((lastOf[k], u, took[lastOf[k]]));
            lastOf[k] = u;
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

        var start = Enumerable.Range(0, model.Count).Select(u => model.StartedAt[u] ?? model.Release[u]).ToArray();
        var moved = true;
        for (var round = 0; moved && round <= model.Count; round++)
        {
            moved = false;
            foreach (var (from, to, gap) in gaps)
            {
                // What has begun cannot move; the age it makes is counted as it is.
                if (model.StartedAt[to] is not null || start[from] + gap <= start[to]) continue;
                start[to] = start[from] + gap;
                moved = true;
            }
        }

        return start;
    }
}
