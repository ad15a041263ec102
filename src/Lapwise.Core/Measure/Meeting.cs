using Lapwise.Core.Quantities;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;

namespace Lapwise.Core.Measure;

/// <summary>
/// Where boundaries cross or touch. What comes nearer than <see cref="TouchM"/> touches: far below any tape, far above
/// what arithmetic leaves.
/// </summary>
internal static class Meeting
{
    /// <summary>How near the flattened boundaries keep to their arcs.</summary>
    public const double ChordErrorM = 1e-4;

    private const double TouchM = 1e-5;

    /// <param name="SideA">Side of the first boundary.</param>
    /// <param name="SideB">Side of the second.</param>
    public readonly record struct Place(PointM At, char SideA, char SideB);

    private sealed record Piece(LineSegment Line, Segment Of)
    {
        public Envelope Box { get; } = Around(new Envelope(Line.P0, Line.P1));

        public bool Touches(Piece other) => Box.Intersects(other.Box) && Line.Distance(other.Line) <= TouchM;

        private static Envelope Around(Envelope box)
        {
            box.ExpandBy(TouchM);
            return box;
        }
    }

    /// <summary>The first place where a boundary crosses or touches itself.</summary>
    public static Place? WithItself(IReadOnlyList<Segment> boundary)
    {
        // A line, an arc of a turn or less, an ellipse: none meets itself.
        if (boundary.Count == 1) return null;
        var pieces = Pieces(boundary);
        for (var i = 0; i < pieces.Count; i++)
        {
            for (var j = i + 1; j < pieces.Count; j++)
            {
                if (ReferenceEquals(pieces[i].Of, pieces[j].Of)) continue;
                var meets = j == i + 1 ? TurnsBack(pieces[i], pieces[j])
                    : i == 0 && j == pieces.Count - 1 ? TurnsBack(pieces[j], pieces[i])
                    : pieces[i].Touches(pieces[j]);
                if (meets) return At(pieces[i], pieces[j]);
            }
        }

        return null;
    }

    /// <summary>The first place where two boundaries cross or touch.</summary>
    public static Place? Between(IReadOnlyList<Segment> a, IReadOnlyList<Segment> b)
    {
        var (piecesA, piecesB) = (Pieces(a), Pieces(b));
        var boxB = piecesB.Aggregate(new Envelope(), (box, piece) => box.ExpandedBy(piece.Box));
        return piecesA.Where(p => p.Box.Intersects(boxB))
            .Select(p => piecesB.Find(p.Touches) is { } other ? At(p, other) : (Place?)null)
            .FirstOrDefault(place => place is not null);
    }

    /// <summary>Whether a boundary that does not meet another one lies inside it.</summary>
    public static bool IsInside(IReadOnlyList<Segment> inner, IReadOnlyList<Segment> outer)
    {
        var pieces = Pieces(outer);
        return PointLocation.IsInRing(Coordinate(inner[0].From), [.. pieces.Select(p => p.Line.P0), pieces[0].Line.P0]);
    }

    /// <summary>Neighbours share a corner; the second may not run back over the first.</summary>
    private static bool TurnsBack(Piece first, Piece second) =>
        second.Line.Distance(first.Line.P0) <= TouchM || first.Line.Distance(second.Line.P1) <= TouchM;

    private static Place At(Piece a, Piece b)
    {
        var at = a.Line.ClosestPoints(b.Line)[0];
        return new Place(new PointM(at.X, at.Y), a.Of.Side, b.Of.Side);
    }

    private static List<Piece> Pieces(IReadOnlyList<Segment> boundary)
    {
        var pieces = new List<Piece>();
        var from = boundary[0].From;
        foreach (var segment in boundary)
        {
            foreach (var to in segment.Flatten(ChordErrorM))
            {
                // What is shorter than a touch has no line of its own, or its two neighbours would seem to touch.
                if (from.DistanceTo(to) <= TouchM) continue;
                pieces.Add(new Piece(new LineSegment(Coordinate(from), Coordinate(to)), segment));
                from = to;
            }
        }

        return pieces;
    }

    private static Coordinate Coordinate(PointM point) => new(point.X, point.Y);
}
