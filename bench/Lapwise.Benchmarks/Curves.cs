using System.Diagnostics;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;

namespace Lapwise.Benchmarks;

/// <summary>The core alone: how long a proof takes as sections grow, and on the yardstick grid.</summary>
public static class Curves
{
    private static readonly int[] Along = [3, 5, 8, 10, 15, 20, 30, 50, 75, 100];

    /// <summary>Four sections across, more and more along, up to 400.</summary>
    public static void BySections(Options options)
    {
        var rows = new List<string[]>();
        foreach (var along in Along)
        {
            foreach (var make in new Func<Random, Instance>[] { r => Families.Grid(r, 4, along, 1), r => Families.Kitchen(r, 1, 4 * along) })
            {
                var instance = make(new Random(options.Seed));
                rows.Add(Row(instance.Family, instance.Problem, options.LimitS));
            }
        }

        foreach (var (crew, along) in new[] { (2, 25), (4, 25), (2, 100), (4, 100), (1, 500), (4, 500) })
            rows.Add(Row("grid", Families.Grid(new Random(options.Seed), 4, along, 1).Problem with { Crew = crew }, options.LimitS));

        Report.Write(options, $"curve-seed-{options.Seed}",
        [
            "# Time and memory against the number of sections",
            "",
            "Mixed times of 30 to 120 s. A grid four across and as long as it takes; a kitchen as in the contest. Crews and the most",
            FormattableString.Invariant($"sections that are taken follow for their memory. Stopped after {options.LimitS:0} s where no proof came; gap = (best − bound) / best."),
            $"Memory is managed memory above the start. {Report.Machine}.",
            "",
            .. Report.Table(["family", "people", "sections", "time", "worst lap age, s", "bound, s", "gap", "memory"], rows),
            "",
            $"More than {OrderCheck.MostSections} sections are refused: {OrderCheck.Faults(Families.Grid(new Random(options.Seed), 4, 1250, 1).Problem)[0].Text(Lapwise.Core.Explain.Voice.Default)}",
            "",
            "## One person, 200 sections, 2 s each",
            "",
            .. Report.Table(["family", "seed", "time", "worst lap age, s", "bound, s", "gap"], TwoHundred(options)),
            "",
            "Bounded by turns from windows, a few sections that lie together, which no order of the whole can beat. Random trees are so",
            "shallow that a window holds too few of them: there the neighbourhood bound over the whole tree is the better one.",
        ]);
    }

    private static string[] Row(string family, OrderProblem problem, double limitS)
    {
        var (outcome, _) = OwnSearch.Solve(problem, limitS, out var peak);
        string[] row = [family, $"{problem.Crew}", $"{problem.Sections.Count}", Report.Time(outcome.Seconds), $"{outcome.WorstLapAgeS}", $"{outcome.BoundS}", Gap(outcome), FormattableString.Invariant($"{peak / 1048576.0:0.0} MiB")];
        Console.Error.WriteLine(string.Join(", ", row));
        return row;
    }

    private static IEnumerable<string[]> TwoHundred(Options options) =>
        from seed in Enumerable.Range(options.Seed, 5)
        from make in new Func<Random, Instance>[] { r => Families.Grid(r, 4, 50, 1), r => Families.Grid(r, 5, 40, 1), r => Families.Kitchen(r, 1, 200), r => Families.Tree(r, 1, 200) }
        let instance = make(new Random(seed))
        let outcome = OwnSearch.Solve(instance, 2, out _).Outcome
        select new[] { $"{instance.Family} {instance.Name[..^2]}", $"{seed}", Report.Time(outcome.Seconds), $"{outcome.WorstLapAgeS}", $"{outcome.BoundS}", Gap(outcome) };

    private static string Gap(Outcome outcome) => outcome.Proven ? "proven" : FormattableString.Invariant($"{(outcome.WorstLapAgeS - outcome.BoundS) * 100.0 / outcome.WorstLapAgeS:0.0} %");

    /// <summary>Reading and taking off a kitchen of twelve tops.</summary>
    public static void TakeOff(Options options)
    {
        var document = Samples.TwelveTops();
        var times = Enumerable.Range(0, 300).Select(_ =>
        {
            var watch = Stopwatch.StartNew();
            var job = JobReading.Read(document, Samples.Library).Job!;
            var read = watch.Elapsed.TotalSeconds;
            var tops = Measuring.Measure(job).Tops.Count;
            return (Read: read, Measured: watch.Elapsed.TotalSeconds - read, Tops: tops);
        }).Skip(100).ToList();
        if (times[0].Tops != 12) throw new InvalidOperationException($"{times[0].Tops} tops were taken off, not 12");

        Report.Write(options, "takeoff",
        [
            "# Take-off of a kitchen of twelve tops",
            "",
            $"The tops of all samples on one document, 200 runs after a warm-up of 100. {Report.Machine}.",
            "",
            .. Report.Table(
                ["step", "median", "slowest", "aim"],
                [
                    ["reading the document", Report.Time(Report.Median(times.Select(t => t.Read))), Report.Time(times.Max(t => t.Read)), ""],
                    ["taking off", Report.Time(Report.Median(times.Select(t => t.Measured))), Report.Time(times.Max(t => t.Measured)), "5 ms"],
                ]),
        ]);
    }

    /// <summary>Twenty grids of 4 × 10 with mixed times, each proven from a cold search.</summary>
    public static void Grid4x10(Options options)
    {
        OwnSearch.Solve(Families.Grid(new Random(0), 4, 10, 0), options.LimitS, out _);
        var runs = Enumerable.Range(1, 20)
            .Select(i => Families.Grid(new Random((options.Seed * 1000) + i), 4, 10, i))
            .Select(instance => (Instance: instance, OwnSearch.Solve(instance, options.LimitS, out _).Outcome))
            .ToList();
        foreach (var (instance, _) in runs) instance.Save(Path.Combine(options.Folder, "instances", $"grid-4x10-seed-{options.Seed}"));

        Report.Write(options, $"grid-4x10-seed-{options.Seed}",
        [
            "# Proof on a 4 × 10 grid with mixed times",
            "",
            $"Twenty grids from seed {options.Seed}, times of 30 to 120 s, one thread; instances in `bench/instances/grid-4x10-seed-{options.Seed}`. {Report.Machine}.",
            "",
            .. Report.Table(
                ["proven", "within 2 s", "median", "slowest"],
                [[$"{runs.Count(r => r.Outcome.Proven)} of 20", $"{runs.Count(r => r.Outcome is { Proven: true, Seconds: <= 2 })} of 20", Report.Time(Report.Median(runs.Select(r => r.Outcome.Seconds))), Report.Time(runs.Max(r => r.Outcome.Seconds))]]),
            "",
            .. Report.Table(
                ["grid", "worst lap age, s", "bound, s", "time"],
                runs.Select(r => new[] { r.Instance.Name, $"{r.Outcome.WorstLapAgeS}", $"{r.Outcome.BoundS}", Report.Time(r.Outcome.Seconds) })),
        ]);
    }
}
