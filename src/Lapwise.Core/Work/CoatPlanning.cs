using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>Plans one coat: tops one after another, each as simply as the open time allows, batches mixed along the way.</summary>
internal sealed class CoatPlanning
{
    private const long StepsForTheBound = 20_000;
    private const long StepsForMixing = 40_000;
    private const int MoreBatchesTried = 3;

    private readonly Job _job;
    private readonly CoatConditions _conditions;
    private readonly Consumption _takes;
    private readonly Pace _pace;
    private readonly ApplicationMethod _method;
    private readonly long _openTimeMs;
    private readonly long _targetAgeMs;

    public CoatPlanning(Job job, CoatConditions conditions)
    {
        _job = job;
        _conditions = conditions;
        _takes = Consumption.Of(conditions.Coat, job.Tools);
        _pace = job.Crew[0].Pace;
        _method = conditions.Coat.Product.Method;
        _openTimeMs = (long)Math.Floor(conditions.OpenTime.Seconds * 1000);
        _targetAgeMs = (long)Math.Floor(_openTimeMs * (1 - job.Aims.MarginShare));
    }

    public CoatWork Plan(MeasuredJob measured)
    {
        var scheduled = BestSchedule(measured);
        var (sections, laps) = Name(scheduled);
        var batches = BatchesOf(scheduled, sections);
        var bound = Bound(scheduled);
        var work = new CoatWork(
            _conditions.Coat, _conditions.OpenTime, _conditions.PotLife, sections, laps, batches,
            new Proof(scheduled.WorstAgeMs <= bound ? ProofState.Proven : ProofState.Bounded, "order", Math.Min(bound, scheduled.WorstAgeMs)),
            Baselines.Of(measured, _job.Aims, _pace, _method),
            _openTimeMs - _targetAgeMs,
            []);
        return work with { Reasons = [.. _conditions.Reasons, .. scheduled.Tops.SelectMany(t => t.Cut.Reasons), .. WorkReasons.Of(work, _job, scheduled.KeepsBatches)] };
    }

    /// <summary>Tops chosen without mixing first; again with room for one mixing where a batch break falls inside a top.</summary>
    private CoatSchedule BestSchedule(MeasuredJob measured)
    {
        var schedule = Schedule(measured, _targetAgeMs);
        var mixMs = (long)Math.Ceiling(_pace.MixS) * 1000;
        if (schedule.WorstAgeMs <= _targetAgeMs || schedule.Mixes.Count < 2) return schedule;
        var roomier = Schedule(measured, _targetAgeMs - mixMs);
        return roomier.IsBetterThan(schedule) ? roomier : schedule;
    }

    private CoatSchedule Schedule(MeasuredJob measured, long targetAgeMs)
    {
        var tops = measured.Tops.Select(t => TopPlanning.Choose(t, _job.Aims, _pace, _method, targetAgeMs)).ToList();
        return ScheduleInSequence(tops) is var inSequence && inSequence.WorstAgeMs <= _targetAgeMs && inSequence.KeepsBatches
            ? inSequence
            : Searched(tops, inSequence);
    }

    /// <summary>The tops' own orders one after another; only where to mix is searched.</summary>
    private CoatSchedule ScheduleInSequence(IReadOnlyList<TopOrder> tops)
    {
        var problem = Joined(tops, keepSequences: true);
        CoatSchedule? best = null;
        var fewest = FewestBatches(problem);
        for (var batches = fewest; batches <= fewest + MoreBatchesTried; batches++)
        {
            var found = OrderSearch.Solve(problem with { Mixing = Mixing(batches) }, StepsForMixing);
            var schedule = new CoatSchedule(tops, problem, found, found.KeepsLimits);
            if (best is null || schedule.IsBetterThan(best)) best = schedule;
            if (best.KeepsBatches && best.WorstAgeMs <= _targetAgeMs) break;
        }

        return best!.KeepsBatches ? best : Unmixed(tops, problem, fewest);
    }

    private CoatSchedule Searched(IReadOnlyList<TopOrder> tops, CoatSchedule inSequence)
    {
        if (!inSequence.KeepsBatches) return inSequence;
        var problem = Joined(tops, keepSequences: false) with { Mixing = Mixing(Math.Max(1, inSequence.Mixes.Count)) };
        var found = OrderSearch.Solve(problem, StepsForMixing);
        var searched = new CoatSchedule(tops, problem, found, found.KeepsLimits);
        return searched.IsBetterThan(inSequence) ? searched : inSequence;
    }

    /// <summary>No batch rule can be kept: the order is still shown, as one that does not work.</summary>
    private static CoatSchedule Unmixed(IReadOnlyList<TopOrder> tops, OrderProblem problem, int batches)
    {
        var whole = new MixingRule(1000, 7L * 24 * 3600 * 1000, double.MaxValue / 8, Math.Max(1, batches));
        return new CoatSchedule(tops, problem, OrderSearch.Solve(problem with { Mixing = whole }, StepsForMixing), false);
    }

    private OrderProblem Joined(IReadOnlyList<TopOrder> tops, bool keepSequences)
    {
        var sections = new List<OrderSection>();
        var laps = new List<OrderLap>();
        var before = new List<(int, int)>();
        var last = -1;
        foreach (var top in tops)
        {
            var offset = sections.Count;
            for (var i = 0; i < top.Cut.Sections.Count; i++)
                sections.Add(top.Problem.Sections[i] with { VolumeMl = TakenMl(top.Cut.Sections[i]) });
            laps.AddRange(top.Problem.Laps.Select(l => new OrderLap(l.A + offset, l.B + offset)));
            before.AddRange(top.Problem.Before.Select(b => (b.First + offset, b.Then + offset)));
            if (!keepSequences) continue;
            foreach (var u in top.Sequence)
            {
                if (last >= 0) before.Add((last, u + offset));
                last = u + offset;
            }
        }

        return new OrderProblem(sections, laps, before);
    }

    private double TakenMl(SectionShape s) => _takes.NetMl(s.FilmM2) + _takes.EdgeLossMl(s.StripM2, s.StripLengthM);

    private double OnceMl => _takes.PerPersonMl * _job.Crew.Count;

    private MixingRule Mixing(int batches)
    {
        var usable = Math.Max(0, _takes.LargestBatchMl - _takes.CupMlPerBatch);
        return new MixingRule((long)Math.Ceiling(_pace.MixS) * 1000, (long)Math.Floor(_conditions.PotLife.Seconds) * 1000, usable, batches, Math.Max(0, usable - OnceMl));
    }

    private int FewestBatches(OrderProblem problem)
    {
        var byVolume = _takes.BatchesFor(problem.Sections.Sum(s => s.VolumeMl) + OnceMl);
        var rule = Mixing(1);
        var usableMs = rule.LifeMs - rule.MixMs;
        var byLife = usableMs <= 0 ? 1 : (int)Math.Min(10_000, Math.Ceiling(problem.Sections.Sum(s => s.ShortestMs) / (double)usableMs));
        return Math.Clamp(Math.Max(byVolume, byLife), 1, Math.Max(1, problem.Sections.Count));
    }

    /// <summary>No order of these sections has a smaller worst age, whatever the mixing: each top alone without it.</summary>
    private static long Bound(CoatSchedule schedule) =>
        schedule.Tops.Select(t => OrderSearch.Solve(t.Problem with { Before = LeansOf(t) }, StepsForTheBound).BoundMs)
            .Concat(schedule.Problem.Sections.Select(s => s.ShortestMs))
            .DefaultIfEmpty(0).Max();

    private static IReadOnlyList<(int, int)> LeansOf(TopOrder top) =>
        [.. top.Cut.Sections.SelectMany(s => s.LeansOver.Select(over => (s.Index, over)))];

    private (IReadOnlyList<Section>, IReadOnlyList<Lap>) Name(CoatSchedule schedule)
    {
        var shapes = schedule.Tops.SelectMany(t => t.Cut.Sections).ToList();
        var placed = schedule.Found.Sections.OrderBy(p => p.StartMs).ThenBy(p => p.Section).ToList();
        var id = new string[shapes.Count];
        for (var i = 0; i < placed.Count; i++) id[placed[i].Section] = $"{i + 1}";
        var sections = placed.Select((p, i) =>
        {
            var shape = shapes[p.Section];
            var time = SectionTime.Of(shape, _pace, _method);
            return new Section(
                $"{i + 1}", shape.Face, shape.Rings, shape.FaceM2, shape.FilmM2, shape.StripLengthM, shape.StandAt, shape.StandSide,
                shape.DryPassDeg, p.Person, p.StartMs, p.StartMs + time.WetMs, p.EndMs, BatchId(p.Batch));
        }).ToList();

        var at = placed.ToDictionary(p => p.Section);
        var laps = new List<Lap>();
        var offset = 0;
        foreach (var top in schedule.Tops)
        {
            foreach (var seam in top.Cut.Seams)
            {
                var (a, b) = (at[seam.A + offset], at[seam.B + offset]);
                var age = Math.Max(a.EndMs, b.EndMs) - Math.Min(a.StartMs, b.StartMs);
                laps.Add(new Lap(id[a.Section], id[b.Section], seam.Kind, seam.LengthM, seam.Line, age));
            }

            offset += top.Cut.Sections.Count;
        }

        return (sections, laps);
    }

    private IReadOnlyList<Batch> BatchesOf(CoatSchedule schedule, IReadOnlyList<Section> sections) =>
        [.. schedule.Mixes.Select(mix =>
        {
            var rolled = sections.Where(s => s.Batch == BatchId(mix.Batch)).ToList();
            var net = rolled.Sum(s => _takes.NetMl(s.FilmM2));
            var lost = rolled.Sum(s => _takes.EdgeLossMl(s.FilmM2 - s.FaceM2, s.EdgeM)) + _takes.CupMlPerBatch + (mix.Batch == 0 ? OnceMl : 0);
            var useBy = mix.StartMs + ((long)Math.Floor(_conditions.PotLife.Seconds) * 1000);
            return new Batch(BatchId(mix.Batch), mix.Person, mix.StartMs, mix.EndMs, useBy, net, net + lost, [.. rolled.Select(s => s.Id)]);
        })];

    private static string BatchId(int batch) => $"{(char)('A' + (batch % 26))}{(batch < 26 ? "" : $"{batch / 26}")}";
}

/// <summary>A coat on the clock: the tops' cuts, the joined problem and the order found for it.</summary>
internal sealed record CoatSchedule(IReadOnlyList<TopOrder> Tops, OrderProblem Problem, FoundOrder Found, bool KeepsBatches)
{
    public IReadOnlyList<PlacedMix> Mixes => Found.Mixes;

    public long WorstAgeMs { get; } = Math.Max(Found.WorstLapAgeMs, Problem.Sections.Select(s => s.ShortestMs).DefaultIfEmpty(0).Max());

    public bool IsBetterThan(CoatSchedule other) =>
        KeepsBatches == other.KeepsBatches ? WorstAgeMs < other.WorstAgeMs : KeepsBatches;
}
