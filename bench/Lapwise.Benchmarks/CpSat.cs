using Google.OrTools.Sat;
using Lapwise.Core.Work.Order;

namespace Lapwise.Benchmarks;

/// <summary>What one solver came to on one instance.</summary>
public sealed record Outcome(double Seconds, int WorstLapAgeS, int BoundS)
{
    public bool Proven => WorstLapAgeS == BoundS;
}

/// <summary>
/// The general solver on the same problem, given every help: the bound that the core starts from, its best order as a
/// complete hint and ceiling, and the mirror symmetry broken. A circuit over the sections was tried too: it proved
/// none of the 12-section instances in ten seconds, where each of these takes under one.
/// </summary>
public static class CpSat
{
    public static readonly IReadOnlyList<(string Name, Action<CpModel, Instance, IReadOnlyList<IntVar>> Line)> Formulations =
    [
        ("intervals", OneAtATime),
        ("order", FirstAndThen),
    ];

    public static Outcome Solve(Instance instance, Action<CpModel, Instance, IReadOnlyList<IntVar>> line, FoundOrder known, int boundS, double limitS)
    {
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var model = new CpModel();
        var starts = instance.Seconds.Select((s, i) => model.NewIntVar(0, instance.TotalS - s, $"start{i}")).ToList();
        var ceiling = (int)(known.WorstLapAgeMs / 1000);
        var age = model.NewIntVar(boundS, ceiling, "age");
        foreach (var (a, b) in instance.Laps)
        {
            model.Add(age >= starts[b] + instance.Seconds[b] - starts[a]);
            model.Add(age >= starts[a] + instance.Seconds[a] - starts[b]);
        }

        line(model, instance, starts);
        var hint = Hint(instance, known);
        BreakMirror(model, instance, starts, hint);
        for (var i = 0; i < instance.Count; i++) model.AddHint(starts[i], hint[i]);
        model.AddHint(age, ceiling);
        model.Minimize(age);

        using var solver = new CpSolver();
        solver.StringParameters = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"num_workers:2,random_seed:1,max_time_in_seconds:{limitS}");
        var status = solver.Solve(model);
        var found = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        return new(watch.Elapsed.TotalSeconds, found ? (int)solver.ObjectiveValue : ceiling, (int)Math.Round(solver.BestObjectiveBound));
    }

    /// <summary>Interval variables that may not overlap.</summary>
    private static void OneAtATime(CpModel model, Instance instance, IReadOnlyList<IntVar> starts) =>
        model.AddNoOverlap(starts.Select((s, i) => model.NewFixedSizeIntervalVar(s, instance.Seconds[i], $"section{i}")));

    /// <summary>A Boolean for every pair says which comes first; a start is the sum of what comes before it.</summary>
    private static void FirstAndThen(CpModel model, Instance instance, IReadOnlyList<IntVar> starts)
    {
        var before = Enumerable.Range(0, instance.Count).Select(_ => new List<LinearExpr>()).ToArray();
        for (var a = 0; a < instance.Count; a++)
        {
            for (var b = a + 1; b < instance.Count; b++)
            {
                var first = model.NewBoolVar($"{a}first{b}");
                model.Add(starts[b] >= starts[a] + instance.Seconds[a]).OnlyEnforceIf(first);
                model.Add(starts[a] >= starts[b] + instance.Seconds[b]).OnlyEnforceIf(first.Not());
                before[b].Add(first * instance.Seconds[a]);
                before[a].Add(instance.Seconds[b] - (first * instance.Seconds[b]));
            }
        }

        for (var i = 0; i < instance.Count; i++) model.Add(starts[i] == LinearExpr.Sum(before[i]));
    }

    /// <summary>Read backwards, an order has the same ages: the first section listed goes before the last.</summary>
    private static void BreakMirror(CpModel model, Instance instance, IReadOnlyList<IntVar> starts, int[] hint)
    {
        if (hint[0] > hint[^1])
            for (var i = 0; i < hint.Length; i++) hint[i] = instance.TotalS - hint[i] - instance.Seconds[i];
        model.Add(starts[0] < starts[^1]);
    }

    /// <summary>Starts of the known order without its waits, seconds.</summary>
    private static int[] Hint(Instance instance, FoundOrder known)
    {
        var starts = new int[instance.Count];
        var now = 0;
        foreach (var placed in known.Sections.OrderBy(p => p.StartMs))
        {
            starts[placed.Section] = now;
            now += instance.Seconds[placed.Section];
        }

        return starts;
    }
}
