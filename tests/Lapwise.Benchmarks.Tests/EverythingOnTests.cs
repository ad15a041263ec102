using System.Globalization;
using CsCheck;
using Google.OrTools.Sat;
using Lapwise.Core.Work.Order;

namespace Lapwise.Benchmarks.Tests;

/// <summary>
/// Crew, precedence, people kept apart, limits of laps and mixing at once, against a model of its own in a general solver
/// (CP-SAT of Google.OrTools), which shares no code with the search.
/// </summary>
public sealed class EverythingOnTests
{
    private static readonly Gen<OrderProblem> Everything =
        from count in Gen.Int[2, 6]
        from crew in Gen.Int[2, 4]
        from quick in Gen.Long[1, 9].Array[count]
        from slow in Gen.Long[1, 9].Array[count]
        from alike in Gen.Bool
        from laps in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1], Gen.Long[12, 60]).Array[1, 8]
        from before in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1]).Array[0, 2]
        from apart in Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1]).Array[0, 2]
        from mixes in Gen.Bool
        from mix in Gen.Long[1, 4]
        from mixesSlowly in Gen.Long[4, 7]
        from life in Gen.Long[14, 45]
        from most in Gen.Int[1, 3]
        from volumes in Gen.Int[1, 4].Array[count]
        select new OrderProblem(
            [.. quick.Select((t, i) => new OrderSection($"s{i}", alike ? [t] : [t, slow[i]], VolumeMl: volumes[i]))],
            [.. laps.Where(l => l.Item1 != l.Item2).Select(l => new OrderLap(l.Item1, l.Item2, l.Item3 < 30 ? l.Item3 : null))],
            [.. before.Where(b => b.Item1 < b.Item2)],
            crew,
            mixes ? new MixingRule(mix, life, 8, most) { EachMixMs = alike ? [] : [mix, mixesSlowly] } : null)
        {
            Apart = [.. apart.Where(a => a.Item1 != a.Item2)],
        };

    [Fact]
    public void With_everything_on_the_core_and_the_general_solver_find_the_same_worst_age() =>
        Everything.Sample(problem =>
        {
            var order = OrderSearch.Solve(problem);
            var rival = LeastAge(problem);
            if (rival is null)
            {
                Assert.False(order.KeepsLimits);
                return;
            }

            Assert.True(order.KeepsLimits);
            Assert.True(order.Proven);
            Assert.False(MixesFurtherAhead(problem, order));
            Assert.True(order.WorstLapAgeMs == rival,
                $"{rival} by the general solver, {order.WorstLapAgeMs} by the core: {string.Join(' ', order.Sections)} {string.Join(' ', order.Mixes)}");
        }, iter: 300, threads: 1);

    private static bool MixesFurtherAhead(OrderProblem problem, FoundOrder order) => order.Mixes.Any(mix =>
        mix.Batch >= problem.Crew && order.Sections.Where(s => s.Batch == mix.Batch - problem.Crew).Select(s => s.StartMs).DefaultIfEmpty(long.MaxValue).Min() > mix.StartMs);

    /// <summary>The smallest worst age, ms; null: no order keeps every limit.</summary>
    private static long? LeastAge(OrderProblem problem)
    {
        var (n, rule) = (problem.Sections.Count, problem.Mixing);
        var batches = rule?.MostBatches ?? 0;
        var horizon = problem.Sections.Sum(s => s.DurationMs.Max()) + (batches * Enumerable.Range(0, problem.Crew).Max(person => rule?.MixMsOf(person) ?? 0));
        var model = new CpModel();
        var busy = Enumerable.Range(0, problem.Crew).Select(_ => new List<IntervalVar>()).ToArray();

        var starts = new IntVar[n];
        var ends = new IntVar[n];
        var whole = new IntervalVar[n];
        for (var i = 0; i < n; i++)
        {
            var section = problem.Sections[i];
            (starts[i], ends[i]) = (model.NewIntVar(0, horizon, $"start{i}"), model.NewIntVar(0, horizon, $"end{i}"));
            var took = model.NewIntVar(1, horizon, $"took{i}");
            whole[i] = model.NewIntervalVar(starts[i], took, ends[i], $"section{i}");
            SomebodyDoes(model, busy, person => section.DurationOf(person), starts[i], ends[i], took, Always(model), $"section{i}");
        }

        foreach (var (first, then) in problem.Before) model.Add(starts[then] >= ends[first]);
        foreach (var (a, b) in problem.Apart) model.AddNoOverlap([whole[a], whole[b]]);

        var age = model.NewIntVar(0, horizon, "age");
        foreach (var lap in problem.Laps)
        {
            foreach (var (one, other) in new[] { (lap.A, lap.A), (lap.B, lap.B), (lap.A, lap.B), (lap.B, lap.A) })
            {
                model.Add(age >= ends[one] - starts[other]);
                if (lap.LimitMs is { } limit) model.Add(ends[one] - starts[other] <= limit);
            }
        }

        if (rule is not null) Mixed(model, problem, rule, busy, starts, ends, horizon);
        foreach (var person in busy) model.AddNoOverlap(person);
        model.Minimize(age);
        using var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1" };
        return solver.Solve(model) switch
        {
            CpSolverStatus.Optimal => (long)Math.Round(solver.ObjectiveValue),
            CpSolverStatus.Infeasible => null,
            var other => throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"the general solver says {other}")),
        };
    }

    /// <summary>
    /// Batches are mixed, and used up, in the order of starts; no more stand mixed ahead of the one in use than there are people,
    /// each at their own pace.
    /// </summary>
    private static void Mixed(CpModel model, OrderProblem problem, MixingRule rule, List<IntervalVar>[] busy, IntVar[] starts, IntVar[] ends, long horizon)
    {
        var n = problem.Sections.Count;
        var takes = Enumerable.Range(0, n).Select(i => Enumerable.Range(0, rule.MostBatches).Select(b => model.NewBoolVar($"{i}from{b}")).ToArray()).ToArray();
        for (var i = 0; i < n; i++) model.AddExactlyOne(takes[i]);
        IntVar? lastStart = null;
        IntVar? mixedBefore = null;
        BoolVar? usedBefore = null;
        for (var b = 0; b < rule.MostBatches; b++)
        {
            var used = model.NewBoolVar($"used{b}");
            var (from, ready) = (model.NewIntVar(0, horizon, $"mix{b}"), model.NewIntVar(0, horizon, $"ready{b}"));
            var took = model.NewIntVar(0, horizon, $"mixtook{b}");
            SomebodyDoes(model, busy, rule.MixMsOf, from, ready, took, used, $"mix{b}");
            if (mixedBefore is not null) model.Add(from >= mixedBefore);
            model.Add(LinearExpr.WeightedSum(takes.Select(t => t[b]).ToArray(), problem.Sections.Select(s => (long)s.VolumeMl).ToArray()) <= (long)rule.UsableMl);
            var last = model.NewIntVar(0, horizon, $"last{b}");
            for (var i = 0; i < n; i++)
            {
                model.AddImplication(takes[i][b], used);
                model.Add(starts[i] >= ready).OnlyEnforceIf(takes[i][b]);
                model.Add(ends[i] <= from + rule.LifeMs).OnlyEnforceIf(takes[i][b]);
                model.Add(last >= starts[i]).OnlyEnforceIf(takes[i][b]);
                if (lastStart is not null) model.Add(starts[i] >= lastStart).OnlyEnforceIf(takes[i][b]);
            }

            if (lastStart is not null) model.Add(last >= lastStart);
            model.AddBoolOr([.. takes.Select(t => t[b]), used.Not()]);
            if (usedBefore is not null)
            {
                model.AddImplication(used, usedBefore);
            }

            if (b >= problem.Crew)
            {
                var begun = Enumerable.Range(0, n).Select(i => model.NewBoolVar($"{i}begun{b}")).ToArray();
                for (var i = 0; i < n; i++)
                {
                    model.AddImplication(begun[i], takes[i][b - problem.Crew]);
                    model.Add(from >= starts[i]).OnlyEnforceIf(begun[i]);
                }

                model.AddBoolOr([.. begun, used.Not()]);
            }

            (lastStart, mixedBefore, usedBefore) = (last, from, used);
        }
    }

    private static void SomebodyDoes(CpModel model, List<IntervalVar>[] busy, Func<int, long> tookMs, IntVar from, IntVar to, LinearExpr took, BoolVar isDone, string name)
    {
        var by = busy.Select((_, person) => model.NewBoolVar($"{name}by{person}")).ToArray();
        for (var person = 0; person < busy.Length; person++)
        {
            model.Add(took == tookMs(person)).OnlyEnforceIf(by[person]);
            busy[person].Add(model.NewOptionalIntervalVar(from, tookMs(person), to, by[person], $"{name}of{person}"));
        }

        model.Add(LinearExpr.Sum(by) == isDone);
    }

    private static BoolVar Always(CpModel model)
    {
        var always = model.NewBoolVar("always");
        model.Add(always == 1);
        return always;
    }
}
