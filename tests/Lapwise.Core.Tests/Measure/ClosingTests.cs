using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Valid;
using static Lapwise.Core.Tests.Measure.Benches;

namespace Lapwise.Core.Tests.Measure;

public sealed class ClosingTests
{
    // ---- shapes by their sizes, against closed forms

    [Fact]
    public void Circle_has_the_area_and_perimeter_of_its_closed_form() => Gen.Double[0.1, 4].Sample(d =>
    {
        var outline = Measured(new OutlineSpec.Circle(d)).Outline;
        AssertClose(Math.PI * d * d / 4, outline.AreaM2);
        AssertClose(Math.PI * d, outline.PerimeterM);
    });

    [Fact]
    public void Ellipse_has_the_area_of_its_closed_form() => Gen.Double[0.1, 4].Select(Gen.Double[0.1, 4]).Sample((l, d) =>
        AssertClose(Math.PI * l * d / 4, Measured(new OutlineSpec.Ellipse(l, d)).Outline.AreaM2));

    [Fact]
    public void RoundedRectangle_is_its_rectangle_less_four_corners() => Gen.Double[0.3, 4].Select(Gen.Double[0.3, 4], Gen.Double[0, 0.15]).Sample((l, d, r) =>
    {
        var outline = Measured(new OutlineSpec.RoundedRectangle(l, d, r)).Outline;
        AssertClose((l * d) - ((4 - Math.PI) * r * r), outline.AreaM2);
        AssertClose((2 * (l + d)) - (8 * r) + (2 * Math.PI * r), outline.PerimeterM);
    });

    [Fact]
    public void RoundedRectangle_whose_arcs_use_up_its_ends_keeps_four_sides()
    {
        var top = Measured(new OutlineSpec.RoundedRectangle(1.5, 0.6, 0.3));
        Assert.Equal("ABCD", new string([.. top.Outline.Segments.Select(s => s.Side).Distinct()]));
        AssertClose((0.9 * 0.6) + (Math.PI * 0.09), top.Outline.AreaM2);
    }

    [Fact]
    public void L_is_the_sum_of_its_two_rectangles() => Gen.Select(Gen.Double[1, 4], Gen.Double[0.4, 0.9], Gen.Double[0.1, 2], Gen.Double[0.3, 0.9]).Sample((l, d, more, leg) =>
    {
        var outline = Measured(new OutlineSpec.L(l, d, d + more, leg)).Outline;
        AssertClose((l * d) + (more * leg), outline.AreaM2);
        AssertClose(2 * (l + d + more), outline.PerimeterM); // an L is as long round as its bounding box
    });

    [Fact]
    public void A_top_of_next_to_no_area_is_told_the_least_there_is()
    {
        var fault = TheFault(Top(new OutlineSpec.Rectangle(0.25 * InchM, 0.25 * InchM)));
        Assert.Equal("OutlineWithoutArea", fault.Code);
        Assert.Contains("less than about 3/8\" by 3/8\"", fault.Text(English), StringComparison.Ordinal);
        Assert.Contains("10 mm", fault.Text(Spanish), StringComparison.Ordinal);
        Assert.DoesNotContain("zero", fault.Cure(English), StringComparison.Ordinal);
    }

    [Fact]
    public void U_is_the_sum_of_its_three_rectangles() => Gen.Select(Gen.Double[2, 5], Gen.Double[0.4, 0.9], Gen.Double[0.1, 2], Gen.Double[0.1, 2], Gen.Double[0.3, 0.9]).Sample((l, d, right, left, leg) =>
    {
        var outline = Measured(new OutlineSpec.U(l, d, d + right, leg, d + left, leg / 2)).Outline;
        AssertClose((l * d) + (right * leg) + (left * leg / 2), outline.AreaM2);
        AssertClose(2 * (l + d + right + left), outline.PerimeterM);
    });

    [Fact]
    public void Sides_of_every_shape_stand_where_the_letters_say()
    {
        // L: C is the end of the leg, E the front of the back run, F its left end.
        var l = Measured(new OutlineSpec.L(3, 0.6, 2, 0.7)).Outline;
        Assert.Equal([3, 2, 0.7, 1.4, 2.3, 0.6], l.Segments.Select(s => Math.Round(s.LengthM, 9)));
        var u = Measured(new OutlineSpec.U(3, 0.6, 2, 0.7, 1.5, 0.5)).Outline;
        Assert.Equal([3, 2, 0.7, 1.4, 1.8, 0.9, 0.5, 1.5], u.Segments.Select(s => Math.Round(s.LengthM, 9)));
        foreach (var outline in (OutlineSpec[])[new OutlineSpec.Circle(1.1), new OutlineSpec.Ellipse(2, 1), new OutlineSpec.RoundedRectangle(1, 0.5, 0.1)])
        {
            var ring = Measured(outline).Faces[0].Ring;
            AssertClose(0, ring.Min(p => p.X));
            AssertClose(0, ring.Min(p => p.Y));
        }
    }

    // ---- walking the sides

    public static TheoryData<double[], double[], double, (double Lat, double Dep)[]> Traverses => new()
    {
        {
            // J. Mahun, Open Access Surveying Library, traverse computations, chapter E, traverse with bearings:
            // S 68°05'35" W, N 19°46'00" W, N 45°55'20" E, S 54°59'15" E; open by +0.083 and +0.075.
            [180 + Dms(68, 5, 35), 360 - Dms(19, 46, 0), Dms(45, 55, 20), 180 - Dms(54, 59, 15)],
            [472.68, 216.13, 276.52, 382.24],
            Math.Sqrt((0.083 * 0.083) + (0.075 * 0.075)),
            [(-176.386, -438.574), (203.382, -73.105), (192.340, 198.635), (-219.336, 313.044)]
        },
        {
            // "Compass rule: adjustment of bearing and distance of a closed traverse", lecture notes, Scribd 493615208:
            // N 76° E, S 36° E, S 61° W, N 38° W; open by +0.285 and −0.311 (the last departure from the others' sum).
            [76, 144, 241, 322],
            [80.40, 46.30, 72.80, 68.00],
            Math.Sqrt((0.285 * 0.285) + (0.311 * 0.311)),
            [(19.3653, 78.1055), (-37.5063, 27.2678), (-35.3716, -63.5874), (53.5126, -41.7859)]
        },
    };

    /// <summary>Azimuths in degrees from north; lengths as published, one unit as one metre.</summary>
    [Theory]
    [MemberData(nameof(Traverses))]
    public void Compass_rule_meets_published_traverses(double[] azimuthsDeg, double[] lengths, double open, (double Lat, double Dep)[] adjusted)
    {
        var sides = azimuthsDeg.Select((a, i) => Straight(lengths[i], Turn(a, azimuthsDeg[(i + 1) % 4])));
        var top = Measured(Walk(0.001, [.. sides]));

        Assert.Equal(open, top.Closure.MisclosureM, 0.001);
        for (var i = 0; i < 4; i++)
        {
            // Side A lies along x in plan; turned back to its adjusted bearing, each side is the published one.
            var (lat, dep) = Turned(top.Outline.Segments[i], Math.Atan2(adjusted[0].Dep, adjusted[0].Lat));
            Assert.Equal(adjusted[i].Lat, lat, 0.0015);
            Assert.Equal(adjusted[i].Dep, dep, 0.0015);
        }
    }

    [Fact]
    public void A_walk_that_closes_is_the_shape_it_walks()
    {
        var walked = Measured(Walk(0.001, Straight(3), Straight(2), Straight(0.7), Straight(1.4, -90), Straight(2.3), Straight(0.6)));
        var shape = Measured(new OutlineSpec.L(3, 0.6, 2, 0.7));
        AssertClose(shape.Outline.AreaM2, walked.Outline.AreaM2);
        Assert.Equal(0, walked.Closure.MisclosureM);
        Assert.True(walked.Closure.Closes);
        Assert.Empty(walked.Closure.SuspectSides);
        Assert.Empty(walked.Closure.Notes);
    }

    [Fact]
    public void Square_outline_left_open_names_both_sides_that_tie()
    {
        // 2 cm open along A: the fault can be in A or in C, and nothing tells which.
        var closure = Measured(SquareWalk(0.001, 2.00, 1.00, 1.98, 1.00)).Closure;
        Assert.Equal(0.02, closure.MisclosureM, 1e-12);
        Assert.False(closure.Closes);
        Assert.Equal(['A', 'C'], closure.SuspectSides);
        var note = Assert.Single(closure.Notes);
        Assert.Equal("OutlineLeftOpen", note.Code);
        Said.InEveryVoice([note.Text, note.Remedy]);
    }

    [Fact]
    public void Square_outline_left_open_across_both_ways_names_the_nearer_pair() =>
        Assert.Equal(['B', 'D'], Measured(SquareWalk(0.001, 2.00, 1.03, 1.99, 1.00)).Closure.SuspectSides);

    [Fact]
    public void Square_outline_left_open_on_the_diagonal_names_all_four() =>
        Assert.Equal(['A', 'B', 'C', 'D'], Measured(SquareWalk(0.001, 2.00, 1.02, 1.98, 1.00)).Closure.SuspectSides);

    [Fact]
    public void Only_the_side_that_lies_along_the_misclosure_is_suspect()
    {
        // A counter with one corner cut off at 45°: the cut is 3 cm short.
        var cut = Math.Sqrt(2) * 0.3;
        var top = Measured(Walk(0.001, Straight(2), Straight(0.7, 45), Straight(cut - 0.03, 45), Straight(1.7), Straight(1.0)));
        Assert.Equal(['C'], top.Closure.SuspectSides);
    }

    [Fact]
    public void Allowed_misclosure_is_twice_the_spread_of_readings_to_the_step()
    {
        // Readings to a step are off evenly by up to half of it; 4 sides, seeded draws. 95 % of a normal lies within two spreads.
        var allowed = Measured(SquareWalk(0.001, 2, 1, 2, 1)).Closure.AllowedM;
        var random = new Random(7);
        var offs = Enumerable.Range(0, 20000).Select(_ => Enumerable.Range(0, 4).Sum(_ => (random.NextDouble() - 0.5) * 0.001)).ToArray();
        Assert.Equal(2 * Math.Sqrt(offs.Average(o => o * o)), allowed, 1e-5);
    }

    [Fact]
    public void Tape_step_explains_a_misclosure_within_it() =>
        Assert.Empty(Measured(SquareWalk(0.01, 2.00, 1.00, 1.99, 1.00)).Closure.SuspectSides);

    [Fact]
    public void Walk_far_from_closing_is_a_fault_that_says_which_length_would_close_it()
    {
        var fault = TheFault(Top(SquareWalk(0.001, 2.0, 1.0, 1.5, 1.0)));
        Assert.Equal(("tops[0].outline", "OutlineDoesNotClose"), (fault.Path, fault.Code));
        var metric = new Voice(Language.English, UnitSystem.Metric);
        Assert.Contains("sides A, C", fault.Text(metric), StringComparison.Ordinal);
        Assert.Contains("side A, which would close best at 1500 mm; or side C, which would close best at 2000 mm", fault.Cure(metric), StringComparison.Ordinal);
    }

    [Fact]
    public void Turns_that_fall_a_little_short_are_shared_and_said()
    {
        var closure = Measured(Walk(0.001, Straight(2, 90), Straight(1, 90), Straight(2, 90), Straight(1, 89.2))).Closure;
        Assert.Equal(0.8, closure.TurnMisclosureRad * 180 / Math.PI, 1e-9);
        Assert.Contains(closure.Notes, n => n.Code == "TurnsShared");
        Assert.All(closure.Notes, n => Said.InEveryVoice([n.Text, n.Remedy]));
    }

    [Theory]
    [InlineData(45, "45° is missing")]
    [InlineData(120, "30° is too much")]
    public void Turns_that_do_not_make_a_round_are_a_fault(double lastTurnDeg, string said)
    {
        var fault = TheFault(Top(Walk(0.001, Straight(2), Straight(1), Straight(2), Straight(1, lastTurnDeg))));
        Assert.Equal("TurnsDoNotAddUp", fault.Code);
        Assert.Contains(said, fault.Cure(English), StringComparison.Ordinal);
    }

    [Fact]
    public void Walk_round_to_the_left_is_told_to_turn_round() =>
        Assert.Equal("WalkedLeftHanded", TheFault(Top(Walk(0.001, Straight(2, -90), Straight(1, -90), Straight(2, -90), Straight(1, -90)))).Code);

    [Fact]
    public void Arcs_are_walked_to_their_closed_form()
    {
        // An island with a half round end: 2 m straight, half circle of 0.5 m, 2 m back, straight end.
        var island = Measured(Walk(0.001, Straight(2, 0), Arc(Math.PI * 0.5, 0.5, 0), Straight(2), Straight(1)));
        AssertClose((2 * 1) + (Math.PI * 0.125), island.Outline.AreaM2);
        AssertClose(5 + (Math.PI * 0.5), island.Outline.PerimeterM);

        // The same with the arc bent in: a bite of a quarter circle out of a corner.
        var bite = Measured(Walk(0.001, Straight(2), Straight(0.7, 90), Arc(Math.PI * 0.15, 0.3, 90, Bend.Left), Straight(1.7), Straight(1.0)));
        AssertClose((2 * 1) - (Math.PI * 0.0225), bite.Outline.AreaM2, 1e-9);
    }

    [Fact]
    public void Adjusting_keeps_the_angle_an_arc_sweeps()
    {
        var top = Measured(Walk(0.001, Straight(2.02, 0), Arc(Math.PI * 0.5, 0.5, 0), Straight(2), Straight(1)));
        var arc = Assert.Single(top.Outline.Segments.OfType<Segment.Arc>());
        Assert.Equal(Math.PI, arc.SweepRad, 1e-12);
        Assert.Equal(arc.RadiusM, arc.Centre.DistanceTo(arc.From), 1e-9);
        Assert.Equal(arc.RadiusM, arc.Centre.DistanceTo(arc.To), 1e-9);
        Assert.Equal(default, top.Outline.Segments[^1].To);
    }

    [Fact]
    public void Area_does_not_depend_on_the_side_one_starts_from() => Gen.Select(Walks, Gen.Int[1, 11]).Sample((walk, shift) =>
    {
        var sides = walk.Sides;
        var rotated = Walk(walk.TapeStepM, [.. Enumerable.Range(0, sides.Count).Select(i => sides[(i + shift) % sides.Count])]);
        var (one, other) = (Measuring.Measure(Job(Top(walk))), Measuring.Measure(Job(Top(rotated))));
        Assert.Equal(one.Tops.Count, other.Tops.Count);
        if (one.Tops.Count == 0) return;
        AssertClose(one.Tops[0].Outline.AreaM2, other.Tops[0].Outline.AreaM2, 1e-8);
        Assert.Equal(one.Tops[0].Closure.MisclosureM, other.Tops[0].Closure.MisclosureM, 1e-8);
    });

    [Fact]
    public void Area_of_walked_outlines_is_that_of_an_independent_geometry_library() => Walks.Sample(walk =>
    {
        var job = Measuring.Measure(Job(Top(walk)));
        if (job.Tops.Count == 0) return;
        var polygon = Polygon(job.Tops[0].Faces[0].Ring);
        Assert.True(new IsValidOp(polygon).IsValid);
        // Walked without arcs, so the ring is the outline itself; the library's area has no sign.
        AssertClose(polygon.Area, job.Tops[0].Outline.AreaM2);
        AssertClose(polygon.Length, job.Tops[0].Outline.PerimeterM);
    });

    [Fact]
    public void Outlines_that_an_independent_library_finds_invalid_are_faults_and_no_others() => CornerRings.Sample(ring =>
    {
        var polygon = Polygon(ring);
        var job = Measuring.Measure(Job(Top(WalkedRound(ring))));
        var codes = job.Faults.Select(f => f.Code).ToArray();
        if (codes is ["TurnsDoNotAddUp"] or ["WalkedLeftHanded"]) return; // wound more than once, or not at all
        Assert.Equal(new IsValidOp(polygon).IsValid, codes.Length == 0);
        if (codes.Length > 0) Assert.Equal(["OutlineCrossesItself"], codes);
        else AssertClose(polygon.Area, job.Tops[0].Outline.AreaM2, 1e-8);
    }, iter: 2000);

    // ---- diagonals

    [Fact]
    public void Diagonal_that_agrees_changes_nothing()
    {
        var top = Measured(new OutlineSpec.Rectangle(4, 3) { Diagonals = [new Diagonal('A', 'C', 5), new Diagonal('B', 'D', 5)], TapeStepM = 0.001 });
        AssertClose(12, top.Outline.AreaM2);
        Assert.All(top.Closure.Diagonals, d => Assert.Equal(0, d.DifferenceM, 1e-12));
        Assert.Empty(top.Closure.Notes);
    }

    [Theory]
    [InlineData('A', 'C')]
    [InlineData('C', 'A')]
    [InlineData('B', 'D')]
    [InlineData('D', 'B')]
    public void Diagonal_of_square_sides_shows_walls_out_of_square(char from, char to)
    {
        // Two triangles by Heron's formula, an area that knows nothing of corners.
        const double DiagonalM = 4.95;
        var top = Measured(new OutlineSpec.Rectangle(4, 3) { Diagonals = [new Diagonal(from, to, DiagonalM)], TapeStepM = 0.001 });
        AssertClose(2 * Heron(4, 3, DiagonalM), top.Outline.AreaM2);
        Assert.Equal([4, 3, 4, 3], top.Outline.Segments.Select(s => Math.Round(s.LengthM, 9)));
        Assert.Equal(0, Assert.Single(top.Closure.Diagonals).DifferenceM, 1e-9);
        var note = Assert.Single(top.Closure.Notes);
        Assert.Equal("WallsOutOfSquare", note.Code);
        Said.InEveryVoice([note.Text]);
    }

    [Fact]
    public void Four_unequal_sides_and_a_diagonal_close_without_a_misclosure()
    {
        var spec = SquareWalk(0.001, 3.00, 0.65, 2.98, 0.62) with { Diagonals = [new Diagonal('A', 'C', 3.05)] };
        var top = Measured(spec);
        AssertClose(Heron(3.00, 0.65, 3.05) + Heron(3.05, 2.98, 0.62), top.Outline.AreaM2);
        Assert.Equal(0, top.Closure.MisclosureM);
    }

    [Fact]
    public void Second_diagonal_that_agrees_is_accepted_and_one_that_does_not_is_reported()
    {
        // In a parallelogram the squares of the diagonals add up to those of the four sides.
        var other = Math.Sqrt((2 * (16 + 9)) - (4.95 * 4.95));
        var agreed = Measured(new OutlineSpec.Rectangle(4, 3) { Diagonals = [new Diagonal('A', 'C', 4.95), new Diagonal('B', 'D', other)], TapeStepM = 0.001 });
        Assert.Equal("WallsOutOfSquare", Assert.Single(agreed.Closure.Notes).Code);

        var torn = Measured(new OutlineSpec.Rectangle(4, 3) { Diagonals = [new Diagonal('A', 'C', 4.95), new Diagonal('B', 'D', 5)], TapeStepM = 0.001 });
        AssertClose(12, torn.Outline.AreaM2);
        Assert.Equal("DiagonalDiffers", Assert.Single(torn.Closure.Notes).Code);
        Assert.Equal(-0.05, torn.Closure.Diagonals[0].DifferenceM, 1e-9);
    }

    [Fact]
    public void Diagonal_of_another_shape_is_reported_with_its_suspects()
    {
        var top = Measured(new OutlineSpec.L(3, 0.6, 2, 0.7) { Diagonals = [new Diagonal('A', 'C', 3.7)], TapeStepM = 0.001 });
        Assert.Equal(3.7 - Math.Sqrt(13), Assert.Single(top.Closure.Diagonals).DifferenceM, 1e-12);
        var note = Assert.Single(top.Closure.Notes);
        Assert.Equal("DiagonalDiffers", note.Code);
        Said.InEveryVoice([note.Text, note.Remedy]);
        Assert.Contains("sides A, C, E", note.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void Diagonal_that_no_shape_has_is_a_fault_with_the_range()
    {
        var fault = TheFault(Top(new OutlineSpec.Rectangle(4, 3) { Diagonals = [new Diagonal('A', 'C', 8)] }));
        Assert.Equal("DiagonalDoesNotFit", fault.Code);
        Assert.Contains("1000 mm", fault.Cure(Spanish), StringComparison.Ordinal);
        Assert.Contains("7000 mm", fault.Cure(Spanish), StringComparison.Ordinal);
    }

    [Fact]
    public void Diagonal_that_would_make_a_wild_corner_is_a_fault() =>
        Assert.Equal("TooFarFromSquare", TheFault(Top(new OutlineSpec.Rectangle(4, 3) { Diagonals = [new Diagonal('B', 'D', 4)] })).Code);

    // ---- outlines that can't be

    public static TheoryData<OutlineSpec, string> Impossible => new()
    {
        { new OutlineSpec.Rectangle(0.005, 0.006), "OutlineWithoutArea" },
        { new OutlineSpec.Circle(0), "OutlineWithoutArea" },
        // Out and back over the same line.
        { new OutlineSpec.Rectangle(0, 0.6), "OutlineCrossesItself" },
        { Walk(0.001, Straight(1, 180), Straight(1, 180)), "OutlineCrossesItself" },
        // Sizes that reading refuses: should they come this far, they still make no top.
        { new OutlineSpec.RoundedRectangle(1, 0.5, 0.26), "OutlineCrossesItself" },
        { new OutlineSpec.U(3, 0.6, 2, 1.5, 2, 1.5), "OutlineCrossesItself" },
    };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void Outline_that_cannot_be_is_a_fault_of_its_top(OutlineSpec outline, string code)
    {
        var fault = TheFault(Top(outline));
        Assert.Equal(code, fault.Code);
        Assert.StartsWith("tops[0].outline", fault.Path, StringComparison.Ordinal);
    }

    [Fact]
    public void Outline_that_crosses_itself_says_where_and_which_sides()
    {
        // The notch in the front (sides D, E, F) is deeper than the run: its bottom E has gone through the back A.
        var fault = TheFault(Top(Walk(0.001,
            Straight(3), Straight(0.6), Straight(1, 90), Straight(0.8, -90), Straight(1, -90), Straight(0.8, 90), Straight(1), Straight(0.6))));
        Assert.Equal("OutlineCrossesItself", fault.Code);
        Assert.Contains("side A comes to side D, 2000 mm along side A and 0 mm in", fault.Text(new Voice(Language.English, UnitSystem.Metric)), StringComparison.Ordinal);
    }

    // ---- random outlines

    private static readonly GeometryFactory Factory = new();

    /// <summary>Straight rectilinear counters with a step in the front and a few millimetres of misclosure.</summary>
    private static readonly Gen<OutlineSpec.Walk> Walks = Gen.Select(Gen.Double[1, 4], Gen.Double[0.4, 1], Gen.Double[0.2, 0.8], Gen.Double[0.1, 0.5], Gen.Double[-0.004, 0.004], Gen.Double[-0.004, 0.004])
        .Select((length, depth, step, deep, offX, offY) => Walk(0.0005,
            Straight(length + offX), Straight(depth + deep), Straight(length - step), Straight(deep + offY, -90), Straight(step), Straight(depth)));

    /// <summary>Five to eight corners on a coarse grid: some simple, many crossed, some touching themselves.</summary>
    private static readonly Gen<PointM[]> CornerRings = Gen.Int[0, 6].Select(Gen.Int[0, 6], (x, y) => new PointM(x * 0.25, y * 0.25)).Array[5, 8]
        .Where(ring => ring.Select((p, i) => (P: p, Q: ring[(i + 1) % ring.Length])).All(e => e.P != e.Q));

    private static Polygon Polygon(IReadOnlyList<PointM> ring) =>
        Factory.CreatePolygon([.. ring.Append(ring[0]).Select(p => new Coordinate(p.X, p.Y))]);

    private static OutlineSpec.Walk WalkedRound(PointM[] ring)
    {
        double Heading(int i) => Math.Atan2(ring[(i + 1) % ring.Length].Y - ring[i % ring.Length].Y, ring[(i + 1) % ring.Length].X - ring[i % ring.Length].X);
        return Walk(0.001, [.. ring.Select((p, i) => new WalkedSide(
            p.DistanceTo(ring[(i + 1) % ring.Length]), Math.IEEERemainder(Heading((i + 1) % ring.Length) - Heading(i), 2 * Math.PI), null, Bend.Right))]);
    }

    private static double Heron(double a, double b, double c)
    {
        var s = (a + b + c) / 2;
        return Math.Sqrt(s * (s - a) * (s - b) * (s - c));
    }

    private static double Dms(int degrees, int minutes, int seconds) => degrees + (minutes / 60.0) + (seconds / 3600.0);

    private static double Turn(double fromAzimuth, double toAzimuth) => Math.IEEERemainder(toAzimuth - fromAzimuth, 360);

    private static (double Lat, double Dep) Turned(Segment side, double azimuthOfARad)
    {
        var azimuth = azimuthOfARad + Math.Atan2(side.To.Y - side.From.Y, side.To.X - side.From.X);
        return (side.LengthM * Math.Cos(azimuth), side.LengthM * Math.Sin(azimuth));
    }
}
