namespace Lapwise.Core.Work.Order;

/// <summary>Good orders at once: sweeps that begin at each section and always go on where a lap has been open longest.</summary>
internal static class SoloSweeps
{
    private const int MostStarts = 64;

    /// <summary>The best sweep. Every order that keeps precedence is reachable, so one always exists.</summary>
    public static FoundOrder Best(SoloModel model)
    {
        if (model.FreeCount == 0) return SoloTimeline.Of(model, SoloOrder.None);
        FoundOrder? best = null;
        // A sweep looks at every section for each: of very many sections only a few starts are tried.
        var starts = Math.Clamp(4_000_000 / ((long)model.Count * model.Count), 1, MostStarts);
        foreach (var start in model.ByPromise.Take((int)starts))
        {
            foreach (var wideFirst in (ReadOnlySpan<bool>)[false, true])
            {
                var order = SoloTimeline.Of(model, Sweep(model, start, wideFirst));
                if (best is null || IsBetter(order, best)) best = order;
            }
        }

        return best!;
    }

    private static bool IsBetter(FoundOrder order, FoundOrder than) =>
        order.KeepsLimits == than.KeepsLimits ? order.WorstLapAgeMs < than.WorstLapAgeMs : order.KeepsLimits;

    private static SoloOrder Sweep(SoloModel model, int start, bool wideFirst)
    {
        var done = new bool[model.Count];
        var oldest = new long[model.Count];
        var waiting = (int[])model.PredecessorCount.Clone();
        Array.Fill(oldest, LapGraph.Unlimited);
        for (var u = 0; u < model.Count; u++)
        {
            if (model.StartedAt[u] is not { } at) continue;
            Finish(u, at);
        }

        var sections = new List<int>(model.FreeCount);
        var batches = new List<int>(model.FreeCount);
        var cup = Cup.First(model);
        long clock = model.FreeFrom;
        while (sections.Count < model.FreeCount)
        {
            var u = sections.Count == 0 && waiting[start] == 0 ? start : Next();
            cup = cup.Take(model, u, clock);
            Finish(u, clock);
            clock += model.Duration[u];
            sections.Add(u);
            batches.Add(cup.Batch);
        }

        return new SoloOrder(sections, batches);

        void Finish(int u, long at)
        {
            done[u] = true;
            foreach (var v in model.Graph.Neighbours[u]) oldest[v] = Math.Min(oldest[v], at);
            foreach (var then in model.Successors[u]) waiting[then]--;
        }

        int Next()
        {
            var best = -1;
            (long, int, int) bestKey = default;
            foreach (var u in model.ByPromise)
            {
                if (done[u] || waiting[u] > 0) continue;
                var open = model.Graph.Neighbours[u].Count(v => !done[v]);
                var key = (oldest[u], wideFirst ? -open : open, u);
                if (best >= 0 && key.CompareTo(bestKey) >= 0) continue;
                best = u;
                bestKey = key;
            }

            return best;
        }
    }

    /// <summary>The batch in use: a new one is mixed when the next section does not fit.</summary>
    private readonly record struct Cup(int Batch, double Left, long UseBy, long Mixed)
    {
        public static Cup First(SoloModel model) => model.Mixing is { } m
            ? new Cup(0, m.Usable(0), MixedFrom(model, m, 0, 0) + m.Life, 0)
            : new Cup(0, double.PositiveInfinity, LapGraph.Unlimited, 0);

        /// <summary>On a clock that begins with the first section.</summary>
        private static long MixedFrom(SoloModel model, GrainedMixing m, int batch, long now) =>
            batch < m.Ahead ? m.MixedFrom(batch, 0) + model.FreeFrom - m.Begin : now;

        public Cup Take(SoloModel model, int u, long clock)
        {
            // The clock of the sweep leaves mixing out; Mixed carries it.
            if (model.Mixing is not { } m) return this;
            var now = clock + Mixed;
            if (model.Volume[u] <= Left + 1e-9 && now + model.Duration[u] <= UseBy) return this with { Left = Left - model.Volume[u] };
            var mixedFrom = MixedFrom(model, m, Batch + 1, now);
            return new Cup(Batch + 1, m.UsableMl - model.Volume[u], mixedFrom + m.Life, Mixed + Math.Max(0, mixedFrom + m.Mix - now));
        }
    }
}
