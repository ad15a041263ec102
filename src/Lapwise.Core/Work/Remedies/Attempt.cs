using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Remedies;

/// <summary>One coat really planned, in the room and with the film of its job.</summary>
/// <param name="Job">The job with this coat alone.</param>
/// <param name="Conditions">What the room and the material ask for.</param>
/// <param name="Holds">No limit of conditions, materials or work is broken.</param>
public sealed record Attempt(Job Job, MeasuredJob Measured, CoatConditions Conditions, CoatWork Work, bool Holds)
{
    public bool KeepsTarget => Holds && Work.LapMarginMs >= Work.TargetMarginMs;

    /// <summary>Where batches or steps fail, only what lessens that is better: a wider margin is none while a batch is past its time.</summary>
    public bool IsBetterThan(Attempt other)
    {
        if (Work.Batches.Count == 0) return false;
        var standing = (KeepsTarget, Holds).CompareTo((other.KeepsTarget, other.Holds));
        if (standing != 0) return standing > 0;
        return other.Faults.Any ? Faults.AreLessThan(other.Faults) : !Faults.Any && Work.LapMarginMs > other.Work.LapMarginMs;
    }

    public bool OutlivesPot => Has("BatchOutlivesPot") || Has("PourOutlivesPot");

    public bool IsOverBatch => Has("BatchOutlivesPot") || Has("PourOverBatch");

    private WorkFaults Faults => WorkFaults.Of(Work, Job, OutlivesPot || IsOverBatch);

    private bool Has(string code) => Work.Reasons.Any(r => r.Code == code);

    /// <summary>Null where there is nothing to plan.</summary>
    /// <param name="ways">Kept from an earlier attempt.</param>
    /// <exception cref="OperationCanceledException">The effort's pause stopped it.</exception>
    public static async ValueTask<Attempt?> OfAsync(Job job, MeasuredJob measured, Coat coat, Effort effort, TopWays? ways = null)
    {
        var one = job with { System = [coat] };
        var materials = Estimating.Estimate(one, measured);
        var conditions = Judging.Judge(one, materials);
        var planned = await Planning.PlanAsync(one, measured, conditions, effort, ways);
        if (planned.Coats is not [var work]) return null;
        var reasons = work.Reasons.Concat(materials.Coats[0].Reasons);
        return new Attempt(one, measured, conditions.Coats[0], work, work.Holds && reasons.All(r => r.Limit == Limit.Note));
    }
}
