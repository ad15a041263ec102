using CsCheck;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Tests.Work.Order;

/// <summary>Too many sections for depth first from nothing: found by a beam, or along the best order known.</summary>
public sealed class ManySectionsTests
{
    /// <summary>Branching runs and wide grids, with precedence and lap limits: what is found is what it says it is.</summary>
    [Fact]
    public void What_is_found_keeps_its_age_its_limits_and_what_must_come_first()
    {
        var gen = from branches in Gen.Bool
                  from columns in Gen.Int[10, 18]
                  let sections = 5 * columns
                  from seed in Gen.Int[0, 1_000_000]
                  from before in Gen.Select(Gen.Int[0, sections - 1], Gen.Int[0, sections - 1]).Array[0, 3]
                  from limited in Gen.Int[0, sections - 2]
                  select (Problem: branches ? Branching(sections, seed) : FiveAcross(columns, seed), Before: before.Where(b => b.Item1 < b.Item2).ToArray(), Limited: limited);
        gen.Sample(t =>
        {
            var laps = t.Problem.Laps.Select((l, i) => i == t.Limited ? l with { LimitMs = 600_000 } : l).ToList();
            var problem = t.Problem with { Before = t.Before, Laps = laps };
            var order = OrderSearch.Solve(problem, mostSteps: 60_000);
            Assert.Equal(Enumerable.Range(0, problem.Sections.Count), order.Sections.Select(p => p.Section).Order());
            Assert.All(order.Sections.Zip(order.Sections.Skip(1)), pair => Assert.True(pair.Second.StartMs >= pair.First.EndMs));
            Assert.All(order.Sections, p => Assert.Equal(problem.Sections[p.Section].DurationMs[0], p.EndMs - p.StartMs));
            var at = order.Sections.ToDictionary(p => p.Section);
            Assert.All(problem.Before, b => Assert.True(at[b.First].EndMs <= at[b.Then].StartMs));
            Assert.InRange(order.BoundMs, 0, order.WorstLapAgeMs);
            Assert.Equal(order.WorstLapAgeMs, laps.Max(l => Age(l, at)));
            Assert.Equal(order.KeepsLimits, laps.TrueForAll(l => l.LimitMs is not { } limit || Age(l, at) <= limit));
        }, iter: 40);
    }

    /// <summary>Laps are only laid where a given order of one person keeps the age, so no bound, of a crew either, may pass it.</summary>
    [Fact]
    public void No_bound_passes_an_order_that_the_laps_were_laid_for()
    {
        var gen = from count in Gen.Int[2, 60]
                  from times in Gen.Long[1, 90].Array[count]
                  from age in Gen.Long[180, 700]
                  from crew in Gen.Int[1, 3]
                  from more in Gen.Int[0, 30]
                  from seed in Gen.Int[0, int.MaxValue - 1]
                  select (Problem: Laid(times, age, more, new Random(seed)) with { Crew = crew }, age);
        gen.Sample(t =>
        {
            var search = new OrderSearch(t.Problem);
            Assert.InRange(search.Best.BoundMs, 0, t.age);
            for (var slice = 0; slice < 20 && search.Step(500); slice++) Assert.InRange(search.Best.BoundMs, 0, t.age);
        }, iter: 200);
    }

    /// <summary>
    /// By hand: three runs meet in a section of 10 with one of 100, 100 and 10, and end in four of 30 each. Two runs' ends come
    /// within 2T − 100 of the middle's start, all from the middle to there, 460, within 2(2T − 100) − 10: T is 167.5 at least. Counting
    /// every section between as the shortest, 10, it would be 152.5.
    /// </summary>
    [Fact]
    public void The_bound_counts_each_section_in_between_with_its_own_time()
    {
        long[] times = [10, 100, 100, 10, .. Enumerable.Repeat(30L, 12)];
        var problem = new OrderProblem(
            [.. times.Select((t, i) => new OrderSection($"s{i}", [t]))],
            [.. Enumerable.Range(1, 15).Select(i => new OrderLap(i < 4 ? 0 : i / 4, i))],
            []);
        var search = new OrderSearch(problem);
        Assert.True(search.Best.BoundMs >= 168);
        Assert.InRange(OrderSearch.Solve(problem).WorstLapAgeMs, search.Best.BoundMs, search.Best.WorstLapAgeMs);
    }

    /// <summary>The best sweep is more than twice the bound here, and depth-first search finds nothing better.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void On_a_branching_run_of_two_hundred_sections_the_worst_age_comes_near_the_bound(int seed)
    {
        var problem = Branching(200, seed);
        var order = OrderSearch.Solve(problem, mostSteps: 1_600_000);
        Assert.InRange(order.BoundMs, order.WorstLapAgeMs * 95 / 100, order.WorstLapAgeMs);
        Assert.Equal(order.Sections, OrderSearch.Solve(problem, mostSteps: 1_600_000).Sections);
        var at = order.Sections.ToDictionary(p => p.Section);
        Assert.Equal(order.WorstLapAgeMs, problem.Laps.Max(l => Age(l, at)));
    }

    /// <summary>Asked from nothing for each smaller age, the worst stays up to 6 % above the bound after as many steps.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void On_a_grid_of_two_hundred_sections_five_across_the_worst_age_comes_near_the_bound(int seed)
    {
        var problem = FiveAcross(40, seed);
        var order = OrderSearch.Solve(problem, mostSteps: 2_400_000);
        Assert.InRange(order.BoundMs, order.WorstLapAgeMs * 98 / 100, order.WorstLapAgeMs);
        var at = order.Sections.ToDictionary(p => p.Section);
        Assert.Equal(order.WorstLapAgeMs, problem.Laps.Max(l => Age(l, at)));
    }

    private static OrderProblem Laid(long[] times, long age, int more, Random random)
    {
        var order = Enumerable.Range(0, times.Length).ToArray();
        random.Shuffle(order);
        var starts = new long[times.Length];
        long now = 0;
        foreach (var i in order) now = (starts[i] = now) + times[i];
        long Age(int a, int b) => Math.Max(starts[a] + times[a], starts[b] + times[b]) - Math.Min(starts[a], starts[b]);
        var near = (from a in Enumerable.Range(0, times.Length) from b in Enumerable.Range(0, a) where Age(a, b) <= age select (a, b)).ToArray();
        random.Shuffle(near);
        // A tree first, since there the ways are long; then some laps more.
        var joined = Enumerable.Range(0, times.Length).ToArray();
        var tree = near.Where(l =>
        {
            var (from, to) = (joined[l.a], joined[l.b]);
            if (from == to) return false;
            for (var i = 0; i < joined.Length; i++) joined[i] = joined[i] == from ? to : joined[i];
            return true;
        }).ToArray();
        return new([.. times.Select((t, i) => new OrderSection($"s{i}", [t]))], [.. tree.Concat(near.Take(more)).Select(l => new OrderLap(l.a, l.b))], []);
    }

    private static long Age(OrderLap lap, Dictionary<int, Placed> at) => Math.Max(at[lap.A].EndMs, at[lap.B].EndMs) - Math.Min(at[lap.A].StartMs, at[lap.B].StartMs);

    /// <summary>Every section is joined to one before it that has fewer than four laps.</summary>
    private static OrderProblem Branching(int sections, int seed)
    {
        var random = new Random(seed);
        var laps = new List<(int, int)>();
        var meets = new int[sections];
        for (var i = 1; i < sections; i++)
        {
            var parent = random.Next(i);
            while (meets[parent] == 4) parent = random.Next(i);
            meets[parent]++;
            meets[i]++;
            laps.Add((parent, i));
        }

        return MixedTimes(Problems.UnitTime(sections, laps), random);
    }

    private static OrderProblem FiveAcross(int columns, int seed) => MixedTimes(Problems.UnitTime(5 * columns, Problems.GridLaps(columns, 5)), new Random(seed));

    private static OrderProblem MixedTimes(OrderProblem problem, Random random) =>
        problem with { Sections = [.. problem.Sections.Select(s => s with { DurationMs = [1000 * random.Next(30, 121)] })] };
}
