using CsCheck;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Sections;
using NetTopologySuite.Geometries;
using NetTopologySuite.LinearReferencing;
using NetTopologySuite.Operation.Distance;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using static Lapwise.Core.Tests.Work.Sections.CutTops;

namespace Lapwise.Core.Tests.Work.Sections;

/// <summary>What holds for every top however it is cut; held against NetTopologySuite, which the cutting itself does not use.</summary>
public sealed class SectioningPropertyTests
{
    [Fact]
    public void Sections_partition_every_face_exactly() => Holds(cut =>
    {
        Assert.Equal(cut.Top.Faces.Count, cut.Sections.Select(s => s.Face.Id).Distinct().Count());
        Assert.Equal(Enumerable.Range(0, cut.Sections.Count), cut.Sections.Select(s => s.Index));
        foreach (var face in cut.Sections.GroupBy(s => s.Face))
        {
            var whole = Polygon(face.Key);
            AssertRelative(whole.Area, face.Sum(s => s.FaceM2), 1e-9);
            AssertRelative(face.Key.CoatedM2, face.Sum(s => s.FilmM2), 1e-9);
            Geometry[] parts = [.. face.Select(s => Polygon(s.Rings))];
            Assert.All(parts, p => Assert.True(p.IsValid));
            Assert.Equal(0, OverlayNGRobust.Overlay(OverlayNGRobust.Union(parts), whole, SpatialFunction.SymDifference).Area, 1e-8);
            for (var i = 0; i < parts.Length; i++)
                for (var j = i + 1; j < parts.Length; j++)
                    Assert.Equal(0, OverlayNGRobust.Overlay(parts[i], parts[j], SpatialFunction.Intersection).Area, 1e-8);
        }
    });

    [Fact]
    public void Film_of_arcs_is_no_more_than_flattening_them_loses() => Holds(cut =>
        Assert.All(cut.Sections, s => Assert.InRange(s.ArcM2, -1e-3 * s.FaceM2, 1e-3 * s.FaceM2)));

    [Fact]
    public void Seams_are_as_long_as_the_boundary_two_sections_share() => Holds(cut =>
    {
        var seams = cut.Seams.ToLookup(s => (s.A, s.B), s => s.LengthM);
        foreach (var a in cut.Sections)
            foreach (var b in cut.Sections.Skip(a.Index + 1).Where(b => b.Face == a.Face))
                Assert.Equal(SharedM(a, b), seams[(a.Index, b.Index)].Sum(), 0.01);
    });

    [Fact]
    public void Seam_lines_are_as_long_as_they_say() => Holds(cut => Assert.All(cut.Seams, s =>
    {
        Assert.True(s.A < s.B);
        Assert.InRange(s.LengthM, 0.005, 20);
        Assert.Equal(s.LengthM, s.Line.Zip(s.Line.Skip(1), (p, q) => p.DistanceTo(q)).Sum(), 0.002 * s.LengthM);
    }));

    [Fact]
    public void Fold_seams_sum_to_the_fold() => Holds(cut => Assert.All(cut.Top.Folds, fold =>
    {
        var seams = cut.Seams.Where(s => cut.Sections[s.B].Face.Id == fold.OtherFace && cut.Sections[s.A].Face.Id == fold.FlatFace).ToList();
        Assert.Equal(fold.LengthM, seams.Sum(s => s.LengthM), 0.01);
        Assert.All(seams, s => Assert.Equal(fold.IsJoint ? LapKind.Break : LapKind.Fold, s.Kind));
    }));

    [Fact]
    public void Every_point_of_a_section_lies_within_its_reach_of_the_side_stood_at() => Holds(cut =>
    {
        var flat = cut.Top.Faces.Single(f => f.Kind == FaceKind.Flat);
        // A whole top is worked from every side there is; its reach is to the nearest of them.
        Geometry anySide = new MultiLineString([.. flat.StandLines.Select(l => new LineString([.. l.Line.Select(q => new Coordinate(q.X, q.Y))]))]);
        foreach (var section in cut.Sections.Where(s => s.Face == flat && s.StandSide is not null))
        {
            var side = flat.StandLines.Single(l => l.Side == section.StandSide).Line;
            var line = new LineString([.. side.Select(q => new Coordinate(q.X, q.Y))]);
            Assert.Equal(0, line.Distance(new Point(section.StandAt.X, section.StandAt.Y)), 1e-3);
            var polygon = Polygon(section.Rings);
            var box = polygon.EnvelopeInternal;
            for (var k = 0; k < 21 * 21; k++)
            {
                var p = new Point(box.MinX + (box.Width * (k % 21) / 20), box.MinY + (box.Height * (k / 21) / 20));
                if (polygon.Contains(p)) Assert.True((cut.Choice is CutChoice.WholeFaces ? anySide : line).Distance(p) <= section.ReachM + 0.003);
            }
        }
    });

    [Fact]
    public void A_cut_is_without_a_reason_just_when_every_section_is_within_reach() => Holds(cut =>
        Assert.Equal(cut.Reasons.Count == 0, cut.Sections.All(s => s.ReachM <= OneAim.ReachM + (InchM / 16))));

    [Fact]
    public void What_one_leans_over_never_goes_in_a_circle() => Holds(cut =>
    {
        var left = cut.Sections.ToDictionary(s => s.Index, s => s.LeansOver.ToHashSet());
        while (left.Count > 0)
        {
            var free = left.Where(s => !s.Value.Overlaps(left.Keys)).Select(s => s.Key).ToList();
            Assert.NotEmpty(free);
            foreach (var f in free) left.Remove(f);
        }
    });

    [Fact]
    public void A_splash_comes_before_every_section_it_is_reached_over() => Holds(cut =>
    {
        var sides = cut.Top.Faces.Single(f => f.Kind == FaceKind.Flat).StandLines.ToDictionary(l => l.Side, l => Line(l.Line));
        foreach (var seam in cut.Seams.Where(s => cut.Sections[s.B] is { Face.Kind: FaceKind.Splash, StandSide: not null } && cut.Sections[s.A].Face.Kind == FaceKind.Flat))
        {
            var splash = cut.Sections[seam.B];
            var foot = Line(seam.Line);
            var way = new LineString(DistanceOp.NearestPoints(sides[splash.StandSide!.Value], new Point(new LengthIndexedLine(foot).ExtractPoint(foot.Length / 2))));
            foreach (var flat in cut.Sections.Where(s => s.Face.Kind == FaceKind.Flat && Polygon(s.Rings).Buffer(-0.01).Intersection(way).Length > 0.1)) Assert.Contains(flat.Index, splash.LeansOver);
        }
    });

    [Fact]
    public void A_panel_comes_after_what_is_rolled_standing_in_front_of_it() => Holds(cut =>
    {
        if (cut.Choice is CutChoice.WholeFaces) return; // one walks round
        foreach (var seam in cut.Seams.Where(s => s.LengthM > 0.1 && cut.Sections[s.B].Face.Kind == FaceKind.Waterfall && cut.Sections[s.A].Face.Kind == FaceKind.Flat))
            if (IsStoodAt(cut, cut.Sections[seam.A], Line(seam.Line))) Assert.Contains(seam.B, cut.Sections[seam.A].LeansOver);
    });

    /// <summary>Whether the foot of a panel lies on the run of the side where one stands; one does not step round a curve past one's own part of it.</summary>
    private static bool IsStoodAt(CutTop cut, SectionShape section, LineString foot)
    {
        var side = cut.Top.Faces.Single(f => f.Kind == FaceKind.Flat).StandLines.SingleOrDefault(l => l.Side == section.StandSide);
        if (side is null) return false;
        var line = Line(side.Line);
        Geometry own = line.Intersection(Polygon(section.Rings).Buffer(1e-4));
        Geometry run = Enumerable.Range(0, own.NumGeometries).Select(own.GetGeometryN).MinBy(g => g.Distance(new Point(section.StandAt.X, section.StandAt.Y)))!;
        var isStraight = line.Length < line.StartPoint.Distance(line.EndPoint) + 1e-6;
        return (isStraight ? line : run).Buffer(0.005).Covers(foot);
    }

    [Fact]
    public void No_strip_is_larger_than_the_largest_section() => Holds(cut =>
    {
        if (cut.Choice is CutChoice.Strips) Assert.All(cut.Sections, s => Assert.InRange(s.FilmM2, 0, OneAim.LargestSectionM2 * (1 + 1e-6)));
    });

    [Fact]
    public void Ways_are_few_all_different_and_the_same_each_time() => Any.Sample(
        top =>
        {
            var ways = Sectioning.Ways(top, OneAim).ToList();
            Assert.InRange(ways.Count, 1, 24);
            Assert.Equal(ways.Select(Told), Sectioning.Ways(top, OneAim).Select(Told));
            Assert.Equal(ways.Count, ways.Select(Told).Distinct().Count());
            Assert.Equal(ways[0].Sections.Count, ways.Where(w => w.Choice is CutChoice.Strips { Finer: 1 }).Min(w => w.Sections.Count));
        },
        iter: 20, print: Print);

    private static LineString Line(IReadOnlyList<PointM> line) => new([.. line.Select(q => new Coordinate(q.X, q.Y))]);

    private static string Told(CutTop cut) => string.Join('|', cut.Sections.Select(s => $"{s.Face.Id} {s.CentreM} {s.FaceM2:R} {s.StandSide} {string.Join(',', s.LeansOver)}"));

    private static void Holds(Action<CutTop> what) => AnyCut.Sample(what, iter: 60, print: Print);

    private static void AssertRelative(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(expected - actual) <= relative * expected, $"expected {expected:R}, got {actual:R}");
}
