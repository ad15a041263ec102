using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work.Remedies;

/// <summary>What would make a coat's plan work, or keep its margin?</summary>
public static class Remedying
{
    /// <summary>
    /// Remedies for one coat, about in the order of their trouble, each really planned only when it is asked for, in counted steps.
    /// Nothing where the plan keeps its target already. What would not help is left out. <see cref="Remedy.Ranked"/> ranks them.
    /// </summary>
    /// <param name="coat">Place of the coat in the system, from 0.</param>
    /// <param name="library">Products that could be had instead.</param>
    public static IEnumerable<Remedy> For(Job job, MeasuredJob measured, int coat, IReadOnlyList<Product> library)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(library);
        ArgumentOutOfRangeException.ThrowIfNegative(coat);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(coat, job.System.Count);
        return Of(job, measured, coat, library);
    }

    private static IEnumerable<Remedy> Of(Job job, MeasuredJob measured, int coat, IReadOnlyList<Product> library)
    {
        if (Attempt.Of(job, measured, job.System[coat]) is not { } now || !IsWanted(now)) yield break;
        var trying = new Trying(now);
        if (WorkRemedies.NarrowerSections(trying) is { } narrower) yield return narrower;
        if (WorkRemedies.LargerBatch(trying) is { } batch) yield return batch;
        if (RoomRemedies.CoolerMaterial(trying) is { } material) yield return material;
        if (RoomRemedies.CoolerHour(trying) is { } hour) yield return hour;
        if (ProductRemedies.Thinner(trying) is { } thinner) yield return thinner;
        foreach (var people in WorkRemedies.MorePeople(trying)) yield return people;
        if (BreakRemedies.AtCorner(trying) is { } corner) yield return corner;
        if (BreakRemedies.NearEnd(trying) is { } end) yield return end;
        if (BreakRemedies.InMiddle(trying) is { } middle) yield return middle;
        foreach (var slower in ProductRemedies.Slower(trying, library)) yield return slower;
    }

    /// <summary>Work can cure a narrow margin and a batch gone off; a room outside its limits is cured in the room.</summary>
    private static bool IsWanted(Attempt now) => now.Work.LapMarginMs < now.Work.TargetMarginMs || now.OutlivesPot;
}
