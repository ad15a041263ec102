using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Grouping;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>Plans one coat for those who roll and mix it.</summary>
internal sealed class CoatPlanning
{
    private const long StepsForTheBound = 20_000;
    private const long StepsForAWay = 5_000;
    private const long StepsForMixing = 40_000;
    private const int MoreBatchesTried = 3;
    private const int MostMixedAhead = 4;   // cups that one person keeps apart
    private const int NearerTargetsTried = 4;

    private readonly Job _job;
    private readonly CoatConditions _conditions;
    private readonly Hands _hands;
    private readonly BatchRule _batches;
    private readonly ApplicationMethod _method;
    private readonly long _openTimeMs;
    private readonly long _targetAgeMs;

    private readonly TopWays _ways;
    private readonly Effort _effort;
    private (IReadOnlyList<CutTop> Cuts, CoatSchedule Schedule)? _inAnyOrder;   // the last asked for: a nearer target often cuts alike

    public CoatPlanning(Job job, CoatConditions conditions, Hands hands, TopWays ways, Effort effort)
    {
        _hands = hands;
        _ways = ways;
        _effort = effort;
        _job = job;
        _conditions = conditions;
        _batches = new BatchRule(job, conditions, hands);
        _method = conditions.Coat.Product.Method;
        _openTimeMs = (long)Math.Floor(conditions.OpenTime.Seconds * 1000);
        _targetAgeMs = (long)Math.Floor(_openTimeMs * (1 - job.Aims.MarginShare));
    }

    /// <summary>The best schedule of these hands; null: what is found for them is not even without mixing younger than <paramref name="youngerThanMs"/>.</summary>
    public async ValueTask<CoatSchedule?> ScheduleAsync(MeasuredJob measured, long youngerThanMs) =>
        _hands.Rollers.Count == 1 ? await ForOneAsync(measured) : await ForCrewAsync(measured, youngerThanMs);

    public async ValueTask<CoatWork> WorkAsync(MeasuredJob measured, CoatSchedule schedule)
    {
        var proof = await ProofAsync(schedule);
        await _effort.Pause();
        var (placed, laps) = ScheduleNames.Of(schedule, _hands.Paces, _method);
        IReadOnlyList<Section> sections = [.. placed.Select(s => s with { Person = _hands.NumberOf(s.Person) })];
        var work = new CoatWork(
            _conditions.Coat, _conditions.OpenTime, _conditions.PotLife, sections, laps, _batches.Of(schedule, sections),
            proof,
            Baselines.Of(measured, _ways, _job.Aims, _hands.Paces[0], _conditions.Coat.Product),
            _openTimeMs - _targetAgeMs,
            []) { BatchAgeShare = schedule.AgeShare };
        await _effort.Pause();
        return work with { Reasons = [.. _conditions.Reasons, .. schedule.Tops.SelectMany(t => t.Cut.Reasons), .. WorkReasons.Of(work, _job, schedule.KeepsBatches)] };
    }

    public bool Works(CoatSchedule schedule) => schedule.KeepsBatches && schedule.WorstAgeMs <= _targetAgeMs;

    /// <summary>
    /// Tops chosen as if from a fresh batch first. Where that misses the target, or keeps it only with more batches and a change
    /// of batch in sight, again for ages smaller by what the batches' own age takes and by one mixing.
    /// </summary>
    private async ValueTask<CoatSchedule> ForOneAsync(MeasuredJob measured)
    {
        var tops = await TopsForOneAsync(measured, 0);
        var last = await ForOneAsync(tops);
        var best = last;
        var sparedMs = 0L;
        for (var tries = 0; tries < NearerTargetsTried && !IsPlain(best); tries++)
        {
            if (SparedMs(last).Where(ms => ms > sparedMs).DefaultIfEmpty(0).Min() is not (> 0 and var moreMs)) break;
            sparedMs = moreMs;
            var nearer = await TopsForOneAsync(measured, sparedMs);
            if (nearer.Zip(tops).All(pair => pair.First.IsSameAs(pair.Second))) continue;
            tops = nearer;
            last = await ForOneAsync(tops);
            if (IsPreferred(last, best)) best = last;
        }

        return best;
    }

    /// <summary>What batches take of the target: their age, a mixing between two, or both.</summary>
    private long[] SparedMs(CoatSchedule schedule)
    {
        var usedMs = schedule.Ages.UsedMs.Max();
        return schedule.Mixes.Count < 2 || Works(schedule) ? [usedMs] : [usedMs, _batches.UntilReadyMs, usedMs + _batches.UntilReadyMs];
    }

    /// <summary>It keeps the target, and finer sections would spare neither a batch nor a change of batch in sight.</summary>
    private bool IsPlain(CoatSchedule schedule) =>
        Works(schedule) && (schedule.Mixes.Count <= _batches.Fewest(schedule.Problem) || Visible(schedule) == 0);

    /// <summary>
    /// Of what keeps the target, and no batch to the last of its life, fewest changes of batch in sight, then fewest batches, then
    /// fewest sections; of what misses it, the youngest.
    /// </summary>
    private bool IsPreferred(CoatSchedule schedule, CoatSchedule to)
    {
        if (!Works(schedule) || !Works(to)) return schedule.IsBetterThan(to);
        return Key(schedule).CompareTo(Key(to)) < 0;

        (bool, int, int, int, long) Key(CoatSchedule s) => (!UsesUpEarly(s), Visible(s), s.Mixes.Count, s.Problem.Sections.Count, s.WorstAgeMs);
    }

    /// <summary>Every batch is used up with as large a share of its life in hand as is asked of the open time: a slow day takes it.</summary>
    private bool UsesUpEarly(CoatSchedule schedule)
    {
        var mixedMs = schedule.Mixes.ToDictionary(m => m.Batch, m => m.StartMs);
        return schedule.Found.Sections.All(p => p.EndMs - mixedMs[p.Batch] <= _batches.LifeMs * (1 - _job.Aims.MarginShare));
    }

    /// <summary>Laps on a face that are joined out of two batches.</summary>
    private static int Visible(CoatSchedule schedule)
    {
        if (schedule.Mixes.Count < 2) return 0;
        var batch = schedule.Found.Sections.ToDictionary(p => p.Section, p => p.Batch);
        return LapsOnFaces(schedule.Tops).Count(lap => batch[lap.A] != batch[lap.B]);
    }

    private async ValueTask<IReadOnlyList<TopOrder>> TopsForOneAsync(MeasuredJob measured, long sparedMs)
    {
        var tops = new List<TopOrder>();
        foreach (var top in measured.Tops)
            tops.Add(await TopPlanning.ForOneAsync(top, _job.Aims, _hands.Paces[0], _conditions.Coat.Product, _ways, _targetAgeMs - sparedMs, _effort));
        return tops;
    }

    private async ValueTask<CoatSchedule> ForOneAsync(IReadOnlyList<TopOrder> tops)
    {
        var inSequence = await InSequenceAsync(tops);
        if (!inSequence.KeepsBatches) return await UnmixedAsync(inSequence.Tops, Joined(inSequence.Tops, keepSequences: true));
        if (!Works(inSequence) && await InAnyOrderAsync(tops) is var free && free.IsBetterThan(inSequence)) inSequence = free;
        return MixedAhead(await WithBreaksWhereTheyHideAsync(inSequence));
    }

    private async ValueTask<CoatSchedule> InAnyOrderAsync(IReadOnlyList<TopOrder> tops)
    {
        IReadOnlyList<CutTop> cuts = [.. tops.Select(t => t.Cut)];
        if (_inAnyOrder is { } known && known.Cuts.SequenceEqual(cuts)) return known.Schedule;
        var schedule = await WithBatchesAsync(tops, Joined(tops, keepSequences: false));
        _inAnyOrder = (cuts, schedule);
        return schedule;
    }

    /// <summary>Tops as entered, unless they need fewer batches, or only work, when grouped. Fewer batches leave less in cups.</summary>
    private async ValueTask<CoatSchedule> InSequenceAsync(IReadOnlyList<TopOrder> tops)
    {
        var entered = await WithBatchesAsync(tops, Joined(tops, keepSequences: true));
        var grouping = TopGrouping.Of(tops, _batches, _batches.Rule(tops.Count));
        if (grouping is null || (Works(entered) && entered.Mixes.Count <= grouping.Batches)) return entered;
        var grouped = await WithBatchesAsync(grouping.Tops, Joined(grouping.Tops, keepSequences: true));
        var isBetter = Works(entered) ? Works(grouped) && grouped.Mixes.Count < entered.Mixes.Count : Works(grouped) || grouped.IsBetterThan(entered);
        return isBetter ? grouped : entered;
    }

    private async ValueTask<CoatSchedule?> ForCrewAsync(MeasuredJob measured, long youngerThanMs)
    {
        var tops = new List<TopOrder>();
        foreach (var top in measured.Tops)
            tops.Add(await TopPlanning.ForCrewAsync(top, _job.Aims, _hands.Paces, _conditions.Coat.Product, _ways, _targetAgeMs, _effort));
        // Mixing only ages laps.
        if (tops.Max(t => t.WorstAgeMs) >= youngerThanMs) return null;
        return await WithBreaksWhereTheyHideAsync(await WithBatchesAsync(tops, Joined(tops, keepSequences: false)));
    }

    /// <summary>
    /// As few batches as keep the target, mixed along the way, else ahead, else more of them. Leave to mix more often takes nothing
    /// away, so where none is found with the most that are tried, none is looked for between.
    /// </summary>
    private async ValueTask<CoatSchedule> WithBatchesAsync(IReadOnlyList<TopOrder> tops, OrderProblem problem)
    {
        var fewest = _batches.Fewest(problem);
        var few = await WithBatchesAsync(tops, problem, fewest);
        if (Works(few) || await IsAsYoungAsUnmixedAsync(few, problem)) return few;
        for (var ahead = 2; _batches.MayMixAhead && ahead <= Math.Min(fewest, MostMixedAhead); ahead++)
            if (await WithBatchesAsync(tops, problem, fewest, ahead) is var mixed && IsPreferred(mixed, few)) few = mixed;
        if (Works(few) && UsesUpEarly(few)) return few;
        var many = await WithBatchesAsync(tops, problem, fewest + MoreBatchesTried);
        for (var batches = fewest + 1; Works(many) && batches < fewest + MoreBatchesTried; batches++)
            if (await WithBatchesAsync(tops, problem, batches) is var fewer && Works(fewer)) return IsPreferred(few, fewer) ? few : fewer;
        return IsPreferred(many, few) ? many : few;
    }

    /// <summary>
    /// The same order with more of its batches mixed before the first section, or fewer: no minute of mixing then falls into a
    /// lap, and all film is of older batches.
    /// </summary>
    private CoatSchedule MixedAhead(CoatSchedule schedule)
    {
        if (!_batches.MayMixAhead || !schedule.KeepsBatches) return schedule;
        var best = schedule;
        var order = new SoloOrder([.. schedule.Found.Sections.Select(p => p.Section)], [.. schedule.Found.Sections.Select(p => p.Batch)]);
        for (var ahead = 1; ahead <= Math.Min(schedule.Mixes.Count, MostMixedAhead); ahead++)
        {
            var problem = Mixed(schedule.Problem, schedule.Mixes.Count, ahead);
            var tried = Scheduled(schedule.Tops, schedule.Problem, SoloTimeline.Of(new SoloModel(problem, new LapGraph(problem.Sections.Count, problem.Laps)), order));
            if (tried.KeepsBatches && IsPreferred(tried, best)) best = tried;
        }

        return best;
    }

    /// <summary>Mixing only ages laps: where they are as young as without any, more batches are no help.</summary>
    private async ValueTask<bool> IsAsYoungAsUnmixedAsync(CoatSchedule schedule, OrderProblem problem) =>
        schedule.WorstAgeMs <= await BoundAsync(problem, schedule.WorstAgeMs, StepsForMixing * _effort.Times);

    private async ValueTask<CoatSchedule> WithBatchesAsync(IReadOnlyList<TopOrder> tops, OrderProblem problem, int batches, int ahead = 1)
    {
        var schedule = await WithBatchesAsync(tops, problem, batches, ahead, _targetAgeMs);
        // The search for a crew leaves the batches' ages out: where they are too much, younger laps are asked for.
        if (problem.Crew == 1 || Works(schedule) || schedule.Found.WorstLapAgeMs > _targetAgeMs) return schedule;
        var younger = await WithBatchesAsync(tops, problem, batches, ahead, Math.Max(1, _targetAgeMs - schedule.Ages.UsedMs.Max()));
        return younger.IsBetterThan(schedule) ? younger : schedule;
    }

    private async ValueTask<CoatSchedule> WithBatchesAsync(IReadOnlyList<TopOrder> tops, OrderProblem problem, int batches, int ahead, long enoughMs)
    {
        var found = await OrderSearch.SolveAsync(Mixed(problem, batches, ahead), StepsForMixing * _effort.Times, enoughMs, _effort.Pause);
        return Scheduled(tops, problem, found);
    }

    private OrderProblem Mixed(OrderProblem problem, int batches, int ahead) => problem with { Mixing = _batches.Rule(batches, ahead) };

    private CoatSchedule Scheduled(IReadOnlyList<TopOrder> tops, OrderProblem problem, FoundOrder found)
    {
        var mixed = _hands.Mixer is null ? found : _batches.MixedByHelper(found);
        return new CoatSchedule(tops, problem, mixed, mixed.KeepsLimits, _conditions.Ageing.Share, _batches.LifeMs, _batches.StandMs);
    }

    /// <summary>
    /// Batches change at joints, at corners and between tops where they can: the sequence stays, no batch is added, and
    /// neither the target nor, where that was missed, the worst age is given up for it.
    /// </summary>
    private async ValueTask<CoatSchedule> WithBreaksWhereTheyHideAsync(CoatSchedule schedule)
    {
        if (!schedule.KeepsBatches || schedule.Mixes.Count < 2) return schedule;
        var breaks = new BatchBreaks(Mixed(schedule.Problem, schedule.Mixes.Count, _batches.MayMixAhead ? schedule.MixedAhead : 1), schedule.Found, [.. LapsOnFaces(schedule.Tops)]);
        var moved = await breaks.FewestAsync(WorstMs, Math.Max(_targetAgeMs, schedule.WorstAgeMs), _effort.Pause);
        return moved is null ? schedule : Scheduled(schedule.Tops, schedule.Problem, moved);

        long? WorstMs(FoundOrder order) => Scheduled(schedule.Tops, schedule.Problem, order) is { KeepsBatches: true } kept ? kept.WorstAgeMs : null;
    }

    /// <summary>Laps within a face, those at the corner of two arms left out: there, at a fold or a joint a change of batch is not seen.</summary>
    private static IEnumerable<OrderLap> LapsOnFaces(IReadOnlyList<TopOrder> tops)
    {
        var offset = 0;
        foreach (var top in tops)
        {
            var corners = top.Cut.CornerCuts;
            foreach (var seam in top.Cut.Seams.Where(s => s.Kind is LapKind.Flat && !(s.Cut is { } cut && corners.Contains(cut))))
                yield return new OrderLap(seam.A + offset, seam.B + offset);
            offset += top.Cut.Sections.Count;
        }
    }

    /// <summary>No batch rule can be kept: the order is still shown, as one that does not work.</summary>
    private async ValueTask<CoatSchedule> UnmixedAsync(IReadOnlyList<TopOrder> tops, OrderProblem problem)
    {
        const long weekMs = 7L * 24 * 3600 * 1000;
        var endless = _batches.Rule(1) with { LifeMs = weekMs, UsableMl = double.MaxValue / 8, FirstUsableMl = null, AgeShare = 0 };
        var found = await OrderSearch.SolveAsync(problem with { Mixing = endless }, StepsForMixing, enoughMs: 0, _effort.Pause);
        return Scheduled(tops, problem, found) with { KeepsBatches = false };
    }

    /// <summary>All tops as one problem; kept sequences are chained so that only the mixing is searched.</summary>
    private OrderProblem Joined(IReadOnlyList<TopOrder> tops, bool keepSequences)
    {
        var sections = new List<OrderSection>();
        var laps = new List<OrderLap>();
        var before = new List<(int, int)>();
        var apart = new List<(int, int)>();
        var last = -1;
        foreach (var top in tops)
        {
            var offset = sections.Count;
            for (var i = 0; i < top.Cut.Sections.Count; i++)
                sections.Add(top.Problem.Sections[i] with { VolumeMl = _batches.TakenMl(top.Cut.Sections[i]) });
            laps.AddRange(top.Problem.Laps.Select(l => new OrderLap(l.A + offset, l.B + offset)));
            before.AddRange(top.Problem.Before.Select(b => (b.First + offset, b.Then + offset)));
            apart.AddRange(top.Problem.Apart.Select(p => (p.A + offset, p.B + offset)));
            if (!keepSequences) continue;
            foreach (var u in top.Sequence)
            {
                if (last >= 0) before.Add((last, u + offset));
                last = u + offset;
            }
        }

        return new OrderProblem(sections, laps, before, tops.Count == 0 ? 1 : tops[0].Problem.Crew) { Apart = apart };
    }

    /// <summary>
    /// No order of these sections has a smaller worst age, whatever the mixing: each top alone without it. Where the order is
    /// so proven, every other way of cutting the top that sets the age is asked too.
    /// </summary>
    private async ValueTask<Proof> ProofAsync(CoatSchedule schedule)
    {
        var worstMs = schedule.WorstAgeMs;
        long bound = 0;
        foreach (var top in schedule.Tops)
        {
            var ofTop = await BoundAsync(top.Problem, worstMs, StepsForTheBound * _effort.Times);
            bound = Math.Max(bound, ofTop);
            if (ofTop < worstMs) continue;
            var ways = await WaysNoBetterAsync(top, worstMs);
            return ways > 1
                ? new Proof(ProofState.Proven, Proof.OrderAndSections, worstMs) { Ways = ways, Top = top.Cut.Top.Top.Name }
                : new Proof(ProofState.Proven, Proof.Order, worstMs);
        }

        return new Proof(ProofState.Bounded, Proof.Order, bound);
    }

    /// <summary>What no order of one top's sections goes below; asked only whether one goes below <paramref name="worstMs"/>.</summary>
    private async ValueTask<long> BoundAsync(OrderProblem problem, long worstMs, long mostSteps)
    {
        var longest = problem.Sections.Max(s => s.ShortestMs);
        if (longest >= worstMs) return longest;
        var found = await OrderSearch.SolveAsync(problem, mostSteps, worstMs - 1, _effort.Pause);
        return Math.Max(longest, found.BoundMs);
    }

    /// <summary>How many ways there are of cutting the top, none of which has an order with a smaller worst age; 0 where that is not proven of all.</summary>
    private async ValueTask<int> WaysNoBetterAsync(TopOrder top, long worstMs)
    {
        if (!TopPlanning.Works(top.Cut)) return 0;   // no way of cutting it is workable
        var ways = 0;
        await foreach (var cut in _ways.Of(top.Cut.Top, _job.Aims, _conditions.Coat.Product, _effort.Pause))
        {
            // A way that leaves something out of reach is none.
            if (!TopPlanning.Works(cut)) continue;
            var problem = TopOrder.ProblemOf(cut, _hands.Paces, _method);
            if (await BoundAsync(problem, worstMs, StepsForAWay * _effort.Times) < worstMs) return 0;
            ways++;
        }

        return ways;
    }
}

/// <summary>A coat on the clock: the tops' cuts, the joined problem and the order found for it.</summary>
/// <param name="AgeShare">Share of a batch's age that counts against the open time.</param>
/// <param name="LifeMs">Of each batch, from the start of its mixing.</param>
/// <param name="StandMs">How much of the time of each mix the batch stands.</param>
internal sealed record CoatSchedule(IReadOnlyList<TopOrder> Tops, OrderProblem Problem, FoundOrder Found, bool KeepsBatches, double AgeShare, long LifeMs, long StandMs)
{
    public IReadOnlyList<PlacedMix> Mixes => Found.Mixes;

    /// <summary>Batches mixed before the first section.</summary>
    public int MixedAhead => Found.Sections.Min(s => s.StartMs) is var first ? Found.Mixes.Count(m => m.StartMs < first) : 0;

    public OrderAges Ages { get; } = OrderAges.Of(Problem, Found, AgeShare, LifeMs, StandMs);

    /// <summary>The worst of all ages, each with what the age of its batch had used.</summary>
    public long WorstAgeMs => Ages.WorstMs;

    public bool IsBetterThan(CoatSchedule other) =>
        KeepsBatches == other.KeepsBatches ? WorstAgeMs < other.WorstAgeMs : KeepsBatches;
}
