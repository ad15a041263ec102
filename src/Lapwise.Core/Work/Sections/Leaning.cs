using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>
/// A section with the place it is worked from and the points, in plan, that the roller goes to; of a panel, which is worked
/// from in front of it, its foot.
/// </summary>
internal sealed record Placed(SectionShape Shape, Stand? Stand, IReadOnlyList<PointM> Targets);

/// <summary>Finds the sections one leans over to reach another, and the panels one leans against.</summary>
internal static class Leaning
{
    /// <summary>Points are drawn in from the boundary by this share, so that a line along a seam leans over nothing.</summary>
    private const double DrawnIn = 0.05;
    private const double InsideFoldM = 0.005;
    private const int MostTargets = 48;
    /// <summary>A way that lies less over a section than this only passes its corner.</summary>
    private const double LeastOverM = 0.03;
    /// <summary>A shorter stretch of a fold is no stretch to care for.</summary>
    private const double ShortestM = 0.005;
    /// <summary>A panel's foot and the side above it are the same line; as arcs they are flattened apart by less than this.</summary>
    private const double OnSideM = 0.001;

    public static IReadOnlyList<PointM> Targets(Piece piece, PointM centre)
    {
        var every = 1 + (piece.Outer.Length / MostTargets);
        return
        [
            .. Enumerable.Range(0, piece.Outer.Length).Where(i => i % every == 0)
                .SelectMany(i => new[] { piece.Outer[i], Plane.Between(piece.Outer[i], piece.Rings[0].Next(i), 0.5) })
                .Select(p => Plane.Between(p, centre, DrawnIn)),
        ];
    }

    /// <summary>
    /// Points just inside the flat along the foot of an upright: the ends and the middle of each stretch that has one and the
    /// same sections of the flat in front of it.
    /// </summary>
    public static IReadOnlyList<PointM> Targets(IReadOnlyList<PointM> foot, Piece flat, IEnumerable<Piece> parts)
    {
        List<double> marks = [0, .. parts.SelectMany(p => p.CutEnds).Select(p => Plane.Nearest(foot, p).AlongM).Order(), Plane.Length(foot)];
        return
        [
            .. marks.Zip(marks.Skip(1), (from, to) => (From: from, LengthM: to - from)).Where(s => s.LengthM >= ShortestM)
                .SelectMany(s => new[] { DrawnIn, 0.5, 1 - DrawnIn }.Select(share => Inside(Plane.Part(foot, s.From + (share * s.LengthM), double.MaxValue)))),
        ];

        PointM Inside(IReadOnlyList<PointM> onward)
        {
            var inward = Axis.From(onward[0], onward[1]).Quarter;
            var inside = Plane.Step(onward[0], inward, InsideFoldM);
            return flat.Contains(inside) ? inside : Plane.Step(onward[0], inward.Opposite, InsideFoldM);
        }
    }

    /// <summary>
    /// Sections with what they lean over. Of the flats only nearer ones count, splashes never do, and panels lean over
    /// nothing, so that there is always an order that keeps all of it.
    /// </summary>
    public static IEnumerable<SectionShape> Over(IReadOnlyList<Placed> sections)
    {
        var flats = sections.Where(s => s.Shape.Face.Kind == FaceKind.Flat).Select(s => (s.Shape, Box: Box(s.Shape.Rings[0]))).ToList();
        var panels = sections.Where(s => s.Shape.Face.Kind == FaceKind.Waterfall).ToList();
        return sections.Select(section => section.Stand is { } stand ? section.Shape with { LeansOver = [.. Flats(section, stand).Concat(Panels(section, stand)).Order()] } : section.Shape);

        IEnumerable<int> Flats(Placed section, Stand stand)
        {
            var ways = section.Targets.Select(target => (From: stand.Nearest(target), To: target)).Where(w => w.From.DistanceTo(w.To) >= LeastOverM).ToList();
            if (ways.Count == 0) return [];
            var all = Box([.. ways.SelectMany(w => new[] { w.From, w.To })]);
            return flats.Where(f => IsFarther(section.Shape, f.Shape) && f.Box.Meets(all) && ways.Exists(w => IsOver(f.Shape, w))).Select(f => f.Shape.Index);
        }

        IEnumerable<int> Panels(Placed section, Stand stand) =>
            panels.Where(p => IsInFront(stand, section.Targets, p.Targets)).Select(p => p.Shape.Index);
    }

    private static bool IsFarther(SectionShape section, SectionShape flat) =>
        section.Face.Kind != FaceKind.Flat || section.ReachM > flat.ReachM + Standing.ToleranceM;

    private static bool IsOver(SectionShape flat, (PointM From, PointM To) way) =>
        Plane.Inside(flat.Rings, way.From, way.To).Sum(s => s.From.DistanceTo(s.To)) >= LeastOverM;

    /// <summary>
    /// One steps along the part of the side over some of the panel's foot while the roller goes to the targets. What stands
    /// across the top from there is not in front, though a curved side may run round to it.
    /// </summary>
    private static bool IsInFront(Stand stand, IReadOnlyList<PointM> targets, IReadOnlyList<PointM> foot)
    {
        // Where two lines share a stretch, each of its ends is a point of one of them.
        List<double> shared = [.. Places(foot.Where(p => IsOn(stand.Part, p))), .. Places(stand.Part.Where(p => IsOn(foot, p)))];
        if (shared.Count == 0) return false;
        List<double> steps = [.. Places(targets)];
        return Math.Min(steps.Max(), shared.Max()) - Math.Max(steps.Min(), shared.Min()) >= ShortestM;

        IEnumerable<double> Places(IEnumerable<PointM> points) => points.Select(p => Plane.Nearest(stand.Part, p).AlongM);
        static bool IsOn(IReadOnlyList<PointM> line, PointM p) => Plane.Nearest(line, p).DistanceM < OnSideM;
    }

    private static (double Left, double Top, double Right, double Bottom) Box(IReadOnlyList<PointM> ring) =>
        (ring.Min(p => p.X), ring.Min(p => p.Y), ring.Max(p => p.X), ring.Max(p => p.Y));

    private static bool Meets(this (double Left, double Top, double Right, double Bottom) box, (double Left, double Top, double Right, double Bottom) other) =>
        box.Left <= other.Right && other.Left <= box.Right && box.Top <= other.Bottom && other.Top <= box.Bottom;
}
