using Lapwise.Core.Conditions.Drying;

namespace Lapwise.Core.Work.Order;

/// <summary>The ages of an order on the clock, with what the age of each batch had already used of the open time.</summary>
/// <param name="UsedMs">Of each section, by index.</param>
/// <param name="WorstMs">The worst of all lap and section ages, each with what was used.</param>
internal sealed record OrderAges(IReadOnlyList<long> UsedMs, long WorstMs)
{
    /// <param name="lifeMs">From the start of a batch's mixing; film is never counted from a batch older than that.</param>
    /// <param name="standMs">How much of the time of each mix the batch stands, mixed through: it ages meanwhile.</param>
    public static OrderAges Of(OrderProblem problem, FoundOrder found, double ageShare, long lifeMs, long standMs)
    {
        var at = new Placed[problem.Sections.Count];
        foreach (var p in found.Sections) at[p.Section] = p;
        var mixes = found.Mixes.ToDictionary(m => m.Batch);
        var used = at.Select(p => mixes.TryGetValue(p.Batch, out var mix)
            ? BatchAgeing.UsedMs(ageShare, Math.Min(p.StartMs, mix.StartMs + lifeMs) - mix.EndMs + standMs) : 0).ToArray();
        var sections = at.Select(p => p.EndMs - p.StartMs + used[p.Section]);
        var laps = problem.Laps.Select(l => OfLap(at[l.A], at[l.B], used));
        return new OrderAges(used, sections.Concat(laps).DefaultIfEmpty(0).Max());
    }

    /// <summary>Lap age and what was used: the film of either section must stay open until both are done.</summary>
    public static long OfLap(Placed a, Placed b, IReadOnlyList<long> usedMs) =>
        Math.Max(a.EndMs, b.EndMs) - Math.Min(a.StartMs - usedMs[a.Section], b.StartMs - usedMs[b.Section]);
}
