using Lapwise.Core.Quantities;

namespace Lapwise.Core.Explain;

/// <summary>One line of a curve.</summary>
/// <param name="Points">X rising, in SI: seconds, °C, shares, ppm.</param>
public sealed record CurveLine(Phrase Name, IReadOnlyList<(double X, double Y)> Points, Func<Voice, double, string> Show)
{
    /// <summary>The unit a scale counts in, and its zero, in SI: a degree Fahrenheit is 5/9 from −17.8 °C.</summary>
    public Func<Voice, (double Unit, double Zero)> Scale { get; init; } = _ => (1, 0);

    /// <summary>The scale starts at zero; otherwise near the least value.</summary>
    public bool FromZero { get; init; }

    public static CurveLine Celsius(Phrase name, IReadOnlyList<(double X, double Y)> points) => new(name, points, (v, y) => v.Temperature(y))
    {
        Scale = v => v.Units is UnitSystem.Us ? (1 / Factors.FahrenheitPerKelvin, -Factors.FahrenheitAtFreezing / Factors.FahrenheitPerKelvin) : (1, 0),
    };

    public static CurveLine Share(Phrase name, IReadOnlyList<(double X, double Y)> points, int decimals = 0) => new(name, points, (v, y) => v.Percent(y, decimals)) { FromZero = true, Scale = _ => (0.01, 0) };
}

/// <summary>A moment on a curve that a person acts on.</summary>
/// <param name="IsDeadline">What comes after it is too late.</param>
public sealed record CurveMark(double X, Phrase Words, bool IsDeadline = false);

/// <summary>A level that the curve is held against.</summary>
public sealed record CurveLimit(double Y, Phrase Words);

/// <summary>How a number runs over another, to be drawn and to be read as a table.</summary>
/// <param name="X">What runs to the right.</param>
/// <param name="Line">What runs up.</param>
public sealed record Curve(Phrase Title, Phrase X, Func<Voice, double, string> ShowX, CurveLine Line)
{
    /// <summary>A second number over the same X, on a scale of its own at the right.</summary>
    public CurveLine? Second { get; init; }

    /// <summary>Further columns of the table; not drawn.</summary>
    public IReadOnlyList<CurveLine> Beside { get; init; } = [];

    public IReadOnlyList<CurveMark> Marks { get; init; } = [];

    public IReadOnlyList<CurveLimit> Limits { get; init; } = [];

    /// <summary>The rows of the table beside the picture: every point where they are few, else about this many, the marks always.</summary>
    public IEnumerable<double> RowsAt(int about = 12)
    {
        var (first, last) = (Line.Points[0].X, Line.Points[^1].X);
        var steps = Enumerable.Range(0, about + 1).Select(i => first + ((last - first) * i / about));
        return steps.Concat(Marks.Select(m => m.X).Where(x => x > first && x < last)).Order().Distinct();
    }
}

/// <summary>Reads a line between its points.</summary>
public static class CurveReading
{
    public static double At(this CurveLine line, double x)
    {
        ArgumentNullException.ThrowIfNull(line);
        var points = line.Points;
        var after = 0;
        while (after < points.Count && points[after].X < x) after++;
        if (after == 0) return points[0].Y;
        if (after == points.Count) return points[^1].Y;
        var (a, b) = (points[after - 1], points[after]);
        return a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X));
    }
}
