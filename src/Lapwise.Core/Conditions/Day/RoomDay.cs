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

    /// <summary>The same for one day only, with what follows until a film of its last hour is dry.</summary>
    public static RoomDay Over24Hours(Product product, DailySwing swing)
    {
        var record = swing.From(DateTime.UnixEpoch, 24 + Math.Ceiling(HourStrip.WetS(product) / 3600));
        return new RoomDay(HourStrip.Of(product, record, DateTime.UnixEpoch), record, []);
    }

    /// <summary>Start of the last 24 hours of the readings.</summary>
    private static DateTime LastDay(RoomRecord record)
    {
        var (first, last) = (record.Readings[0].At, record.Readings[^1].At);
        var start = last.AddHours(-23);
        return start < first ? first : start;
    }

    /// <summary>What go, wait and no go rest on.</summary>
    public Basis Basis(Product product) => new("t_s ≥ t_d + m; t_min ≤ t ≤ t_max; RH ≤ RH_max",
        [
            new(v => v.Say("readings", "lecturas"), v => v.Number(Record.Readings.Count, 0)),
            new(v => v.Say("dew margin m", "margen de rocío m"), v => v.TemperatureDifference(product.Limits.DewMarginC)),
            new(v => v.Say("room t", "sala t"), v => v.Say($"{v.Temperature(product.Limits.AirLeastC)} to {v.Temperature(product.Limits.AirMostC)}", $"de {v.Temperature(product.Limits.AirLeastC)} a {v.Temperature(product.Limits.AirMostC)}")),
            new(v => v.Say("most humidity RH", "humedad máxima RH"), v => v.Percent(product.Limits.HumidityMost)),
            .. product.DryToTouch is { } touch ? [new BasisInput(v => v.Say("not to be wetted for", "sin mojarse durante"), _ => Voice.Span(touch.Seconds))] : Array.Empty<BasisInput>(),
        ], Sources.Iso8502Part4);
}
