using System.Globalization;
using System.Text;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Tests.Conditions.Day;

public sealed class LoggerTextTests
{
    private static readonly DateTime Day = new(2026, 11, 25);

    private static LoggerRead Read(string text, UnitSystem units = UnitSystem.Metric) => LoggerText.Read(text, Day, units);

    private static RoomReading First(string text, UnitSystem units = UnitSystem.Metric)
    {
        var read = Read(text, units);
        Assert.Empty(read.Faults.Select(f => f.Say(Voice.Default)));
        return read.Record!.Readings[0];
    }

    [Theory]
    [InlineData("Time,Temperature (°C),Humidity (%RH)\n2026-11-25 08:00,21.5,48")]
    [InlineData("Fecha;Hora;Temperatura [°C];Humedad relativa [%]\n25.11.2026;08:00;21,5;48,0")]
    [InlineData("#;Date Time, GMT+01:00;Temp, °C;RH, %;Dew point, °C\n1;25/11/2026 08:00:00;21,5;48;10,1")]
    [InlineData("Serial 12345\nInterval 1 min\n\nTimestamp\tAir °C\tRH %\n2026-11-25T08:00:00+01:00\t21.5\t48")]
    [InlineData("\"Date\",\"Time\",\"Temp (C)\",\"RH\"\n\"2026-11-25\",\"08:00\",\"21,5\",\"48,0\"")]
    [InlineData("Date,Time,Temp °F,Humidity %\n11/25/2026,8:00 AM,70.7,48")]
    [InlineData("08:00 21.5 °C 48 %")]
    [InlineData("08:00 21,5°C 48%")]
    [InlineData("8:00 am 70.7 °F 48 %")]
    public void Many_ways_of_writing_give_the_same_reading(string text)
    {
        var reading = First(text);
        Assert.Equal(new DateTime(2026, 11, 25, 8, 0, 0), reading.At);
        Assert.Equal((21.5, 0.48), (Math.Round(reading.AirC, 9), Math.Round(reading.Humidity, 9)));
    }

    /// <summary>A dew point above the air, a humidity over 100 % and a temperature of no room: left out and said, each by line.</summary>
    [Theory]
    [InlineData("Time;Temp °C;RH %;Dew point °C\n08:00;21;48;9,5\n08:10;21;48;25\n08:20;21;48;9,5", 3, "a dew point of 25 above an air temperature of 21")]
    [InlineData("Time;Temp °C;RH %\n08:00;21;48\n08:10;21;48\n08:20;21;148", 4, "a humidity of 148 %")]
    [InlineData("Time;Temp °C;RH %\n08:00;21;48\n08:10;215;48\n08:20;21;48", 3, "a temperature of 215°")]
    public void Readings_that_cannot_be_true_are_left_out_and_said(string text, int line, string why)
    {
        var read = Read(text);
        Assert.Equal(2, read.Record!.Readings.Count);
        var said = read.Notes.Single(n => n.Code == "LinesImpossible");
        Assert.Contains($"line {line}, with {why}", said.Text(Voice.Default), StringComparison.Ordinal);
        Said.InEveryVoice([said.Text, said.Remedy]);
    }

    [Fact]
    public void A_text_of_nothing_but_the_impossible_says_which_value()
    {
        var fault = Assert.Single(Read("Time;Temp °C;RH %\n08:00;21;148\n08:10;21;150").Faults);
        Assert.Contains("line 2 has a humidity of 148 %", fault.Text(Voice.Default), StringComparison.Ordinal);
    }

    /// <summary>In a short record with long gaps the gaps are not taken for its usual interval; nothing is drawn across them.</summary>
    [Fact]
    public void A_short_record_still_shows_its_gaps()
    {
        var record = Read("00:30 21 °C 45 %\n01:30 21 °C 45 %\n03:30 21 °C 45 %\n04:30 21 °C 45 %\n09:30 21 °C 45 %").Record!;
        Assert.Equal([(1.5, 3.5), (4.5, 9.5)], record.Gaps().Select(g => (g.From.TimeOfDay.TotalHours, g.To.TimeOfDay.TotalHours)));
        Assert.Equal(4, HourStrip.CourseAfter(record, record.Readings[0].At).Count);
    }

    [Fact]
    public void A_column_of_the_surface_is_read_beside_the_air() =>
        Assert.Equal(18, First("Time;Air °C;RH %;Surface °C\n2026-11-25 08:00;21,5;48;18").SurfaceC);

    [Fact]
    public void A_typed_forecast_runs_past_midnight() =>
        Assert.Equal([0, 4 * 3600.0, 12 * 3600.0], Read("20:00 20 °C 50 %\n00:00 17 °C 60 %\n08:00 15 °C 65 %").Record!.Readings.Select(r => r.ElapsedS));

    [Theory]
    [InlineData(UnitSystem.Us, 3, 4)]
    [InlineData(UnitSystem.Metric, 4, 3)]
    public void A_date_that_can_be_read_both_ways_follows_the_working_units_and_says_so(UnitSystem units, int month, int dayOfMonth)
    {
        var read = Read("Time,Temp °C,RH %\n03/04/2026 08:00,21,48", units);
        Assert.Equal((month, dayOfMonth), (read.Record!.Readings[0].At.Month, read.Record.Readings[0].At.Day));
        Assert.Contains(read.Notes, n => n.Code == "DateOrderTaken");
    }

    [Fact]
    public void One_date_that_can_only_be_read_one_way_settles_all() =>
        Assert.Equal(4, First("Time,Temp °C,RH %\n03/04/2026 08:00,21,48\n13/04/2026 08:00,21,48", UnitSystem.Us).At.Month);

    [Theory]
    [InlineData("TemperatureUnitMissing", "Time,Temperature,Humidity\n2026-11-25 08:00,21.5,48")]
    [InlineData("TemperatureUnitMissing", "08:00 21.5 48 %")]
    [InlineData("UnitDoubtful", "Time,Temp °C,RH %\n2026-11-25 08:00,71.5,48\n2026-11-25 08:10,71.6,48")]
    [InlineData("UnitDoubtful", "Time,Temp °F,RH %\n2026-11-25 08:00,21.5,48\n2026-11-25 08:10,21.6,48")]
    [InlineData("HumidityLooksLikeShare", "Time,Temp °C,RH\n2026-11-25 08:00,21,0.48\n2026-11-25 08:10,21,0.49\n2026-11-25 08:20,21,0.5")]
    [InlineData("DecimalCommasUnclear", "Time,Temp °C,RH %\n2026-11-25 08:00,21,5,48,0")]
    [InlineData("HumidityMissing", "Time,Temp °C\n2026-11-25 08:00,21")]
    [InlineData("UnitsMixed", "08:00 21 °C 48 %\n09:00 70 °F 48 %")]
    [InlineData("TimeUnclear", "Time,Temp °C,RH %\nyesterday 3,21,48")]
    [InlineData("NoReadings", "")]
    [InlineData("NoReadings", "hello\nthere 7")]
    public void What_cannot_be_used_is_said(string code, string text)
    {
        var read = Read(text);
        Assert.Null(read.Record);
        Assert.Contains(read.Faults, f => f.Code == code);
        Said.InEveryVoice([.. read.Faults.SelectMany(f => new[] { f.Text, f.Cure })]);
    }

    [Fact]
    public void Lines_without_a_reading_are_counted_and_leave_a_gap()
    {
        var read = Read("Time,Temp °C,RH %\n2026-11-25 08:00,21,48\n2026-11-25 08:10,,\n2026-11-25 08:20,error,\n2026-11-25 08:30,21,130\n2026-11-25 08:40,21,48\n2026-11-25 08:50,21,48\n2026-11-25 09:00,21,48");
        Assert.Equal(4, read.Record!.Readings.Count);
        Assert.Equal([new Gap(new(2026, 11, 25, 8, 0, 0), new(2026, 11, 25, 8, 40, 0))], read.Record.Gaps());
        Assert.Equal(["LinesWithoutReading", "LinesImpossible", "ReadingsHaveGaps"], read.Notes.Select(n => n.Code));
        Assert.Contains("left out: 2", read.Notes[0].Text(Voice.Default), StringComparison.Ordinal);
        Said.InEveryVoice([.. read.Notes.SelectMany(n => new[] { n.Text, n.Remedy })]);
    }

    /// <summary>Local times of the night on which summer time ends: 02:00 to 02:50 comes twice.</summary>
    [Fact]
    public void When_the_clock_goes_back_time_runs_on()
    {
        var text = new StringBuilder("Time;Temp °C;RH %\n");
        foreach (var at in new[] { "01:30", "02:00", "02:30", "02:00", "02:30", "03:00" }) text.Append($"2026-10-25 {at};18;50\n");
        var read = Read(text.ToString());
        Assert.Equal([0.0, 1800, 3600, 5400, 7200, 9000], read.Record!.Readings.Select(r => r.ElapsedS));
        Assert.Contains(read.Notes, n => n.Code == "ClockWentBack");
        Assert.Empty(read.Record.Gaps());
    }

    [Fact]
    public void With_offsets_the_change_of_clocks_is_exact()
    {
        var read = Read("Time;Temp °C;RH %\n2026-10-25T02:30:00+02:00;18;50\n2026-10-25T02:30:00+01:00;18;50\n2026-10-25T03:30:00+01:00;18;50");
        Assert.Equal([0.0, 3600, 7200], read.Record!.Readings.Select(r => r.ElapsedS));
        Assert.Empty(read.Notes);
    }

    [Fact]
    public void Half_a_million_rows_are_read()
    {
        var text = new StringBuilder("Time,Temp °C,RH %\n");
        var at = new DateTime(2026, 1, 1);
        for (var i = 0; i < 500_000; i++) text.Append(CultureInfo.InvariantCulture, $"{at.AddMinutes(i):yyyy-MM-dd HH:mm},{18 + (i % 60 / 10.0)},50\n");
        Assert.Equal(500_000, Read(text.ToString()).Record!.Readings.Count);
    }

    [Fact]
    public void More_rows_than_any_logger_has_are_refused()
    {
        var read = Read("Time,Temp °C,RH %\n" + string.Concat(Enumerable.Repeat("2026-01-01 00:00,18,50\n", LoggerText.MostRows + 1)));
        Assert.Equal("TooManyRows", Assert.Single(read.Faults).Code);
    }

    [Fact]
    public void What_is_wrong_with_every_line_is_said_once()
    {
        var lines = string.Join('\n', Enumerable.Range(0, 60).Select(m => $"2026-11-20 10:{m:00},20,5,50,3"));
        var fault = Assert.Single(LoggerText.Read("time,temperature (°C),humidity (%)\n" + lines, Day, UnitSystem.Metric).Faults);
        Assert.Equal(("DecimalCommasUnclear", 2), (fault.Code, fault.Line));
    }

    [Fact]
    public void Headings_in_another_language_are_told_as_what_is_missing()
    {
        var fault = Assert.Single(LoggerText.Read("Zeit;Temperatur (°C);Feuchte (%)\n20.11.2026 10:00;20,5;50,3\n20.11.2026 10:10;20,5;50,3", Day, UnitSystem.Metric).Faults);
        Assert.Contains("heading", fault.Text(Voice.Default), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("yyyy-MM-dd HH:mm")]
    [InlineData("dd/MM/yyyy HH:mm")]
    [InlineData("M/d/yyyy HH:mm")]
    public void The_end_of_a_long_text_gives_the_same_last_day_as_the_whole(string format)
    {
        var start = new DateTime(2026, 3, 20);
        var text = "Serial 7\nTime,Temp (°C),RH (%)\n" + string.Join('\n', Enumerable.Range(0, 30_000).Select(m =>
            $"{start.AddMinutes(m).ToString(format, CultureInfo.InvariantCulture)},{(20 + (m % 700 / 100.0)).ToString(CultureInfo.InvariantCulture)},50"));
        var ending = LoggerText.EndingOf(text, 36)!;
        Assert.InRange(ending.Kept, 35 * 60, 37 * 60);
        Assert.Equal(30_002, ending.Lines);
        var (whole, end) = (RoomDay.Of(Invented.Clear, Read(text).Record!), RoomDay.Of(Invented.Clear, Read(ending.Text).Record!));
        Assert.Equal(whole.Strip.Hours.Select(h => (h.From, h.Verdict, h.CoolestC, h.LeastDewMarginC)), end.Strip.Hours.Select(h => (h.From, h.Verdict, h.CoolestC, h.LeastDewMarginC)));
    }

    [Fact]
    public void A_text_without_headings_or_dates_has_no_end_to_take() => Assert.Null(LoggerText.EndingOf("08:00 64 °F 55 %\n10:00 68 °F 50 %", 36));
}
