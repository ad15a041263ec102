using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Work;

/// <summary>How batches of one coat may be mixed: time, life and volume, in the terms of the order search and back.</summary>
internal sealed class BatchRule(Job job, CoatConditions conditions, Hands hands)
{
    /// <summary>The first of the crew at work, and the second mixing.</summary>
    public BatchRule(Job job, CoatConditions conditions) : this(job, conditions, Hands.FirstAlone(job.Crew)) { }

    private readonly Consumption _takes = Consumption.Of(conditions.Coat, job.Tools);
    private readonly long _lifeMs = (long)Math.Floor(conditions.PotLife.Seconds) * 1000;

    /// <summary>From the first contact of A and B, which is the start of mixing.</summary>
    public long LifeMs => _lifeMs;

    /// <summary>How long a mixed batch stands before its first use.</summary>
    public long StandMs { get; } = (long)Math.Ceiling(conditions.Coat.Product.InductionS - 1e-9) * 1000;

    /// <summary>What a full batch gives to the top, mL of A and B; not above 0 where nothing leaves the cup.</summary>
    public double UsableMl => _takes.LargestBatchMl - _takes.CupMlPerBatch;

    /// <summary>Film that so much covers, square metres, edges left out of account.</summary>
    public double CoversM2(double ml) => ml / _takes.SpreadMlPerM2;

    /// <summary>Mixing one batch by hand, by whoever mixes; of several the quickest.</summary>
    public long MixMs { get; } = hands.Mixer is { } mixer ? hands.MixMsOf(mixer) : hands.Rollers.Min(hands.MixMsOf);

    /// <summary>From the first contact of A and B until the batch may be used: mixed, and stood as long as the product asks.</summary>
    public long UntilReadyMs => MixMs + StandMs;

    /// <summary>
    /// One person mixes and rolls, so that every mixing after the first section ages what is open, and may mix before it instead:
    /// not where what stands in a cup grows hot.
    /// </summary>
    public bool MayMixAhead => hands.Mixer is null && hands.Rollers.Count == 1 && !conditions.Coat.Product.HeatsItself;

    /// <summary>No batch is smaller, so that its ratio can be measured: as much as a roller takes up, and never more than may be mixed.</summary>
    private double LeastMl => Math.Min(_takes.RollerMlPerPerson, _takes.LargestBatchMl);

    /// <summary>Roller and tray are charged once for each who rolls, from the first batch.</summary>
    private double OnceMl => OnceMlOf(hands.Rollers.Count);

    private double OnceMlOf(int rollers) => _takes.PerPersonMl * rollers;

    public double TakenMl(SectionShape s) => _takes.NetMl(s.FilmM2) + _takes.RoughMl(s.FilmM2) + _takes.EdgeLossMl(s.StripM2, s.StripLengthM);

    /// <summary>
    /// With a helper, mixing takes nobody's rolling time; a batch is then ready just when it is wanted. Whoever rolls alone waits
    /// while it stands.
    /// </summary>
    /// <param name="ahead">How many of them are mixed before the first section, by one who mixes and rolls alone.</param>
    public MixingRule Rule(int batches, int ahead = 1)
    {
        var usable = Math.Max(0, _takes.LargestBatchMl - _takes.CupMlPerBatch);
        var first = Math.Max(0, usable - OnceMl);
        var rule = hands.Mixer is not null
            ? new MixingRule(0, Math.Max(0, _lifeMs - UntilReadyMs), usable, batches, first, conditions.Ageing.Share)
            : new MixingRule(UntilReadyMs, _lifeMs, usable, batches, first, conditions.Ageing.Share) { EachMixMs = [.. hands.Rollers.Select(r => hands.MixMsOf(r) + StandMs)] };
        return rule with { StandMs = StandMs, Ahead = ahead };
    }

    /// <summary>Puts the helper's mixing before the first section of each batch, the first at the beginning of the clock.</summary>
    public FoundOrder MixedByHelper(FoundOrder found)
    {
        var mixes = new List<PlacedMix>();
        foreach (var mix in found.Mixes)
        {
            var wanted = found.Sections.Where(s => s.Batch == mix.Batch).Min(s => s.StartMs) + UntilReadyMs;
            mixes.Add(new PlacedMix(mix.Batch, hands.Rollers.Count, wanted - UntilReadyMs, wanted));
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

    /// <param name="sections">As planned: whoever rolls none of them charges no roller.</param>
    public IReadOnlyList<Batch> Of(CoatSchedule schedule, IReadOnlyList<Section> sections)
    {
        var onceMl = OnceMlOf(sections.Select(s => s.Person).Distinct().Count());
        return [.. schedule.Mixes.OrderBy(m => m.StartMs).Select(mix =>
        {
            var rolled = sections.Where(s => s.Batch == ScheduleNames.BatchId(mix.Batch)).ToList();
            var net = rolled.Sum(s => _takes.NetMl(s.FilmM2));
            var lost = rolled.Sum(s => _takes.RoughMl(s.FilmM2) + _takes.EdgeLossMl(s.FilmM2 - s.FaceM2, s.EdgeM)) + _takes.CupMlPerBatch + (mix.Batch == 0 ? onceMl : 0);
            var (mixer, mixEndMs) = (hands.NumberOf(mix.Person), mix.StartMs + hands.MixMsOf(hands.NumberOf(mix.Person)));
            var (volume, useBy) = (Math.Max(net + lost, LeastMl), mix.StartMs + _lifeMs);
            return new Batch(ScheduleNames.BatchId(mix.Batch), mixer, mix.StartMs, mixEndMs, useBy, net, volume, [.. rolled.Select(s => s.Id)])
            {
                ReadyMs = mixEndMs + StandMs,
                IsNotToBeMixed = volume > _takes.LargestBatchMl + 1e-6 || rolled.Exists(s => s.WetEndMs > useBy),
            };
        })];
    }
}
