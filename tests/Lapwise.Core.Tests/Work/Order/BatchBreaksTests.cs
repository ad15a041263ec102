using CsCheck;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Tests.Work.Order;

public sealed class BatchBreaksTests
{
    /// <summary>One person or two, a sequence that keeps its batches, and some laps in which a change of batch would show.</summary>
    private static readonly Gen<(OrderProblem Problem, FoundOrder Found, OrderLap[] Showing, long SlackMs)> Mixed =
        from problem in Problems.Small.Where(p => p.Sections.Count is > 2 and < 8)
        from crew in Gen.Int[1, 2]
        from mix in Gen.Long[0, 3]
        from life in Gen.Long[14, 50]
        from usable in Gen.Int[6, 12]
        from first in Gen.Int[4, 6]
        from volumes in Gen.Int[1, 4].Array[problem.Sections.Count]
        from ahead in Gen.Int[1, 3]
        from shown in Gen.Bool.Array[problem.Laps.Count]
        from slack in Gen.Long[0, 12]
        let mixed = problem with
        {
            Crew = crew,
            Sections = [.. problem.Sections.Select((s, i) => s with { VolumeMl = volumes[i], DurationMs = [s.DurationMs[0] * 1000] })],
            Mixing = new MixingRule(mix * 1000, life * 1000, usable, 4, first, crew == 1 ? 0.25 : 0) { StandMs = mix / 2 * 1000, Ahead = crew == 1 ? ahead : 1 },
        }
        let found = OrderSearch.Solve(mixed, 20_000)
        where found.KeepsLimits
        select (mixed with { Mixing = mixed.Mixing! with { MostBatches = found.Mixes.Count } }, found, problem.Laps.Where((_, i) => shown[i]).ToArray(), slack * 1000);

    [Fact]
    public void Of_one_person_the_breaks_equal_brute_force_over_all_places() =>
        Mixed.Where(m => m.Problem.Crew == 1).Sample(m =>
        {
            var most = m.Found.WorstLapAgeMs + m.SlackMs;
            var best = BruteForce(m.Problem, m.Found, m.Showing, most);
            var moved = new BatchBreaks(m.Problem, m.Found, m.Showing).Fewest(o => o.WorstLapAgeMs, most);
            Assert.Equal(best, moved is null ? null : (Joined(moved, m.Showing), SmallestMl(m.Problem, moved), moved.WorstLapAgeMs));
        }, iter: 600);

    /// <summary>Strips of two rows, long enough that most places are too old for one lap or another.</summary>
    [Fact]
    public void Of_one_person_the_breaks_equal_brute_force_where_most_places_are_too_old() =>
        (from times in Gen.Long[2, 9].Array[14]
         from volumes in Gen.Int[1, 4].Array[14]
         from mix in Gen.Long[0, 3]
         from batches in Gen.Int[4, 6]
         from slack in Gen.Long[0, 4]
         let problem = new OrderProblem(
             [.. times.Select((t, i) => new OrderSection($"{i}", [t * 1000], VolumeMl: volumes[i]))],
             [.. Problems.GridLaps(7, 2).Select(l => new OrderLap(l.Item1, l.Item2))],
             [.. Enumerable.Range(0, 13).Select(i => (i, i + 1))], 1, new MixingRule(mix * 1000, 80_000, 14, batches, 12, 0.4))
         let found = OrderSearch.Solve(problem, 20_000)
         where found.KeepsLimits && found.Mixes.Count > 2
         select (Problem: problem, Found: found, MostMs: found.WorstLapAgeMs + (slack * 1000))).Sample(m =>
        {
            OrderLap[] showing = [.. m.Problem.Laps.Where((_, i) => i % 3 != 0)];
            var best = BruteForce(m.Problem, m.Found, showing, m.MostMs);
            var moved = new BatchBreaks(m.Problem, m.Found, showing).Fewest(o => o.WorstLapAgeMs, m.MostMs);
            Assert.Equal(best, moved is null ? null : (Joined(moved, showing), SmallestMl(m.Problem, moved), moved.WorstLapAgeMs));
        }, iter: 100);

    [Fact]
    public void Moved_breaks_keep_the_sequence_the_batches_and_the_age_allowed()
    {
        var moves = 0;
        Mixed.Sample(m =>
        {
            var most = m.Found.WorstLapAgeMs + m.SlackMs;
            var breaks = new BatchBreaks(m.Problem, m.Found, m.Showing);
            Assert.Equal(Joined(m.Found, m.Showing), breaks.Joined);
            if (breaks.Fewest(o => o.WorstLapAgeMs, most) is not { } moved) return;
            Assert.True((Joined(moved, m.Showing), -SmallestMl(m.Problem, moved)).CompareTo((breaks.Joined, -SmallestMl(m.Problem, m.Found))) < 0);
            Assert.True(moved.WorstLapAgeMs <= most);
            Assert.Equal(Persons(m.Found), Persons(moved));
            if (m.Problem.Crew == 1) Assert.Equal(Sequence(m.Found), Sequence(moved));
            Recheck(m.Problem, moved);
            Interlocked.Increment(ref moves);
        }, iter: 600);
        Assert.True(moves > 10);
    }

    [Fact]
    public void Two_tops_change_batch_between_them_and_not_where_the_cup_runs_out()
    {
        // Two tops of three sections in a row; a cup brings four sections, so the first to run out is in the second top.
        var problem = new OrderProblem(
            [.. Enumerable.Range(0, 6).Select(i => new OrderSection($"{i}", [10], VolumeMl: 1))],
            [new(0, 1), new(1, 2), new(3, 4), new(4, 5)], [.. Enumerable.Range(0, 5).Select(i => (i, i + 1))], 1, new MixingRule(2, 100, 4, 2));
        long clock = 0;
        var placed = Enumerable.Range(0, 6).Select(i => new Placed(i, 0, clock += 10, clock + 10, i < 4 ? 0 : 1)).ToList();
        var found = new FoundOrder(22, 0, true, placed, [new(0, 0, 0, 2), new(1, 0, 50, 52)]);
        var moved = new BatchBreaks(problem, found, problem.Laps).Fewest(o => o.WorstLapAgeMs, 22);
        Assert.NotNull(moved);
        Assert.Equal([0, 0, 0, 1, 1, 1], moved.Sections.OrderBy(p => p.Section).Select(p => p.Batch));
        Assert.Equal(20, moved.WorstLapAgeMs);
    }

    [Fact]
    public void A_change_in_sight_that_cannot_be_hidden_leaves_no_small_batch()
    {
        // A row of six; every place is as good to see, and the first batch was given one section alone.
        var problem = new OrderProblem(
            [.. Enumerable.Range(0, 6).Select(i => new OrderSection($"{i}", [10], VolumeMl: 10))],
            [.. Enumerable.Range(0, 5).Select(i => new OrderLap(i, i + 1))], [.. Enumerable.Range(0, 5).Select(i => (i, i + 1))], 1, new MixingRule(2, 100, 60, 2, 50));
        var placed = Enumerable.Range(0, 6).Select(i => new Placed(i, 0, 2 + (i * 10) + (i > 0 ? 2 : 0), 12 + (i * 10) + (i > 0 ? 2 : 0), i > 0 ? 1 : 0)).ToList();
        var found = new FoundOrder(22, 0, true, placed, [new(0, 0, 0, 2), new(1, 0, 12, 14)]);
        var moved = new BatchBreaks(problem, found, problem.Laps).Fewest(o => o.WorstLapAgeMs, 22);
        Assert.NotNull(moved);
        // The first also charges the roller, so its 20 mL on the top are 30 mixed.
        Assert.Equal([0, 0, 1, 1, 1, 1], moved.Sections.OrderBy(p => p.Section).Select(p => p.Batch));
        Assert.Null(new BatchBreaks(problem, moved, problem.Laps).Fewest(o => o.WorstLapAgeMs, 22));
    }

    private static double SmallestMl(OrderProblem problem, FoundOrder order) => order.Sections.GroupBy(p => p.Batch)
        .Min(rolled => rolled.Sum(p => problem.Sections[p.Section].VolumeMl) + (rolled.Key == 0 ? problem.Mixing!.UsableMl - problem.Mixing.FirstUsableMl!.Value : 0));

    private static int Joined(FoundOrder order, IEnumerable<OrderLap> showing)
    {
        var batch = order.Sections.ToDictionary(p => p.Section, p => p.Batch);
        return showing.Count(l => batch[l.A] != batch[l.B]);
    }

    private static IEnumerable<int> Sequence(FoundOrder order) => order.Sections.OrderBy(p => p.StartMs).Select(p => p.Section);

    private static IEnumerable<(int, int)> Persons(FoundOrder order) => order.Sections.OrderBy(p => p.Section).Select(p => (p.Section, p.Person));

    private static void Recheck(OrderProblem problem, FoundOrder order)
    {
        var rule = problem.Mixing!;
        Assert.InRange(order.Mixes.Count, 1, rule.MostBatches);
        foreach (var mix in order.Mixes)
        {
            var rolled = order.Sections.Where(p => p.Batch == mix.Batch).ToList();
            Assert.Equal(rule.MixMs, mix.EndMs - mix.StartMs);
            Assert.True(rolled.Sum(p => problem.Sections[p.Section].VolumeMl) <= (mix.Batch == 0 ? rule.FirstUsableMl : rule.UsableMl) + 1e-9);
            Assert.All(rolled, p => Assert.True(p.StartMs >= mix.EndMs && p.EndMs <= mix.StartMs + rule.LifeMs));
        }

        Assert.All(order.Sections, p => Assert.Contains(order.Mixes, m => m.Batch == p.Batch));
        foreach (var hands in order.Sections.Select(p => (p.Person, p.StartMs, p.EndMs)).Concat(order.Mixes.Select(m => (m.Person, m.StartMs, EndMs: m.EndMs - rule.StandMs))).GroupBy(h => h.Person))
        {
            var inTime = hands.OrderBy(h => h.StartMs).ThenBy(h => h.EndMs).ToList();
            foreach (var (a, b) in inTime.Zip(inTime.Skip(1))) Assert.True(a.EndMs <= b.StartMs);
        }

        var at = order.Sections.ToDictionary(p => p.Section);
        foreach (var (first, then) in problem.Before) Assert.True(at[first].EndMs <= at[then].StartMs);
    }

    /// <summary>The sequence as it is, with a new batch before any of its sections or none; one person.</summary>
    private static (int Joined, double SmallestMl, long WorstMs)? BruteForce(OrderProblem problem, FoundOrder found, OrderLap[] showing, long mostMs)
    {
        var sequence = Sequence(found).ToArray();
        var rule = problem.Mixing!;
        var given = (Joined(found, showing), -SmallestMl(problem, found));
        (int Joined, double LessMl, long WorstMs)? best = null;
        for (var mask = 0; mask < 1 << (sequence.Length - 1); mask++)
        {
            var (start, end, counted, batch) = (new long[sequence.Length], new long[sequence.Length], new long[sequence.Length], new int[sequence.Length]);
            long hands = rule.MixMs - rule.StandMs, now = Math.Max(rule.Ahead * hands, rule.MixMs), mixedAt = 0;
            var (b, leftMl, keeps) = (0, rule.FirstUsableMl!.Value, true);
            var mixedMl = new double[sequence.Length];
            mixedMl[0] = rule.UsableMl - leftMl;
            for (var i = 0; i < sequence.Length; i++)
            {
                var u = sequence[i];
                if (i > 0 && (mask & (1 << (i - 1))) != 0) (b, leftMl, mixedAt, now) = b + 1 < rule.Ahead ? (b + 1, rule.UsableMl, (b + 1) * hands, Math.Max(now, ((b + 1) * hands) + rule.MixMs)) : (b + 1, rule.UsableMl, now, now + rule.MixMs);
                start[u] = now;
                counted[u] = now - ((long)Math.Ceiling((rule.AgeShare * (now - mixedAt - hands) / 1000) - 1e-9) * 1000);
                end[u] = now += problem.Sections[u].DurationMs[0];
                batch[u] = b;
                leftMl -= problem.Sections[u].VolumeMl;
                mixedMl[b] += problem.Sections[u].VolumeMl;
                keeps &= leftMl >= -1e-9 && now <= mixedAt + rule.LifeMs && b < rule.MostBatches;
            }

            var worst = problem.Laps.Select(l => Math.Max(end[l.A], end[l.B]) - Math.Min(counted[l.A], counted[l.B])).DefaultIfEmpty(0).Max();
            var joined = showing.Count(l => batch[l.A] != batch[l.B]);
            var lessMl = -mixedMl[..(b + 1)].Min();
            keeps &= b + 1 >= rule.Ahead;
            if (keeps && worst <= mostMs && (joined, lessMl).CompareTo(given) < 0 && (best is null || (joined, lessMl, worst).CompareTo(best.Value) < 0)) best = (joined, lessMl, worst);
        }

        return best is { } some ? (some.Joined, -some.LessMl, some.WorstMs) : null;
    }
}
