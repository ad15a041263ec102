using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work;

/// <summary>Which sections, in which order, and when to mix?</summary>
public static class Planning
{
    /// <summary>
    /// One plan for each coat. Plans that do not work are given too, with the reasons; deterministic, in counted steps.
    /// </summary>
    public static JobWork Plan(Job job, MeasuredJob measured, JobConditions conditions) =>
        new([.. conditions.Coats.Where(_ => measured.Tops.Count > 0 && job.Crew.Count > 0).Select(coat => new CoatPlanning(job, coat).Plan(measured))]);
}
