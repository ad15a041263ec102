using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

/// <summary>What is done on site in one go: steps of one day by the same hands with hardly a gap between them.</summary>
/// <param name="Number">From 1, in order of time; it stays when days shift.</param>
/// <param name="Steps">Places in the timeline's steps.</param>
public sealed record SiteVisit(int Number, IReadOnlyList<int> Steps, DateTime From, DateTime To, Doer By)
{
    public TimeSpan Length => To - From;
}

/// <summary>The visits of a timeline: what goes into a calendar, and what many jobs are scheduled by.</summary>
public static class SiteVisits
{
    /// <summary>A shorter gap is spent on site.</summary>
    private static readonly TimeSpan StaysFor = TimeSpan.FromHours(1);

    public static IReadOnlyList<SiteVisit> Of(JobTimeline timeline)
    {
        List<SiteVisit> visits = [];
        for (var step = 0; step < timeline.Steps.Count; step++)
        {
            foreach (var (from, to) in timeline.Steps[step].Parts)
            {
                var by = timeline.Steps[step].By;
                if (visits.Count > 0 && visits[^1] is var last && last.By == by && last.To.Date == from.Date && from - last.To < StaysFor)
                    visits[^1] = last with { To = to, Steps = [.. last.Steps, step] };
                else visits.Add(new SiteVisit(visits.Count + 1, [step], from, to, by));
            }
        }

        return visits;
    }
}
