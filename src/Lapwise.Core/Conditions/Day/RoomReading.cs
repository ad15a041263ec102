using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Conditions.Day;

/// <summary>One reading of a room, from a logger, a forecast or a model.</summary>
/// <param name="At">The clock on the wall.</param>
/// <param name="ElapsedS">Time really passed since the first reading: it runs on where the clock is put back.</param>
/// <param name="Humidity">0 to 1.</param>
/// <param name="SurfaceC">Temperature of the top; null: as the air.</param>
public readonly record struct RoomReading(DateTime At, double ElapsedS, double AirC, double Humidity, double? SurfaceC)
{
    public Room Room => new(new AirTemperature(AirC), Humidity, AirMovement.Still, new SurfaceTemperature(SurfaceC ?? AirC), new MaterialTemperature(AirC));
}

/// <summary>A stretch without readings. It is shown and never bridged.</summary>
public readonly record struct Gap(DateTime From, DateTime To);

/// <summary>Readings in the order in which they were taken.</summary>
public sealed record RoomRecord(IReadOnlyList<RoomReading> Readings)
{
    /// <summary>Readings further apart than this many times their usual interval leave a gap: one is missing.</summary>
    private const double GapTimes = 1.9;

    /// <summary>No course of temperatures is drawn over more than this many usual intervals.</summary>
    private const double BridgedTimes = 2.5;

    /// <summary>Longest step that a course of temperatures is drawn over.</summary>
    public double LongestBridgedS => Math.Max(UsualIntervalS, 60) * BridgedTimes;

    /// <summary>The usual interval: a quarter of all are shorter, so that gaps do not pass for usual in a short record.</summary>
    public double UsualIntervalS
    {
        get
        {
            var steps = Readings.Zip(Readings.Skip(1), (a, b) => b.ElapsedS - a.ElapsedS).Order().ToList();
            return steps.Count == 0 ? 0 : steps[steps.Count / 4];
        }
    }

    public IReadOnlyList<Gap> Gaps()
    {
        var longest = Math.Max(UsualIntervalS, 60) * GapTimes;
        return [.. Readings.Zip(Readings.Skip(1)).Where(p => p.Second.ElapsedS - p.First.ElapsedS > longest).Select(p => new Gap(p.First.At, p.Second.At))];
    }
}
