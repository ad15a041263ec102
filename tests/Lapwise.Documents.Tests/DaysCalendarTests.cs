using System.Diagnostics;
using System.Globalization;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

/// <summary>Calendars read back by Debian's python3-icalendar, which shares no code with what writes them.</summary>
public sealed class DaysCalendarTests
{
    private const string Reader = """
        import sys, icalendar
        calendar = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
        for e in calendar.walk('VEVENT'):
            start = e['DTSTART'].dt
            zoned = hasattr(start, 'utcoffset') and start.utcoffset() is not None
            print('|'.join([str(e['UID']), str(e['SEQUENCE']), start.isoformat(), 'zoned' if zoned else 'floating', str(e['SUMMARY']), str(e['DTSTAMP'].dt.isoformat())]))
        print('zones ' + ' '.join(str(z['TZID']) for z in calendar.walk('VTIMEZONE')))
        """;

    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly DateTimeOffset Stamp = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void An_independent_reader_finds_every_visit_on_its_hour_in_the_zone_of_the_site()
    {
        var whole = Samples.Whole("l-kitchen");
        var lines = Read(DaysCalendar.Write([new CalendarJob("kitchen", 3, whole)], Us, Stamp)!);
        var visits = SiteVisits.Of(whole.Timeline);

        Assert.Equal("zones America/Chicago", lines[^1]);
        Assert.Equal(visits.Count + whole.Timeline.UseDates.Count, lines.Count - 1);
        // Chicago is six hours behind in December.
        foreach (var visit in visits)
            Assert.Contains(lines, l => l.StartsWith(string.Create(CultureInfo.InvariantCulture, $"kitchen-visit-{visit.Number}@lapwise|3|{visit.From:yyyy-MM-ddTHH:mm:ss}-06:00|zoned|"), StringComparison.Ordinal));
        Assert.All(lines.SkipLast(1), l => Assert.EndsWith("|2026-11-25T12:00:00+00:00", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_zone_the_hours_are_the_clock_on_the_wall()
    {
        var whole = Changed(t => t with { Zone = null });

        Assert.Contains(Read(DaysCalendar.Write([new CalendarJob("kitchen", 0, whole)], Us, Stamp)!), l => l.Contains("2026-12-07T08:00:00|floating", StringComparison.Ordinal));
    }

    [Fact]
    public void A_changed_job_keeps_its_ids_and_raises_their_sequence()
    {
        var before = Read(DaysCalendar.Write([new CalendarJob("kitchen", 1, Samples.Whole("l-kitchen"))], Us, Stamp)!);
        var after = Read(DaysCalendar.Write([new CalendarJob("kitchen", 2, Changed(t => t with { Start = "2026-12-14" }))], Us, Stamp)!);

        static IEnumerable<string> Ids(IEnumerable<string> lines) => lines.SkipLast(1).Select(l => l.Split('|')[0]);
        Assert.Equal(Ids(before), Ids(after));
        Assert.All(after.SkipLast(1), l => Assert.Equal("2", l.Split('|')[1]));
        Assert.NotEqual(before[0].Split('|')[2], after[0].Split('|')[2]);
    }

    [Fact]
    public void A_job_without_a_first_day_gives_no_calendar() =>
        Assert.Null(DaysCalendar.Write([new CalendarJob("bar", 0, Samples.Whole("bar-top"))], Us, Stamp));

    // RFC 5545, 3.1: lines end with CRLF and are folded at 75 octets.
    [Fact]
    public void Lines_end_and_fold_as_the_standard_asks()
    {
        var text = DaysCalendar.Write([new CalendarJob("kitchen", 3, Samples.Whole("l-kitchen"))], new Voice(Language.Spanish, UnitSystem.Metric), Stamp)!;

        Assert.EndsWith("END:VCALENDAR\r\n", text, StringComparison.Ordinal);
        Assert.All(text.Split("\r\n"), line =>
        {
            Assert.DoesNotContain('\n', line);
            Assert.True(System.Text.Encoding.UTF8.GetByteCount(line) <= 75, line);
        });
    }

    [Fact]
    public void Settled_days_keep_their_ids_are_called_by_their_coat_and_only_a_changed_visit_raises_its_sequence()
    {
        VisitDocument Visit(int number, string from, int changed, int? coat = null) => new()
        {
            Job = "kitchen", Name = "Kitchen, Wrenlow", Number = number, From = from, LengthMin = 90, By = Doer.Crew, Crew = "Wren", Zone = "America/Chicago", En = "sand\ncoat 1", Es = "lijar\ncapa 1", Changed = changed, Coat = coat,
        };
        var lines = Read(DaysCalendar.Write(new SettledDaysDocument { Times = 3, Visits = [Visit(1, "2026-12-07T08:00", 1), Visit(2, "2026-12-09T08:00", 3, coat: 1)] }, Us, Stamp));

        Assert.Equal(
            [
                "kitchen-visit-1@lapwise|1|2026-12-07T08:00:00-06:00|zoned|Kitchen, Wrenlow: sand …|2026-11-25T12:00:00+00:00",
                "kitchen-visit-2@lapwise|3|2026-12-09T08:00:00-06:00|zoned|Kitchen, Wrenlow: coat 1 …|2026-11-25T12:00:00+00:00",
                "zones America/Chicago",
            ], lines);
    }

    [Fact]
    public void A_job_on_settled_days_adds_its_dates_of_use_as_days_of_their_own()
    {
        var whole = Samples.Whole("l-kitchen");
        whole = whole.On(WeekLater(whole));
        var lines = Read(DaysCalendar.Write(new SettledDaysDocument { Visits = WeekLater(Samples.Whole("l-kitchen")) }, Us, Stamp, new CalendarJob("kitchen", 7, whole)));

        Assert.True(whole.Timeline.IsSettled);
        foreach (var use in whole.Timeline.UseDates)
            Assert.Contains(lines, l => l.StartsWith(string.Create(CultureInfo.InvariantCulture, $"kitchen-use-{use.Use.ToString().ToLowerInvariant()}@lapwise|7|{use.From:yyyy-MM-dd}|"), StringComparison.Ordinal));
        Assert.Equal(SiteVisits.Of(whole.Timeline).Count + whole.Timeline.UseDates.Count, lines.Count - 1);
    }

    /// <summary>A job's own visits, settled a week later.</summary>
    internal static IReadOnlyList<VisitDocument> WeekLater(WholeJob whole) =>
    [
        .. SiteVisits.Of(whole.Timeline).Select(v => new VisitDocument
        {
            Job = "kitchen", Name = whole.Job.Name, Number = v.Number, From = v.From.AddDays(7).ToString(DaysReading.Moment, CultureInfo.InvariantCulture), LengthMin = (int)v.Length.TotalMinutes, By = v.By,
            IsCoat = v.Steps.Any(s => whole.Timeline.Steps[s].Kind is SiteStep.Coat or SiteStep.Prime),
            En = string.Join('\n', v.Steps.Select(s => whole.Timeline.Steps[s].Name(Us))), Es = string.Join('\n', v.Steps.Select(s => whole.Timeline.Steps[s].Name(new Voice(Language.Spanish, UnitSystem.Metric)))),
        }),
    ];

    // RFC 7986, 5.7: a feed says how often it is worth asking for, as a duration.
    [Fact]
    public void A_feed_with_nothing_settled_is_an_empty_calendar_that_says_how_often_to_ask()
    {
        var text = DaysCalendar.Write(new SettledDaysDocument(), new Voice(Language.Spanish, UnitSystem.Metric), Stamp);

        Assert.Equal(["zones "], Read(text));
        Assert.Contains("REFRESH-INTERVAL;VALUE=DURATION:PT1H\r\n", text, StringComparison.Ordinal);
    }

    private static WholeJob Changed(Func<TimelineDocument, TimelineDocument> change)
    {
        var document = Samples.Document("l-kitchen");
        return WholeJob.From(document with { Timeline = change(document.Timeline!) }, Samples.Library).Whole!;
    }

    private static List<string> Read(string calendar)
    {
        // Debian's own interpreter: the package belongs to it.
        using var python = Process.Start(new ProcessStartInfo("/usr/bin/python3", ["-c", Reader]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        using (python.StandardInput.BaseStream) python.StandardInput.BaseStream.Write(System.Text.Encoding.UTF8.GetBytes(calendar));
        var said = python.StandardOutput.ReadToEnd();
        var wrong = python.StandardError.ReadToEnd();
        python.WaitForExit();
        Assert.True(python.ExitCode == 0, wrong);
        return [.. said.Split('\n', StringSplitOptions.RemoveEmptyEntries)];
    }
}
