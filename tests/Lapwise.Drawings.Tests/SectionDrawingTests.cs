using Lapwise.Core.Explain;

namespace Lapwise.Drawings.Tests;

public class SectionDrawingTests
{
    [Theory]
    [InlineData(Language.English, UnitSystem.Us)]
    [InlineData(Language.Spanish, UnitSystem.Metric)]
    public void Draw_five_steps_in_words_and_pictures_without_overlaps(Language language, UnitSystem units)
    {
        foreach (var sheet in new[] { Sheet.Phone, Sheet.Wide, new Sheet(120, 200, 10), new Sheet(524, 225, 8) })
        {
            var drawing = SectionDrawing.Draw(new Voice(language, units), sheet);
            Overlaps.None(drawing);
            var read = new Read(drawing.Svg());
            Assert.All(Enumerable.Range(1, 5), n => Assert.Single(read.Words, w => w.StartsWith($"{n}. ", StringComparison.Ordinal)));
            Assert.Equal(5, read.OfClass("lw-lap-good").Count());
        }
    }

    /// <summary>Each stroke of the dry pass lies over half of the one before it.</summary>
    [Fact]
    public void Draw_the_dry_pass_half_over_the_last_stroke_and_one_way()
    {
        var drawing = SectionDrawing.Draw(Voice.Default, Sheet.Wide);
        var strokes = drawing.Marks.OfType<Mark.Line>().Where(l => l.Ink == Ink.Hatch).Select(l => Box.Over(l.Points)).ToList();
        Assert.Equal(4, strokes.Count);
        Assert.All(strokes.Zip(strokes.Skip(1)), pair => Assert.Equal(pair.First.Height / 2, pair.First.Bottom - pair.Second.Top, 6));
        var arrows = drawing.Marks.OfType<Mark.Arrow>().TakeLast(4);
        Assert.All(arrows, a => Assert.True(a.To.X > a.From.X && a.To.Y == a.From.Y));
    }
}
