using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Supply;
using Lapwise.Core.Timeline;
using Lapwise.Core.Work;

namespace Lapwise.Core;

/// <summary>One job through every phase.</summary>
/// <param name="Faults">Everything in the document that could not be used; the phases answer for the rest.</param>
public sealed record WholeJob(
    Job Job,
    MeasuredJob Measured,
    JobMaterials Materials,
    JobConditions Conditions,
    JobWork Work,
    JobSupply Supply,
    JobTimeline Timeline,
    IReadOnlyList<Fault> Faults)
{
    /// <summary>Everything the phases have to say against a coat, or note of it, hardest first.</summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    public IReadOnlyList<Reason> ReasonsOf(int coat) =>
    [
        .. new[] { Conditions.Coats[coat].Reasons, Materials.Coats[coat].Reasons, Work.Coats[coat].Reasons, Supply.Coats[coat].Reasons }
            .SelectMany(reasons => reasons)
            .DistinctBy(reason => (reason.Code, reason.Text(Voice.Default)))
            .OrderBy(reason => reason.Limit),
    ];

    /// <summary>Whether a coat can be worked as planned: every limit of every phase is kept.</summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    public bool Holds(int coat) => Work.Coats[coat].Holds && ReasonsOf(coat).All(reason => reason.Limit == Limit.Note);

    /// <summary>Whether every coat can be worked as planned, with nothing of the document left out.</summary>
    public bool Stands => Faults.Count == 0 && Work.Coats.Count > 0 && Enumerable.Range(0, Work.Coats.Count).All(coat => Holds(coat) && Work.Coats[coat].Sections.Count > 0);

    /// <summary>The same job on the days its shop has settled on for it; as it is where there are none.</summary>
    /// <param name="settled">Visits of this job.</param>
    public WholeJob On(IReadOnlyList<VisitDocument> settled) => settled.Count == 0 ? this : this with { Timeline = Timing.Time(Job, Measured, Conditions, Work, settled) };

    /// <summary>Works a document through the phases; null with the faults where nothing could be read.</summary>
    public static (WholeJob? Whole, IReadOnlyList<Fault> Faults) From(JobDocument document, IReadOnlyList<ProductDocument> library) =>
        Slices.AtOnce(FromAsync(document, library, Effort.AtOnce));

    /// <summary>The same in slices, so that a page stays alive while it plans.</summary>
    /// <exception cref="OperationCanceledException">The pause stopped it.</exception>
    public static async ValueTask<(WholeJob? Whole, IReadOnlyList<Fault> Faults)> FromAsync(JobDocument document, IReadOnlyList<ProductDocument> library, Effort effort)
    {
        var read = JobReading.Read(document, library);
        if (read.Job is not { } job) return (null, read.Faults);

        var measured = Measuring.Measure(job);
        var materials = Estimating.Estimate(job, measured);
        var conditions = Judging.Judge(job, materials);
        var work = await Planning.PlanAsync(job, measured, conditions, effort);
        materials = Estimating.Estimate(job, measured, work.Rollers);
        var supply = Supplying.Supply(job, materials, work);
        var timeline = Timing.Time(job, measured, conditions, work);

        IReadOnlyList<Fault> faults = [.. read.Faults, .. measured.Faults];
        return (new WholeJob(job, measured, materials, conditions, work, supply, timeline, faults), faults);
    }
}
