using Lapwise.Core;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Scheduling;

/// <param name="Id">Told apart by it; a visit is called <c>id/number</c>.</param>
public sealed record ShopJob(string Id, WholeJob Whole);

/// <param name="Away">Days it works for nobody.</param>
public sealed record ShopCrew(string Name, IReadOnlyList<DateOnly> Away);

/// <summary>A day on which no coat goes on, as when the air is too humid.</summary>
/// <param name="Job">Null: at every site.</param>
public sealed record LostDay(DateOnly Date, string? Job);

/// <summary>What a shop has over some days.</summary>
/// <param name="First">Day 0.</param>
/// <param name="Tents">Null: enough for every job.</param>
/// <param name="BetweenSitesMin">The way from any site to any other.</param>
/// <param name="Stays">Visits that stay, by id: minutes from midnight of day 0.</param>
public sealed record Shop(DateOnly First, int Days, IReadOnlyList<ShopCrew> Crews, int? Tents, int BetweenSitesMin, IReadOnlyList<LostDay> Lost, IReadOnlyDictionary<string, Locked> Stays);

/// <summary>
/// The jobs of a shop as one problem, in minutes from midnight of its first day. Each job keeps the visits of its own
/// timeline and their waits, each wait as it is at its worst hour of the day; its days are what is sought.
/// </summary>
public static class ShopDays
{
    public const int DayMin = 24 * 60;

    public static ScheduleProblem Problem(IReadOnlyList<ShopJob> jobs, Shop shop)
    {
        List<Visit> visits = [];
        List<Lag> lags = [];
        List<Hold> holds = [];
        for (var site = 0; site < jobs.Count; site++) Add(jobs[site], site, shop, visits, lags, holds);
        return new ScheduleProblem(
            visits, lags, shop.Tents is { } tents ? [new Gear("tent", tents)] : [], shop.Tents is null ? [] : holds,
            [.. shop.Crews.Select(c => new Crew(c.Name, [], [.. c.Away.Select(d => DayOf(shop, d)).Where(d => d >= 0).Select(d => new Window(d * DayMin, (d + 1) * DayMin))]))],
            shop.BetweenSitesMin == 0 ? [] : [.. jobs.Select((_, a) => (IReadOnlyList<long>)[.. jobs.Select((_, b) => a == b ? 0L : shop.BetweenSitesMin)])],
            (long)shop.Days * DayMin);
    }

    public static DateTime At(Shop shop, long minute) => shop.First.ToDateTime(TimeOnly.MinValue).AddMinutes(minute);

    private static int DayOf(Shop shop, DateOnly date) => date.DayNumber - shop.First.DayNumber;

    private static void Add(ShopJob job, int site, Shop shop, List<Visit> visits, List<Lag> lags, List<Hold> holds)
    {
        var (timeline, asks) = (job.Whole.Timeline, job.Whole.Job.Timeline);
        var own = SiteVisits.Of(timeline);
        var first = visits.Count;
        var open = Open(asks, shop, []);
        var dry = Open(asks, shop, [.. shop.Lost.Where(l => l.Job is null || l.Job == job.Id).Select(l => DayOf(shop, l.Date))]);
        foreach (var visit in own)
        {
            var id = $"{job.Id}/{visit.Number}";
            visits.Add(new Visit(id, job.Id, (long)visit.Length.TotalMinutes)
            {
                NeedsCrew = visit.By == Doer.Crew,
                Together = job.Id,
                Site = site,
                Open = visit.Steps.Any(s => timeline.Steps[s].Kind is SiteStep.Coat or SiteStep.Prime) ? dry : open,
                NotBefore = asks.Start is { } start ? Math.Max(0, DayOf(shop, start)) * (long)DayMin : 0,
                Locked = shop.Stays.TryGetValue(id, out var stays) ? stays : null,
            });
            if (visit.Number > 1) lags.Add(new Lag(visits.Count - 2, visits.Count - 1, visits[^2].Length, $"{job.Whole.Job.Name}: {timeline.Steps[visit.Steps[0]].Name(Voice(job))}"));
        }

        int VisitOf(int step, bool last) => last ? own.ToList().FindLastIndex(v => v.Steps.Contains(step)) : own.ToList().FindIndex(v => v.Steps.Contains(step));
        foreach (var wait in timeline.Waits)
        {
            var (a, b) = (VisitOf(wait.After, last: true), VisitOf(wait.Before, last: false));
            if (a == b) continue;
            var endsAfter = Minutes(timeline.Steps[wait.After].End - own[a].From);
            var beginsAfter = Minutes(timeline.Steps[wait.Before].Start - own[b].From);
            var name = $"{job.Whole.Job.Name}: {wait.Name(Voice(job))}";
            // Wiping before a coat touches the film too, so the whole visit waits.
            lags.Add(new Lag(first + a, first + b, endsAfter + Minutes(wait.AtMostNeeded), name));
            if (wait.AtLeastAllowed is { } most) lags.Add(new Lag(first + b, first + a, beginsAfter - endsAfter - (long)Math.Floor(most.TotalMinutes), name));
        }

        var (up, down) = (timeline.Steps.ToList().FindIndex(s => s.Kind == SiteStep.Tent), timeline.Steps.ToList().FindIndex(s => s.Kind == SiteStep.ClearRoom));
        if (up >= 0 && down >= 0) holds.Add(new Hold(0, 1, first + VisitOf(up, last: false), first + VisitOf(down, last: true)));
        if (asks.LongestWithoutS is not { } longest) return;
        var (outs, backs) = (timeline.Steps.ToList().FindIndex(s => s.Kind == SiteStep.TakeOut), timeline.Steps.ToList().FindLastIndex(s => s.Kind == SiteStep.PutBack));
        if (outs < 0 || backs < 0) return;
        var (out0, back0) = (VisitOf(outs, last: true), VisitOf(backs, last: true));
        lags.Add(new Lag(first + back0, first + out0,
            Minutes(timeline.Steps[backs].End - own[back0].From) - Minutes(timeline.Steps[outs].End - own[out0].From) - (long)Math.Floor(longest / 60),
            $"{job.Whole.Job.Name}: {Core.Explain.Voice.Span(longest)}"));
    }

    private static Core.Explain.Voice Voice(ShopJob job) => new(job.Whole.Job.Language, job.Whole.Job.Units);

    private static long Minutes(TimeSpan span) => (long)Math.Ceiling(span.TotalMinutes);

    /// <summary>The working hours of a job over the shop's days, less days that are lost.</summary>
    private static IReadOnlyList<Window> Open(TimelineAsks asks, Shop shop, IReadOnlyList<int> lost) =>
    [
        .. Enumerable.Range(0, shop.Days)
            .Where(d => shop.First.AddDays(d) is var date && asks.WorkDays.Contains(date.DayOfWeek) && !asks.DaysOff.Contains(date) && !lost.Contains(d))
            .Select(d => new Window(((long)d * DayMin) + asks.WorkFromMin, ((long)d * DayMin) + asks.WorkToMin)),
    ];
}
