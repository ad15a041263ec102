namespace Lapwise.Drawings;

/// <summary>A wedge outside an edge that points at where a person stands.</summary>
/// <param name="Along">The side's direction there.</param>
/// <param name="Outward">Away from the top.</param>
/// <param name="Size">Half the width of the wedge.</param>
internal sealed record Standpoint(IReadOnlyList<Spot> Wedge, Spot Along, Spot Outward, double Size)
{
    /// <summary>Writes beside the wedge, clear of the top.</summary>
    public void Label(Sketch sketch, Layout layout, string words, Lettering style = Lettering.Clock)
    {
        var half = new Spot(sketch.WidthOf(style, words) / 2, sketch.HeightOf(style) / 2);
        var middle = (Wedge[0] + Wedge[1] + Wedge[2]) * (1 / 3.0);
        var across = (1.4 * Size) + (Math.Abs(Outward.X) * half.X) + (Math.Abs(Outward.Y) * half.Y) + sketch.Unit;
        var beside = (1.2 * Size) + (Math.Abs(Along.X) * half.X) + (Math.Abs(Along.Y) * half.Y) + sketch.Unit;
        var line = 2 * half.Y;
        // Close by first; in an inner corner, where several stand side by side, a line or two farther out.
        Place[] places =
        [
            new(middle + (Outward * across)), new(middle - (Along * beside)), new(middle + (Along * beside)),
            .. new[] { 0, line, 2 * line }.SelectMany(farther => new[] { 0, -beside, beside }.Select(aside => new Place(middle + (Outward * (across + farther)) + (Along * aside)))).Skip(1),
        ];
        sketch.Text(style, words, places, box => !layout.Solids.Any(ring => Shapes.Overlap(ring, box.Corners)));
    }

    /// <summary>At a place on the sheet, beyond everything unfolded beside the side that is nearest to it.</summary>
    public static Standpoint Of(Layout layout, Spot at, double textSize)
    {
        var side = layout.Sides.MinBy(s => Distance(s, at))!;
        var (onSide, along) = Shapes.AtShare(side.Line, NearestShare(side.Line, at));
        var outward = along.Outward;
        var size = 0.42 * textSize;
        bool IsOutside(IReadOnlyList<Spot> shape) => !layout.Solids.Any(ring => Shapes.Overlap(ring, shape));
        IReadOnlyList<Spot> Wedge(double shift)
        {
            var tip = onSide + (along * shift) + (outward * (layout.Reach(side) + (0.35 * textSize)));
            var foot = tip + (outward * (1.8 * size));
            return [tip, foot + (along * size), foot - (along * size)];
        }
        // In an inner corner it steps aside, so as not to stand in the neighbouring run.
        var wedge = new[] { 0, -2 * size, 2 * size, 0 }.Select(Wedge).Select((shape, i) => (shape, i)).First(w => w.i == 3 || IsOutside(w.shape)).shape;
        return new Standpoint(wedge, along, outward, size);
    }

    private static double Distance(SideOnSheet side, Spot at) => (Shapes.AtShare(side.Line, NearestShare(side.Line, at)).At - at).Length;

    private static double NearestShare(IReadOnlyList<Spot> line, Spot at)
    {
        var (before, best, share) = (0.0, double.PositiveInfinity, 0.0);
        foreach (var (a, b) in line.Zip(line.Skip(1)))
        {
            var length = (b - a).Length;
            var along = Math.Clamp((at - a).Dot((b - a).Unit), 0, length);
            var distance = (a + ((b - a).Unit * along) - at).Length;
            if (distance < best) (best, share) = (distance, before + along);
            before += length;
        }
        return before > 0 ? share / before : 0;
    }
}
