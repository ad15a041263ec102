using System.Diagnostics;
using Lapwise.Core.Work.Order;

namespace Lapwise.Benchmarks;

/// <summary>The core's search under a stopwatch.</summary>
public static class OwnSearch
{
    private const int StepsAtATime = 5_000;

    /// <summary>Bound and order before the first step.</summary>
    public static FoundOrder Start(Instance instance) => new OrderSearch(instance.Problem).Best;

    /// <summary>Searches until proven or out of time.</summary>
    /// <param name="peakBytes">Most managed memory in use at the end of any slice, above what was in use before.</param>
    public static (Outcome Outcome, FoundOrder Order) Solve(Instance instance, double limitS, out long peakBytes)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        peakBytes = 0;
        var watch = Stopwatch.StartNew();
        var search = new OrderSearch(instance.Problem);
        while (watch.Elapsed.TotalSeconds < limitS && search.Step(StepsAtATime))
            peakBytes = Math.Max(peakBytes, GC.GetTotalMemory(forceFullCollection: false) - before);

        var seconds = watch.Elapsed.TotalSeconds;
        peakBytes = Math.Max(peakBytes, GC.GetTotalMemory(forceFullCollection: false) - before);
        var order = search.Best;
        return (new(seconds, (int)(order.WorstLapAgeMs / 1000), (int)((order.BoundMs + 999) / 1000)), order);
    }

    /// <summary>The same, run until it has been measured three times or has used a second; the median time.</summary>
    public static (Outcome Outcome, FoundOrder Order) SolveSteadily(Instance instance, double limitS)
    {
        var (outcome, order) = Solve(instance, limitS, out _);
        if (outcome.Seconds > 1) return (outcome, order);
        double[] times = [outcome.Seconds, Solve(instance, limitS, out _).Outcome.Seconds, Solve(instance, limitS, out _).Outcome.Seconds];
        return (outcome with { Seconds = times.Order().ElementAt(1) }, order);
    }
}
