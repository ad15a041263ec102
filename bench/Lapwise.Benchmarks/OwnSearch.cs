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
    public static (Outcome Outcome, FoundOrder Order) Solve(Instance instance, double limitS, out long peakBytes) => Solve(instance.Problem, limitS, out peakBytes);

    /// <inheritdoc cref="Solve(Instance, double, out long)"/>
    public static (Outcome Outcome, FoundOrder Order) Solve(OrderProblem problem, double limitS, out long peakBytes)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        peakBytes = 0;
        var watch = Stopwatch.StartNew();
        var search = new OrderSearch(problem);
        while (watch.Elapsed.TotalSeconds < limitS && search.Step(StepsAtATime))
            peakBytes = Math.Max(peakBytes, GC.GetTotalMemory(forceFullCollection: false) - before);

        var seconds = watch.Elapsed.TotalSeconds;
        peakBytes = Math.Max(peakBytes, GC.GetTotalMemory(forceFullCollection: false) - before);
        var order = search.Best;
        // One person's ages are whole seconds here; a crew's need not be, so theirs are rounded to where nothing is claimed.
        var boundS = problem.Crew == 1 || order.Proven ? CeilingS(order.BoundMs) : order.BoundMs / 1000;
        return (new(seconds, (int)CeilingS(order.WorstLapAgeMs), (int)boundS), order);
    }

    private static long CeilingS(long ms) => (ms + 999) / 1000;

    /// <summary>The same, run until it has been measured three times or has used a second; the median time.</summary>
    public static (Outcome Outcome, FoundOrder Order) SolveSteadily(Instance instance, double limitS)
    {
        var (outcome, order) = Solve(instance, limitS, out _);
        if (outcome.Seconds > 1) return (outcome, order);
        double[] times = [outcome.Seconds, Solve(instance, limitS, out _).Outcome.Seconds, Solve(instance, limitS, out _).Outcome.Seconds];
        return (outcome with { Seconds = times.Order().ElementAt(1) }, order);
    }
}
