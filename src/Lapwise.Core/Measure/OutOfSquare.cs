using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>A four-sided outline whose corners follow from its sides and one diagonal, where the walls are not square.</summary>
internal static class OutOfSquare
{
    /// <summary>Corners A to D, side A along x; null where no shape has these sides and this diagonal.</summary>
    /// <param name="sidesM">Lengths of A, B, C, D.</param>
    public static IReadOnlyList<PointM>? Corners(IReadOnlyList<double> sidesM, Diagonal diagonal)
    {
        PointM a = default, b = new(sidesM[0], 0);
        PointM? c, d;
        if (IsFromA(diagonal))
        {
            c = ToTheRight(a, b, diagonal.LengthM, sidesM[1]);
            d = c is { } corner ? ToTheRight(a, corner, sidesM[3], sidesM[2]) : null;
        }
        else
        {
            d = ToTheRight(a, b, sidesM[3], diagonal.LengthM);
            c = d is { } corner ? ToTheRight(corner, b, sidesM[2], sidesM[1]) : null;
        }

        return c is null || d is null ? null : [a, b, c.Value, d.Value];
    }

    /// <summary>Shortest and longest diagonal that these sides allow.</summary>
    public static (double LeastM, double MostM) Range(IReadOnlyList<double> sidesM, Diagonal diagonal)
    {
        // A–C closes the triangles of sides A, B and of C, D; B–D those of B, C and of D, A.
        var (p, q, r, s) = IsFromA(diagonal) ? (sidesM[0], sidesM[1], sidesM[2], sidesM[3]) : (sidesM[1], sidesM[2], sidesM[3], sidesM[0]);
        return (Math.Max(Math.Abs(p - q), Math.Abs(r - s)), Math.Min(p + q, r + s));
    }

    /// <summary>Interior angle at each corner, radians.</summary>
    public static IReadOnlyList<double> AnglesRad(IReadOnlyList<PointM> corners) => [.. corners.Select((c, i) =>
    {
        var next = corners[(i + 1) % 4];
        var before = corners[(i + 3) % 4];
        return Math.IEEERemainder(Math.Atan2(before.Y - c.Y, before.X - c.X) - Math.Atan2(next.Y - c.Y, next.X - c.X), 2 * Math.PI);
    })];

    /// <summary>A diagonal of four corners, not one of their sides.</summary>
    public static bool IsAcross(Diagonal diagonal) => Math.Abs(diagonal.From - diagonal.To) == 2;

    private static bool IsFromA(Diagonal diagonal) => Math.Min(diagonal.From, diagonal.To) == 'A';

    /// <summary>The point at given distances from two others, to the right as one walks from the first to the second.</summary>
    private static PointM? ToTheRight(PointM from, PointM to, double fromM, double toM)
    {
        var baseM = from.DistanceTo(to);
        var along = ((fromM * fromM) - (toM * toM) + (baseM * baseM)) / (2 * baseM);
        var square = (fromM * fromM) - (along * along);
        if (!(square > 0)) return null;
        var (ux, uy, aside) = ((to.X - from.X) / baseM, (to.Y - from.Y) / baseM, Math.Sqrt(square));
        return new PointM(from.X + (ux * along) - (uy * aside), from.Y + (uy * along) + (ux * aside));
    }
}
