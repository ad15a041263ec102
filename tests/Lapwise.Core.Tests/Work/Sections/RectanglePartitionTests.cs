using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Measure;
using Lapwise.Core.Work.Sections;
using static Lapwise.Core.Tests.Work.Sections.CutTops;

namespace Lapwise.Core.Tests.Work.Sections;

/// <summary>
/// Sections against the fewest rectangles a shape can be cut into: N − L − H + 1, with N inner corners, L chords between inner
/// corners that do not meet, H holes. Ohtsuki, "Minimum dissection of rectilinear regions", ISCAS 1982; Lipski, Lodi, Luccio,
/// Mugnai, Pagli, "On two-dimensional data organization II", Fundamenta Informaticae 2 (1979).
/// </summary>
public sealed class RectanglePartitionTests
{
    /// <summary>One section may be as large as the arm and all of it is reached, so only corners ask for a cut.</summary>
    private static readonly Aims Ample = new(0.2, 100, 10);

    private static MeasuredTop L(double arm, double leg, double depth) => Top(new OutlineSpec.L(arm + depth, depth, leg + depth, depth), "oooooo");

    private static MeasuredTop U(double arm, double leg, double depth) => Top(new OutlineSpec.U(arm + depth + depth, depth, leg + depth, depth, (0.8 * leg) + depth, depth), "oooooooo");

    private static MeasuredTop T(double arm, double leg, double depth) => Walked([(arm, 1), (depth, 1), ((arm - depth) / 2, -1), (leg, 1), (depth, 1), (leg, -1), ((arm - depth) / 2, 1), (depth, 1)]);

    private static MeasuredTop Plus(double arm, double leg, double depth) => Walked(
        [(depth, 1), (leg, -1), (arm, 1), (depth, 1), (arm, -1), (leg, 1), (depth, 1), (leg, -1), (arm, 1), (depth, 1), (arm, -1), (leg, 1)]);

    private static MeasuredTop Ring(double arm, double leg, double depth) => Top(new OutlineSpec.Rectangle(arm + depth, leg + depth), "oooo", [Benches.Hole((arm + depth) / 2, (leg + depth) / 2, arm / 2, leg / 2)]);

    private static MeasuredTop Walked((double LengthM, int Turn)[] sides) =>
        Top(Benches.Walk(0.001, [.. sides.Select(s => Benches.Straight(s.LengthM, 90 * s.Turn))]), new string('o', sides.Length));

    private static readonly Dictionary<string, (Func<double, double, double, MeasuredTop> Make, int Fewest)> Shapes = new()
    {
        ["L"] = (L, 2),
        ["U"] = (U, 3),
        ["T"] = (T, 2),
        ["plus"] = (Plus, 3),
        ["ring"] = (Ring, 4),
    };

    public static TheoryData<string> Names => [.. Shapes.Keys];

    /// <summary>What the formula gives by hand for each shape; counted here from the outline.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_formula_gives_what_is_known_by_hand(string name) => Assert.Equal(Shapes[name].Fewest, Fewest(Shapes[name].Make(1.8, 1.5, 0.6)));

    /// <summary>With room for one section an arm, the simplest way of cutting has exactly the fewest rectangles.</summary>
    [Theory]
    [InlineData("L")]
    [InlineData("U")]
    [InlineData("T")]
    [InlineData("plus")]
    public void The_simplest_way_has_the_fewest_rectangles(string name)
    {
        var fewest = Sectioning.Ways(Shapes[name].Make(1.8, 1.5, 0.6), Ample).Where(IsAllRectangles).Min(c => c.Sections.Count);
        Assert.Equal(Shapes[name].Fewest, fewest);
    }

    /// <summary>However a shape is cut, sections that are all rectangles are never fewer.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void No_way_has_fewer_rectangles(string name)
    {
        var rectangular = 0;
        var gen = Gen.Select(Gen.Double[1.2, 3], Gen.Double[1.2, 2.5], Gen.Double[0.45, 0.8], Gen.Double[0.3, 3]);
        gen.Sample((arm, leg, depth, largestM2) =>
        {
            var top = Shapes[name].Make(Math.Round(arm, 3), Math.Round(leg, 3), Math.Round(depth, 3));
            foreach (var cut in Sectioning.Ways(top, Ample with { LargestSectionM2 = largestM2 }).Append(Sectioning.UsualWay(top, Ample)).Where(IsAllRectangles))
            {
                Assert.True(cut.Sections.Count >= Shapes[name].Fewest);
                Interlocked.Increment(ref rectangular);
            }
        }, iter: 30);
        Assert.True(rectangular > 30);
    }

    private static bool IsAllRectangles(CutTop cut) => cut.Sections.All(s => s.Rings is [var ring] && Corners(ring).Count == 4);

    private static int Fewest(MeasuredTop top)
    {
        var flat = top.Faces.Single(f => f.Kind == FaceKind.Flat);
        IReadOnlyList<IReadOnlyList<PointM>> rings = [flat.Ring, .. flat.HoleRings];
        var inner = rings.SelectMany((ring, i) => Corners(ring).Where(c => c.IsInner(isHole: i > 0)).Select(c => c.At)).ToList();
        var sides = rings.SelectMany(ring => ring.Select((p, i) => (From: p, To: ring[(i + 1) % ring.Count]))).ToList();
        var chords = (from a in inner from b in inner where Before(a, b) && IsLevel(a, b) && IsInside(a, b) select (From: a, To: b)).ToList();
        return inner.Count - MostApart(chords) - flat.HoleRings.Count + 1;

        // A chord runs inside where its middle is inside and no side runs along it.
        bool IsInside(PointM a, PointM b) =>
            Polygon(flat).Contains(new NetTopologySuite.Geometries.Point((a.X + b.X) / 2, (a.Y + b.Y) / 2))
            && Polygon(flat).Covers(new NetTopologySuite.Geometries.LineString([new(a.X, a.Y), new(b.X, b.Y)]))
            && !sides.Exists(s => IsLevel(s.From, a) && IsLevel(s.To, a) && IsLevel(s.From, b) && IsLevel(s.To, b) && RunTogether(s.From, s.To, a, b));
    }

    private const double SameM = 1e-6;

    private static bool Before(PointM a, PointM b) => (a.X + SameM < b.X && Math.Abs(a.Y - b.Y) < SameM) || (a.Y + SameM < b.Y && Math.Abs(a.X - b.X) < SameM);
    private static bool IsLevel(PointM a, PointM b) => Math.Abs(a.X - b.X) < SameM || Math.Abs(a.Y - b.Y) < SameM;

    private static bool Meet(PointM p, PointM q, PointM a, PointM b) => Shared(p, q, a, b, c => c.X) >= -SameM && Shared(p, q, a, b, c => c.Y) >= -SameM;

    private static bool RunTogether(PointM p, PointM q, PointM a, PointM b) => Meet(p, q, a, b) && Math.Max(Shared(p, q, a, b, c => c.X), Shared(p, q, a, b, c => c.Y)) > SameM;

    private static double Shared(PointM p, PointM q, PointM a, PointM b, Func<PointM, double> on) =>
        Math.Min(Math.Max(on(p), on(q)), Math.Max(on(a), on(b))) - Math.Max(Math.Min(on(p), on(q)), Math.Min(on(a), on(b)));

    /// <summary>By trying every choice of chords.</summary>
    private static int MostApart(List<(PointM From, PointM To)> chords) => Enumerable.Range(0, 1 << chords.Count)
        .Select(set => chords.Where((_, i) => (set >> i & 1) == 1).ToList())
        .Where(chosen => chosen.TrueForAll(c => chosen.TrueForAll(d => c == d || !Meet(c.From, c.To, d.From, d.To))))
        .Max(chosen => chosen.Count);

    /// <param name="TurnsOut">The ring turns here against the way it runs round.</param>
    private sealed record Corner(PointM At, bool TurnsOut)
    {
        /// <summary>The corners of a hole stick into the top where those of its outline do not.</summary>
        public bool IsInner(bool isHole) => TurnsOut != isHole;
    }

    private static List<Corner> Corners(IReadOnlyList<PointM> ring)
    {
        var turns = ring.Select((p, i) =>
        {
            var (before, after) = (ring[(i + ring.Count - 1) % ring.Count], ring[(i + 1) % ring.Count]);
            return (At: p, Turn: ((p.X - before.X) * (after.Y - p.Y)) - ((p.Y - before.Y) * (after.X - p.X)));
        }).Where(t => Math.Abs(t.Turn) > SameM).ToList();
        var area = ring.Select((p, i) => (p.X * ring[(i + 1) % ring.Count].Y) - (p.Y * ring[(i + 1) % ring.Count].X)).Sum();
        return [.. turns.Select(t => new Corner(t.At, (t.Turn > 0) != (area > 0)))];
    }
}
