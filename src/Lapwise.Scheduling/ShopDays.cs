using System.Globalization;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Scheduling;

/// <param name="Id">Told apart by it; a visit is called <c>id/number</c>.</param>
public sealed record ShopJob(string Id, WholeJob Whole);

/// <summary>A shop and the days it plans.</summary>
/// <param name="First">Day 0: no later than the first visit that stays.</param>
/// <param name="Today">Nothing new is placed before it.</param>
/// <param name="Asks">Its crews and gear, its days lost, and the visits that stay.</param>
public sealed record Shop(DateOnly First, DateOnly Today, DaysAsks Asks)
{
    /// <summary>From what was entered; day 0 reaches back to the first visit that stays.</summary>
    public static Shop From(DaysAsks asks, DateOnly today) =>
        new(asks.Stays.Select(s => DateOnly.FromDateTime(s.From)).Append(asks.First ?? today).Min(), asks.First ?? today, asks);

    public int Days => Today.DayNumber - First.DayNumber + Asks.DaysAhead;
}

/// <summary>
/// The jobs of a shop as one problem, in minutes from midnight of its first day. Each job keeps the visits of its own
/// timeline and their waits, each wait as it is at its worst hour of the day; its days are what is sought.
/// </summary>
public static class ShopDays
{
    public const int DayMin = 24 * 60;

    /// <param name="settled">Where visits stood before; null: nowhere.</param>
    public static ScheduleProblem Problem(IReadOnlyList<ShopJob> jobs, Shop shop, IReadOnlyList<VisitDocument>? settled = null)
    {
        List<Visit> visits = [];
        List<Lag> lags = [];
        List<Hold> holds = [];
        List<Stretch> stretches = [];
        for (var site = 0; site < jobs.Count; site++) Add(jobs[site], site, shop, visits, lags, holds, stretches);
        var asks = shop.Asks;
        return new ScheduleProblem(
            visits, lags, [.. asks.Gear.Select(g => new Gear(g.Name, g.Count))], holds,
            [.. asks.Crews.Select(c => new Crew(c.Name, c.Skills, [.. c.Away.Distinct().Order().Select(d => DayOf(shop, d)).Where(d => d >= 0).Select(d => new Window(d * DayMin, (d + 1) * DayMin))]))],
            asks.BetweenSitesMin == 0 && asks.Ways.Count == 0 ? [] : [.. jobs.Select(a => (IReadOnlyList<long>)[.. jobs.Select(b => Way(asks, a.Id, b.Id))])],
            (long)shop.Days * DayMin)
        {
            Stretches = stretches,
            Before = (settled ?? []).Where(v => visits.Exists(x => x.Id == v.Id)).DistinctBy(v => v.Id, StringComparer.Ordinal)
                .ToDictionary(v => v.Id, v => new PlacedVisit(Minute(shop, v.Begins), CrewOf(asks, v.Crew)), StringComparer.Ordinal),
        };
    }

    /// <summary>Each visit of the problem with the job it belongs to, in the problem's order.</summary>
    public static IEnumerable<(ShopJob Job, SiteVisit Visit, int Place)> Visits(IReadOnlyList<ShopJob> jobs)
    {
        var place = 0;
        foreach (var job in jobs) foreach (var visit in SiteVisits.Of(job.Whole.Timeline)) yield return (job, visit, place++);
    }

    /// <summary>What a visit is called by: its coat, else what is done first.</summary>
    public static Phrase Does(JobTimeline timeline, SiteVisit visit) =>
        (visit.Steps.Select(s => timeline.Steps[s]).FirstOrDefault(s => s.Kind == SiteStep.Coat) ?? timeline.Steps[visit.Steps[0]]).Name;

    /// <summary>A schedule in the words and dates it is given out in, in order of time.</summary>
    public static IReadOnlyList<VisitDocument> Written(IReadOnlyList<ShopJob> jobs, Shop shop, Schedule schedule) =>
    [
        .. Visits(jobs).Select(x => Written(x.Job, x.Visit, At(shop, schedule.Visits[x.Place].Start), schedule.Visits[x.Place].Crew is { } crew ? shop.Asks.Crews[crew].Name : null))
            .OrderBy(v => v.From, StringComparer.Ordinal).ThenBy(v => v.Id, StringComparer.Ordinal),
    ];

    private static VisitDocument Written(ShopJob job, SiteVisit visit, DateTime from, string? crew)
    {
        var steps = visit.Steps.Select(s => job.Whole.Timeline.Steps[s]).Distinct().ToList();
        string Words(Voice v) => string.Join('\n', steps.Select(s => s.Name(v)));
        var units = job.Whole.Job.Units;
        return new VisitDocument
        {
            Job = job.Id, Name = job.Whole.Job.Name, Number = visit.Number, From = from.ToString(DaysReading.Moment, CultureInfo.InvariantCulture), LengthMin = (int)visit.Length.TotalMinutes,
            By = visit.By, Crew = crew, IsCoat = steps.Exists(s => s.Kind is SiteStep.Coat or SiteStep.Prime), Coat = steps.Where(s => s.Kind == SiteStep.Coat).Min(s => s.Coat) + 1, Zone = job.Whole.Job.Timeline.Zone,
            En = Words(new Voice(Language.English, units)), Es = Words(new Voice(Language.Spanish, units)),
        };
    }

    public static DateTime At(Shop shop, long minute) => shop.First.ToDateTime(TimeOnly.MinValue).AddMinutes(minute);

    /// <summary>Why a visit cannot lie at a time, whoever works when; null: it can.</summary>
    public static Phrase? Shut(IReadOnlyList<ShopJob> jobs, Shop shop, int place, long minute)
    {
        var (job, visit, _) = Visits(jobs).ElementAt(place);
        return Shut(job, shop, visit, At(shop, minute));
    }

    private static long Minute(Shop shop, DateTime at) => (long)(at - shop.First.ToDateTime(TimeOnly.MinValue)).TotalMinutes;

    private static int? CrewOf(DaysAsks asks, string? name) =>
        name is not null && asks.Crews.ToList().FindIndex(c => string.Equals(c.Name, name, StringComparison.OrdinalIgnoreCase)) is >= 0 and var place ? place : null;

    private static long Way(DaysAsks asks, string from, string to) => from == to ? 0
        : asks.Ways.FirstOrDefault(w => (w.From == from && w.To == to) || (w.From == to && w.To == from))?.Minutes ?? asks.BetweenSitesMin;

    private static int DayOf(Shop shop, DateOnly date) => date.DayNumber - shop.First.DayNumber;

    private static void Add(ShopJob job, int site, Shop shop, List<Visit> visits, List<Lag> lags, List<Hold> holds, List<Stretch> stretches)
    {
        var (timeline, asks) = (job.Whole.Timeline, job.Whole.Job.Timeline);
        var asked = shop.Asks.Jobs.GetValueOrDefault(job.Id) ?? JobDaysAsk.Nothing;
        var own = SiteVisits.Of(timeline);
        var first = visits.Count;
        var open = Open(asks, shop, []);
        var dry = Open(asks, shop, [.. Lost(shop, job).Select(d => DayOf(shop, d))]);
        var start = asked.NotBefore ?? asks.Start ?? shop.Today;
        foreach (var visit in own)
        {
            var id = $"{job.Id}/{visit.Number}";
            var stays = shop.Asks.Stays.FirstOrDefault(s => s.Visit == id);
            string Name(Voice v) => $"{job.Whole.Job.Name}: {Does(timeline, visit)(v)}";
            visits.Add(new Visit(id, job.Id, (long)visit.Length.TotalMinutes)
            {
                Name = Name,
                JobName = job.Whole.Job.Name,
                NeedsCrew = visit.By == Doer.Crew,
                Skill = asked.Skill,
                Needs = [.. shop.Asks.Gear.Select((g, i) => (g, i)).Where(g => Uses(g.g.Use, visit, timeline)).Select(g => new Need(g.i, 1))],
                Together = job.Id,
                Site = site,
                Open = IsCoat(visit, timeline) ? dry : open,
                NotBefore = stays is null ? Math.Max(0, DayOf(shop, start < shop.Today ? shop.Today : start)) * (long)DayMin : 0,
                Locked = stays is null ? null : new Locked(Minute(shop, stays.From), CrewOf(shop.Asks, stays.Crew)) { Said = v => Moment(v, stays.From) + (Shut(job, shop, visit, stays.From) is { } shut ? $" ({shut(v)})" : "") },
                DueBy = DueBy(visit, own, timeline, asks, asked, shop),
            });
            if (visit.Number > 1) lags.Add(new Lag(visits.Count - 2, visits.Count - 1, visits[^2].Length, Name));
        }

        int VisitOf(int step, bool last) => last ? own.ToList().FindLastIndex(v => v.Steps.Contains(step)) : own.ToList().FindIndex(v => v.Steps.Contains(step));
        foreach (var wait in timeline.Waits)
        {
            var (a, b) = (VisitOf(wait.After, last: true), VisitOf(wait.Before, last: false));
            if (a == b) continue;
            var endsAfter = Minutes(timeline.Steps[wait.After].End - own[a].From);
            var beginsAfter = Minutes(timeline.Steps[wait.Before].Start - own[b].From);
            string Name(Voice v) => $"{job.Whole.Job.Name}: {wait.Name(v)}";
            // Wiping before a coat touches the film too, so the whole visit waits.
            lags.Add(new Lag(first + a, first + b, endsAfter + Minutes(wait.AtAnyHour.Value.Needed), Name));
            if (wait.AtAnyHour.Value.Allowed is { } most) lags.Add(new Lag(first + b, first + a, beginsAfter - endsAfter - (long)Math.Floor(most.TotalMinutes), Name));
        }

        var (up, down) = (timeline.Steps.ToList().FindIndex(s => s.Kind == SiteStep.Tent), timeline.Steps.ToList().FindIndex(s => s.Kind == SiteStep.ClearRoom));
        for (var gear = 0; gear < shop.Asks.Gear.Count; gear++)
            if (shop.Asks.Gear[gear].Use == GearUse.Tented && up >= 0 && down >= 0) holds.Add(new Hold(gear, 1, first + VisitOf(up, last: false), first + VisitOf(down, last: true)));
        stretches.Add(new Stretch(first + Math.Max(0, own.ToList().FindIndex(v => v.Steps.Any(s => timeline.Steps[s].Kind != SiteStep.PracticeBoard))), first + own.Count - 1));
        var (outs, backs) = (timeline.Steps.ToList().FindIndex(s => s.Kind == SiteStep.TakeOut), timeline.Steps.ToList().FindLastIndex(s => s.Kind == SiteStep.PutBack));
        if (outs < 0 || backs < 0) return;
        var (out0, back0) = (VisitOf(outs, last: true), VisitOf(backs, last: true));
        stretches.Add(new Stretch(first + out0, first + back0));
        if (asks.LongestWithoutS is not { } longest) return;
        lags.Add(new Lag(first + back0, first + out0,
            Minutes(timeline.Steps[backs].End - own[back0].From) - Minutes(timeline.Steps[outs].End - own[out0].From) - (long)Math.Floor(longest / 60),
            v => $"{job.Whole.Job.Name}: {v.Say("longest without sink and cooktop", "máximo sin fregadero ni placa")}, {Voice.Span(longest)}"));
    }

    private static bool IsCoat(SiteVisit visit, JobTimeline timeline) => visit.Steps.Any(s => timeline.Steps[s].Kind is SiteStep.Coat or SiteStep.Prime);

    private static IEnumerable<DateOnly> Lost(Shop shop, ShopJob job) => shop.Asks.Lost.Where(l => l.Job is null || l.Job == job.Id).Select(l => l.Date);

    private static string Moment(Voice v, DateTime at) => $"{v.WeekDay(DateOnly.FromDateTime(at))}, {v.Hour(at)}";

    private static Phrase? Shut(ShopJob job, Shop shop, SiteVisit visit, DateTime at)
    {
        var (asks, date) = (job.Whole.Job.Timeline, DateOnly.FromDateTime(at));
        if (!asks.WorkDays.Contains(date.DayOfWeek) || asks.DaysOff.Contains(date))
            return v => v.Say($"nobody works there on {v.WeekDay(date)}", $"allí no se trabaja el {v.WeekDay(date)}");
        if (IsCoat(visit, job.Whole.Timeline) && Lost(shop, job).Contains(date))
            return v => v.Say($"{v.WeekDay(date)} is a day lost, without coats", $"el {v.WeekDay(date)} es un día perdido, sin capas");
        if (at.TimeOfDay.TotalMinutes >= asks.WorkFromMin && at.TimeOfDay.TotalMinutes + visit.Length.TotalMinutes <= asks.WorkToMin) return null;
        return v => v.Say($"work there is from {Clock(v, asks.WorkFromMin)} to {Clock(v, asks.WorkToMin)}", $"allí se trabaja de {Clock(v, asks.WorkFromMin)} a {Clock(v, asks.WorkToMin)}");
    }

    private static string Clock(Voice v, long minutes) => v.HourOfDay(minutes / 60.0);

    private static bool Uses(GearUse use, SiteVisit visit, JobTimeline timeline) => use != GearUse.Tented && visit.Steps.Any(s => timeline.Steps[s].Kind is var kind
        && (use == GearUse.Sanding ? kind is SiteStep.Sand or SiteStep.SandBetween : kind is SiteStep.Prime or SiteStep.Coat));

    /// <summary>The last visit by the evening it was asked for; the last coat so long before the evening light use was promised for.</summary>
    private static long? DueBy(SiteVisit visit, IReadOnlyList<SiteVisit> own, JobTimeline timeline, TimelineAsks asks, JobDaysAsk asked, Shop shop)
    {
        long Evening(DateOnly day) => (DayOf(shop, day) + 1) * (long)DayMin;
        List<long> due = [];
        if (asked.EndBy is { } by && visit.Number == own.Count) due.Add(Evening(by));
        var coated = timeline.Steps.ToList().FindLastIndex(s => s.Kind == SiteStep.Coat);
        if (asks.PromisedBy is { } promised && coated >= 0 && timeline.UseDates.FirstOrDefault(u => u.Use == UseOf.LightUse) is { } light && own.Last(v => v.Steps.Contains(coated)) == visit)
            due.Add(Evening(promised) - Minutes(light.From - timeline.Steps[coated].End) + Minutes(visit.To - timeline.Steps[coated].End));
        return due.Count == 0 ? null : due.Min();
    }

    private static long Minutes(TimeSpan span) => (long)Math.Ceiling(span.TotalMinutes);

    /// <summary>The working hours of a job over the shop's days and as far beyond as is looked where they are too few, less days that are lost.</summary>
    private static IReadOnlyList<Window> Open(TimelineAsks asks, Shop shop, IReadOnlyList<int> lost) =>
    [
        .. Enumerable.Range(0, Scheduler.MoreDays * shop.Days)
            .Where(d => shop.First.AddDays(d) is var date && asks.WorkDays.Contains(date.DayOfWeek) && !asks.DaysOff.Contains(date) && !lost.Contains(d))
            .Select(d => new Window(((long)d * DayMin) + asks.WorkFromMin, ((long)d * DayMin) + asks.WorkToMin)),
    ];
}
