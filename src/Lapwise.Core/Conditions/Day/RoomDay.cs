using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Day;

/// <summary>The last day of a room's readings, judged hour by hour for one product.</summary>
/// <param name="Notes">What was set right or left out in reading them.</param>
public sealed record RoomDay(HourStrip Strip, RoomRecord Record, IReadOnlyList<Reason> Notes)
{
    public static RoomDay Of(Product product, RoomRecord record, IReadOnlyList<Reason>? notes = null) =>
        new(HourStrip.Of(product, record, LastDay(record)), record, notes ?? []);

    // Long enough for a full cure to come out in a cool room.
    private const int SwingHours = 24 * 45;

    /// <summary>A room that swings once a day, the same every day, from midnight.</summary>
    public static RoomDay Of(Product product, DailySwing swing)
    {
        var record = swing.From(DateTime.UnixEpoch, SwingHours);
        return new RoomDay(HourStrip.Of(product, record, DateTime.UnixEpoch), record, []);
    }

    /// <summary>Start of the last 24 hours of the readings.</summary>
    private static DateTime LastDay(RoomRecord record)
    {
        var (first, last) = (record.Readings[0].At, record.Readings[^1].At);
        var start = last.AddHours(-23);
        return start < first ? first : start;
    }
}
