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

    /// <summary>Twenty grids of 4 × 10 with mixed times, each proven from a cold search.</summary>
    public static void Grid4x10(Options options)
    {
        OwnSearch.Solve(Families.Grid(new Random(0), 4, 10, 0), options.LimitS, out _);
        var outcomes = Enumerable.Range(0, 20)
            .Select(i => OwnSearch.Solve(Families.Grid(new Random((options.Seed * 1000) + i), 4, 10, i), options.LimitS, out _).Outcome)
            .ToList();
        Report.Write(options, $"grid-4x10-seed-{options.Seed}",
        [
            "# Proof on a 4 × 10 grid with mixed times",
            "",
            $"Twenty grids from seed {options.Seed}, times of 30 to 120 s, one thread. {Report.Machine}.",
            "",
            .. Report.Table(["proven", "median", "slowest", "aim"], [[$"{outcomes.Count(o => o.Proven)} of 20", Report.Time(Report.Median(outcomes.Select(o => o.Seconds))), Report.Time(outcomes.Max(o => o.Seconds)), "2 s"]]),
        ]);
    }
}
