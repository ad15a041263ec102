namespace Lapwise.Benchmarks;

/// <summary>The core's exact order search beside CP-SAT: the same instances, in the same run, on the same machine.</summary>
public static class Contest
{
    /// <summary>One instance, solved by both.</summary>
    /// <param name="Rival">The better of the general solver's formulations on this instance.</param>
    public sealed record Row(Instance Instance, Outcome Own, Outcome Rival, string RivalName)
    {
        /// <summary>How many times longer the general solver took. Where it ran out of time the true ratio is larger; where neither proved, null.</summary>
        public double? Ratio => Own.Proven ? Rival.Seconds / Own.Seconds : Rival.Proven ? Rival.Seconds / Own.Seconds : null;
    }

    public static void Run(Options options)
    {
        WarmUp();
        IReadOnlyList<Instance> instances = [.. Families.Of(options.Seed, options.Sizes, options.Each), .. Samples.Instances()];
        foreach (var instance in instances) instance.Save(Path.Combine(options.Folder, "instances", $"seed-{options.Seed}"));

        var rows = new List<Row>();
        foreach (var instance in instances)
        {
            rows.Add(Solve(instance, options.LimitS));
            Console.Error.WriteLine(Describe(rows[^1]));
        }

        Report.Write(options, $"orders-seed-{options.Seed}", Page(options, rows));
    }

    public static Row Solve(Instance instance, double limitS)
    {
        var boundS = (int)((OwnSearch.Start(instance).BoundMs + 999) / 1000);
        var (own, order) = OwnSearch.SolveSteadily(instance, limitS);
        var rivals = CpSat.Formulations
            .Select(f => (f.Name, Outcome: CpSat.Solve(instance, f.Line, order, boundS, limitS)))
            .ToList();
        var best = rivals.OrderByDescending(r => r.Outcome.Proven).ThenBy(r => r.Outcome.Proven ? r.Outcome.Seconds : -r.Outcome.BoundS).First();
        Check(instance, own, order.Sections.OrderBy(p => p.StartMs).Select(p => p.Section).ToList(), rivals.Select(r => r.Outcome));
        return new(instance, own, best.Outcome, best.Name);
    }

    /// <summary>The two must agree, and the core's order must have the age it claims; a benchmark of wrong answers is worth nothing.</summary>
    private static void Check(Instance instance, Outcome own, IReadOnlyList<int> order, IEnumerable<Outcome> rivals)
    {
        if (order.Distinct().Count() != instance.Count || instance.WorstLapAgeS(order) != own.WorstLapAgeS)
            throw new InvalidOperationException($"{instance.Family} {instance.Name}: the core's order has not the age it claims");
        foreach (var rival in rivals)
        {
            if (own.BoundS > rival.WorstLapAgeS || rival.BoundS > own.WorstLapAgeS)
                throw new InvalidOperationException($"{instance.Family} {instance.Name}: {own} and {rival} cannot both be right");
        }
    }

    private static void WarmUp()
    {
        foreach (var instance in Families.Of(seed: 0, [12], each: 1)) Solve(instance, limitS: 5);
    }

    private static string Describe(Row row) =>
        FormattableString.Invariant($"{row.Instance.Family} {row.Instance.Name}: own {row.Own.Seconds:0.0000} s {row.Own.WorstLapAgeS}/{row.Own.BoundS}, CP-SAT ({row.RivalName}) {row.Rival.Seconds:0.00} s {row.Rival.WorstLapAgeS}/{row.Rival.BoundS}");

    private static IEnumerable<string> Page(Options options, IReadOnlyList<Row> rows)
    {
        var ratios = rows.Select(r => r.Ratio).OfType<double>().ToList();
        var worst = rows.Where(r => r.Ratio is not null).MinBy(r => r.Ratio);
        return
        [
            "# Exact order for one person: the core beside a general solver",
            "",
            "Worst lap age = the larger end less the smaller start over every lap; minimised, and proven best. Both solve the same",
            "instances in the same run after the same warm-up. The general solver is CP-SAT (Google.OrTools 9.15.6755, 2 workers,",
            "fixed seed); it is given the bound the core starts from, the core's final order as a complete hint and as a ceiling, and",
            "the mirror symmetry broken; per instance the better of two formulations counts (intervals that may not overlap; a Boolean",
            $"for each pair, starts as sums). A run out of time ({options.LimitS:0} s) counts as that time, so its ratio is a lower bound.",
            "The core runs on one thread.",
            "",
            $"Seed {options.Seed}; instances in `bench/instances/seed-{options.Seed}`. {Report.Machine}.",
            "",
            .. Report.Table(
                ["family", "sections", "instances", "core proved", "core median", "core slowest", "CP-SAT proved", "CP-SAT median", "ratio (geometric mean)", "smallest ratio"],
                rows.GroupBy(r => (r.Instance.Family, r.Instance.Count)).OrderBy(g => g.Key.Family, StringComparer.Ordinal).ThenBy(g => g.Key.Count).Select(g => Line(g.Key.Family, g.Key.Count, [.. g]))),
            "",
            $"Over all {rows.Count} instances: the core proved {rows.Count(r => r.Own.Proven)}, CP-SAT {rows.Count(r => r.Rival.Proven)};",
            FormattableString.Invariant($"geometric mean of the ratio {Report.GeometricMean(ratios):0} (at least), smallest {worst?.Ratio ?? 0:0.0} ({worst?.Instance.Family} {worst?.Instance.Name});"),
            FormattableString.Invariant($"the core's slowest {rows.Max(r => r.Own.Seconds):0.000} s."),
            "",
            "## By family, all sizes",
            "",
            .. Report.Table(
                ["family", "instances", "core proved", "CP-SAT proved", "ratio (geometric mean)", "smallest ratio"],
                rows.GroupBy(r => r.Instance.Family).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => Family(g.Key, [.. g]))),
        ];
    }

    private static string[] Line(string family, int sections, IReadOnlyList<Row> rows) =>
    [
        family,
        $"{sections}",
        $"{rows.Count}",
        $"{rows.Count(r => r.Own.Proven)}",
        Report.Time(Report.Median(rows.Select(r => r.Own.Seconds))),
        Report.Time(rows.Max(r => r.Own.Seconds)),
        $"{rows.Count(r => r.Rival.Proven)}",
        Report.Time(Report.Median(rows.Select(r => r.Rival.Seconds))),
        Mean(rows),
        Smallest(rows),
    ];

    private static string[] Family(string family, IReadOnlyList<Row> rows) =>
        [family, $"{rows.Count}", $"{rows.Count(r => r.Own.Proven)}", $"{rows.Count(r => r.Rival.Proven)}", Mean(rows), Smallest(rows)];

    private static string Mean(IReadOnlyList<Row> rows) =>
        rows.All(r => r.Ratio is null) ? "neither proved" : FormattableString.Invariant($"{(rows.All(r => r.Rival.Proven) ? "" : "≥ ")}{Report.GeometricMean(rows.Select(r => r.Ratio).OfType<double>()):0}");

    private static string Smallest(IReadOnlyList<Row> rows) => rows.Min(r => r.Ratio) is { } least ? FormattableString.Invariant($"{least:0.0}") : "–";
}
