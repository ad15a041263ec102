using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Measure;
using Lapwise.Core.Work.Sections;
using NetTopologySuite.Geometries;

namespace Lapwise.Core.Tests.Work.Sections;

/// <summary>Tops to cut, random and given, and sections as polygons of an outside library.</summary>
internal static class CutTops
{
    public const double FootM = 0.3048;
    public const double InchM = 0.0254;

    public static readonly Aims OneAim = new(0.2, 10 * FootM * FootM, 36 * InchM);

    /// <summary>A top by a letter a side: o open, s splash, c splash with a caulked joint, f waterfall, w wall.</summary>
    public static MeasuredTop Top(OutlineSpec outline, string edges, IReadOnlyList<Cutout>? cutouts = null, IReadOnlyList<BreakLine>? breaks = null) =>
        Benches.Measured(Benches.Top(outline, edges: edges.Select((e, i) => KeyValuePair.Create((char)('A' + i), e switch
        {
            'o' => Benches.Open(ProfileShape.FullRound),
            's' => new Edge.Splash(4 * InchM, 0.75 * InchM, 1, IsJoint: false),
            'c' => new Edge.Splash(4 * InchM, 0.75 * InchM, 1, IsJoint: true),
            'f' => new Edge.Waterfall(34.5 * InchM, 1.5 * InchM, IsJoint: false),
            _ => (Edge)new Edge.Wall(),
        })).ToDictionary(), cutouts: cutouts, breaks: breaks));

    public static MeasuredTop Island(double lengthM, double depthM) => Top(new OutlineSpec.Rectangle(lengthM, depthM), "oooo");

    /// <summary>The sink run of an L kitchen: 11 ft by 8 ft, 25 1/2 in deep.</summary>
    public static MeasuredTop LKitchen => Top(
        new OutlineSpec.L(11 * FootM, 25.5 * InchM, 8 * FootM, 25.5 * InchM), "ssooow",
        [Benches.Hole(54 * InchM, 13 * InchM, 30 * InchM, 16 * InchM, CutoutShape.RoundedRectangle, 2 * InchM, 1.5 * InchM)]);

    /// <summary>Rectangles, L, U, rounded rectangles, circles and ellipses, with any sides, cutouts and planned joints.</summary>
    public static Gen<MeasuredTop> Any =>
        from kind in Gen.Int[0, 5]
        from length in Gen.Double[1.2, 4]
        from depth in Gen.Double[0.4, 0.9]
        from leg in Gen.Double[0.4, 0.8]
        from legLength in Gen.Double[1.3, 3]
        from sides in Gen.Int[0, 5].Select(i => "ooscfw"[i]).Array[8]
        from sink in Gen.Bool
        from joint in Gen.Bool
        select Make(kind, length, depth, leg, legLength, new string(sides), sink, joint);

    private static MeasuredTop Make(int kind, double length, double depth, double leg, double legLength, string sides, bool sink, bool joint)
    {
        OutlineSpec outline = kind switch
        {
            0 => new OutlineSpec.Rectangle(length, depth),
            1 => new OutlineSpec.L(length + leg, depth, legLength, leg),
            2 => new OutlineSpec.U(length + leg + leg, depth, legLength, leg, legLength * 0.8, leg * 0.9),
            3 => new OutlineSpec.RoundedRectangle(length, depth, depth / 5),
            4 => new OutlineSpec.Circle(length / 2),
            _ => new OutlineSpec.Ellipse(length, depth),
        };
        var count = kind switch { 1 => 6, 2 => 8, 4 or 5 => 1, _ => 4 };
        var (along, inward) = kind == 4 ? (length / 4, length / 4) : kind == 2 ? ((length / 2) + leg, depth / 2) : (length / 2, depth / 2);
        IReadOnlyList<Cutout> cutouts = sink ? [Benches.Hole(along, inward, depth * 0.4, depth * 0.3, CutoutShape.RoundedRectangle, 0.02, 0.03)] : [];
        IReadOnlyList<BreakLine> breaks = joint && kind < 4 ? [new BreakLine('A', length * 0.45)] : [];
        return Top(outline, sides[..count], cutouts, breaks);
    }

    public static Polygon Polygon(IReadOnlyList<IReadOnlyList<PointM>> rings) => new(Closed(rings[0]), [.. rings.Skip(1).Select(Closed)]);

    public static Polygon Polygon(Face face) => Polygon([face.Ring, .. face.HoleRings]);

    /// <summary>Length of one section's boundary that lies within 0.01 mm of the other.</summary>
    public static double SharedM(SectionShape a, SectionShape b) => Polygon(a.Rings).Boundary.Intersection(Polygon(b.Rings).Buffer(1e-5, 2)).Length;

    private static LinearRing Closed(IReadOnlyList<PointM> ring) => new([.. ring.Append(ring[0]).Select(p => new Coordinate(p.X, p.Y))]);

    /// <summary>A random top cut in a random way.</summary>
    public static Gen<CutTop> AnyCut =>
        from top in Any
        from kind in Gen.Int[0, 9]
        from corners in Gen.Enum<CornerCut>()
        from cutouts in Gen.Enum<CutoutCut>()
        from uprights in Gen.Enum<UprightCut>()
        from finer in Gen.Int[2, 6]
        select Sectioning.Cut(top, OneAim, kind switch
        {
            0 => new CutChoice.UsualGrid(),
            1 => new CutChoice.WholeFaces(),
            _ => new CutChoice.Strips(corners, cutouts, uprights, finer / 2.0),
        });

    public static IEnumerable<CutTop> AllCuts(MeasuredTop top) => Sectioning.Ways(top, OneAim).Append(Sectioning.UsualWay(top, OneAim));

    public static CutTop FirstWay(MeasuredTop top) => Sectioning.Ways(top, OneAim).First();

    public static CutTop Cut(MeasuredTop top, CornerCut corners = CornerCut.OnItsOwn, CutoutCut cutouts = CutoutCut.AnyPlace, Aims? aims = null) =>
        Sectioning.Cut(top, aims ?? OneAim, new CutChoice.Strips(corners, cutouts, UprightCut.LinedUp, 1));

    public static string Print(CutTop cut) => $"{cut.Choice} {Print(cut.Top)}";

    public static string Print(MeasuredTop top) =>
        $"{top.Top.Outline} {string.Join(' ', top.Top.Edges.Select(e => $"{e.Key}:{e.Value.GetType().Name}"))} {string.Join(' ', top.Top.Cutouts)} {string.Join(' ', top.Top.Breaks)}";
}
