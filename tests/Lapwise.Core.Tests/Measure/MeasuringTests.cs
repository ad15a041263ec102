using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using NetTopologySuite.Geometries;
using static Lapwise.Core.Tests.Measure.Benches;

namespace Lapwise.Core.Tests.Measure;

public sealed class MeasuringTests
{
    [Fact]
    public void Take_off_of_a_kitchen_run_is_what_one_counts_by_hand()
    {
        // 3.00 × 0.65 m, 40 mm thick: splash along the wall 0.10 high with a 20 mm top and both ends, waterfall on the right
        // 0.90 down with 15 mm returns, front half rounded over, a sink of 0.80 × 0.45 with a coated rim of 40 mm.
        var top = Measured(Top(new OutlineSpec.Rectangle(3, 0.65), "Sink run", 0.04,
            new()
            {
                ['A'] = new Edge.Splash(0.10, 0.02, 2, IsJoint: false),
                ['B'] = new Edge.Waterfall(0.90, 0.015, IsJoint: true),
                ['C'] = Open(ProfileShape.FullRound, undersideM: 0.02),
                ['D'] = new Edge.Wall(),
            },
            [Hole(1.5, 0.33, 0.80, 0.45, rimM: 0.04)]));

        var takeOff = top.TakeOff;
        AssertClose((3 * 0.65) - (0.80 * 0.45), takeOff.FlatM2);
        AssertClose(3 * ((Math.PI * 0.02) + 0.02), takeOff.EdgeM2);
        AssertClose((3 * 0.10) + (3 * 0.02) + (2 * 0.10 * 0.02), takeOff.SplashM2);
        AssertClose((0.65 * 0.90) + (2 * 0.90 * 0.015), takeOff.WaterfallM2);
        AssertClose(2 * (0.80 + 0.45) * 0.04, takeOff.RimM2);
        Assert.Equal(["Sink run/flat", "Sink run/splash A", "Sink run/waterfall B"], top.Faces.Select(f => f.Id));
        Assert.Equal([false, true], top.Folds.Select(f => f.IsJoint));
    }

    [Fact]
    public void Sum_of_the_take_off_is_the_sum_of_the_faces() => Tops.Array[1, 4].Sample(tops =>
    {
        var job = Measuring.Measure(Job([.. tops.Select((t, i) => t with { Name = $"Top {i}" })]));
        Assert.Empty(job.Faults.Select(f => f.Say(English)));
        foreach (var top in job.Tops) AssertClose(top.TakeOff.CoatedM2, top.Faces.Sum(f => f.CoatedM2), 1e-12);
        AssertClose(job.Total.CoatedM2, job.Tops.SelectMany(t => t.Faces).Sum(f => f.CoatedM2), 1e-12);
    });

    [Fact]
    public void Coated_area_of_a_face_is_its_rings_and_strips_to_within_the_chords() => Tops.Sample(top =>
    {
        foreach (var face in Measured(top).Faces)
        {
            var ringsM2 = RingAreaM2(face.Ring) - face.HoleRings.Sum(RingAreaM2);
            var lineM = Length([.. face.Ring, face.Ring[0]]) + face.HoleRings.Sum(r => Length([.. r, r[0]]));
            Assert.InRange(face.CoatedM2 - ringsM2 - face.Strips.Sum(s => s.AreaM2), -0.0001 * lineM - 1e-12, 0.0001 * lineM + 1e-12);
        }
    });

    [Fact]
    public void Rings_are_valid_polygons_for_an_independent_geometry_library() => Tops.Sample(top =>
    {
        var factory = new GeometryFactory();
        foreach (var face in Measured(top).Faces)
        {
            LinearRing Ring(IReadOnlyList<PointM> r) => factory.CreateLinearRing([.. r.Append(r[0]).Select(p => new Coordinate(p.X, p.Y))]);
            var polygon = factory.CreatePolygon(Ring(face.Ring), [.. face.HoleRings.Select(Ring)]);
            Assert.True(polygon.IsValid);
            AssertClose(polygon.Area, RingAreaM2(face.Ring) - face.HoleRings.Sum(RingAreaM2), 1e-9);
        }
    });

    [Fact]
    public void Folds_run_the_same_way_point_for_point_and_keep_the_true_length() => Tops.Sample(top =>
    {
        var measured = Measured(top);
        Assert.Equal(measured.Faces.Count - 1, measured.Folds.Count);
        foreach (var fold in measured.Folds)
        {
            Assert.Equal(fold.LineOnFlat.Count, fold.LineOnOther.Count);
            Assert.Equal(default, fold.LineOnOther[0]);
            AssertClose(fold.LengthM, Length(fold.LineOnOther));
            var chordsM = Length(fold.LineOnFlat);
            Assert.InRange(fold.LengthM - chordsM, -1e-12, 0.005 * fold.LengthM);
            var face = measured.Faces.Single(f => f.Id == fold.OtherFace);
            AssertClose(fold.LengthM, face.Ring.Max(p => p.X));
        }
    });

    [Fact]
    public void Curved_side_unrolls_to_its_true_length()
    {
        var top = Measured(Top(new OutlineSpec.Circle(1.2), edges: new() { ['A'] = new Edge.Waterfall(0.5, 0.02, IsJoint: false) }));
        AssertClose(Math.PI * 1.2 * 0.5, top.TakeOff.WaterfallM2); // a panel that runs all round has no free ends to return
        Assert.Empty(top.Faces[1].Strips);
        AssertClose(Math.PI * 1.2, top.Folds[0].LengthM);
    }

    [Fact]
    public void A_person_can_stand_at_open_and_waterfall_sides_and_nowhere_else()
    {
        var top = Measured(Top(new OutlineSpec.Rectangle(3, 0.65), edges: new()
        {
            ['A'] = new Edge.Splash(0.1, 0, 0, IsJoint: false), ['B'] = new Edge.Waterfall(0.9, 0, IsJoint: false), ['C'] = Open(),
        }));
        Assert.Equal(['B', 'C'], top.Faces[0].StandLines.Select(s => s.Side));
        Assert.Equal([new PointM(3, 0.65), new PointM(0, 0.65)], top.Faces[0].StandLines[1].Line);
        Assert.All(top.Faces.Skip(1), f => Assert.Empty(f.StandLines));
    }

    [Theory]
    [InlineData('D', 0.0)]
    [InlineData('B', 3.0)]
    public void Single_coated_end_of_a_splash_is_the_free_one(char openSide, double atM)
    {
        var top = Measured(Top(new OutlineSpec.Rectangle(3, 0.65), edges: new() { ['A'] = new Edge.Splash(0.1, 0.02, 1, IsJoint: false), [openSide] = Open() }));
        var end = Assert.Single(top.Faces[1].Strips, s => s.Kind == StripKind.SplashEnd);
        Assert.Equal(atM, end.Line[0].X);
    }

    [Fact]
    public void Nosing_of_a_rounded_side_runs_round_its_corner()
    {
        var top = Measured(Top(new OutlineSpec.RoundedRectangle(1.2, 0.7, 0.1), edges: new() { ['A'] = Open(), ['B'] = Open(), ['C'] = Open(), ['D'] = Open() }));
        AssertClose(top.Outline.PerimeterM * 0.04, top.TakeOff.EdgeM2);
        AssertClose(1.0 + (Math.PI * 0.05), top.Faces[0].Strips[0].LengthM);
        Assert.Equal(top.Faces[0].Strips[0].Line[^1], top.Faces[0].Strips[1].Line[0]);
    }

    [Fact]
    public void Area_and_coated_area_do_not_change_when_a_plan_is_turned() => Gen.Select(Gen.Double[1, 3], Gen.Double[0.5, 1], Gen.Double[0.03, 0.2], Gen.Int[1, 3]).Sample((length, depth, step, quarters) =>
    {
        // The same five-sided counter walked from another side is the same counter with its plan turned.
        WalkedSide[] sides = [Straight(length), Straight(depth - step, 45), Straight(step * Math.Sqrt(2), 45), Straight(length - step), Straight(depth)];
        TakeOff Of(int shift) => Measured(Top(
            Walk(0.001, [.. Enumerable.Range(0, 5).Select(i => sides[(i + shift) % 5])]),
            edges: Enumerable.Range(0, 5).ToDictionary(i => (char)('A' + i), i => (i + shift) % 5 < 3 ? Open() : new Edge.Splash(0.1, 0.02, 0, IsJoint: false)))).TakeOff;
        var (one, other) = (Of(0), Of(quarters));
        AssertClose(one.FlatM2, other.FlatM2, 1e-9);
        AssertClose(one.CoatedM2, other.CoatedM2, 1e-9);
    });

    [Fact]
    public void Holes_of_every_shape_take_off_their_closed_form()
    {
        TakeOff With(CutoutShape shape, double radiusM = 0) =>
            Measured(Top(new OutlineSpec.Rectangle(2, 1), cutouts: [Hole(1, 0.5, 0.6, shape == CutoutShape.Circle ? 0.6 : 0.4, shape, radiusM, rimM: 0.03)])).TakeOff;
        AssertClose(2 - (0.6 * 0.4), With(CutoutShape.Rectangle).FlatM2);
        AssertClose(2 - (0.6 * 0.4) + ((4 - Math.PI) * 0.0025), With(CutoutShape.RoundedRectangle, 0.05).FlatM2);
        AssertClose(2 - (Math.PI * 0.09), With(CutoutShape.Circle).FlatM2);
        AssertClose(2 - (Math.PI * 0.06), With(CutoutShape.Ellipse).FlatM2);
        AssertClose(Math.PI * 0.6 * 0.03, With(CutoutShape.Circle).RimM2);
    }

    // ---- faults

    [Theory]
    [InlineData(5, 0.3, 0.5, 0.3, CutoutShape.Rectangle, "CutoutOutside")]
    [InlineData(1, -0.4, 0.5, 0.3, CutoutShape.Ellipse, "CutoutOutside")]
    [InlineData(1, 0.1, 0.5, 0.3, CutoutShape.Rectangle, "CutoutMeetsSide")]
    [InlineData(0.25, 0.3, 0.5, 0.3, CutoutShape.Rectangle, "CutoutMeetsSide")] // touches side D
    [InlineData(1, 0.45, 0.3, 0.3, CutoutShape.Circle, "CutoutMeetsSide")] // touches side C in one point
    [InlineData(1.5, 0.3, 9, 9, CutoutShape.Rectangle, "CutoutOutside")] // round the whole top
    public void Cutout_that_does_not_stand_free_is_a_fault(double along, double into, double length, double depth, CutoutShape shape, string code)
    {
        var fault = TheFault(Top(new OutlineSpec.Rectangle(3, 0.6), cutouts: [Hole(along, into, length, depth, shape)]));
        Assert.Equal(("tops[0].cutouts[0]", code), (fault.Path, fault.Code));
    }

    [Fact]
    public void Cutout_in_the_inner_corner_of_an_L_lies_outside() =>
        Assert.Equal("CutoutOutside", TheFault(Top(new OutlineSpec.L(3, 0.6, 2, 0.7), cutouts: [Hole(1, 1.2, 0.4, 0.4)])).Code);

    [Fact]
    public void Cutout_that_reaches_a_side_says_which_and_where()
    {
        var fault = TheFault(Top(new OutlineSpec.Rectangle(3, 0.6), cutouts: [Hole(1, 0.55, 0.4, 0.3, name: "hob")]));
        var said = fault.Text(Spanish with { Language = Language.English });
        Assert.Contains("“hob” reaches side C", said, StringComparison.Ordinal);
        Assert.Contains("600 mm in", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.3, 0.3)] // across each other
    [InlineData(0.0, 0.1)] // one inside the other
    [InlineData(0.4, 0.4)] // sharing a side
    public void Cutouts_that_overlap_are_a_fault_of_the_later(double shift, double length)
    {
        var fault = TheFault(Top(new OutlineSpec.Rectangle(3, 0.6), cutouts: [Hole(1, 0.3, 0.4, 0.3), Hole(1 + shift, 0.3, length, length / 2, name: "tap")]));
        Assert.Equal(("tops[0].cutouts[1]", "CutoutsOverlap"), (fault.Path, fault.Code));
    }

    [Fact]
    public void Every_cutout_at_fault_is_said_at_once()
    {
        var job = Measuring.Measure(Job(Top(new OutlineSpec.Rectangle(3, 0.6), cutouts: [Hole(9, 0.3, 0.4, 0.3), Hole(1, 0.3, 0.4, 0.3), Hole(9, 0.3, 0.4, 0.3)])));
        Assert.Equal(["tops[0].cutouts[0]", "tops[0].cutouts[2]"], job.Faults.Select(f => f.Path));
    }

    [Theory]
    [InlineData('A', 3.0, "BreakOutside")]
    [InlineData('B', 0.0, "BreakOutside")]
    [InlineData('C', -1.0, "BreakOutside")]
    public void Planned_joint_off_its_side_is_a_fault(char side, double atM, string code)
    {
        var fault = TheFault(Top(new OutlineSpec.Rectangle(3, 0.6), breaks: [new BreakLine('A', 1), new BreakLine(side, atM)]));
        Assert.Equal(("tops[0].breaks[1]", code), (fault.Path, fault.Code));
    }

    [Fact]
    public void Planned_joint_from_a_curve_is_a_fault() =>
        Assert.Equal("BreakOnCurve", TheFault(Top(new OutlineSpec.Circle(1), breaks: [new BreakLine('A', 1)])).Code);

    [Fact]
    public void Coated_splash_end_without_a_width_is_a_fault()
    {
        var fault = TheFault(Top(new OutlineSpec.Rectangle(3, 0.6), edges: new() { ['A'] = new Edge.Splash(0.1, 0, 1, IsJoint: false) }));
        Assert.Equal(("tops[0].edges.A.topWidth", "SplashEndWithoutWidth"), (fault.Path, fault.Code));
    }

    [Fact]
    public void A_top_at_fault_does_not_take_the_others_with_it()
    {
        var job = Measuring.Measure(Job(
            Top(new OutlineSpec.Rectangle(0, 1)) with { Path = "tops[0]" },
            Top(new OutlineSpec.Rectangle(2, 1), "Other") with { Path = "tops[1]" }));
        Assert.Equal("tops[0].outline", Assert.Single(job.Faults).Path);
        Assert.Equal("Other", Assert.Single(job.Tops).Top.Name);
        AssertClose(2, job.Total.FlatM2);
    }

    [Fact]
    public void Measure_of_no_tops_is_nothing() => Assert.Equal(0, Measuring.Measure(Job()).Total.CoatedM2);

    private static double Length(IReadOnlyList<PointM> line) => line.Zip(line.Skip(1), (p, q) => p.DistanceTo(q)).Sum();

    // ---- random tops that work

    private static readonly Gen<OutlineSpec> Outlines = Gen.OneOf<OutlineSpec>(
        Gen.Select(Gen.Double[1, 4], Gen.Double[0.6, 1.5]).Select((l, d) => (OutlineSpec)new OutlineSpec.Rectangle(l, d)),
        Gen.Select(Gen.Double[1, 4], Gen.Double[0.6, 1.5], Gen.Double[0.01, 0.3]).Select((l, d, r) => (OutlineSpec)new OutlineSpec.RoundedRectangle(l, d, r)),
        Gen.Select(Gen.Double[1.5, 4], Gen.Double[0.6, 0.9], Gen.Double[0.1, 2], Gen.Double[0.3, 0.9]).Select((l, d, more, leg) => (OutlineSpec)new OutlineSpec.L(l, d, d + more, leg)),
        Gen.Select(Gen.Double[2, 5], Gen.Double[0.6, 0.9], Gen.Double[0.1, 2], Gen.Double[0.3, 0.9]).Select((l, d, more, leg) => (OutlineSpec)new OutlineSpec.U(l, d, d + more, leg, d + more, leg)),
        Gen.Double[1, 3].Select(d => (OutlineSpec)new OutlineSpec.Circle(d)),
        Gen.Select(Gen.Double[1.2, 3], Gen.Double[1, 2]).Select((l, d) => (OutlineSpec)new OutlineSpec.Ellipse(l, d)),
        Gen.Select(Gen.Double[1, 3], Gen.Double[0.3, 0.8]).Select((l, r) => (OutlineSpec)Walk(0.001, Straight(l, 0), Arc(Math.PI * r, r, 0), Straight(l), Straight(2 * r))));

    private static readonly Gen<Edge> Edges = Gen.OneOf<Edge>(
        Gen.Const((Edge)new Edge.Wall()),
        Gen.Enum<ProfileShape>().Select(s => Open(s, 0.01, 0.01, 0.02, 0.06)),
        Gen.Select(Gen.Double[0.05, 0.5], Gen.Double[0.005, 0.03], Gen.Int[0, 2], Gen.Bool).Select((h, t, ends, joint) => (Edge)new Edge.Splash(h, t, ends, joint)),
        Gen.Select(Gen.Double[0.3, 1], Gen.Double[0, 0.03], Gen.Bool).Select((d, r, joint) => (Edge)new Edge.Waterfall(d, r, joint)));

    private static readonly Gen<Top> Tops = Gen.Select(Outlines, Edges.Array[8], Gen.Enum<CutoutShape>(), Gen.Double[0, 0.05], Gen.Bool).Select((outline, edges, shape, rim, isCut) => Top(
        outline,
        edges: SideLetters.Of(outline).ToDictionary(l => l, l => edges[SideLetters.IndexOf(l)]),
        // In the middle of a round top, else near the start of the back: free of every side.
        cutouts: isCut ? [Hole(Middle(outline)?.X ?? 0.55, Middle(outline)?.Y ?? 0.32, 0.3, shape == CutoutShape.Circle ? 0.3 : 0.2, shape, 0.04, rim)] : []));

    private static PointM? Middle(OutlineSpec outline) => outline switch
    {
        OutlineSpec.Circle c => new PointM(c.DiameterM / 2, c.DiameterM / 2),
        OutlineSpec.Ellipse e => new PointM(e.LengthM / 2, e.DepthM / 2),
        _ => null,
    };
}
