using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Measure;
using Lapwise.Drawings;

namespace Lapwise.Documents.Parts;

/// <summary>The tops as measured, and what they come to.</summary>
internal static class TopsPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice, Paper paper)
    {
        if (whole.Measured.Tops.Count == 0) yield break;
        yield return new Block.Heading(1, voice.Say("The tops as measured", "Las cubiertas según medida"));
        yield return new Block.Figures([.. whole.Measured.Tops.Select(t => FigureSize.Of(t.Top.Name, FigureSize.For(t, paper), sheet => TopDrawing.Draw(t, voice, sheet)))]);
        yield return new Block.Heading(2, voice.Say("Take-off, one coat", "Cubicación, una capa"));
        yield return new Block.Table(
            [
                new(voice.Say("top", "cubierta"), 2.4), new(voice.Say("flat", "plano"), 1, Right: true), new(voice.Say("edges", "cantos"), 1, Right: true), new(voice.Say("splashes", "salpicaderos"), 1.2, Right: true),
                new(voice.Say("waterfalls", "cascadas"), 1.1, Right: true), new(voice.Say("rims", "bordes de hueco"), 1.2, Right: true), new(voice.Say("coated", "recubierto"), 1.1, Right: true),
            ],
            [.. whole.Measured.Tops.Select(t => Row(t.Top.Name, t.TakeOff, voice, strong: false)), Row(voice.Say("all", "todo"), whole.Measured.Total, voice, strong: true)]);
    }

    private static Row Row(string name, TakeOff sums, Voice voice, bool strong) =>
        new([name, voice.Area(sums.FlatM2), voice.Area(sums.EdgeM2), voice.Area(sums.SplashM2), voice.Area(sums.WaterfallM2), voice.Area(sums.RimM2), voice.Area(sums.CoatedM2)], strong);
}
