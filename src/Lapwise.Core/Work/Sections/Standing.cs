using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>Where one stands for a section, and how far the roller goes from there.</summary>
/// <param name="WalksRound">It is reached from all sides one can stand at; the side is where one begins.</param>
internal sealed record Stand(char Side, IReadOnlyList<PointM> Part, double ReachM, bool WalksRound = false)
{
    public PointM Nearest(PointM p) => Plane.Nearest(Part, p).Point;
}

/// <summary>
/// Finds the side a part of a top is worked from. A person steps along a straight side, so reach counts square across it;
/// along a curved side only as far as the part's own piece of it, as stepping further means walking round the top.
/// </summary>
internal sealed class Standing
{
    /// <summary>What a tape cannot tell: a sixteenth of an inch.</summary>
    public const double ToleranceM = 0.0254 / 16;

    private readonly FaceEdges flat;
    private readonly double reachM;
    private readonly bool[] isStraight;

    public Standing(FaceEdges flat, double reachM)
    {
        (this.flat, this.reachM) = (flat, reachM);
        isStraight = [.. flat.Face.StandLines.Select(s => Plane.IsStraight(s.Line))];
    }

    public bool Within(double metres) => metres <= reachM + ToleranceM;

    /// <summary>The side to work a piece of the flat from; null where nobody can stand anywhere.</summary>
    /// <param name="march">The direction of working on; sides that run that way are taken first.</param>
    public Stand? Best(Piece piece, Axis march)
    {
        var choices = new List<Stand>();
        for (var i = 0; i < isStraight.Length; i++)
        {
            var line = flat.Face.StandLines[i];
            var parts = isStraight[i] ? [] : OwnParts(piece, i);
            if (parts.Count == 0) parts = [line.Line];
            foreach (var part in parts) choices.Add(new Stand(line.Side, part, FarthestCorner(piece, part)));
        }

        // The inside is searched only where the corners leave a chance.
        var nearby = choices.Where(c => Within(c.ReachM)).ToList();
        return Best([.. (nearby.Count > 0 ? nearby : choices).Select(c => c with { ReachM = Farthest(piece, c) })], march);
    }

    /// <summary>As <see cref="Best(Piece, Axis)"/>; what no side reaches alone is worked by walking round the top.</summary>
    public Stand? BestOrRound(Piece piece, Axis march)
    {
        if (Best(piece, march) is not { } best || Within(best.ReachM)) return Best(piece, march);
        return best with { ReachM = FarthestFromAnySide(piece), WalksRound = true };
    }

    /// <summary>How far a piece goes from the nearest side one can stand at.</summary>
    public double FarthestFromAnySide(Piece piece)
    {
        return Farthest(piece, FromAnySide, piece.Outlines.Max(ring => ring.Max(FromAnySide)));

        double FromAnySide(PointM p) => flat.Face.StandLines.Min(s => Plane.Nearest(s.Line, p).DistanceM);
    }

    /// <summary>The side to work a line of the plan from, as the foot of a splash.</summary>
    public Stand? Best(IReadOnlyList<PointM> line, Axis along) =>
        Best([.. flat.Face.StandLines.Select(s => new Stand(s.Side, s.Line, line.Max(p => Plane.Nearest(s.Line, p).DistanceM)))], along);

    private Stand? Best(List<Stand> choices, Axis along) => choices.Count == 0
        ? null
        : choices.MinBy(c => (Within(c.ReachM) ? 0 : 1, Within(c.ReachM) && RunsAlong(c.Part, along) ? 0 : 1, Math.Round(c.ReachM, 3), c.Side));

    private static bool RunsAlong(IReadOnlyList<PointM> part, Axis along) =>
        part[0] == part[^1] || Math.Abs(Axis.From(part[0], part[^1]).Dot(along)) > 0.7;

    /// <summary>The unbroken runs of a piece's own boundary that lie on a stand line.</summary>
    private List<IReadOnlyList<PointM>> OwnParts(Piece piece, int standLine)
    {
        var parts = new List<IReadOnlyList<PointM>>();
        foreach (var ring in piece.Rings)
        {
            var count = ring.Points.Length;
            bool IsOn(int i) => flat.Edge(ring.Tags[i % count])?.StandLine == standLine;
            var starts = Enumerable.Range(0, count).Where(i => IsOn(i) && !IsOn(i + count - 1)).ToList();
            if (starts.Count == 0 && IsOn(0)) parts.Add([.. ring.Points, ring.Points[0]]);
            foreach (var start in starts)
            {
                var part = new List<PointM> { ring.Points[start] };
                for (var i = start; IsOn(i); i++) part.Add(ring.Next(i % count));
                parts.Add(part);
            }
        }

        return parts;
    }

    private static double FarthestCorner(Piece piece, IReadOnlyList<PointM> part) =>
        piece.Outlines.Max(ring => ring.Max(p => Plane.Nearest(part, p).DistanceM));

    /// <summary>
    /// Largest distance from a piece to the part of a side. From a straight part it is met at a corner; from a curved one
    /// it can lie inside, so the inside is searched, to about 2 mm.
    /// </summary>
    private static double Farthest(Piece piece, Stand stand)
    {
        if (Plane.IsStraight(stand.Part)) return stand.ReachM;
        var line = Plane.Thinned(stand.Part, FineM);
        return Farthest(piece, p => Plane.Nearest(line, p).DistanceM, stand.ReachM);
    }

    private const double FineM = 0.001;

    /// <summary>
    /// Branch and bound over squares: as no distance grows faster than one walks, a square holds nothing farther than its centre
    /// by more than half its diagonal. Climbing from the farthest of a grid ended on the wrong one of two heights.
    /// </summary>
    /// <param name="atLeast">A distance some point of the piece is known to have.</param>
    private static double Farthest(Piece piece, Func<PointM, double> distanceTo, double atLeast)
    {
        var farthest = atLeast;
        var ((left, right), (top, bottom)) = (piece.Extent(new Axis(1, 0)), piece.Extent(new Axis(0, 1)));
        var half = Math.Max(right - left, bottom - top) / 2;
        List<PointM> centres = [new((left + right) / 2, (top + bottom) / 2)];
        for (; centres.Count > 0 && half * Math.Sqrt(2) > FineM; half /= 2)
            centres = [.. centres.Where(c => MayHoldFarther(c, half * Math.Sqrt(2))).ToList().SelectMany(c => Quarters(c, half / 2))];
        return farthest;

        bool MayHoldFarther(PointM centre, double radius)
        {
            var at = piece.Contains(centre) ? centre : piece.NearestOnBoundary(centre);
            if (at.DistanceTo(centre) > radius) return false;
            farthest = Math.Max(farthest, distanceTo(at));
            return distanceTo(centre) + radius > farthest + FineM;
        }
    }

    private static IEnumerable<PointM> Quarters(PointM centre, double half) =>
        [new(centre.X - half, centre.Y - half), new(centre.X + half, centre.Y - half), new(centre.X - half, centre.Y + half), new(centre.X + half, centre.Y + half)];
}
