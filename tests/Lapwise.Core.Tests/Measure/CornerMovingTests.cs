using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using NetTopologySuite.Geometries;
using static Lapwise.Core.Tests.Measure.Benches;

namespace Lapwise.Core.Tests.Measure;

public sealed class CornerMovingTests
{
    private const double QuarterInchM = InchM / 4;
    /// <summary>What was typed in inches is written in whole millimetres where the job is metric.</summary>
    private const double WrittenToMm = 0.0006;

    private static readonly OutlineDocument Ell = new()
    {
        Shape = OutlineShape.L, Length = "11'", Depth = "25 1/2 in", RightLegLength = "96 in", RightLegDepth = "25 1/2 in",
    };

    private static readonly OutlineDocument You = new()
    {
        Shape = OutlineShape.U, Length = "3600 mm", Depth = "650 mm", RightLegLength = "2400 mm", RightLegDepth = "620 mm", LeftLegLength = "1900 mm", LeftLegDepth = "600 mm",
    };

    /// <summary>The corner that is moved goes where it was dragged, its sides stay straight, and every corner off its two sides stays.</summary>
    [Theory]
    [InlineData("L"), InlineData("U"), InlineData("rectangle"), InlineData("walk")]
    public void Only_the_two_sides_that_meet_there_move_and_each_square_to_itself(string shape)
    {
        var outline = shape switch
        {
            "L" => Ell,
            "U" => You,
            "rectangle" => new OutlineDocument { Length = "96 in", Depth = "25 1/2 in" },
            _ => Walked("2400 mm", "1800 mm", "620 mm", "1170 mm", "1780 mm", "630 mm") with { Sides = [new() { Length = "2400 mm" }, new() { Length = "1800 mm" }, new() { Length = "620 mm" }, new() { Length = "1170 mm", Turn = "left 90" }, new() { Length = "1780 mm" }, new() { Length = "630 mm" }] },
        };
        var before = Measure(outline);
        var corners = CornerMoving.Of(before);
        Assert.Equal(SideLetters.Of(outline), corners.Select(c => c.Letter));
        Gen.Int[0, corners.Count - 1].Select(Gen.Int[-20, 20], Gen.Int[-20, 20]).Sample((corner, x, y) =>
        {
            var by = new PointM(x * 0.005, y * 0.005);
            var moved = CornerMoving.Move(outline, before, corners[corner].Letter, by, 0.005, UnitSystem.Metric);
            var after = Measure(moved.Outline!);
            Assert.Equal(before.Closure.MisclosureM, after.Closure.MisclosureM, 9);
            // Both drawn from corner A; a corner on neither moved side tells how the plan was laid anew.
            var was = Corners(before);
            var now = Corners(after);
            var (n, still) = (was.Length, (corner + 2) % was.Length);
            var laid = new PointM(now[still].X - was[still].X, now[still].Y - was[still].Y);
            for (var i = 0; i < n; i++)
            {
                var (goesX, goesY) = (now[i].X - was[i].X - laid.X, now[i].Y - was[i].Y - laid.Y);
                if (i == corner)
                {
                    Assert.True(Math.Abs(goesX - by.X) <= 0.0025 + WrittenToMm && Math.Abs(goesY - by.Y) <= 0.0025 + WrittenToMm, $"{goesX} {goesY} for {by}");
                    Assert.Equal(moved.Ring[i].X, was[i].X + goesX, WrittenToMm);
                    Assert.Equal(moved.Ring[i].Y, was[i].Y + goesY, WrittenToMm);
                }
                else if (i != (corner + 1) % n && i != (corner + n - 1) % n) Assert.True(Math.Abs(goesX) < WrittenToMm && Math.Abs(goesY) < WrittenToMm, $"corner {i} went with corner {corner}");
            }
            // A polygon of the general library has the area that is taken off.
            var ring = new GeometryFactory().CreatePolygon([.. moved.Ring.Append(moved.Ring[0]).Select(p => new Coordinate(p.X, p.Y))]);
            Assert.True(ring.IsValid);
            AssertClose(ring.Area, after.TakeOff.FlatM2, 2e-3);
        }, iter: 60);
    }

    [Fact]
    public void What_is_written_lies_on_the_grid_and_what_did_not_change_stays_as_typed()
    {
        var moved = CornerMoving.Move(Ell, Measure(Ell), 'C', new PointM(0.31, 0), QuarterInchM, UnitSystem.Us);
        Assert.Equal("12' 1/4\"", moved.Outline!.Length?.Text);
        Assert.Equal("3' 1 3/4\"", moved.Outline.RightLegDepth?.Text);
        Assert.Equal("96 in", moved.Outline.RightLegLength?.Text);
        Assert.Equal("25 1/2 in", moved.Outline.Depth?.Text);
        Assert.Equal("B 8' 0\", C 3' 1 3/4\"", string.Join(", ", moved.Sides.Select(s => $"{s.Side} {English.Length(s.LengthM)}")));
    }

    [Fact]
    public void A_length_off_the_grid_stays_where_it_is_until_its_own_side_is_moved()
    {
        var outline = new OutlineDocument { Length = "2453 mm", Depth = "601 mm" };
        Assert.Same(outline.Length?.Text, CornerMoving.Move(outline, Measure(outline), 'C', new PointM(0.002, 0.04), 0.005, UnitSystem.Metric).Outline!.Length?.Text);
        var moved = CornerMoving.Move(outline, Measure(outline), 'C', new PointM(0.01, 0.04), 0.005, UnitSystem.Metric).Outline!;
        Assert.Equal(("2465 mm", "640 mm"), (moved.Length?.Text, moved.Depth?.Text));
    }

    [Fact]
    public void A_walk_that_does_not_close_is_neither_mended_nor_made_worse_and_the_check_is_told_anew()
    {
        var outline = Walked("2400 mm", "600 mm", "2410 mm", "600 mm");
        var before = Measure(outline);
        Assert.False(before.Closure.Closes);
        var moved = CornerMoving.Move(outline, before, 'C', new PointM(0.1, 0.05), 0.005, UnitSystem.Metric);
        var after = Measure(moved.Outline!);
        Assert.Equal(["2500 mm", "650 mm", "2510 mm", "650 mm"], moved.Outline!.Sides!.Select(s => s.Length.Text));
        Assert.Equal(before.Closure.MisclosureM, after.Closure.MisclosureM, 9);
        Assert.True(after.Closure.PerimeterM > before.Closure.PerimeterM);
    }

    /// <summary>A triangle of 3 : 4 : 5 whose right angle is dragged along one leg stays of that shape: similar triangles.</summary>
    [Fact]
    public void On_slanting_sides_lengths_follow_by_similar_triangles()
    {
        var outline = new OutlineDocument
        {
            Shape = OutlineShape.Walk,
            Sides = [new() { Length = "1500 mm", Turn = "right 90" }, new() { Length = "2000 mm", Turn = "right 143.130102" }, new() { Length = "2500 mm", Turn = "right 126.869898" }],
        };
        var moved = CornerMoving.Move(outline, Measure(outline), 'B', new PointM(0.3, 0), 0.005, UnitSystem.Metric).Outline!;
        Assert.Equal(["1800 mm", "2400 mm", "3000 mm"], moved.Sides!.Select(s => s.Length.Text));
    }

    [Fact]
    public void A_corner_beside_a_curve_or_on_a_straight_line_is_held_and_a_side_never_vanishes()
    {
        var curved = new OutlineDocument
        {
            Shape = OutlineShape.Walk,
            Sides = [new() { Length = "2400 mm" }, new() { Length = "600 mm" }, new() { Length = "2400 mm", Turn = "right 0" }, new() { Length = "942.478 mm", Radius = "300 mm", Bend = Bend.Right, Turn = "right 0" }],
        };
        Assert.DoesNotContain('D', CornerMoving.Of(Measure(curved)).Select(c => c.Letter));
        var held = CornerMoving.Move(curved, Measure(curved), 'D', new PointM(0.1, 0), 0.005, UnitSystem.Metric);
        Assert.Equal("CornerIsHeld", held.Refused!.Code);
        Assert.Empty(CornerMoving.Of(Measured(new OutlineSpec.Circle(1))));

        var gone = CornerMoving.Move(Ell, Measure(Ell), 'E', new PointM(0, 2.5), 0.005, UnitSystem.Us);
        Assert.Equal(("SideWouldVanish", null), (gone.Refused!.Code, gone.Outline));
        Said.InEveryVoice([held.Refused.Text, held.Refused.Remedy, gone.Refused.Text, gone.Refused.Remedy]);
    }

    private static OutlineDocument Walked(params string[] lengths) => new() { Shape = OutlineShape.Walk, Sides = [.. lengths.Select(l => new WalkedSideDocument { Length = l })] };

    private static PointM[] Corners(MeasuredTop top) => [.. top.Outline.Segments.Select(s => s.From)];

    private static MeasuredTop Measure(OutlineDocument outline)
    {
        var read = JobReading.Read(new JobDocument { Tops = [new TopDocument { Name = "Run", Outline = outline, Edges = SideLetters.Of(outline).ToDictionary(l => l.ToString(), _ => new EdgeDocument(), StringComparer.Ordinal) }], Units = UnitSystem.Metric }, []);
        var measured = Measuring.Measure(read.Job ?? throw new InvalidOperationException(string.Join(" ", read.Faults.Select(f => f.Say(English)))));
        return Assert.Single(measured.Tops);
    }
}
