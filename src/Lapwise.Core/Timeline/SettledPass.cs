using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

/// <summary>
/// A job on the days its shop has settled on: the visits of its own timeline, each as it is in itself, at the hours they were
/// settled at. All waits and dates are then worked out from there, as they are on its own days.
/// </summary>
internal sealed class SettledPass
{
    /// <summary>Between visits a wait is settled by its worst full hour, so by the minute it may be a little longer.</summary>
    private const long BetweenHoursMin = 5;
    /// <summary>A visit that has grown by less than this still ends as it was settled, for all a calendar can tell.</summary>
    private static readonly TimeSpan Grown = TimeSpan.FromMinutes(15);

    private readonly JobTimeline own;
    private readonly TimelineAsks entered;
    private readonly IReadOnlyList<VisitDocument> settled;
    private readonly IReadOnlyList<SiteVisit> visits;

    /// <param name="own">The job on its own days.</param>
    /// <param name="settled">At least one.</param>
    public SettledPass(JobTimeline own, TimelineAsks entered, IReadOnlyList<VisitDocument> settled)
    {
        (this.own, this.entered) = (own, entered);
        this.settled = [.. settled.OrderBy(v => v.Number)];
        visits = SiteVisits.Of(own);
        Asks = entered with { Start = DateOnly.FromDateTime(this.settled.Min(v => v.Begins)) };
        Calendar = new WorkCalendar(Asks);
    }

    /// <summary>What was entered, begun on the first settled day.</summary>
    public TimelineAsks Asks { get; }

    public WorkCalendar Calendar { get; }

    /// <summary>Every step on its settled day; else what of the job the settled days no longer fit.</summary>
    public (IReadOnlyList<Placed>? Steps, Phrase? Against) Place(IReadOnlyList<Link> links)
    {
        if (Others() is { } others) return (null, others);
        var steps = Moved();
        return Broken(links, steps) is { } broken ? (null, broken) : (steps, null);
    }

    /// <summary>Visits or hours that are not those any more for which days were settled.</summary>
    private Phrase? Others()
    {
        if (visits.Count != settled.Count || visits.Zip(settled).Any(p => !IsSame(p.First, p.Second)))
            return v => v.Say("what is done in its visits is no longer the same", "lo que se hace en sus visitas ya no es lo mismo");
        if (entered.Start is { } start && start > Asks.Start!.Value)
            return v => v.Say($"they begin before the first day that is entered now, {v.WeekDay(start)}", $"empiezan antes del primer día que ahora está anotado, {v.WeekDay(start)}");
        return settled.FirstOrDefault(v => Calendar.Place(Minute(v.Begins), v.LengthMin, splits: false).Start != Minute(v.Begins)) is { } closed
            ? v => v.Say($"nobody works at {Moment(closed.Begins, v)}", $"nadie trabaja el {Moment(closed.Begins, v)}")
            : null;
    }

    private bool IsSame(SiteVisit visit, VisitDocument was) =>
        visit.Number == was.Number && visit.By == was.By && visit.Steps.Count == was.Steps(Voice.Default).Count && was.IsCoat == visit.Steps.Any(s => own.Steps[s].Kind is SiteStep.Coat or SiteStep.Prime)
        && visit.Length <= TimeSpan.FromMinutes(was.LengthMin) + Grown;

    /// <summary>Each part of a step lies within its visit where it lay.</summary>
    private List<Placed> Moved()
    {
        // Visits are made of the parts in this order.
        var visitOfPart = new Queue<SiteVisit>(visits.SelectMany(v => v.Steps, (v, _) => v));
        (long, long) Part((DateTime From, DateTime To) part)
        {
            var visit = visitOfPart.Dequeue();
            var by = settled[visit.Number - 1].Begins - visit.From;
            return (Minute(part.From + by), Minute(part.To + by));
        }

        return [.. own.Steps.Select(s => s.Parts.Select(Part).ToList()).Select(p => new Placed(p[0].Item1, p[^1].Item2, p))];
    }

    /// <summary>The first wait from one visit to another that is not kept. Within a visit the hours are the crew's own.</summary>
    private Phrase? Broken(IReadOnlyList<Link> links, List<Placed> steps)
    {
        foreach (var link in links.Where(l => visits.Last(v => v.Steps.Contains(l.From)) != visits.First(v => v.Steps.Contains(l.To))).OrderBy(l => l.Name is null))
        {
            var (end, start) = (steps[link.From].End, steps[link.To].Start);
            Phrase name = link.Name ?? own.Steps[link.To].Name;
            if (start < link.NotBefore(end) - BetweenHoursMin)
                return v => v.Say($"{name(v)} comes too early at {Moment(Calendar.At(start), v)}", $"{name(v)} llega demasiado pronto el {Moment(Calendar.At(start), v)}");
            if (link.NotAfter is { } latest && start > latest(end) + BetweenHoursMin)
                return v => v.Say($"{name(v)} comes too late at {Moment(Calendar.At(start), v)}", $"{name(v)} llega demasiado tarde el {Moment(Calendar.At(start), v)}");
        }

        return null;
    }

    private long Minute(DateTime at) => (long)(at - Calendar.At(0)).TotalMinutes;

    private static string Moment(DateTime at, Voice v) => $"{v.WeekDay(DateOnly.FromDateTime(at))}, {v.Hour(at)}";
}
