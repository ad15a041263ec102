using CsCheck;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Tests.Work.Order;

public sealed class OrderSearchTests
{
    [Fact]
    public void The_search_equals_brute_force_on_small_problems() =>
        Problems.Small.Sample(problem =>
        {
            var order = OrderSearch.Solve(problem);
            Assert.True(order.Proven);
            Assert.Equal(BruteForce(problem), order.WorstLapAgeMs);
            Recheck(problem, order);
        }, iter: 400);

    [Fact]
    public void The_search_equals_brute_force_up_to_nine_sections() =>
        Problems.Of(8, 9).Sample(problem =>
        {
            var order = OrderSearch.Solve(problem);
            Assert.True(order.Proven);
            Assert.Equal(BruteForce(problem), order.WorstLapAgeMs);
            Recheck(problem, order);
        }, iter: 12);

    [Fact]
    public void With_mixing_the_search_equals_brute_force()
    {
        var gen = from problem in Problems.Small
                  from mix in Gen.Long[1, 4]
                  from life in Gen.Long[14, 40]
                  from stand in Gen.Long[0, mix]
                  from most in Gen.Int[1, 3]
                  from ahead in Gen.Int[1, most]
                  from volumes in Gen.Int[1, 4].Array[problem.Sections.Count]
                  from share in Gen.OneOf<double>(0, 0.25, 0.4, 1)
                  select problem with
                  {
                      Sections = [.. problem.Sections.Select((s, i) => s with { VolumeMl = volumes[i], DurationMs = [s.DurationMs[0] * 1000] })],
                      Mixing = new MixingRule(mix * 1000, life * 1000, 8, most, AgeShare: share) { StandMs = stand * 1000, Ahead = ahead },
                      Before = [],
                  };
        gen.Where(p => p.Sections.Count <= 5).Sample(problem =>
        {
            var best = BruteForceWithMixing(problem);
            var order = OrderSearch.Solve(problem);
            if (best is { } age)
            {
                Assert.True(order.Proven);
                Assert.Equal(age, order.WorstLapAgeMs);
            }
            else
            {
                Assert.False(order.KeepsLimits);
            }
        }, iter: 300);
    }

    [Fact]
    public void A_lap_limit_is_kept_where_any_order_keeps_it()
    {
        // Centre with three leaves; the lap to the longest leaf may only be 6 old.
        var problem = new OrderProblem(
            [new("c", [2]), new("a", [1]), new("b", [4]), new("d", [3])],
            [new(0, 1), new(0, 2, 6), new(0, 3)],
            []);
        var order = OrderSearch.Solve(problem);
        Assert.True(order.Proven);
        var at = order.Sections.ToDictionary(p => p.Section);
        Assert.True(Age(at[0], at[2]) <= 6);
    }

    [Fact]
    public void Sections_already_begun_stay_where_they_are()
    {
        var problem = Problems.UnitTime(6, Problems.Path(6));
        problem = problem with { Sections = [.. problem.Sections.Select((s, i) => i == 2 ? s with { StartedAtMs = -1 } : s)] };
        var order = OrderSearch.Solve(problem);
        Assert.Equal(new Placed(2, 0, -1, 0), order.Sections.Single(p => p.Section == 2));
        Assert.Equal(3, order.WorstLapAgeMs); // both neighbours of what was begun follow it
        Assert.True(order.Proven);
    }

    [Fact]
    public void Waiting_for_a_release_is_done_before_the_first_section()
    {
        var problem = Problems.UnitTime(4, Problems.Path(4));
        problem = problem with { Sections = [.. problem.Sections.Select((s, i) => i == 2 ? s with { NotBeforeMs = 100 } : s)] };
        var order = OrderSearch.Solve(problem);
        Assert.Equal(2, order.WorstLapAgeMs);
        Assert.All(order.Sections, p => Assert.True(p.Section != 2 || p.StartMs >= 100));
    }

    [Fact]
    public void Searching_in_slices_gives_the_same_order_as_at_one_go()
    {
        var problem = Problems.UnitTime(24, Problems.GridLaps(4, 6));
        var random = new Random(5);
        problem = problem with { Sections = [.. problem.Sections.Select(s => s with { DurationMs = [random.Next(80, 180)] })] };
        var whole = OrderSearch.Solve(problem);
        var sliced = new OrderSearch(problem);
        while (sliced.Step(37)) { }
        Assert.Equal(whole.WorstLapAgeMs, sliced.Best.WorstLapAgeMs);
        Assert.Equal(whole.Sections, sliced.Best.Sections);
        Assert.True(sliced.Best.Proven);
    }

    [Fact]
    public void A_bound_never_passes_the_best_order_while_searching() =>
        Problems.Small.Sample(problem =>
        {
            var best = BruteForce(problem);
            var search = new OrderSearch(problem);
            do
            {
                Assert.InRange(search.Best.BoundMs, 0, best);
                Assert.True(search.Best.WorstLapAgeMs >= best);
            }
            while (search.Step(1));
        }, iter: 100);

    [Theory]
    [InlineData(0)]
    [InlineData(2001)]
    public void Too_few_or_too_many_sections_are_refused(int count) =>
        Assert.NotEmpty(OrderCheck.Faults(Problems.UnitTime(count, [])));

    private static long Age(Placed a, Placed b) => Math.Max(a.EndMs, b.EndMs) - Math.Min(a.StartMs, b.StartMs);

    private static void Recheck(OrderProblem problem, FoundOrder order)
    {
        Assert.Equal(problem.Sections.Count, order.Sections.Select(p => p.Section).Distinct().Count());
        var at = order.Sections.ToDictionary(p => p.Section);
        foreach (var p in order.Sections) Assert.Equal(problem.Sections[p.Section].DurationMs[0], p.EndMs - p.StartMs);
        var inTime = order.Sections.OrderBy(p => p.StartMs).ToList();
        foreach (var (a, b) in inTime.Zip(inTime.Skip(1))) Assert.True(a.EndMs <= b.StartMs);
        foreach (var (first, then) in problem.Before) Assert.True(at[first].EndMs <= at[then].StartMs);
        Assert.Equal(problem.Laps.Select(l => Age(at[l.A], at[l.B])).DefaultIfEmpty(0).Max(), order.WorstLapAgeMs);
    }

    private static long BruteForce(OrderProblem problem)
    {
        var best = long.MaxValue;
        foreach (var order in Problems.Permutations(problem.Sections.Count))
        {
            var place = new int[order.Length];
            for (var i = 0; i < order.Length; i++) place[order[i]] = i;
            if (problem.Before.Any(b => place[b.First] > place[b.Then])) continue;
            best = Math.Min(best, WorstAge(problem, order, new bool[order.Length]));
        }

        return best;
    }

    private static long? BruteForceWithMixing(OrderProblem problem)
    {
        var n = problem.Sections.Count;
        var rule = problem.Mixing!;
        long? best = null;
        foreach (var order in Problems.Permutations(n))
        {
            for (var mask = 0; mask < 1 << (n - 1); mask++)
            {
                var mixBefore = new bool[n];
                for (var i = 1; i < n; i++) mixBefore[i] = (mask & (1 << (i - 1))) != 0;
                if (1 + mixBefore.Count(x => x) is var batches && (batches > rule.MostBatches || batches < rule.Ahead) || !BatchesHold(problem, order, mixBefore)) continue;
                var age = WorstAge(problem, order, mixBefore);
                if (best is null || age < best) best = age;
            }
        }

        return best;
    }

    private static bool BatchesHold(OrderProblem problem, int[] order, bool[] mixBefore)
    {
        var rule = problem.Mixing!;
        var left = rule.UsableMl;
        var (now, mixedFrom, batch) = (Begin(rule), 0L, 0);
        for (var i = 0; i < order.Length; i++)
        {
            if (mixBefore[i])
            {
                left = rule.UsableMl;
                (mixedFrom, now) = Mixed(rule, ++batch, now);
            }

            left -= problem.Sections[order[i]].VolumeMl;
            now += problem.Sections[order[i]].DurationMs[0];
            if (left < 0 || now - mixedFrom > rule.LifeMs) return false;
        }

        return true;
    }

    private static long WorstAge(OrderProblem problem, int[] order, bool[] mixBefore)
    {
        var start = new long[order.Length];
        var end = new long[order.Length];
        var rule = problem.Mixing ?? new MixingRule(0, 0, 0, 1);
        var (now, mixedFrom, batch) = (Begin(rule), 0L, 0);
        for (var i = 0; i < order.Length; i++)
        {
            if (mixBefore[i]) (mixedFrom, now) = Mixed(rule, ++batch, now);
            // Film of a batch that has stood is as far closed as if it had begun sooner; up to a whole second.
            var agedMs = now - mixedFrom - (rule.MixMs - rule.StandMs);
            start[order[i]] = now - ((long)Math.Ceiling((rule.AgeShare * agedMs / 1000) - 1e-9) * 1000);
            now += problem.Sections[order[i]].DurationMs[0];
            end[order[i]] = now;
        }

        return problem.Laps.Select(l => Math.Max(end[l.A], end[l.B]) - Math.Min(start[l.A], start[l.B])).DefaultIfEmpty(0).Max();
    }

    /// <summary>Hands mix what is mixed ahead one after the other; the first section begins when they are free and the first batch has stood.</summary>
    private static long Begin(MixingRule rule) => Math.Max(rule.Ahead * (rule.MixMs - rule.StandMs), rule.MixMs);

    private static (long MixedFrom, long Now) Mixed(MixingRule rule, int batch, long now) =>
        batch < rule.Ahead ? (batch * (rule.MixMs - rule.StandMs), Math.Max(now, (batch * (rule.MixMs - rule.StandMs)) + rule.MixMs)) : (now, now + rule.MixMs);
}
