using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Day;

/// <summary>
/// A room that swings once a day: T = mean + swing/2 · cos(2π (t − warmest) / 24 h), its moisture the same all day, so that
/// its dew point stands still and humidity falls as it warms. A heavy top follows late and less.
/// </summary>
/// <param name="SwingK">From coolest to warmest.</param>
/// <param name="WarmestHour">Hour of the day, 0 to 24.</param>
/// <param name="DewPointC">Stands still; where the air would cool below it, the air is saturated.</param>
/// <param name="TopLagH">How far the top runs behind the air. Common practice, no source: 2 h for a laminate, more for stone.</param>
/// <param name="TopShare">Share of the swing that the top follows.</param>
/// <param name="TopMeanC">Mean of the top, as over a cold cellar; null: as the air.</param>
public sealed record DailySwing(double MeanC, double SwingK, double WarmestHour, double DewPointC, double TopLagH = 2, double TopShare = 0.7, double? TopMeanC = null)
{
    /// <summary>The room of a job over its day, as it is read taken for the mean; null: the job gives no swing.</summary>
    public static DailySwing? Of(Job job) => job.Timeline.DaySwingK <= 0 ? null : OrSteady(job);

    /// <summary>The same; where the job gives no swing, a room that stays as it is read.</summary>
    public static DailySwing OrSteady(Job job)
    {
        var (room, asks) = (job.Room, job.Timeline);
        return new DailySwing(room.Air.Celsius, asks.DaySwingK, asks.WarmestAtMin / 60.0, Dew.PointC(room.Air.Celsius, room.RelativeHumidity), TopMeanC: room.Surface.Celsius);
    }

    private const int PerHour = 4;

    public double AirC(double hour) => MeanC + (SwingK / 2 * Math.Cos(2 * Math.PI * (hour - WarmestHour) / 24));

    public double TopC(double hour) => (TopMeanC ?? MeanC) + (TopShare * (AirC(hour - TopLagH) - MeanC));

    public RoomRecord From(DateTime start, double hours) => new(
    [
        .. Enumerable.Range(0, (int)Math.Ceiling(hours * PerHour) + 1).Select(i =>
        {
            var at = start.AddHours((double)i / PerHour);
            var air = AirC(at.TimeOfDay.TotalHours);
            return new RoomReading(at, i * 3600.0 / PerHour, air, Math.Clamp(Dew.HumidityAt(air, DewPointC), 0.01, 1), TopC(at.TimeOfDay.TotalHours));
        }),
    ]);

    /// <summary>Temperatures of the top from an hour of the day on, an hour apart; then the mean. One point where nothing swings.</summary>
    public IReadOnlyList<TemperatureAt> TopFrom(double hour, int hours) => SwingK <= 0
        ? [new TemperatureAt(0, TopMeanC ?? MeanC)]
        : [.. Enumerable.Range(0, hours + 1).Select(h => new TemperatureAt(h * 3600.0, h == hours ? TopMeanC ?? MeanC : TopC(hour + h)))];
}
