using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Drawings.Tests;

public class SoFarDrawingTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Voice Metric = new(Language.Spanish, UnitSystem.Metric);

    public static TheoryData<string> SidesTyped() => ["96", "96 25", "96 25 94", "96 25 50 25", "96 banana 50 25", "1/4 120 1/4", "24 12 24 30 36"];

    private static OutlineSoFar Walked(string lengths) => OutlineSoFar.Of(
        new TopDocument { Name = "Bar <1>", Outline = new() { Shape = OutlineShape.Walk, Sides = [.. lengths.Split(' ').Select(l => new WalkedSideDocument { Length = l }), new()] } }, UnitSystem.Us)!;

    [Theory]
    [MemberData(nameof(SidesTyped))]
    public void Draw_gives_each_side_its_letter_and_its_length_as_typed_and_nothing_overlaps(string lengths)
    {
        var top = Walked(lengths);
        foreach (var (voice, sheet) in new[] { (Us, Sheet.Phone), (Metric, Sheet.Wide) })
        {
            var drawing = SoFarDrawing.Draw(top, voice, sheet);
            Overlaps.None(drawing);
            var words = new Read(drawing.Svg()).Words;
            foreach (var side in top.Sides) Assert.Contains($"{side.Side} · {voice.Length(side.LengthM)}", words);
            Assert.Equal(top.Sides.Count, words.Count(w => w.Contains('·', StringComparison.Ordinal)));
            Assert.Equal(top.Sides.Select(s => (int)s.Side), drawing.Grips.Select(g => g.Index));
            Assert.InRange(drawing.Height, 20, 640);
        }
    }

    [Fact]
    public void Draw_shows_what_is_open_of_walked_sides_only()
    {
        Assert.Empty(new Read(SoFarDrawing.Draw(Walked("96"), Us, Sheet.Phone).Svg()).OfClass("lw-diagonal"));
        Assert.Contains("still open", new Read(SoFarDrawing.Draw(Walked("96 25"), Us, Sheet.Phone).Svg()).Words);
        var l = OutlineSoFar.Of(new TopDocument { Outline = new() { Shape = OutlineShape.L, Length = "132", Depth = "25" } }, UnitSystem.Us)!;
        var read = new Read(SoFarDrawing.Draw(l, Us, Sheet.Phone).Svg());
        Assert.Empty(read.OfClass("lw-diagonal"));
        Assert.Contains("So far: sides F, A.", read.Words);
    }
}
