using System.Diagnostics;
using System.Globalization;
using Google.OrTools.Sat;
using Lapwise.Scheduling;
using Lapwise.Shared;

namespace Lapwise.Benchmarks;

/// <summary>Published instances through the product's own model beside a plain one, and invented shops of thirty jobs.</summary>
public static class Calendars
{
    private const double Deterministic = 60;
    private const double LookedAtS = 30;
    private const double StoppedAtS = 60;
    private const double ShortS = 0.2;

    public static void Run(Options options)
    {
        var rows = Published(options.Folder);
        Solve(rows[0].Path, out _);
        var solved = rows.Select(r => Solved(r.Path, r.Optimum, r.Set)).ToList();
        List<string[]> Shops(int tents) => [.. Enumerable.Range(options.Seed, options.Each).Select(seed => Shop(seed, tents))];
        var (tented, bare) = (Shops(3), Shops(0));
        string[] heading = ["seed", "visits", "first answer", "its gap", $"gap after {LookedAtS:0} s", $"gap after {StoppedAtS:0} s", "time"];

        static string S(double seconds) => Report.Time(seconds);
        var (own, plain) = (solved.Sum(s => s.OwnS), solved.Sum(s => s.PlainS));
        Report.Write(options with { Folder = "bench" }, "schedule",
        [
            "# Scheduling", "", Report.Machine, "",
            $"{solved.Count} published instances ({string.Join(", ", solved.Select(s => s.Set).Distinct())}), {solved.Count(s => s.Agrees)} proved or refuted as listed. One worker, the same parameters for both, one after the other in the same run. "
                + $"Product's model {S(own)}, plain model {S(plain)}: {Ratio(own / plain)} of the plain time; geometric mean of the ratios {Ratio(Report.GeometricMean(solved.Select(s => s.OwnS / s.PlainS)))}, worst {Ratio(solved.Max(s => s.OwnS / s.PlainS))}.", "",
            .. Report.Table(["set", "instance", "listed", "product", "plain", "product time", "plain time", "ratio"],
                solved.Select(s => new[] { s.Set, s.Name, s.Listed, s.Own, s.Plain, S(s.OwnS), S(s.PlainS), Ratio(s.OwnS / s.PlainS) })),
            "", "A listed interval is closed here where the product says so.", "",
            "## Thirty jobs, three crews, sixty days (invented)", "",
            $"First answer, and the gap while one waits; stopped at {StoppedAtS:0} s where it had not ended before. Six visits a job, recoat and sink windows, ways between sites. With three tents:", "",
            .. Report.Table(heading, tented), "",
            "Without tents:", "",
            .. Report.Table(heading, bare),
        ]);
    }

    private static string Ratio(double ratio) => ratio.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>Every instance that lies beside a list of what is known of it.</summary>
    /// <exception cref="FormatException">There is none.</exception>
    public static IReadOnlyList<(string Path, string Optimum, string Set)> Published(string folder)
    {
        string[] lists = Directory.Exists(folder) ? [.. Directory.GetFiles(folder, List, SearchOption.AllDirectories).Order(StringComparer.Ordinal)] : [];
        IReadOnlyList<(string, string, string)> rows = [.. lists.SelectMany(Listed)];
        return rows.Count > 0 ? rows : throw new FormatException(
            $"schedule found no published instance in {Path.GetFullPath(folder)}, nor in a folder within: it looks for {List}, each line after the first the name of a file beside it, a comma, and its best known end (60, 60..62 or unsat); "
            + $"{(lists.Length == 0 ? $"no {List} is there" : $"of {lists.Length} found, none names a file that is there")}. Give the folder that holds them with --folder.");
    }

    private const string List = "optimum.csv";

    private static IEnumerable<(string Path, string Optimum, string Set)> Listed(string file)
    {
        var folder = Path.GetDirectoryName(file)!;
        return File.ReadLines(file).Skip(1).Select(l => l.Split(',')).Where(c => c.Length > 1)
            .Select(c => (Path.Combine(folder, c[0]), c[1].Trim(), Path.GetFileName(folder))).Where(r => File.Exists(r.Item1));
    }

    private sealed record Result(string Set, string Name, string Listed, string Own, string Plain, double OwnS, double PlainS, bool Agrees);

    private static Result Solved(string path, string listed, string set)
    {
        // In turn, and the best of several of each, the more the shorter: many take a few milliseconds.
        var (own, plain) = ("", "");
        var (ownS, plainS) = (double.MaxValue, double.MaxValue);
        for (var i = 0; i < (ownS < ShortS ? 20 : ownS < 1 ? 5 : 1); i++)
        {
            own = Solve(path, out var a);
            plain = Plainly(path, out var b);
            (ownS, plainS) = (Math.Min(ownS, a), Math.Min(plainS, b));
        }

        var agrees = listed.Split("..") is [var low, var high] ? long.TryParse(own, out var value) && value >= long.Parse(low, CultureInfo.InvariantCulture) && value <= long.Parse(high, CultureInfo.InvariantCulture) : own == listed;
        Console.Error.WriteLine($"{set} {Path.GetFileName(path)}: {listed}, {own}, {plain}");
        return new Result(set, Path.GetFileName(path), listed, own, plain, ownS, plainS, agrees);
    }

    private static string Solve(string path, out double seconds)
    {
        var problem = PublishedSchedules.Read(path);
        var watch = Stopwatch.StartNew();
        var answer = Scheduler.Solve(problem, new Effort(Deterministic));
        seconds = watch.Elapsed.TotalSeconds;
        return answer switch
        {
            Answer.Found(var s) when Checking.Broken(problem, s.Visits).Count > 0 => "BROKEN",
            Answer.Found(var s) => s.IsProven ? $"{s.LastEnd}" : $"{s.Bound}..{s.LastEnd}",
            Answer.Impossible => "unsat",
            _ => "?",
        };
    }

    /// <summary>Starts, intervals and cumulatives; nothing else.</summary>
    private static string Plainly(string path, out double seconds)
    {
        var problem = PublishedSchedules.Read(path);
        var watch = Stopwatch.StartNew();
        var model = new CpModel();
        var starts = problem.Visits.Select((v, i) => model.NewIntVar(0, problem.Horizon, $"s{i}")).ToList();
        var intervals = problem.Visits.Select((v, i) => model.NewFixedSizeIntervalVar(starts[i], v.Length, $"i{i}")).ToList();
        foreach (var lag in problem.Lags) model.Add(starts[lag.To] - starts[lag.From] >= lag.Least);
        for (var gear = 0; gear < problem.Gear.Count; gear++)
        {
            var cumulative = model.AddCumulative(problem.Gear[gear].Count);
            for (var i = 0; i < starts.Count; i++)
                foreach (var need in problem.Visits[i].Needs) if (need.Gear == gear) cumulative.AddDemand(intervals[i], need.Amount);
        }

        model.Minimize(starts[^1]);
        using var solver = new CpSolver { StringParameters = string.Create(CultureInfo.InvariantCulture, $"num_workers:1,random_seed:1,max_deterministic_time:{Deterministic}") };
        var status = solver.Solve(model);
        seconds = watch.Elapsed.TotalSeconds;
        return status switch { CpSolverStatus.Optimal => $"{solver.ObjectiveValue:0}", CpSolverStatus.Infeasible => "unsat", CpSolverStatus.Unknown => "?", _ => $"{solver.BestObjectiveBound:0}..{solver.ObjectiveValue:0}" };
    }

    private static string[] Shop(int seed, int tents)
    {
        var problem = Shops.Make(seed, 30, 3, 60, tents);
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(StoppedAtS));
        var watch = Stopwatch.StartNew();
        List<(double S, double Gap)> better = [];
        var answer = Scheduler.Solve(problem, Effort.Patient, s => better.Add((watch.Elapsed.TotalSeconds, s.Gap)), stop: stop.Token);
        var took = watch.Elapsed.TotalSeconds;
        Console.Error.WriteLine($"shop {seed}, {tents} tents: {string.Join(", ", better.Select(b => $"{b.S:0.0} s {Percent(b.Gap)}"))}");
        if (answer is not Answer.Found(var found)) return [$"{seed}", $"{problem.Visits.Count}", "none", "", "", answer.GetType().Name, Report.Time(took)];
        var broken = Checking.Broken(problem, found.Visits).Count > 0 ? " BROKEN" : "";
        return
        [
            $"{seed}", $"{problem.Visits.Count}", Report.Time(better[0].S), Percent(better[0].Gap), Percent(better.Last(b => b.S <= LookedAtS || b == better[0]).Gap),
            Percent(found.Gap) + (found.IsProven ? " (proven)" : "") + broken, Report.Time(took),
        ];
    }

    private static string Percent(double share) => (100 * share).ToString("0.0", CultureInfo.InvariantCulture) + " %";
}
