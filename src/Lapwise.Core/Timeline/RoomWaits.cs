using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

/// <summary>
/// The waits of a product from the minute it was applied, through the temperature of the top: as read, or swinging once
/// a day about what was read. On the clock on the wall; the hour that a change of clock adds or takes is not counted.
/// </summary>
internal sealed class RoomWaits(Room room, TimelineAsks asks)
{
    // Long enough for a full cure in a cold room; after it the mean holds on.
    private const int CourseHours = 24 * 45;

    private readonly Dictionary<(string Product, long MinuteOfDay), IReadOnlyList<Wait>> known = [];

    /// <summary>Mean: the surface as read.</summary>
    public DailySwing? Swing { get; } = asks.DaySwingK > 0 ? new DailySwing(room.Surface.Celsius, asks.DaySwingK, asks.WarmestAtMin / 60.0, double.NaN) : null;

    /// <summary>Temperature of the top at a minute.</summary>
    public double TopC(long minute) => Swing is { } swing ? swing.TopC(minute % WorkCalendar.DayMin / 60.0) : room.Surface.Celsius;

    /// <summary>Every wait the sheet gives, for a coat that ended at a minute.</summary>
    public IReadOnlyList<Wait> After(Product product, long end)
    {
        // The room is the same every day, so a wait depends on the hour only.
        var minuteOfDay = Swing is null ? 0 : end % WorkCalendar.DayMin;
        if (known.TryGetValue((product.Id, minuteOfDay), out var waits)) return waits;
        IReadOnlyList<TemperatureAt> course = Swing is { } swing ? swing.TopFrom(minuteOfDay / 60.0, CourseHours) : [new TemperatureAt(0, room.Surface.Celsius)];
        return known[(product.Id, minuteOfDay)] = Waits.Of(product, course, holdsLast: true);
    }

    /// <summary>One of them; null where the sheet does not give it.</summary>
    public Wait? After(Product product, WaitFor what, long end) => After(product, end).FirstOrDefault(w => w.For == what);
}
