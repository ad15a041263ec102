using System.Collections.Concurrent;
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
    // Most waits are over within the first; the second is long enough for a full cure in a cold room, and after it the mean holds on.
    private const int FewHours = 24 * 3;
    private const int ManyHours = 24 * 45;

    // Waits are also asked for after the timeline was handed out, then perhaps by several at once.
    private readonly ConcurrentDictionary<(string Product, WaitFor What, long MinuteOfDay), Wait?> known = new();

    /// <summary>Mean: the surface as read.</summary>
    public DailySwing? Swing { get; } = asks.DaySwingK > 0 ? new DailySwing(room.Surface.Celsius, asks.DaySwingK, asks.WarmestAtMin / 60.0, double.NaN) : null;

    /// <summary>Temperature of the top at a minute.</summary>
    public double TopC(long minute) => Swing is { } swing ? swing.TopC(minute % WorkCalendar.DayMin / 60.0) : room.Surface.Celsius;

    /// <summary>Every wait the sheet gives, for a coat that ended at a minute.</summary>
    public IReadOnlyList<Wait> After(Product product, long end) => Waits.Of(product, Course(MinuteOfDay(end), ManyHours), holdsLast: true);

    /// <summary>One of them; null where the sheet does not give it. Asked for again and again while steps are moved.</summary>
    public Wait? After(Product product, WaitFor what, long end)
    {
        var minute = MinuteOfDay(end);
        if (known.TryGetValue((product.Id, what, minute), out var wait)) return wait;
        // The last of a course is the mean that would hold on: it is not run through.
        wait = Waits.One(product, what, [.. Course(minute, FewHours).SkipLast(Swing is null ? 0 : 1)]);
        if (wait is { Seconds: null }) wait = Waits.One(product, what, Course(minute, ManyHours), holdsLast: true);
        return known[(product.Id, what, minute)] = wait;
    }

    /// <summary>The room is the same every day, so a wait depends on the hour only.</summary>
    private long MinuteOfDay(long minute) => Swing is null ? 0 : minute % WorkCalendar.DayMin;

    private IReadOnlyList<TemperatureAt> Course(long minuteOfDay, int hours) =>
        Swing is { } swing ? swing.TopFrom(minuteOfDay / 60.0, hours) : [new TemperatureAt(0, room.Surface.Celsius)];
}
