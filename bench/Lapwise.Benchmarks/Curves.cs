using System.Diagnostics;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

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
                var (outcome, _) = OwnSearch.Solve(instance, options.LimitS, out var peak);
                rows.Add([instance.Family, $"{instance.Count}", Report.Time(outcome.Seconds), $"{outcome.WorstLapAgeS}", $"{outcome.BoundS}", outcome.Proven ? "proven" : "bounded", FormattableString.Invariant($"{peak / 1048576.0:0.0} MiB")]);
                Console.Error.WriteLine(string.Join(", ", rows[^1]));
            }
        }

        Report.Write(options, $"curve-seed-{options.Seed}",
        [
            "# Time and memory against the number of sections",
            "",
            "One person, mixed times of 30 to 120 s. A grid four across and as long as it takes; a kitchen as in the contest.",
            FormattableString.Invariant($"Stopped after {options.LimitS:0} s where no proof came. Memory is managed memory above the start. {Report.Machine}."),
            "",
            .. Report.Table(["family", "sections", "time", "worst lap age, s", "bound, s", "state", "memory"], rows),
        ]);
    }

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
