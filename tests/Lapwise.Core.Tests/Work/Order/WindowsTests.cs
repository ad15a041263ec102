using CsCheck;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Tests.Work.Order;

/// <summary>What bounds the worst age of very many sections: windows of a few of them, searched alone.</summary>
public sealed class WindowsTests
{
    /// <summary>The rule the bound rests on, for every single section left out and everything one person's problem may hold.</summary>
    [Fact]
    public void Leaving_a_section_out_never_makes_the_best_worst_age_larger()
    {
        var gen = from problem in Problems.Of(2, 7)
                  from mix in Gen.Long[1, 4]
                  from life in Gen.Long[14, 60]
                  from volumes in Gen.Int[1, 4].Array[problem.Sections.Count]
                  from share in Gen.OneOf<double>(0, 0.25, 1)
                  from mixes in Gen.Bool
                  select problem with
                  {
                      Sections = [.. problem.Sections.Select((s, i) => s with { VolumeMl = volumes[i], DurationMs = [s.DurationMs[0] * 1000] })],
                      Mixing = mixes ? new MixingRule(mix * 1000, life * 1000, 8, 3, AgeShare: share) : null,
                  };
        gen.Sample(problem =>
        {
            var whole = OrderSearch.Solve(problem);
            if (!whole.KeepsLimits) return;
            foreach (var left in Enumerable.Range(0, problem.Sections.Count))
            {
                var rest = OrderSearch.Solve(Without(problem, left));
                Assert.True(rest.KeepsLimits);
                Assert.True(rest.WorstLapAgeMs <= whole.WorstLapAgeMs);
            }
        }, iter: 300);
    }

    /// <summary>The neighbourhood bound alone leaves a gap of a quarter here; steps are counted, so every machine takes the same.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Two_hundred_sections_four_across_are_proven(int seed)
    {
        var problem = Grid(4, 50, seed);
        var order = OrderSearch.Solve(problem, mostSteps: 1_000_000);
        Assert.True(order.Proven);
        Assert.Equal(200, order.Sections.Select(p => p.Section).Distinct().Count());
        var at = order.Sections.ToDictionary(p => p.Section);
        Assert.Equal(order.WorstLapAgeMs, problem.Laps.Max(l => Math.Max(at[l.A].EndMs, at[l.B].EndMs) - Math.Min(at[l.A].StartMs, at[l.B].StartMs)));
    }

    /// <summary>Several people: the bound stays below what is found, and windows leave less than a sixth between.</summary>
    [Fact]
    public void A_hundred_sections_for_two_people_are_bounded()
    {
        var order = OrderSearch.Solve(Grid(4, 25, 2) with { Crew = 2 }, mostSteps: 300_000);
        Assert.InRange(order.BoundMs, order.WorstLapAgeMs * 5 / 6, order.WorstLapAgeMs);
    }

    [Fact]
    public void Searching_in_slices_takes_the_same_turns_between_windows_and_the_whole()
    {
        var problem = Grid(5, 8, 2);
        var whole = OrderSearch.Solve(problem);
        var sliced = new OrderSearch(problem);
        while (sliced.Step(37)) { }
        Assert.True(whole.Proven);
        Assert.Equal(whole.Sections, sliced.Best.Sections);
        Assert.Equal(whole.BoundMs, sliced.Best.BoundMs);
    }

    private static OrderProblem Grid(int across, int along, int seed)
    {
        var random = new Random(seed);
        var problem = Problems.UnitTime(across * along, Problems.GridLaps(along, across));
        return problem with { Sections = [.. problem.Sections.Select(s => s with { DurationMs = [1000 * random.Next(30, 121)] })] };
    }

    private static OrderProblem Without(OrderProblem problem, int left)
    {
        return problem with
        {
            Sections = [.. problem.Sections.Where((_, i) => i != left)],
            Laps = [.. problem.Laps.Where(l => l.A != left && l.B != left).Select(l => l with { A = Now(l.A), B = Now(l.B) })],
            Before = [.. problem.Before.Where(b => b.First != left && b.Then != left).Select(b => (Now(b.First), Now(b.Then)))],
        };

        int Now(int i) => i > left ? i - 1 : i;
    }
}
