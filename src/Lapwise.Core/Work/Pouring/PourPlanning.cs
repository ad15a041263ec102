using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Work.Pouring;

/// <summary>
/// Plans a poured coat: what one batch each can cover is poured, spread and levelled in turn; where a top takes several,
/// each joins the one before while that is open. Bubble passes and scraping follow at the product's own times.
/// </summary>
internal sealed class PourPlanning(Job job, CoatConditions conditions)
{
    private readonly BatchRule _batches = new(job, conditions);
    private readonly long _openTimeMs = (long)Math.Floor(conditions.OpenTime.Seconds * 1000);

    public CoatWork Plan(MeasuredJob measured)
    {
        var product = conditions.Coat.Product;
        var tops = measured.Tops.Select(t => PourSequence.Order(PourSequence.Cut(t, job.Aims, product, _batches), job.Crew[0].Pace)).ToList();
        var clock = new PourClock(job, product, _batches, _openTimeMs, (long)Math.Floor(_openTimeMs * (1 - job.Aims.MarginShare)), conditions.Ageing.Share);
        var found = clock.Run(tops);
        var problem = new OrderProblem([.. tops.SelectMany(t => t.Problem.Sections)], [], []);
        var schedule = new CoatSchedule(tops, problem, found, clock.KeepsBatches, conditions.Ageing.Share, _batches.LifeMs, StandMs: 0);
        var (sections, laps) = ScheduleNames.Of(schedule, [.. job.Crew.Select(p => p.Pace)], product.Method);
        var named = found.Sections.OrderBy(p => p.StartMs).ThenBy(p => p.Person).Select((p, i) => (p.Section, Id: $"{i + 1}")).ToDictionary(p => p.Section, p => p.Id);

        var work = new CoatWork(
            conditions.Coat, conditions.OpenTime, conditions.PotLife, sections, laps, _batches.Of(schedule, sections),
            new Proof(ProofState.Bounded, Proof.Order, 0), [],
            _openTimeMs - (long)Math.Floor(_openTimeMs * (1 - job.Aims.MarginShare)), [])
        {
            BatchAgeShare = schedule.AgeShare,
            Steps = [.. clock.Steps.OrderBy(s => s.StartMs).ThenBy(s => s.EndMs).Select(s => new TimedStep(s.Kind, s.Top, [.. s.Sections.Select(i => named[i])], s.Person, s.StartMs, s.EndMs, s.FromMs, s.ToMs))],
        };
        // No order of these pours has a smaller worst age than the longest of them, from a batch that has stood no longer than it must.
        var leastMs = work.WorstSectionAgeMs + BatchAgeing.UsedMs(schedule.AgeShare, _batches.UntilReadyMs - _batches.MixMs);
        work = work with { Proof = new Proof(work.WorstCountedMs <= leastMs ? ProofState.Proven : ProofState.Bounded, Proof.Order, leastMs) };
        return work with
        {
            Reasons = [.. conditions.Reasons, .. tops.SelectMany(t => t.Cut.Reasons), .. PourReasons.Of(work, job, clock.KeepsBatches, _batches.UsableMl, tops.SelectMany(t => t.Cut.Sections).Max(_batches.TakenMl))],
        };
    }
}
