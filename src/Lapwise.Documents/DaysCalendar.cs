using System.Globalization;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Documents;

/// <summary>One job that goes into a calendar.</summary>
/// <param name="Id">Stays the same as long as the job lives: the events' ids are made from it.</param>
/// <param name="Sequence">Higher each time the job was changed, so that a calendar takes the newer events for the older ones.</param>
/// <param name="Visits">When each visit is, where a shop's calendar says other than the job's own timeline; null: its own.</param>
public sealed record CalendarJob(string Id, int Sequence, WholeJob Whole, IReadOnlyList<(SiteVisit Visit, DateTime From)>? Visits = null);

/// <summary>
/// Days as iCalendar (RFC 5545): an event for each visit, and for a job on its own timeline a day for each date of use.
/// The same visit keeps its UID while the job lives; SEQUENCE rises with each change.
/// </summary>
public static class DaysCalendar
{
    /// <summary>Null where a job has no first day: nothing could be put on a date.</summary>
    /// <param name="stamp">When it is made.</param>
    public static string? Write(IReadOnlyList<CalendarJob> jobs, Voice voice, DateTimeOffset stamp)
    {
        if (jobs.Any(j => !j.Whole.Timeline.IsDated && j.Visits is null)) return null;
        var calendar = new Ical.Net.Calendar { ProductId = "-//Lapwise//Days//EN", Version = "2.0" };
        foreach (var zone in jobs.Select(j => Zone(j.Whole.Job.Timeline.Zone)).OfType<TimeZoneInfo>().DistinctBy(z => z.Id))
            calendar.AddTimeZone(VTimeZone.FromSystemTimeZone(zone, jobs.Min(j => j.Whole.Timeline.Day1).ToDateTime(TimeOnly.MinValue).AddYears(-1), includeHistoricalData: false));
        foreach (var job in jobs)
        {
            foreach (var visit in job.Visits ?? [.. SiteVisits.Of(job.Whole.Timeline).Select(v => (v, v.From))]) calendar.Events.Add(Event(job, visit.Visit, visit.From, voice, stamp));
            if (job.Visits is null) foreach (var use in job.Whole.Timeline.UseDates) calendar.Events.Add(Day(job, use, voice, stamp));
        }

        // RFC 5545, 3.1: lines end with CRLF.
        return new CalendarSerializer().SerializeToString(calendar)!.ReplaceLineEndings("\r\n");
    }

    /// <summary>The days a shop has settled on, in the words they were settled in. An event's SEQUENCE is the settling it last changed at.</summary>
    /// <param name="stamp">When they were settled.</param>
    /// <param name="withUse">A job on these days whose dates of use go in, too; null: none.</param>
    public static string Write(SettledDaysDocument settled, Voice voice, DateTimeOffset stamp, CalendarJob? withUse = null)
    {
        var calendar = new Ical.Net.Calendar { ProductId = "-//Lapwise//Days//EN", Version = "2.0" };
        // RFC 7986: what the calendar is called, and how often it is worth asking for.
        calendar.AddProperty("NAME", voice.Say("Days on site", "Días en obra"));
        calendar.AddProperty(new CalendarProperty("REFRESH-INTERVAL", "PT1H") { Parameters = { new CalendarParameter("VALUE", "DURATION") } });
        foreach (var zone in settled.Visits.Select(v => Zone(v.Zone)).OfType<TimeZoneInfo>().DistinctBy(z => z.Id))
            calendar.AddTimeZone(VTimeZone.FromSystemTimeZone(zone, settled.Visits.Min(v => v.Begins).AddYears(-1), includeHistoricalData: false));
        foreach (var visit in settled.Visits) calendar.Events.Add(Event(visit, voice, stamp));
        foreach (var use in withUse?.Whole.Timeline.UseDates ?? []) calendar.Events.Add(Day(withUse!, use, voice, stamp));
        return new CalendarSerializer().SerializeToString(calendar)!.ReplaceLineEndings("\r\n");
    }

    private static CalendarEvent Event(VisitDocument visit, Voice voice, DateTimeOffset stamp)
    {
        var steps = visit.Steps(voice);
        return new CalendarEvent
        {
            Uid = Uid(visit.Job, visit.Number),
            Sequence = visit.Changed,
            DtStamp = Stamp(stamp),
            Summary = $"{visit.Name}: {(visit.Coat is { } coat ? voice.Say($"coat {coat}", $"capa {coat}") : steps[0])}{(steps.Count > 1 ? " …" : "")}",
            Description = $"{visit.Crew ?? SiteClock.Say(visit.By, voice)}\n{string.Join('\n', steps)}",
            Start = At(visit.Begins, visit.Zone),
            End = At(visit.Ends, visit.Zone),
        };
    }

    private static string Uid(string job, int visit) => $"{job}-visit-{visit.ToString(CultureInfo.InvariantCulture)}@lapwise";

    /// <summary>Whether this machine knows the zone of a job; true where none is named.</summary>
    public static bool KnowsZone(WholeJob whole) => whole.Job.Timeline.Zone is not { } name || TimeZoneInfo.TryFindSystemTimeZoneById(name, out _);

    private static TimeZoneInfo? Zone(string? named) => named is { } name && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone) ? zone : null;

    private static CalendarEvent Event(CalendarJob job, SiteVisit visit, DateTime from, Voice voice, DateTimeOffset stamp)
    {
        var steps = visit.Steps.Select(s => job.Whole.Timeline.Steps[s]).Distinct().ToList();
        var coat = steps.FirstOrDefault(s => s.Kind == SiteStep.Coat);
        return new CalendarEvent
        {
            Uid = Uid(job.Id, visit.Number),
            Sequence = job.Sequence,
            DtStamp = Stamp(stamp),
            Summary = $"{job.Whole.Job.Name}: {(coat ?? steps[0]).Name(voice)}{(steps.Count > 1 ? " …" : "")}",
            Description = string.Join('\n', steps.Select(s => $"{s.Name(voice)} ({SiteClock.Say(s.By, voice)}){(s.How is { } how ? ": " + how(voice) : "")}")),
            Start = At(from, job.Whole.Job.Timeline.Zone),
            End = At(from + visit.Length, job.Whole.Job.Timeline.Zone),
        };
    }

    private static CalendarEvent Day(CalendarJob job, UseDate use, Voice voice, DateTimeOffset stamp) => new()
    {
        Uid = $"{job.Id}-use-{use.Use.ToString().ToLowerInvariant()}@lapwise",
        Sequence = job.Sequence,
        DtStamp = Stamp(stamp),
        Summary = $"{job.Whole.Job.Name}: {UseDate.Say(use.Use, voice)} {voice.Say("from", "desde las")} {voice.Hour(use.From)}",
        Start = new CalDateTime(DateOnly.FromDateTime(use.From)),
        Transparency = TransparencyType.Transparent,
    };

    /// <summary>In the site's zone; without one the clock on the wall wherever it is read (RFC 5545, 3.3.5, form 1).</summary>
    private static CalDateTime At(DateTime at, string? zone) => Zone(zone) is not null
        ? new CalDateTime(DateTime.SpecifyKind(at, DateTimeKind.Unspecified), zone)
        : new CalDateTime(DateTime.SpecifyKind(at, DateTimeKind.Unspecified));

    private static CalDateTime Stamp(DateTimeOffset stamp) => new(stamp.UtcDateTime, "UTC");
}
