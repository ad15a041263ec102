using Lapwise.Core.Quantities;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;

namespace Lapwise.Core.Measure;

/// <summary>
/// Where boundaries cross or touch. Points are snapped to a micrometre, far below any tape, so that two lines which
/// touch are seen to touch however their arithmetic was rounded.
/// </summary>
internal static class Meeting
{
    /// <summary>How near the flattened boundaries keep to their arcs.</summary>
    public const double ChordErrorM = 0.0001;

    private const double GridPerM = 1e6;

    /// <param name="SideA">Side of the first boundary.</param>
    /// <param name="SideB">Side of the second.</param>
    public readonly record struct Place(PointM At, char SideA, char SideB);

    private readonly record struct Piece(Coordinate P, Coordinate Q, Segment Of)
    {
        public Envelope Box { get; } = new(P, Q);
    }

    /// <summary>The first place where a boundary crosses or touches itself.</summary>
    public static Place? WithItself(IReadOnlyList<Segment> boundary)
    {
        // A line, an arc of a turn or less, an ellipse: none meets itself.
        if (boundary.Count == 1) return null;
        var pieces = Pieces(boundary);
        var meets = new RobustLineIntersector();
        for (var i = 0; i < pieces.Count; i++)
        {
            for (var j = i + 1; j < pieces.Count; j++)
            {
                if (ReferenceEquals(pieces[i].Of, pieces[j].Of) || !pieces[i].Box.Intersects(pieces[j].Box)) continue;
                meets.ComputeIntersection(pieces[i].P, pieces[i].Q, pieces[j].P, pieces[j].Q);
                // Neighbours share a corner; they may not run back over each other.
                var areNeighbours = j == i + 1 || (i == 0 && j == pieces.Count - 1);
                if (meets.HasIntersection && (!areNeighbours || meets.IntersectionNum > 1)) return At(meets, pieces[i], pieces[j]);
            }
        }

        return null;
    }

    /// <summary>The first place where two boundaries cross or touch.</summary>
    public static Place? Between(IReadOnlyList<Segment> a, IReadOnlyList<Segment> b)
    {
        var (piecesA, piecesB) = (Pieces(a), Pieces(b));
        var boxB = piecesB.Aggregate(new Envelope(), (box, piece) => box.ExpandedBy(piece.Box));
        var meets = new RobustLineIntersector();
        foreach (var one in piecesA.Where(p => p.Box.Intersects(boxB)))
        {
            foreach (var other in piecesB.Where(p => p.Box.Intersects(one.Box)))
            {
                meets.ComputeIntersection(one.P, one.Q, other.P, other.Q);
                if (meets.HasIntersection) return At(meets, one, other);
            }
        }

        return null;
    }

    /// <summary>Whether a boundary that does not meet another one lies inside it.</summary>
    public static bool IsInside(IReadOnlyList<Segment> inner, IReadOnlyList<Segment> outer)
    {
        var pieces = Pieces(outer);
        return PointLocation.IsInRing(Snapped(inner[0].From), [.. pieces.Select(p => p.P), pieces[0].P]);
    }

    private static Place At(RobustLineIntersector meets, Piece a, Piece b)
    {
        var at = meets.GetIntersection(0);
        return new Place(new PointM(at.X / GridPerM, at.Y / GridPerM), a.Of.Side, b.Of.Side);
    }

    private static List<Piece> Pieces(IReadOnlyList<Segment> boundary)
    {
        var pieces = new List<Piece>();
        foreach (var segment in boundary)
        {
            var from = Snapped(segment.From);
            foreach (var point in segment.Flatten(ChordErrorM))
            {
                var to = Snapped(point);
                if (!to.Equals2D(from)) pieces.Add(new Piece(from, to, segment));
                from = to;
            }
        }

        return pieces;
    }

    private static Coordinate Snapped(PointM point) => new(Math.Round(point.X * GridPerM), Math.Round(point.Y * GridPerM));
}
