namespace Lapwise.Core.Work.Order;

/// <summary>Puts a one-person order on the clock.</summary>
internal static class SoloTimeline
{
    public static FoundOrder Of(SoloModel model, SoloOrder order)
    {
        var placed = new List<Placed>(model.Count);
        var mixes = new List<PlacedMix>();
        for (var u = 0; u < model.Count; u++)
            if (model.StartedAt[u] is { } at) placed.Add(new Placed(u, 0, at, at + model.Duration[u]));

        var now = Beginning(model, order);
        var batch = -1;
        if (model.Mixing is { } ahead && order.Batches.Count > 0 && order.Batches[0] < ahead.Ahead)
        {
            mixes.AddRange(Enumerable.Range(0, ahead.Ahead).Where(order.Batches.Contains).Select(b => new PlacedMix(b, 0, ahead.MixedFrom(b, now), ahead.MixedFrom(b, now) + ahead.Mix)));
            now = ahead.Begin;
        }

        for (var i = 0; i < order.Sections.Count; i++)
        {
            var u = order.Sections[i];
            if (model.Mixing is { } mixing && order.Batches[i] != batch)
            {
                batch = order.Batches[i];
                if (!mixes.Exists(m => m.Batch == batch)) mixes.Add(new PlacedMix(batch, 0, now, now + mixing.Mix));
                now = Math.Max(now, mixing.MixedFrom(batch, now) + mixing.Mix);
            }

            var start = Math.Max(now, model.Release[u]);
            now = start + model.Duration[u];
            placed.Add(new Placed(u, 0, start, now, Math.Max(0, batch)));
        }

        return InMs(model, placed, mixes);
    }

    /// <summary>
    /// Waiting in the middle of the work only ages laps. Where nothing has begun yet, all waiting for a release is done
    /// before the first section.
    /// </summary>
    private static long Beginning(SoloModel model, SoloOrder order)
    {
        if (model.FreeCount < model.Count || model.Mixing is not null) return model.FreeFrom;
        long begin = 0, offset = 0;
        foreach (var u in order.Sections)
        {
            begin = Math.Max(begin, model.Release[u] - offset);
            offset += model.Duration[u];
        }

        return begin;
    }

    private static FoundOrder InMs(SoloModel model, List<Placed> placed, List<PlacedMix> mixes)
    {
        var g = model.GrainMs;
        var start = new long[model.Count];
        var end = new long[model.Count];
        foreach (var p in placed)
        {
            start[p.Section] = p.StartMs;
            end[p.Section] = p.EndMs;
        }

        var counted = Counted(model, placed, mixes);
        long worst = 0;
        var kept = KeepsMixing(model, placed, mixes);
        for (var u = 0; u < model.Count; u++)
        {
            for (var k = 0; k < model.Graph.Neighbours[u].Length; k++)
            {
                var v = model.Graph.Neighbours[u][k];
                var age = Math.Max(end[u], end[v]) - Math.Min(counted[u], counted[v]);
                worst = Math.Max(worst, age);
                kept &= age <= model.Limits[u][k];
            }
        }

        return new FoundOrder(
            worst * g,
            0,
            kept,
            [.. placed.Select(p => p with { StartMs = p.StartMs * g, EndMs = p.EndMs * g })],
            [.. mixes.Select(m => m with { StartMs = m.StartMs * g, EndMs = m.EndMs * g })]);
    }

    /// <summary>When each section's film would have begun had it come from a fresh batch and were now as far closed.</summary>
    private static long[] Counted(SoloModel model, List<Placed> placed, List<PlacedMix> mixes)
    {
        var counted = new long[model.Count];
        foreach (var p in placed)
        {
            var batch = model.Mixing is null || model.StartedAt[p.Section] is not null ? null : mixes.Find(m => m.Batch == p.Batch);
            counted[p.Section] = p.StartMs - (batch is null ? 0 : model.Mixing!.Used(p.StartMs - batch.EndMs));
        }

        return counted;
    }

    private static bool KeepsMixing(SoloModel model, List<Placed> placed, List<PlacedMix> mixes)
    {
        if (model.Mixing is not { } rule) return true;
        if (mixes.Count > rule.MostBatches || (rule.Ahead > 1 && mixes.Count(m => m.Batch < rule.Ahead) < rule.Ahead)) return false;
        foreach (var mix in mixes)
        {
            var rolled = placed.Where(p => p.Batch == mix.Batch && model.StartedAt[p.Section] is null).ToList();
            if (rolled.Sum(p => model.Volume[p.Section]) > rule.Usable(mix.Batch) + 1e-9) return false;
            if (rolled.Exists(p => p.EndMs > mix.StartMs + rule.Life)) return false;
        }

        return true;
    }
}
