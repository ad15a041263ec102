using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Conditions.Day;

public sealed class HourStripTests
{
    private static readonly DateTime Day = new(2026, 11, 25);

    private static readonly DailySwing Mild = new(22, 4, 15, 9);

    private static HourStrip Strip(DailySwing swing, double hours = 30) => HourStrip.Of(Invented.Clear, swing.From(Day, hours), Day);

    [Fact]
    public void A_mild_day_is_go_in_every_hour()
    {
        var strip = Strip(Mild);
        Assert.All(strip.Hours, h => Assert.Equal(Verdict.Go, h.Verdict));
        Assert.Equal((Day, Day.AddHours(24)), (strip.Best!.From, strip.Best.To));
    }

    /// <summary>ISO 8502-4 practice: 3 °C between top and dew point; the night is never, and so is what would dry into it.</summary>
    [Fact]
    public void A_cold_night_is_no_go_and_the_evening_before_it_waits()
    {
        var strip = Strip(new DailySwing(18, 14, 15, 12));
        Assert.Equal(Verdict.NoGo, strip.Hours[5].Verdict);
        var evening = strip.Hours.Last(h => h.From.Hour > 12 && h.Verdict is Verdict.Wait);
        Assert.Contains(evening.Reasons, r => r.Code == "DewBeforeDry");
        Assert.True(strip.Best is { } best && best.From.Hour >= 8 && best.To.Hour is > 16 and <= 22);
        Said.InEveryVoice([.. strip.Hours.SelectMany(h => h.Reasons).SelectMany(r => new[] { r.Text, r.Remedy })]);
    }

    [Fact]
    public void An_hour_is_judged_by_its_worst_reading() => Gen.Select(Gen.Double[14, 26], Gen.Double[0, 16], Gen.Double[0, 16]).Sample((mean, swing, dew) =>
    {
        var record = new DailySwing(mean, swing, 15, dew).From(Day, 30);
        foreach (var hour in HourStrip.Of(Invented.Clear, record, Day).Hours)
        {
            var readings = record.Readings.Where(r => r.At >= hour.From && r.At < hour.From.AddHours(1)).ToList();
            var least = readings.Min(r => r.SurfaceC!.Value - Dew.PointC(r.AirC, r.Humidity));
            Assert.Equal(least, hour.LeastDewMarginC!.Value, 1e-9);
            if (least < 3) Assert.Equal(Verdict.NoGo, hour.Verdict);
        }
    }, iter: 30);

    [Fact]
    public void A_gap_stays_unknown_and_is_shown()
    {
        var whole = Mild.From(Day, 30);
        var holed = new RoomRecord([.. whole.Readings.Where(r => r.At.Hour is not (10 or 11))]);
        var strip = HourStrip.Of(Invented.Clear, holed, Day);
        Assert.Equal([10, 11], strip.Hours.Where(h => h.Verdict is Verdict.Unknown).Select(h => h.From.Hour));
        var gap = Assert.Single(strip.Gaps);
        Assert.Equal((Day.AddHours(9.75), Day.AddHours(12)), (gap.From, gap.To));
        Assert.Equal((Day.AddHours(12), Day.AddHours(24)), (strip.Best!.From, strip.Best.To));
    }

    [Fact]
    public void Waits_run_through_the_readings_and_stop_at_a_gap()
    {
        var product = Invented.Clear with { Recoat = new Recoat(4 * 3600, 24 * 3600, 23) };
        var record = new DailySwing(23, 0, 15, 9).From(Day, 48);
        var waits = HourStrip.WaitsAfter(product, record, Day.AddHours(8));
        Assert.Equal([4 * 3600.0, 24 * 3600.0], waits.Select(w => Math.Round(w.Seconds!.Value)));

        var holed = new RoomRecord([.. record.Readings.Where(r => r.At < Day.AddHours(20) || r.At > Day.AddHours(22))]);
        Assert.Equal([true, false], HourStrip.WaitsAfter(product, holed, Day.AddHours(8)).Select(w => w.Seconds is not null));
    }

    [Fact]
    public void A_warmer_room_is_ready_sooner() => Gen.Select(Gen.Double[16, 24], Gen.Double[0.5, 6]).Sample((mean, warmer) =>
    {
        var product = Invented.Clear with { Recoat = new Recoat(4 * 3600, 24 * 3600, 23) };
        Wait At(double c) => HourStrip.WaitsAfter(product, new DailySwing(c, 6, 15, 5).From(Day, 96), Day)[0];
        Assert.True(At(mean + warmer).Seconds < At(mean).Seconds);
    });

    [Fact]
    public void The_air_never_holds_more_than_it_can() => Gen.Select(Gen.Double[10, 30], Gen.Double[0, 20], Gen.Double[0, 25]).Sample((mean, swing, dew) =>
        new DailySwing(mean, swing, 15, dew).From(Day, 24).Readings.All(r => r.Humidity is > 0 and <= 1));

    [Fact]
    public void Every_verdict_is_said_in_both_languages() => Said.InEveryVoice([.. Enum.GetValues<Verdict>().Select<Verdict, Phrase>(x => v => HourStrip.Say(x, v))]);
}
