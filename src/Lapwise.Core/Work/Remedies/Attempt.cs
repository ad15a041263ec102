using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Remedies;

/// <summary>One coat really planned, in the room and with the film of its job.</summary>
/// <param name="Job">The job with this coat alone.</param>
/// <param name="Holds">No limit of conditions, materials or work is broken.</param>
public sealed record Attempt(Job Job, MeasuredJob Measured, CoatWork Work, bool Holds)
{
    public bool KeepsTarget => Holds && Work.LapMarginMs >= Work.TargetMarginMs;

    public bool IsBetterThan(Attempt other) => Standing.CompareTo(other.Standing) > 0;

    public bool OutlivesPot => Work.Reasons.Any(r => r.Code is "BatchOutlivesPot" or "PourOutlivesPot");

    private (bool, bool, bool, long) Standing => (KeepsTarget, Holds, !OutlivesPot, Work.LapMarginMs);

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
        return new Attempt(one, measured, work, work.Holds && reasons.All(r => r.Limit == Limit.Note));
    }
}
