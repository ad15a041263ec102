using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Measure;

/// <summary>One side of a closed outline with what it is.</summary>
internal sealed record Side(char Letter, Edge Edge, IReadOnlyList<Segment> Segments)
{
    public double LengthM => Segments.Sum(s => s.LengthM);

    /// <summary>A side that runs all round has no ends.</summary>
    public bool HasEnds => Segments[0].From != Segments[^1].To;

    /// <summary>From its start to its end, arcs flattened.</summary>
    public IReadOnlyList<PointM> Line => Faces.Line(Segments);

    /// <summary>The same points with the side unrolled along x: each segment keeps its true length.</summary>
    public IReadOnlyList<PointM> UnrolledLine
    {
        get
        {
            var unrolled = new List<PointM> { default };
            var startM = 0.0;
            foreach (var segment in Segments)
            {
                var points = segment.Flatten(Meeting.ChordErrorM);
                var chordsM = 0.0;
                var alongM = points.Select((p, i) => chordsM += p.DistanceTo(i == 0 ? segment.From : points[i - 1])).ToArray();
                unrolled.AddRange(alongM.Select(m => new PointM(startM + (m * segment.LengthM / chordsM), 0)));
                startM += segment.LengthM;
            }

            return unrolled;
        }
    }
}

/// <summary>Cuts a closed top into the surfaces that are rolled for themselves, and the folds between them.</summary>
internal static class Faces
{
    /// <summary>The flat first, then a face a splash or waterfall side, in walking order.</summary>
    /// <param name="nosingM">Developed width of each open side.</param>
    public static (IReadOnlyList<Face> Faces, IReadOnlyList<Fold> Folds) Of(
        Top top, Outline outline, IReadOnlyList<Hole> holes, IReadOnlyList<Side> sides, IReadOnlyDictionary<char, double> nosingM)
    {
        var flat = Flat(top, outline, holes, sides, nosingM);
        var faces = new List<Face> { flat };
        var folds = new List<Fold>();
        foreach (var side in sides)
        {
            var (face, isJoint) = side.Edge switch
            {
                Edge.Splash splash => (Splash(top, side, splash, sides), splash.IsJoint),
                Edge.Waterfall waterfall => (Waterfall(top, side, waterfall), waterfall.IsJoint),
                _ => (null, false),
            };
            if (face is null) continue;
            faces.Add(face);
            folds.Add(new Fold(flat.Id, face.Id, side.Letter, side.Line, side.UnrolledLine, side.LengthM, isJoint));
        }

        return (faces, folds);
    }

    /// <summary>Segments end to end, arcs flattened.</summary>
    public static IReadOnlyList<PointM> Line(IReadOnlyList<Segment> segments) =>
        [segments[0].From, .. segments.SelectMany(s => s.Flatten(Meeting.ChordErrorM))];

    /// <summary>A closed boundary as a ring, which does not repeat its first point.</summary>
    private static IReadOnlyList<PointM> Ring(IReadOnlyList<Segment> boundary) => [.. Line(boundary).SkipLast(1)];

    private static Face Flat(Top top, Outline outline, IReadOnlyList<Hole> holes, IReadOnlyList<Side> sides, IReadOnlyDictionary<char, double> nosingM)
    {
        EdgeStrip[] strips =
        [
            .. sides.Where(s => s.Edge is Edge.Open).Select(s => new EdgeStrip(StripKind.Nosing, s.Line, s.LengthM, nosingM[s.Letter])),
            .. holes.Where(h => h.Cutout.RimM > 0).Select(h => new EdgeStrip(StripKind.Rim, Line(h.Segments), h.PerimeterM, h.Cutout.RimM)),
        ];
        return new Face(
            $"{top.Name}/flat", top.Name, FaceKind.Flat, null,
            Ring(outline.Segments),
            [.. holes.Select(h => Ring(h.Segments))],
            strips,
            [.. sides.Where(s => s.Edge is Edge.Open or Edge.Waterfall).Select(s => new StandLine(s.Letter, s.Line))],
            outline.AreaM2 - holes.Sum(h => h.AreaM2) + strips.Sum(s => s.AreaM2));
    }

    private static Face Splash(Top top, Side side, Edge.Splash splash, IReadOnlyList<Side> sides)
    {
        var strips = new List<EdgeStrip>();
        if (splash.TopWidthM > 0)
        {
            strips.Add(new EdgeStrip(StripKind.SplashTop, [new(0, splash.HeightM), new(side.LengthM, splash.HeightM)], side.LengthM, splash.TopWidthM));
            strips.AddRange(CoatedEnds(side, splash, sides).Select(x => Upright(StripKind.SplashEnd, x, splash.HeightM, splash.TopWidthM)));
        }

        return Upstanding(top, side, FaceKind.Splash, "splash", splash.HeightM, strips);
    }

    private static Face Waterfall(Top top, Side side, Edge.Waterfall waterfall)
    {
        EdgeStrip[] strips = waterfall.ReturnM > 0 && side.HasEnds
            ? [Upright(StripKind.PanelReturn, 0, waterfall.DropM, waterfall.ReturnM), Upright(StripKind.PanelReturn, side.LengthM, waterfall.DropM, waterfall.ReturnM)]
            : [];
        return Upstanding(top, side, FaceKind.Waterfall, "waterfall", waterfall.DropM, strips);
    }

    /// <summary>Where along the fold the coated ends stand. A single one is that beside a side one can stand at, if only one is.</summary>
    private static IEnumerable<double> CoatedEnds(Side side, Edge.Splash splash, IReadOnlyList<Side> sides)
    {
        if (!side.HasEnds || splash.CoatedEnds <= 0) return [];
        if (splash.CoatedEnds > 1) return [0, side.LengthM];
        var index = sides.IndexOf(side);
        var isFreeBefore = IsFree(sides[(index + sides.Count - 1) % sides.Count]);
        var isFreeAfter = IsFree(sides[(index + 1) % sides.Count]);
        return [isFreeBefore && !isFreeAfter ? 0 : side.LengthM];

        static bool IsFree(Side neighbour) => neighbour.Edge is Edge.Open or Edge.Waterfall;
    }

    private static EdgeStrip Upright(StripKind kind, double x, double heightM, double widthM) => new(kind, [new(x, 0), new(x, heightM)], heightM, widthM);

    /// <summary>A rectangle along the fold: x from the side's start, y away from the fold.</summary>
    private static Face Upstanding(Top top, Side side, FaceKind kind, string name, double heightM, IReadOnlyList<EdgeStrip> strips) => new(
        $"{top.Name}/{name} {side.Letter}", top.Name, kind, side.Letter,
        [new(0, 0), new(side.LengthM, 0), new(side.LengthM, heightM), new(0, heightM)],
        [], strips, [],
        (side.LengthM * heightM) + strips.Sum(s => s.AreaM2));

    private static int IndexOf(this IReadOnlyList<Side> sides, Side side) => sides.TakeWhile(s => s.Letter != side.Letter).Count();
}
