namespace Lapwise.Core.Conditions.Drying;

/// <summary>A temperature at a time from the start; straight between two of them.</summary>
public readonly record struct TemperatureAt(double Seconds, double Celsius);

/// <summary>
/// Cure under a changing temperature. A wait that takes t(T) at a steady temperature is done when ∫ dt / t(T(t)) = 1
/// (equivalent age, additive progress).
/// </summary>
public static class EquivalentAge
{
    // Each stretch is cut so that no piece changes by more than this; then Simpson's rule is exact to 1e-9.
    private const double PieceK = 0.5;

    /// <summary>When the wait is over, seconds from the first point; null where the record of temperatures ends before.</summary>
    /// <param name="course">In order of time; at least one point.</param>
    /// <param name="holdsLast">True where the last temperature is taken to hold on.</param>
    public static double? Until(TemperatureLaw law, IReadOnlyList<TemperatureAt> course, bool holdsLast = false)
    {
        var done = 0.0;
        foreach (var (from, to) in course.Zip(course.Skip(1)))
        {
            var step = Progress(law, from, to, 1);
            if (done + step >= 1) return from.Seconds - course[0].Seconds + Within(law, from, to, 1 - done);
            done += step;
        }

        var last = course[^1];
        return holdsLast ? last.Seconds - course[0].Seconds + ((1 - done) * law.SecondsAt(last.Celsius)) : null;
    }

    /// <summary>Progress over a whole course: 1 is done.</summary>
    public static double Progress(TemperatureLaw law, IReadOnlyList<TemperatureAt> course) =>
        course.Zip(course.Skip(1)).Sum(piece => Progress(law, piece.First, piece.Second, 1));

    private static double Progress(TemperatureLaw law, TemperatureAt from, TemperatureAt to, double share)
    {
        var (span, rise) = ((to.Seconds - from.Seconds) * share, (to.Celsius - from.Celsius) * share);
        if (span <= 0) return 0;
        var pieces = 2 * Math.Max(1, (int)Math.Ceiling(Math.Abs(rise) / PieceK / 2));
        double Rate(int i) => 1 / law.SecondsAt(from.Celsius + (rise * i / pieces));
        var sum = Rate(0) + Rate(pieces);
        for (var i = 1; i < pieces; i++) sum += Rate(i) * (i % 2 == 1 ? 4 : 2);
        return span * sum / (3 * pieces);
    }

    /// <summary>Seconds into a stretch until a progress is reached, by halving.</summary>
    private static double Within(TemperatureLaw law, TemperatureAt from, TemperatureAt to, double progress)
    {
        var (before, after) = (0.0, 1.0);
        for (var i = 0; i < 45; i++)
        {
            var middle = (before + after) / 2;
            if (Progress(law, from, to, middle) >= progress) after = middle;
            else before = middle;
        }

        return after * (to.Seconds - from.Seconds);
    }
}
