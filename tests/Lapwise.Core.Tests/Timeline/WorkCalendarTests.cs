using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Tests.Timeline;

public sealed class WorkCalendarTests
{
    // Monday 7 December 2026, by the perpetual calendar.
    private static readonly WorkCalendar Week = new(TimelineAsks.Usual with { Start = new DateOnly(2026, 12, 7), DaysOff = [new DateOnly(2026, 12, 9)] });

    private const long Day = 24 * 60;

    [Fact]
    public void A_step_that_no_longer_fits_today_goes_to_the_next_working_day() =>
        Assert.Equal((Day + (8 * 60), Day + (9 * 60)), Ends(Week.Place((15 * 60) + 31, 60, splits: false)));

    [Fact]
    public void A_day_off_and_a_weekend_are_passed_over()
    {
        Assert.Equal(3 * Day + (8 * 60), Week.Place((2 * Day) + (9 * 60), 60, splits: false).Start);
        Assert.Equal(7 * Day + (8 * 60), Week.Place((4 * Day) + (17 * 60), 60, splits: false).Start);
    }

    [Fact]
    public void What_may_be_split_goes_on_the_next_day()
    {
        var placed = Week.Place(15 * 60, 120, splits: true);

        Assert.Equal([(15 * 60, 16.5 * 60), (Day + (8 * 60), Day + (8.5 * 60))], placed.Parts.Select(p => ((double)p.From, (double)p.To)));
    }

    [Fact]
    public void What_may_not_be_split_and_is_longer_than_a_day_begins_with_the_day() =>
        Assert.Equal((8 * 60, 18 * 60), Ends(Week.Place(0, 600, splits: false)));

    [Fact]
    public void A_later_beginning_never_ends_earlier() =>
        Gen.Select(Gen.Long[0, 20 * Day], Gen.Long[0, 3 * Day], Gen.Long[0, 700], Gen.Bool).Sample((at, more, length, splits) =>
            Assert.True(Week.Place(at, length, splits).End <= Week.Place(at + more, length, splits).End));

    [Fact]
    public void The_first_place_that_ends_late_enough_is_found() =>
        Gen.Select(Gen.Long[0, 10 * Day], Gen.Long[1, 500], Gen.Bool).Sample((end, length, splits) =>
        {
            var placed = Week.PlaceEnding(end, length, splits);
            Assert.True(placed.End >= end);
            Assert.True(placed.Start == Week.Place(0, length, splits).Start || Enumerable.Range(0, (int)placed.Start).All(s => Week.Place(s, length, splits).End < end || Week.Place(s, length, splits).Start == placed.Start));
        }, iter: 20);

    [Fact]
    public void Counted_days_begin_on_a_Monday() => Assert.Equal(DayOfWeek.Monday, new WorkCalendar(TimelineAsks.Usual).Day0.DayOfWeek);

    private static (long, long) Ends(Placed placed) => (placed.Start, placed.End);
}
