using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.OnSite;

public sealed class RoomFollowingTests
{
    private const long Minute = Runs.Minute;

    // The invented clear: 11 min at 23 °C, 7 min at 32 °C; pot life 45 and 26 min at the same.
    private static readonly TemperatureLaw OpenLaw = TemperatureLaw.Through([new(11 * 60, 23), new(7 * 60, 32)])!;
    private static readonly TemperatureLaw PotLaw = TemperatureLaw.Through([new(45 * 60, 23), new(26 * 60, 32)])!;

    private static Phone Begun(int sections = 4) => new Phone("a").Taps(new What.Issued(Runs.Path(sections))).Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0));

    /// <summary>Between the frozen points the times follow the sheet's own Arrhenius line.</summary>
    [Theory]
    [InlineData(18.7), InlineData(23.4), InlineData(27.9), InlineData(31.2)]
    public void Open_time_and_pot_life_follow_the_law_of_the_sheet(double celsius)
    {
        var run = Begun().Taps(new What.Reading("surface", celsius)).Taps(new What.Reading("material", celsius)).Run;
        Assert.Equal(OpenLaw.SecondsAt(celsius) / OpenLaw.SecondsAt(23), (double)run.OpenTimeMs / run.Plan.OpenTimeMs, 0.001);
        Assert.Equal(PotLaw.SecondsAt(celsius) / PotLaw.SecondsAt(23), (double)run.PotLifeMs / run.Plan.PotLifeMs, 0.001);
    }

    /// <summary>Half of the open time used before a reading is half of it after: equivalent age.</summary>
    [Fact]
    public void Film_that_is_wet_keeps_the_share_of_its_open_time_that_it_has_used()
    {
        var phone = Begun().Waits(3 * Minute);
        var before = phone.Run;
        phone.Taps(new What.Reading("surface", 31));
        var after = phone.Run;
        var now = phone.RunNow;
        double Share(Run run) => (double)(now - run.FilmSinceMs(run.Sections["1"])) / run.OpenTimeMs;
        Assert.Equal(Share(before), Share(after), 0.0001);
        Assert.True(after.OpenTimeMs < before.OpenTimeMs);

        // Then it ages by the warm room.
        phone.Waits(2 * Minute);
        Assert.Equal(Share(before) + (2.0 * Minute / after.OpenTimeMs), (double)(phone.RunNow - phone.Run.FilmSinceMs(phone.Run.Sections["1"])) / phone.Run.OpenTimeMs, 0.0001);
        // And the batch in the cup by its own.
        Assert.Equal(before.UseByMs(before.Batches[0].AtMs), after.UseByMs(after.Batches[0].AtMs));
    }

    [Fact]
    public void A_lap_that_is_joined_is_not_judged_anew()
    {
        var phone = Begun().Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Taps(new What.SectionWet("2", 0)).Waits(4 * Minute).Taps(new What.SectionDry("2", 0));
        var lap = Assert.Single(JoinedLaps.Of(phone.Run));
        phone.Waits(Minute).Taps(new What.Reading("surface", 40));
        var again = Assert.Single(JoinedLaps.Of(phone.Run));
        Assert.False(again.IsLost);
        Assert.Equal((double)lap.AgeMs / phone.Run.Plan.OpenTimeMs, (double)again.AgeMs / phone.Run.OpenTimeMs, 0.001);
    }

    [Fact]
    public void A_hot_reading_is_told_plans_the_rest_anew_and_is_taken_back_by_undoing_it()
    {
        var phone = Begun(5).Waits(2 * Minute).Taps(new What.SectionDry("1", 0));
        var (before, kept) = (phone.Run, Replanning.Replan(phone.Run, phone.RunNow));
        var reading = phone.Mark(new What.Reading("surface", 38));
        phone.Marks.Add(reading);
        var after = Replanning.Replan(phone.Run, phone.RunNow);
        Assert.True(after.Forecast.LeastMarginMs < kept.Forecast.LeastMarginMs);
        var told = RoomFollowing.Told(before, phone.Run);
        Assert.Contains("stays open", Assert.Single(told)(Voice.Default), StringComparison.Ordinal);
        Said.InEveryVoice([.. told]);

        phone.Taps(new What.Undone(reading.Id));
        Assert.Equal(before.Plan.OpenTimeMs, phone.Run.OpenTimeMs);
        Assert.Equal(kept.Forecast.LeastMarginMs, Replanning.Replan(phone.Run, phone.RunNow).Forecast.LeastMarginMs);
    }

    /// <summary>At 24 °C and 90 % the dew point lies 1.7 K below the air (Alduchov and Eskridge 1996): the sheet's 3 K are not there.</summary>
    [Fact]
    public void A_top_near_the_dew_point_is_told_to_stop()
    {
        var phone = Begun();
        var before = phone.Run;
        phone.Taps(new What.Reading("humidity", 0.9));
        var told = RoomFollowing.Told(before, phone.Run);
        Assert.Contains(told, t => t(Voice.Default).Contains("dew point", StringComparison.Ordinal));
        Said.InEveryVoice([.. told]);
    }

    [Fact]
    public void Wet_film_and_a_plan_without_its_room_change_nothing()
    {
        var phone = Begun();
        var before = phone.Run;
        phone.Taps(new What.Reading("wetFilm", 180));
        Assert.Empty(RoomFollowing.Told(before, phone.Run));
        Assert.Equal(before.OpenTimeMs, phone.Run.OpenTimeMs);

        var old = Runs.Path();
        old.Room = null;
        var run = new Phone("a").Taps(new What.Issued(old)).Taps(new What.Reading("surface", 38)).Run;
        Assert.Equal(run.Plan.OpenTimeMs, run.OpenTimeMs);
    }
}
