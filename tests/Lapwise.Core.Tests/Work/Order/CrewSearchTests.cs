using CsCheck;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Tests.Work.Order;

public sealed class CrewSearchTests
{
    private static readonly Gen<OrderProblem> SmallCrews =
        from problem in Problems.Small.Where(p => p.Sections.Count <= 5)
        from crew in Gen.Int[2, 3]
        from second in Gen.Long[1, 9].Array[problem.Sections.Count]
        from alike in Gen.Bool
        select problem with
        {
            Crew = crew,
            Sections = alike ? problem.Sections : [.. problem.Sections.Select((s, i) => s with { DurationMs = [s.DurationMs[0], second[i]] })],
        };

    [Fact]
    public void The_search_equals_brute_force_on_small_crews() =>
        SmallCrews.Sample(problem =>
        {
            var order = OrderSearch.Solve(problem);
            Assert.True(order.Proven);
            Recheck(problem, order);
            Assert.Equal(BruteForce(problem), order.WorstLapAgeMs);
        }, iter: 150);

    [Fact]
    public void Adding_a_person_never_makes_the_best_age_worse() =>
        Problems.Small.Sample(problem =>
        {
            var alone = OrderSearch.Solve(problem);
            var two = OrderSearch.Solve(problem with { Crew = 2 });
            Assert.True(two.Proven);
            Assert.True(two.WorstLapAgeMs <= alone.WorstLapAgeMs);
            Recheck(problem with { Crew = 2 }, two);
        }, iter: 200);

    [Fact]
    public void Waiting_is_used_where_it_makes_laps_younger()
    {
        // Two people, a long section with a short one on each side: started at once, the short ones would be as old as
        // the long one lasts; started later, they still are. The lap age is the long section's own time: 10.
        var problem = new OrderProblem([new("a", [2]), new("long", [10]), new("b", [2])], [new(0, 1), new(1, 2)], [], 2);
        Assert.Equal(10, OrderSearch.Solve(problem).WorstLapAgeMs);
    }

    [Fact]
    public void Two_people_on_three_by_eight_sections_are_proven()
    {
        var random = new Random(11);
        var problem = Problems.UnitTime(24, Problems.GridLaps(3, 8)) with { Crew = 2 };
        problem = problem with { Sections = [.. problem.Sections.Select(s => s with { DurationMs = [1000 * random.Next(80, 180)] })] };
        var order = OrderSearch.Solve(problem);
        Assert.True(order.Proven, $"bound {order.BoundMs}, found {order.WorstLapAgeMs}");
        Recheck(problem, order);
    }

    [Theory] // In unit time k people cannot do better than ⌈(B + 1) / k⌉ − 1 steps from finish to finish, so one more from start.
    [InlineData(3, 6, 2)]
    [InlineData(4, 4, 2)]
    [InlineData(3, 5, 3)]
    public void A_crew_keeps_the_bound_that_bandwidth_gives(int rows, int columns, int crew)
    {
        var order = OrderSearch.Solve(Problems.UnitTime(rows * columns, Problems.GridLaps(rows, columns)) with { Crew = crew });
        Assert.True(order.Proven);
        Assert.True(order.WorstLapAgeMs >= ((Math.Min(rows, columns) + 1 + crew - 1) / crew));
    }

    [Fact]
    public void With_mixing_a_crew_keeps_every_batch_and_is_no_worse_than_one_person()
    {
        var gen = from problem in Problems.Small.Where(p => p.Sections.Count is > 1 and < 7)
                  from mix in Gen.Long[1, 4]
                  from life in Gen.Long[20, 50]
                  from most in Gen.Int[1, 3]
                  from volumes in Gen.Int[1, 4].Array[problem.Sections.Count]
                  select problem with
                  {
                      Sections = [.. problem.Sections.Select((s, i) => s with { VolumeMl = volumes[i] })],
                      Mixing = new MixingRule(mix, life, 8, most),
                  };
        gen.Sample(problem =>
        {
            var alone = OrderSearch.Solve(problem);
            var two = OrderSearch.Solve(problem with { Crew = 2 });
            if (!alone.KeepsLimits) return;
            Assert.True(two.Proven);
            Assert.True(two.WorstLapAgeMs <= alone.WorstLapAgeMs);
            Assert.True(two.WorstLapAgeMs >= OrderSearch.Solve(problem with { Crew = 2, Mixing = null }).WorstLapAgeMs);
            Recheck(problem with { Crew = 2 }, two);
            RecheckBatches(problem, two);
        }, iter: 200);
    }

    [Fact]
    public void Each_mixes_a_batch_before_the_first_section_where_mixing_on_the_way_would_age_a_lap()
    {
        // Two rows of ten, a pair at a time; one batch is enough for half. Mixing takes as long as two sections.
        var problem = Problems.UnitTime(20, Problems.GridLaps(10, 2)) with { Crew = 2 };
        problem = problem with { Sections = [.. problem.Sections.Select(s => s with { VolumeMl = 1 })], Mixing = new MixingRule(2, 100, 10, 2) };
        var order = OrderSearch.Solve(problem);
        Assert.Equal(OrderSearch.Solve(problem with { Mixing = null }).WorstLapAgeMs, order.WorstLapAgeMs);
        Assert.Equal([0, 1], order.Mixes.Select(m => m.Person).Order());
        Assert.All(order.Mixes, m => Assert.Equal((0, 2), (m.StartMs, m.EndMs)));
        RecheckBatches(problem, order);
    }

    [Fact]
    public void Each_mixes_at_their_own_pace_and_as_late_as_keeps_the_sections_where_they_are()
    {
        var gen = from problem in Problems.Small.Where(p => p.Sections.Count is > 1 and < 7)
                  from quick in Gen.Long[1, 3]
                  from slow in Gen.Long[3, 8]
                  from volumes in Gen.Int[1, 4].Array[problem.Sections.Count]
                  select problem with
                  {
                      Crew = 2,
                      Sections = [.. problem.Sections.Select((s, i) => s with { VolumeMl = volumes[i] })],
                      Mixing = new MixingRule(quick, 60, 8, 3) { EachMixMs = [slow, quick] },
                  };
        gen.Sample(problem =>
        {
            var order = OrderSearch.Solve(problem);
            Assert.True(order.Proven);
            Recheck(problem, order);
            RecheckBatches(problem, order);
            Assert.All(order.Mixes, m => Assert.True(
                order.Sections.Any(s => s.StartMs == m.EndMs && (s.Batch == m.Batch || s.Person == m.Person))
                || order.Mixes.Any(n => n.Person == m.Person && n.StartMs == m.EndMs)
                || order.Sections.All(s => s.Batch != m.Batch)));
            Assert.True(order.WorstLapAgeMs >= OrderSearch.Solve(problem with { Mixing = problem.Mixing! with { EachMixMs = [] } }).WorstLapAgeMs);
            Assert.True(order.WorstLapAgeMs <= OrderSearch.Solve(problem with { Mixing = problem.Mixing! with { MixMs = problem.Mixing.EachMixMs[0], EachMixMs = [] } }).WorstLapAgeMs);
        }, iter: 40);
    }

    [Fact]
    public void Sections_kept_apart_are_never_rolled_at_the_same_time()
    {
        var problem = Problems.UnitTime(4, Problems.Path(4)) with { Crew = 2, Apart = [(0, 1), (1, 2), (2, 3)] };
        var order = OrderSearch.Solve(problem);
        Assert.True(order.Proven);
        var at = order.Sections.ToDictionary(p => p.Section);
        foreach (var (a, b) in problem.Apart) Assert.True(at[a].EndMs <= at[b].StartMs || at[b].EndMs <= at[a].StartMs);
        Assert.Equal(2, order.WorstLapAgeMs);
    }

    [Theory]
    [InlineData(2, 100)]
    [InlineData(3, 60)]
    [InlineData(4, 100)]
    [InlineData(4, 500)]
    public void Many_sections_begin_with_a_sweep_and_not_with_one_person_in_turn(int crew, int along)
    {
        var random = new Random(3);
        var problem = Problems.UnitTime(4 * along, Problems.GridLaps(4, along)) with { Crew = crew };
        problem = problem with { Sections = [.. problem.Sections.Select(s => s with { DurationMs = [1000 * random.Next(30, 120)] })] };
        var first = new OrderSearch(problem).Best;
        Recheck(problem, first);
        Assert.True(first.WorstLapAgeMs <= 2 * first.BoundMs, $"bound {first.BoundMs}, first {first.WorstLapAgeMs}");
    }

    [Fact]
    public void What_a_search_begins_with_keeps_batches_places_and_precedence() =>
        (from problem in SmallCrews
         from apart in Gen.Select(Gen.Int[0, problem.Sections.Count - 1], Gen.Int[0, problem.Sections.Count - 1]).Array[0, 3]
         from mix in Gen.Long[0, 4]
         from volumes in Gen.Int[1, 4].Array[problem.Sections.Count]
         select problem with
         {
             Apart = [.. apart.Where(a => a.Item1 != a.Item2)],
             Sections = [.. problem.Sections.Select((s, i) => s with { VolumeMl = volumes[i] })],
             Mixing = new MixingRule(mix, 60, 8, 3),
         }).Sample(problem =>
        {
            var first = new OrderSearch(problem).Best;
            if (!first.KeepsLimits) return;
            Recheck(problem, first);
            RecheckBatches(problem, first);
            var at = first.Sections.ToDictionary(p => p.Section);
            foreach (var (a, b) in problem.Apart) Assert.True(at[a].EndMs <= at[b].StartMs || at[b].EndMs <= at[a].StartMs);
        }, iter: 300);

    private static void RecheckBatches(OrderProblem problem, FoundOrder order)
    {
        var rule = problem.Mixing!;
        Assert.True(order.Mixes.Count <= rule.MostBatches);
        foreach (var mix in order.Mixes)
        {
            var rolled = order.Sections.Where(p => p.Batch == mix.Batch).ToList();
            Assert.Equal(rule.MixMsOf(mix.Person), mix.EndMs - mix.StartMs);
            Assert.True(rolled.Sum(p => problem.Sections[p.Section].VolumeMl) <= rule.UsableMl + 1e-9);
            Assert.All(rolled, p => Assert.True(p.StartMs >= mix.EndMs && p.EndMs <= mix.StartMs + rule.LifeMs));
            Assert.DoesNotContain(order.Sections, p => p.Person == mix.Person && p.StartMs < mix.EndMs && mix.StartMs < p.EndMs);
        }

        Assert.All(order.Sections, p => Assert.Contains(order.Mixes, m => m.Batch == p.Batch));
    }

    private static long Age(Placed a, Placed b) => Math.Max(a.EndMs, b.EndMs) - Math.Min(a.StartMs, b.StartMs);

    private static void Recheck(OrderProblem problem, FoundOrder order)
    {
        var at = order.Sections.ToDictionary(p => p.Section);
        Assert.Equal(problem.Sections.Count, at.Count);
        Assert.All(order.Sections, p => Assert.Equal(problem.Sections[p.Section].DurationOf(p.Person), p.EndMs - p.StartMs));
        foreach (var one in order.Sections.GroupBy(p => p.Person))
        {
            Assert.InRange(one.Key, 0, problem.Crew - 1);
            var inTime = one.OrderBy(p => p.StartMs).ToList();
            foreach (var (a, b) in inTime.Zip(inTime.Skip(1))) Assert.True(a.EndMs <= b.StartMs);
        }

        foreach (var (first, then) in problem.Before) Assert.True(at[first].EndMs <= at[then].StartMs);
        Assert.Equal(problem.Laps.Select(l => Age(at[l.A], at[l.B])).DefaultIfEmpty(0).Max(), order.WorstLapAgeMs);
    }

    /// <summary>Every assignment and every sequence, with the least whole age whose constraints have no positive cycle.</summary>
    private static long BruteForce(OrderProblem problem)
    {
        var n = problem.Sections.Count;
        var best = long.MaxValue;
        foreach (var order in Problems.Permutations(n))
        {
            for (var code = 0; code < Math.Pow(problem.Crew, n); code++)
            {
                var person = new int[n];
                for (int i = 0, rest = code; i < n; i++, rest /= problem.Crew) person[i] = rest % problem.Crew;
                if (!Fits(problem, order, person, best - 1)) continue;
                long low = 0, high = best == long.MaxValue ? 200 : best - 1;
                while (low < high)
                {
                    var middle = (low + high) / 2;
                    if (Fits(problem, order, person, middle)) high = middle;
                    else low = middle + 1;
                }

                best = low;
            }
        }

        return best;
    }

    private static bool Fits(OrderProblem problem, int[] order, int[] person, long age)
    {
        var n = order.Length;
        var took = Enumerable.Range(0, n).Select(i => problem.Sections[i].DurationOf(person[i])).ToArray();
        var start = new long[n];
        for (var round = 0; round <= n; round++)
        {
            var moved = false;
            void Require(int from, int to, long gap)
            {
                if (start[from] + gap <= start[to]) return;
                start[to] = start[from] + gap;
                moved = true;
            }

            for (var i = 0; i < n; i++)
                for (var j = i + 1; j < n; j++)
                    if (person[order[i]] == person[order[j]]) Require(order[i], order[j], took[order[i]]);
            foreach (var (first, then) in problem.Before) Require(first, then, took[first]);
            foreach (var lap in problem.Laps)
            {
                if (took[lap.A] > age || took[lap.B] > age) return false;
                Require(lap.A, lap.B, took[lap.A] - age);
                Require(lap.B, lap.A, took[lap.B] - age);
            }

            if (!moved) return true;
        }

        return false;
    }
}
