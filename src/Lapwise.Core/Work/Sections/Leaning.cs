using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Sections;

/// <summary>A section with the place it is worked from and the points, in plan, that the roller goes to.</summary>
internal sealed record Placed(SectionShape Shape, Stand? Stand, IReadOnlyList<PointM> Targets);

/// <summary>Finds the sections one leans over to reach another.</summary>
internal static class Leaning
{
    /// <summary>Points are drawn in from the boundary by this share, so that a line along a seam leans over nothing.</summary>
    private const double DrawnIn = 0.05;
    private const double InsideFoldM = 0.02;
    private const int Samples = 16;
    private const int MostTargets = 48;

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

    /// <summary>Points just inside the flat along the foot of an upright.</summary>
    public static IReadOnlyList<PointM> Targets(IReadOnlyList<PointM> foot, Piece flat) =>
    [
        .. new[] { DrawnIn, 0.25, 0.5, 0.75, 1 - DrawnIn }.Select(share => Plane.Part(foot, share * Plane.Length(foot), double.MaxValue)).Select(rest =>
        {
            var inward = Axis.From(rest[0], rest[1]).Quarter;
            var inside = Plane.Step(rest[0], inward, InsideFoldM);
            return flat.Contains(inside) ? inside : Plane.Step(rest[0], inward.Opposite, InsideFoldM);
        }),
    ];

    /// <summary>
    /// Sections with what they lean over. Only nearer ones count as leaned over, and uprights never do, so that there
    /// is always an order that keeps all of it.
    /// </summary>
    public static IEnumerable<SectionShape> Over(IReadOnlyList<Placed> sections)
    {
        var flats = sections.Where(s => s.Shape.Face.Kind == FaceKind.Flat)
            .Select(s => (s.Shape, Box: Box(s.Shape.Rings[0])))
            .ToList();
        foreach (var section in sections)
        {
            var farther = flats.Where(f => IsFarther(section.Shape, f.Shape)).ToList();
            if (section.Stand is not { } stand || farther.Count == 0)
            {
                yield return section.Shape;
                continue;
            }

            var over = new SortedSet<int>();
            var ways = section.Targets.Select(target => (From: stand.Nearest(target), To: target)).ToList();
            var all = Box([.. ways.SelectMany(w => new[] { w.From, w.To })]);
            var between = farther.Where(f => f.Box.Meets(all)).ToList();
            foreach (var (from, to) in between.Count == 0 ? [] : ways)
            {
                for (var k = 1; k < Samples; k++)
                {
                    var p = Plane.Between(from, to, (double)k / Samples);
                    foreach (var (flat, box) in between)
                        if (box.Holds(p) && !over.Contains(flat.Index) && Plane.Contains(flat.Rings, p)) over.Add(flat.Index);
                }
            }

            yield return section.Shape with { LeansOver = [.. over] };
        }
    }

    private static bool IsFarther(SectionShape section, SectionShape flat) =>
        section.Face.Kind != FaceKind.Flat || section.ReachM > flat.ReachM + Standing.ToleranceM;

    private static (double Left, double Top, double Right, double Bottom) Box(IReadOnlyList<PointM> ring) =>
        (ring.Min(p => p.X), ring.Min(p => p.Y), ring.Max(p => p.X), ring.Max(p => p.Y));

    private static bool Holds(this (double Left, double Top, double Right, double Bottom) box, PointM p) =>
        p.X > box.Left && p.X < box.Right && p.Y > box.Top && p.Y < box.Bottom;

    private static bool Meets(this (double Left, double Top, double Right, double Bottom) box, (double Left, double Top, double Right, double Bottom) other) =>
        box.Left < other.Right && other.Left < box.Right && box.Top < other.Bottom && other.Top < box.Bottom;
}
