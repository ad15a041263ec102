using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Day;

/// <summary>The room of a job over the day for one of its coats: when it may go on, and how it then dries.</summary>
/// <param name="Day">Hour by hour from midnight.</param>
/// <param name="IsSteady">True: the job gives no swing, so the room is taken to stay all day as it was read.</param>
/// <param name="EndsAtHour">Hour of the day at which the coat ends, 0 to 24: the waits run from it.</param>
/// <param name="Drying">The waits and, of a water-borne coat, the stages in which the water leaves.</param>
/// <param name="Curve">The first wait against the temperature of the top; null: the data sheet as entered gives no wait.</param>
public sealed record CoatDay(RoomDay Day, bool IsSteady, double EndsAtHour, CoatDrying Drying, Curve? Curve)
{
    // A full cure in a cool room; waits that end later are said as not known.
    private const int LongestH = 24 * 45;

    private const int Points = 96;

    /// <param name="endsAtHour">Hour of the day at which the coat ends, 0 to 24.</param>
    public static CoatDay Of(Job job, Coat coat, double endsAtHour)
    {
        var swing = DailySwing.OrSteady(job);
        var course = swing.TopFrom(endsAtHour, LongestH);
        var drying = CoatDrying.Of(coat, job.Room, course, holdsLast: true);
        return new CoatDay(RoomDay.Over24Hours(coat.Product, swing), swing.SwingK <= 0, endsAtHour, drying, CurveOf(drying.Waits, coat.Product, swing, endsAtHour));
    }

    /// <summary>The wait that comes first in the work: the next coat, else the touch, else the use.</summary>
    private static Curve? CurveOf(IReadOnlyList<Wait> waits, Product product, DailySwing swing, double endsAtHour)
    {
        if (Waits.NextOf(waits) is not { Seconds: { } doneS } wait) return null;
        return DryingCurve.Of(
            v => v.Say($"Until {Waits.Say(wait.For, v)}, through the day's temperature", $"Hasta {Waits.Say(wait.For, v)}, según la temperatura del día"),
            Waits.LawOf(product, wait),
            [.. Enumerable.Range(0, Points + 1).Select(i => doneS * i / Points).Select(s => new TemperatureAt(s, swing.TopC(endsAtHour + (s / 3600))))],
            doneS);
    }
}
