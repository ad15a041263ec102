using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>One straight edge of a face's boundary and what goes with it.</summary>
/// <param name="FilmWidthM">Film carried along it, square metres a metre.</param>
/// <param name="StripShare">Length of strips carried, metres a metre (over 1 on the chord of an arc, or where strips lie side by side).</param>
/// <param name="StandLine">Number of the stand line it belongs to; −1: nobody stands there.</param>
/// <param name="Fold">Number of the fold it belongs to; −1: none. The fold runs from <paramref name="FoldFromM"/> to <paramref name="FoldToM"/>.</param>
internal sealed record FaceEdge(PointM From, PointM To, double FilmWidthM, double StripShare, int StandLine, int Fold, double FoldFromM, double FoldToM)
{
    /// <summary>Place along the fold of a point of this edge.</summary>
    public double FoldPlaceM(PointM p) => FoldFromM + ((FoldToM - FoldFromM) * (From.DistanceTo(p) / From.DistanceTo(To)));
}

/// <summary>A face ready to be cut: its boundary with the strips, stand lines and folds put onto its edges once and for all.</summary>
internal sealed class FaceEdges
{
    /// <summary>A line this near the boundary belongs to it; twice the chord error of flattened arcs and some.</summary>
    private const double OnBoundaryM = 0.0005;

    private readonly List<FaceEdge> edges = [];

    /// <param name="folds">The folds of this face: number, its line on this face, and its true length.</param>
    public FaceEdges(Face face, IReadOnlyList<(int Number, IReadOnlyList<PointM> Line, double LengthM)> folds)
    {
        Face = face;
        IEnumerable<IReadOnlyList<PointM>> lines = [.. face.Strips.Select(s => s.Line), .. folds.Select(f => f.Line), .. face.StandLines.Select(s => s.Line)];
        var ends = lines.Where(l => l.Count > 1 && l[0] != l[^1]).SelectMany(l => new[] { l[0], l[^1] }).ToList();

        var rings = new List<Ring>();
        foreach (var (points, isHole) in face.HoleRings.Select(h => (h, true)).Prepend((face.Ring, false)))
        {
            var ring = WithPoints(Turned(points, isHole), ends);
            rings.Add(new Ring([.. ring], [.. Enumerable.Range(edges.Count, ring.Count)]));
            for (var i = 0; i < ring.Count; i++) edges.Add(new FaceEdge(ring[i], ring[(i + 1) % ring.Count], 0, 0, -1, -1, 0, 0));
        }

        Whole = new Piece(rings);
        foreach (var strip in face.Strips) Carry(strip);
        foreach (var (number, line, lengthM) in folds)
        {
            var stretch = lengthM / Plane.Length(line);
            foreach (var i in On(line))
            {
                var (from, to) = Ends(line, edges[i]);
                edges[i] = edges[i] with { Fold = number, FoldFromM = from * stretch, FoldToM = to * stretch };
            }
        }

        for (var s = 0; s < face.StandLines.Count; s++)
            foreach (var i in On(face.StandLines[s].Line))
                edges[i] = edges[i] with { StandLine = s };

        var stripsM2 = face.Strips.Sum(s => s.AreaM2);
        ArcShare = (face.CoatedM2 - stripsM2 - Whole.AreaM2) / Whole.AreaM2;
    }

    public Face Face { get; }
    public Piece Whole { get; }
    /// <summary>What the true arcs add, as a share of the flattened area.</summary>
    public double ArcShare { get; }

    /// <summary>The face's edge behind a tag; null for a cut.</summary>
    public FaceEdge? Edge(int tag) => tag < 0 ? null : edges[tag];

    public double FilmM2(Piece piece) => (piece.AreaM2 * (1 + ArcShare)) + Strips(piece).AreaM2;

    public (double AreaM2, double LengthM) Strips(Piece piece)
    {
        var (area, length) = (0.0, 0.0);
        foreach (var ring in piece.Rings)
        {
            for (var i = 0; i < ring.Points.Length; i++)
            {
                if (Edge(ring.Tags[i]) is not { FilmWidthM: > 0 } edge) continue;
                var metres = ring.Points[i].DistanceTo(ring.Next(i));
                area += metres * edge.FilmWidthM;
                length += metres * edge.StripShare;
            }
        }

        return (area, length);
    }

    /// <summary>Film of the part of a piece that lies before a line square to an axis: ∮ min(u, t) dv, and the strips before it.</summary>
    public double FilmBeforeM2(Piece piece, Axis axis, double t)
    {
        var (area, strips) = (0.0, 0.0);
        foreach (var ring in piece.Rings)
        {
            for (var i = 0; i < ring.Points.Length; i++)
            {
                var (a, b) = (ring.Points[i], ring.Next(i));
                var (ua, ub) = (axis.Along(a), axis.Along(b));
                var rise = axis.Across(b) - axis.Across(a);
                var before = ShareBefore(ua, ub, t, isEnd: rise > 0);
                area += rise * ((before * (Math.Min(ua, ub) + Math.Min(Math.Max(ua, ub), t)) / 2) + ((1 - before) * t));
                if (before > 0 && Edge(ring.Tags[i]) is { FilmWidthM: > 0 } edge) strips += before * a.DistanceTo(b) * edge.FilmWidthM;
            }
        }

        return (area * (1 + ArcShare)) + strips;
    }

    /// <summary>Share of an edge that lies before a line; one that lies on it belongs to what it ends.</summary>
    private static double ShareBefore(double a, double b, double t, bool isEnd)
    {
        const double onTheLineM = 1e-9;
        if (Math.Abs(a - t) < onTheLineM && Math.Abs(b - t) < onTheLineM) return isEnd ? 1 : 0;
        return a <= t && b <= t ? 1 : a >= t && b >= t ? 0 : (t - Math.Min(a, b)) / Math.Abs(b - a);
    }

    /// <summary>Puts a strip onto the edges it runs along, so that their film sums to exactly the strip's.</summary>
    private void Carry(EdgeStrip strip)
    {
        if (strip.AreaM2 <= 0) return;
        var along = On(strip.Line);
        if (along.Count == 0)
        {
            var middle = strip.Line[strip.Line.Count / 2];
            along = [Enumerable.Range(0, edges.Count).MinBy(i => Plane.NearestOnSegment(edges[i].From, edges[i].To, middle).DistanceTo(middle))];
        }

        var chords = along.Sum(i => edges[i].From.DistanceTo(edges[i].To));
        foreach (var i in along)
            edges[i] = edges[i] with { FilmWidthM = edges[i].FilmWidthM + (strip.AreaM2 / chords), StripShare = edges[i].StripShare + (strip.LengthM / chords) };
    }

    /// <summary>Places of an edge's ends along a line; taken from within the edge, as the ends of a closed line are one point.</summary>
    private static (double From, double To) Ends(IReadOnlyList<PointM> line, FaceEdge edge)
    {
        var before = Plane.Nearest(line, Plane.Between(edge.From, edge.To, 0.25)).AlongM;
        var after = Plane.Nearest(line, Plane.Between(edge.From, edge.To, 0.75)).AlongM;
        return (before - ((after - before) / 2), after + ((after - before) / 2));
    }

    private List<int> On(IReadOnlyList<PointM> line) =>
        [.. Enumerable.Range(0, edges.Count).Where(i => Plane.Nearest(line, Plane.Between(edges[i].From, edges[i].To, 0.5)).DistanceM < OnBoundaryM)];

    private static List<PointM> Turned(IReadOnlyList<PointM> ring, bool isHole)
    {
        var points = ring.Where((p, i) => p.DistanceTo(ring[i == 0 ? ring.Count - 1 : i - 1]) > 1e-9).ToList();
        if (Plane.SignedArea(points) > 0 == isHole) points.Reverse();
        return points;
    }

    private static List<PointM> WithPoints(List<PointM> ring, List<PointM> ends)
    {
        var result = new List<PointM>();
        for (var i = 0; i < ring.Count; i++)
        {
            var (a, b) = (ring[i], ring[(i + 1) % ring.Count]);
            result.Add(a);
            result.AddRange(ends
                .Select(p => (End: p, Foot: Plane.NearestOnSegment(a, b, p)))
                .Where(x => x.Foot.DistanceTo(x.End) < OnBoundaryM && x.Foot.DistanceTo(a) > OnBoundaryM && x.Foot.DistanceTo(b) > OnBoundaryM)
                .Select(x => x.Foot)
                .OrderBy(a.DistanceTo)
                .Aggregate(new List<PointM>(), (kept, p) => { if (kept.Count == 0 || kept[^1].DistanceTo(p) > OnBoundaryM) kept.Add(p); return kept; }));
        }

        return result;
    }
}
