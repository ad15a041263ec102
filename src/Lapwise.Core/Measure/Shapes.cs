using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>
/// Boundaries of the shapes that are entered by their sizes, clockwise on the page. The corner given is
/// that of the shape's bounding box where side A starts. Outlines and cutouts are made of the same shapes.
/// </summary>
internal static class Shapes
{
    public static IReadOnlyList<Segment> Rectangle(PointM corner, double lengthM, double depthM) => Polygon(corner,
        [new(0, 0), new(lengthM, 0), new(lengthM, depthM), new(0, depthM)]);

    /// <summary>Back run along A, one leg down the right (job words: side B).</summary>
    public static IReadOnlyList<Segment> L(double lengthM, double depthM, double rightLegLengthM, double rightLegDepthM) => Polygon(default,
    [
        new(0, 0), new(lengthM, 0), new(lengthM, rightLegLengthM), new(lengthM - rightLegDepthM, rightLegLengthM),
        new(lengthM - rightLegDepthM, depthM), new(0, depthM),
    ]);

    /// <summary>Back run along A, a leg down either end.</summary>
    public static IReadOnlyList<Segment> U(
        double lengthM, double depthM, double rightLegLengthM, double rightLegDepthM, double leftLegLengthM, double leftLegDepthM) => Polygon(default,
    [
        new(0, 0), new(lengthM, 0), new(lengthM, rightLegLengthM), new(lengthM - rightLegDepthM, rightLegLengthM),
        new(lengthM - rightLegDepthM, depthM), new(leftLegDepthM, depthM), new(leftLegDepthM, leftLegLengthM), new(0, leftLegLengthM),
    ]);

    /// <summary>Each corner arc carries the letter of the side before it; a side that its arcs use up leaves only the arc.</summary>
    public static IReadOnlyList<Segment> RoundedRectangle(PointM corner, double lengthM, double depthM, double radiusM)
    {
        if (radiusM <= 0) return Rectangle(corner, lengthM, depthM);
        var (right, bottom) = (corner.X + lengthM, corner.Y + depthM);
        var (inLeft, inRight) = (corner.X + radiusM, right - radiusM);
        var (inTop, inBottom) = (corner.Y + radiusM, bottom - radiusM);
        Segment[] all =
        [
            new Segment.Line(new(inLeft, corner.Y), new(inRight, corner.Y), 'A'),
            Quarter(new(inRight, corner.Y), new(right, inTop), 'A', new(inRight, inTop)),
            new Segment.Line(new(right, inTop), new(right, inBottom), 'B'),
            Quarter(new(right, inBottom), new(inRight, bottom), 'B', new(inRight, inBottom)),
            new Segment.Line(new(inRight, bottom), new(inLeft, bottom), 'C'),
            Quarter(new(inLeft, bottom), new(corner.X, inBottom), 'C', new(inLeft, inBottom)),
            new Segment.Line(new(corner.X, inBottom), new(corner.X, inTop), 'D'),
            Quarter(new(corner.X, inTop), new(inLeft, corner.Y), 'D', new(inLeft, inTop)),
        ];
        return [.. all.Where(s => s is not Segment.Line { LengthM: < 1e-9 })];

        Segment.Arc Quarter(PointM from, PointM to, char side, PointM centre) => new(from, to, side, centre, radiusM, Math.PI / 2);
    }

    /// <summary>One side, from its topmost point.</summary>
    public static IReadOnlyList<Segment> Circle(PointM centre, double radiusM)
    {
        var top = centre with { Y = centre.Y - radiusM };
        return [new Segment.Arc(top, top, 'A', centre, radiusM, 2 * Math.PI)];
    }

    public static IReadOnlyList<Segment> Ellipse(PointM centre, double halfLengthM, double halfDepthM) =>
        [new Segment.Ellipse(centre, halfLengthM, halfDepthM, 'A')];

    /// <summary>Straight sides lettered in order from A.</summary>
    public static IReadOnlyList<Segment> Polygon(PointM origin, IReadOnlyList<PointM> corners)
    {
        var placed = corners.Select(c => new PointM(origin.X + c.X, origin.Y + c.Y)).ToArray();
        return [.. placed.Select((c, i) => new Segment.Line(c, placed[(i + 1) % placed.Length], (char)('A' + i)))];
    }
}
