using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>How batches of one coat may be mixed: time, life and volume, in the terms of the order search and back.</summary>
internal sealed class BatchRule(Job job, CoatConditions conditions)
{
    private readonly Consumption _takes = Consumption.Of(conditions.Coat, job.Tools);
    private readonly long _lifeMs = (long)Math.Floor(conditions.PotLife.Seconds) * 1000;

    /// <summary>From the first contact of A and B, which is the start of mixing.</summary>
    public long LifeMs => _lifeMs;

    /// <summary>What a full batch gives to the top, mL of A and B; not above 0 where nothing leaves the cup.</summary>
    public double UsableMl => _takes.LargestBatchMl - _takes.CupMlPerBatch;

    /// <summary>Film that so much covers, square metres, edges left out of account.</summary>
    public double CoversM2(double ml) => ml / _takes.SpreadMlPerM2;

    /// <summary>Mixing one batch by hand, by whoever is slowest at it.</summary>
    public long MixMs { get; } = (long)Math.Ceiling(job.Crew.Max(p => p.Pace.MixS) - 1e-9) * 1000;

    /// <summary>From the first contact of A and B until the batch may be used: mixed, and stood as long as the product asks.</summary>
    public long UntilReadyMs => MixMs + (long)Math.Ceiling(conditions.Coat.Product.InductionS - 1e-9) * 1000;

    /// <summary>No batch is smaller, so that its ratio can be measured: as much as a roller takes up, and never more than may be mixed.</summary>
    private double LeastMl => Math.Min(_takes.RollerMlPerPerson, _takes.LargestBatchMl);

    /// <summary>Roller and tray are charged once for each of the crew, from the first batch.</summary>
    private double OnceMl => _takes.PerPersonMl * job.Crew.Count;

    public double TakenMl(SectionShape s) => _takes.NetMl(s.FilmM2) + _takes.RoughMl(s.FilmM2) + _takes.EdgeLossMl(s.StripM2, s.StripLengthM);

    /// <summary>
    /// With a helper, mixing takes nobody's rolling time; a batch is then ready just when it is wanted. Whoever rolls alone waits
    /// while it stands.
    /// </summary>
    public MixingRule Rule(int batches, bool byHelper)
    {
        var usable = Math.Max(0, _takes.LargestBatchMl - _takes.CupMlPerBatch);
        var first = Math.Max(0, usable - OnceMl);
        return byHelper
            ? new MixingRule(0, Math.Max(0, _lifeMs - UntilReadyMs), usable, batches, first, conditions.Ageing.Share)
            : new MixingRule(UntilReadyMs, _lifeMs, usable, batches, first, conditions.Ageing.Share);
    }

    /// <summary>Puts the helper's mixing before the first section of each batch, the first at the beginning of the clock.</summary>
    /// <param name="helper">Number in the crew of the first who does not roll.</param>
    public FoundOrder MixedByHelper(FoundOrder found, int helper)
    {
        var mixes = new List<PlacedMix>();
        foreach (var mix in found.Mixes)
        {
            var wanted = found.Sections.Where(s => s.Batch == mix.Batch).Min(s => s.StartMs) + UntilReadyMs;
            mixes.Add(new PlacedMix(mix.Batch, helper, wanted - UntilReadyMs, wanted));
        }

        // A batch stands by itself: the helper's hands are free for the next.
        var inTime = mixes.Zip(mixes.Skip(1)).All(pair => pair.First.StartMs + MixMs <= pair.Second.StartMs);
        return found with
        {
            KeepsLimits = found.KeepsLimits && inTime,
            Mixes = mixes,
            Sections = [.. found.Sections.Select(s => s with { StartMs = s.StartMs + UntilReadyMs, EndMs = s.EndMs + UntilReadyMs })],
        };
    }

    /// <summary>No fewer batches bring the coat's volume, or cover its time.</summary>
    public int Fewest(OrderProblem problem)
    {
        var byVolume = _takes.BatchesFor(problem.Sections.Sum(s => s.VolumeMl) + OnceMl);
        var usableMs = (_lifeMs - UntilReadyMs) * problem.Crew;
        var byLife = usableMs <= 0 ? 1 : (int)Math.Ceiling(problem.Sections.Sum(s => s.ShortestMs) / (double)usableMs);
        return Math.Clamp(Math.Max(byVolume, byLife), 1, Math.Max(1, problem.Sections.Count));
    }

    public IReadOnlyList<Batch> Of(CoatSchedule schedule, IReadOnlyList<Section> sections) =>
        [.. schedule.Mixes.OrderBy(m => m.StartMs).Select(mix =>
        {
            var rolled = sections.Where(s => s.Batch == ScheduleNames.BatchId(mix.Batch)).ToList();
            var net = rolled.Sum(s => _takes.NetMl(s.FilmM2));
            var lost = rolled.Sum(s => _takes.RoughMl(s.FilmM2) + _takes.EdgeLossMl(s.FilmM2 - s.FaceM2, s.EdgeM)) + _takes.CupMlPerBatch + (mix.Batch == 0 ? OnceMl : 0);
            var (volume, useBy) = (Math.Max(net + lost, LeastMl), mix.StartMs + _lifeMs);
            return new Batch(ScheduleNames.BatchId(mix.Batch), mix.Person, mix.StartMs, mix.StartMs + MixMs, useBy, net, volume, [.. rolled.Select(s => s.Id)])
            {
                ReadyMs = mix.StartMs + UntilReadyMs,
                IsNotToBeMixed = volume > _takes.LargestBatchMl + 1e-6 || rolled.Exists(s => s.WetEndMs > useBy),
            };
        })];
}
