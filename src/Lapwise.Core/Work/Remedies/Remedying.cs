using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Remedies;

/// <summary>What would make a coat's plan work, or keep its margin?</summary>
public static class Remedying
{
    /// <summary>
    /// Remedies for one coat, what is soonest reckoned first and many narrow sections last, each really planned only when it is
    /// asked for, in counted steps. Nothing where the plan keeps its target already. What would not help is left out.
    /// <see cref="Remedy.Ranked"/> ranks them.
    /// </summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    /// <param name="library">Products that could be had instead.</param>
    public static IEnumerable<Remedy> For(Job job, MeasuredJob measured, int coat, IReadOnlyList<Product> library) =>
        Slices.AtOnce(ForAsync(job, measured, coat, library, Effort.AtOnce));

    /// <summary>The same in slices, with a pause between them.</summary>
    /// <inheritdoc cref="For"/>
    public static IAsyncEnumerable<Remedy> ForAsync(Job job, MeasuredJob measured, int coat, IReadOnlyList<Product> library, Effort effort)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(library);
        ArgumentOutOfRangeException.ThrowIfNegative(coat);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(coat, job.System.Count);
        return OfAsync(job, measured, coat, library, effort);
    }

    private static async IAsyncEnumerable<Remedy> OfAsync(Job job, MeasuredJob measured, int coat, IReadOnlyList<Product> library, Effort effort)
    {
        var ways = new TopWays();
        if (await Attempt.OfAsync(job, measured, job.System[coat], effort, ways) is not { } now || !IsWanted(now.Work, now.Conditions)) yield break;
        var trying = new Trying(now, effort, ways);
        if (await WorkRemedies.LargerBatchAsync(trying) is { } batch) yield return batch;
        if (await RoomRemedies.CoolerMaterialAsync(trying) is { } material) yield return material;
        if (await RoomRemedies.CoolerHourAsync(trying) is { } hour) yield return hour;
        if (ProductRemedies.Thinner(trying) is { } thinner) yield return thinner;
        await foreach (var people in WorkRemedies.MorePeopleAsync(trying)) yield return people;
        if (await BreakRemedies.AtCornerAsync(trying) is { } corner) yield return corner;
        if (await BreakRemedies.NearEndAsync(trying) is { } end) yield return end;
        if (await BreakRemedies.InMiddleAsync(trying) is { } middle) yield return middle;
        await foreach (var slower in ProductRemedies.SlowerAsync(trying, library)) yield return slower;
        if (await WorkRemedies.NarrowerSectionsAsync(trying) is { } narrower) yield return narrower;
    }

    /// <summary>The margin asked for is not kept, or the work itself does not hold. A room outside its limits is cured in the room.</summary>
    /// <param name="conditions">Of the same coat, as the work was planned with.</param>
    public static bool IsWanted(CoatWork work, CoatConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(conditions);
        return work.Sections.Count > 0 && (work.LapMarginMs < work.TargetMarginMs || work.Reasons.Except(conditions.Reasons).Any(r => r.Limit != Limit.Note));
    }
}
