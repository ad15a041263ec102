using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using static Lapwise.Core.Tests.Measure.Benches;

namespace Lapwise.Core.Tests.Measure;

public sealed class OutlineSoFarTests
{
    private static string Of(OutlineDocument outline) =>
        OutlineSoFar.Of(new TopDocument { Name = "Run", Outline = outline }, UnitSystem.Us) is { } top
            ? string.Join(" ", top.Sides.Select(s => FormattableString.Invariant($"{s.Side}({s.From.X / InchM:0.##},{s.From.Y / InchM:0.##})-({s.To.X / InchM:0.##},{s.To.Y / InchM:0.##})"))).Replace("-0,", "0,", StringComparison.Ordinal).Replace(",-0)", ",0)", StringComparison.Ordinal)
            : "nothing";

    private static OutlineDocument Walk(params WalkedSideDocument[] sides) => new() { Shape = OutlineShape.Walk, Sides = sides };

    private static WalkedSideDocument Side(string length, string? turn = null) => new() { Length = length, Turn = turn is { } said ? new Entry(said) : default(Entry?) };

    [Fact]
    public void Walked_sides_are_there_one_by_one_as_they_are_typed()
    {
        Assert.Equal("nothing", Of(Walk(new(), new(), new(), new())));
        Assert.Equal("A(0,0)-(96,0)", Of(Walk(Side("96"), new(), new(), new())));
        Assert.Equal("A(0,0)-(96,0) B(96,0)-(96,25)", Of(Walk(Side("96"), Side("25"), new(), new())));
        Assert.Equal("A(0,0)-(96,0) B(96,0)-(96,25) C(96,25)-(2,25)", Of(Walk(Side("96"), Side("25"), Side("94"), new())));
    }

    [Fact]
    public void Walked_sides_keep_their_taped_lengths_where_they_do_not_close() =>
        Assert.Equal("A(0,0)-(96,0) B(96,0)-(96,25) C(96,25)-(46,25) D(46,25)-(46,0)", Of(Walk(Side("96"), Side("25"), Side("50"), Side("25"))));

    [Fact]
    public void A_length_that_cannot_be_read_leaves_the_longer_run_and_a_turn_hides_what_is_behind_it()
    {
        Assert.Equal("C(0,0)-(-40,0) D(-40,0)-(-40,-25)", Of(Walk(Side("96"), Side("banana"), Side("40"), Side("25"))));
        Assert.Equal("A(0,0)-(96,0)", Of(Walk(Side("96", "sideways"), Side("25"), Side("40"), Side("25"))));
    }

    [Fact]
    public void A_walked_arc_is_as_long_as_it_was_taped()
    {
        var top = OutlineSoFar.Of(new TopDocument { Outline = Walk(Side("96"), new() { Length = "30 in", Radius = "20 in", Bend = Bend.Right }, new()) }, UnitSystem.Us)!;
        Assert.Equal(30 * InchM, Assert.IsType<Segment.Arc>(top.Sides[1]).LengthM, 1e-9);
    }

    [Fact]
    public void Shapes_show_the_sides_that_carry_a_size()
    {
        OutlineDocument l = new() { Shape = OutlineShape.L, Length = "132" };
        Assert.Equal("A(0,0)-(132,0)", Of(l));
        l = l with { Depth = "25" };
        Assert.Equal("F(0,0)-(0,-25) A(0,-25)-(132,-25)", Of(l));
        l = l with { RightLegLength = "96" };
        Assert.Equal("F(0,0)-(0,-25) A(0,-25)-(132,-25) B(132,-25)-(132,71)", Of(l));
        Assert.Equal("G(0,0)-(-25,0) H(-25,0)-(-25,-60) A(-25,-60)-(75,-60)", Of(new() { Shape = OutlineShape.U, Length = "100", LeftLegLength = "60", LeftLegDepth = "25" }));
        Assert.Equal("A(0,0)-(96,0)", Of(new() { Length = "96" }));
        Assert.Equal("B(0,0)-(0,25)", Of(new() { Length = "banana", Depth = "25" }));
        Assert.Equal("nothing", Of(new() { Shape = OutlineShape.Circle }));
    }
}
