using System.Diagnostics;
using Google.OrTools.Sat;
using Lapwise.Core.Work.Order;

namespace Lapwise.Benchmarks;

/// <summary>Two, three and four people on grids, beside the general solver on the same instances in the same run.</summary>
public static class Crews
{
    private static readonly (int Across, int Along)[] Grids = [(3, 4), (3, 6), (3, 8), (4, 6)];

    public static void Run(Options options)
    {
        Solve(Problem(new Random(0), 3, 4, 2), options.LimitS);
        var rows = new List<string[]>();
        foreach (var crew in new[] { 2, 3, 4 })
            foreach (var (across, along) in Grids)
                rows.Add(Row(options, crew, across, along));

        Report.Write(options, $"crews-seed-{options.Seed}",
        [
            "# The order of work for several people: the core beside a general solver",
            "",
            "Grids with mixed times of 80 to 179 s (uniform, whole seconds); everybody at the same pace; waiting allowed; worst lap age",
            "minimised outright. The core stops at a proof or at the limit, one thread. CP-SAT (2 workers, fixed seed) has one",
            "cumulative resource as wide as the crew, the core's own starting bound, and the core's final plan as a complete hint;",
            FormattableString.Invariant($"its gap is what it proves by itself within the same {options.LimitS:0} s. Gap = (best − bound) / best. Seed {options.Seed}, {options.Each} grids a row. {Report.Machine}."),
            "",
            .. Report.Table(["people", "grid", "core proved", "core median", "core slowest", "core worst gap", "CP-SAT proved", "CP-SAT median", "CP-SAT worst gap"], rows),
        ]);
    }

    private static string[] Row(Options options, int crew, int across, int along)
    {
        var runs = Enumerable.Range(1, options.Each).Select(i =>
        {
            var problem = Problem(new Random((options.Seed * 1000) + i), across, along, crew);
            var own = Solve(problem, options.LimitS);
            var rival = Rival(problem, own.Order, options.LimitS);
            if (rival.BoundS * 1000 > own.Order.WorstLapAgeMs) throw new InvalidOperationException($"{crew} on {across}x{along}: the rival's bound {rival.BoundS} s passes the core's plan");
            Console.Error.WriteLine(FormattableString.Invariant($"{crew} on {across}x{along} #{i}: {own.Seconds:0.00} s, {own.Order.WorstLapAgeMs}/{own.Order.BoundMs} ms; CP-SAT {rival.Seconds:0.0} s, bound {rival.BoundS} s"));
            return (own.Seconds, own.Order, Rival: rival);
        }).ToList();
        static double Gap(double best, double bound) => (best - bound) / best;
        return
        [
            $"{crew}", $"{across} × {along}",
            $"{runs.Count(r => r.Order.Proven)} of {runs.Count}",
            Report.Time(Report.Median(runs.Select(r => r.Seconds))),
            Report.Time(runs.Max(r => r.Seconds)),
            FormattableString.Invariant($"{runs.Max(r => Gap(r.Order.WorstLapAgeMs, r.Order.BoundMs)):0.0%}"),
            $"{runs.Count(r => r.Rival.Proven)} of {runs.Count}",
            Report.Time(Report.Median(runs.Select(r => r.Rival.Seconds))),
            FormattableString.Invariant($"{runs.Max(r => Gap(r.Rival.WorstLapAgeS, r.Rival.BoundS)):0.0%}"),
        ];
    }

    private static OrderProblem Problem(Random random, int across, int along, int crew)
    {
        var grid = Families.Grid(random, across, along, 0).Problem;
        return grid with { Crew = crew, Sections = [.. grid.Sections.Select(s => s with { DurationMs = [1000L * random.Next(80, 180)] })] };
    }

    private static (double Seconds, FoundOrder Order) Solve(OrderProblem problem, double limitS)
    {
        var watch = Stopwatch.StartNew();
        var search = new OrderSearch(problem);
        while (watch.Elapsed.TotalSeconds < limitS && search.Step(2_000)) { }
        return (watch.Elapsed.TotalSeconds, search.Best);
    }

    private static Outcome Rival(OrderProblem problem, FoundOrder known, double limitS)
    {
        var watch = Stopwatch.StartNew();
        var boundS = (int)(new OrderSearch(problem).Best.BoundMs / 1000);
        var seconds = problem.Sections.Select(s => (int)(s.DurationMs[0] / 1000)).ToList();
        var model = new CpModel();
        var starts = seconds.Select((s, i) => model.NewIntVar(0, seconds.Sum() - s, $"start{i}")).ToList();
        var age = model.NewIntVar(boundS, (int)((known.WorstLapAgeMs + 999) / 1000), "age");
        foreach (var lap in problem.Laps)
        {
            model.Add(age >= starts[lap.B] + seconds[lap.B] - starts[lap.A]);
            model.Add(age >= starts[lap.A] + seconds[lap.A] - starts[lap.B]);
        }

        var together = model.AddCumulative(problem.Crew);
        for (var i = 0; i < starts.Count; i++) together.AddDemand(model.NewFixedSizeIntervalVar(starts[i], seconds[i], $"section{i}"), 1);
        foreach (var p in known.Sections) model.AddHint(starts[p.Section], p.StartMs / 1000);
        model.Minimize(age);
        using var solver = new CpSolver();
        solver.StringParameters = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"num_workers:2,random_seed:1,max_time_in_seconds:{limitS}");
        var found = solver.Solve(model) is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        // Its starts are whole seconds, so its own best may be up to a second above the core's.
        return new Outcome(watch.Elapsed.TotalSeconds, found ? (int)solver.ObjectiveValue : (int)((known.WorstLapAgeMs + 999) / 1000), (int)Math.Round(solver.BestObjectiveBound));
    }
}
