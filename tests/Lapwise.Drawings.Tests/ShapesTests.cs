namespace Lapwise.Drawings.Tests;

public class ShapesTests
{
    private static readonly IReadOnlyList<Spot> Square = [new(0, 0), new(10, 0), new(10, 10), new(0, 10)];
    private static readonly IReadOnlyList<Spot> Hole = [new(4, 4), new(6, 4), new(6, 6), new(4, 6)];

    [Fact]
    public void Contains_a_spot_in_a_hole_is_outside()
    {
        Assert.True(Shapes.Contains([Square, Hole], new(2, 5)));
        Assert.False(Shapes.Contains([Square, Hole], new(5, 5)));
        Assert.False(Shapes.Contains([Square, Hole], new(11, 5)));
    }

    [Fact]
    public void Overlap_of_neighbours_that_only_touch_is_none() =>
        Assert.False(Shapes.Overlap(Square, [new(10, 0), new(20, 0), new(20, 10), new(10, 10)]));

    [Fact]
    public void Overlap_sees_one_shape_within_the_other() => Assert.True(Shapes.Overlap(Square, Hole));

    [Fact]
    public void Insides_of_a_square_begin_at_its_middle()
    {
        var first = Shapes.Insides([Square])[0];
        Assert.True((first - new Spot(5, 5)).Length < 0.01);
    }

    // Parallel lines at spacing s over an area a have the length a / s on average (plane geometry).
    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    [InlineData(-30)]
    public void Hatch_has_the_length_that_the_area_and_the_spacing_give(double degrees)
    {
        var length = Shapes.Hatch([Square, Hole], degrees, 0.01).Sum(l => (l.To - l.From).Length);
        Assert.Equal(96 / 0.01, length, 96 / 0.01 * 0.003);
    }

    [Fact]
    public void AtShare_walks_round_a_corner()
    {
        var (at, along) = Shapes.AtShare([new(0, 0), new(10, 0), new(10, 10)], 0.75);
        Assert.Equal(new Spot(10, 5), at);
        Assert.Equal(new Spot(0, 1), along);
    }
}
