using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

/// <summary>How days and hours of a timeline are said: by date where the first day is set, else counted from day 1.</summary>
public static class SiteClock
{
    /// <summary><c>Mon 7 Dec, 8:00 am</c> or <c>day 1, 8:00 am</c>.</summary>
    public static string Moment(JobTimeline timeline, DateTime at, Voice v) => $"{Day(timeline, at, v)}, {v.Hour(at)}";

    /// <summary><c>Mon 7 Dec</c> or <c>day 1</c>.</summary>
    public static string Day(JobTimeline timeline, DateTime at, Voice v) =>
        timeline.IsDated ? v.WeekDay(DateOnly.FromDateTime(at)) : v.Say($"day {timeline.DayOf(at)}", $"día {timeline.DayOf(at)}");

    /// <summary><c>Mon 7 Dec, 8:00 to 9:15</c>; two days where it ends on another.</summary>
    public static string Span(JobTimeline timeline, DateTime from, DateTime to, Voice v) =>
        Moment(timeline, from, v) + v.Say(" to ", " a ") + (from.Date == to.Date ? v.Hour(to) : Moment(timeline, to, v));

    public static string Say(Doer by, Voice v) => by switch
    {
        Doer.Crew => v.Say("crew", "equipo"),
        Doer.Trade => v.Say("licensed trade", "oficio con licencia"),
        Doer.Customer => v.Say("customer", "cliente"),
        _ => throw new ArgumentOutOfRangeException(nameof(by), by, null),
    };
}
