using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Remedies;

/// <summary>By how much a plan's batches and steps fail; a margin says nothing of that.</summary>
/// <param name="BatchesFail">Some batch outlives its pot life or is too small.</param>
/// <param name="OverdueMs">By which batches are used past their pot life, summed.</param>
/// <param name="OverMl">By which batches are larger than may be mixed at one time, summed.</param>
/// <param name="LateMs">By which steps come after their time, summed.</param>
internal readonly record struct WorkFaults(bool BatchesFail, long OverdueMs, double OverMl, long LateMs)
{
    public static WorkFaults Of(CoatWork work, Job job, bool batchesFail)
    {
        var largestMl = Math.Min(job.Tools.LargestBatchMl / (1 + work.Coat.ThinnerFraction), work.Coat.Product.LargestBatchMl ?? double.PositiveInfinity);
        var lastMs = work.Sections.GroupBy(s => s.Batch, StringComparer.Ordinal).ToDictionary(b => b.Key, b => b.Max(s => s.WetEndMs), StringComparer.Ordinal);
        return new WorkFaults(
            batchesFail,
            batchesFail ? work.Batches.Sum(b => Math.Max(0, lastMs.GetValueOrDefault(b.Id) - b.UseByMs)) : 0,
            batchesFail ? Math.Round(work.Batches.Sum(b => Math.Max(0, b.VolumeMl - largestMl)), 3) : 0,
            work.Steps.Sum(s => s.LateMs));
    }

    public bool Any => BatchesFail || LateMs > 0;

    /// <summary>Nothing fails by more, and something by less.</summary>
    public bool AreLessThan(WorkFaults other) =>
        this != other && OverdueMs <= other.OverdueMs && OverMl <= other.OverMl && LateMs <= other.LateMs && (!BatchesFail || other.BatchesFail);
}
