using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Supply;
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
    IReadOnlyList<Fault> Faults)
{
    /// <summary>Works a document through the phases; null with the faults where nothing could be read.</summary>
    public static (WholeJob? Whole, IReadOnlyList<Fault> Faults) From(JobDocument document, IReadOnlyList<ProductDocument> library)
    {
        var read = JobReading.Read(document, library);
        if (read.Job is not { } job) return (null, read.Faults);

        var measured = Measuring.Measure(job);
        var materials = Estimating.Estimate(job, measured);
        var conditions = Judging.Judge(job);
        var work = Planning.Plan(job, measured, materials, conditions);
        var supply = Supplying.Supply(job, materials, work);

        IReadOnlyList<Fault> faults = [.. read.Faults, .. measured.Faults];
        return (new WholeJob(job, measured, materials, conditions, work, supply, faults), faults);
    }
}
