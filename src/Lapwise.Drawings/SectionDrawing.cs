using Lapwise.Core.Explain;

namespace Lapwise.Drawings;

/// <summary>
/// How each section is rolled, in five small pictures beside a neighbour that is still wet. Common practice, no source.
/// </summary>
public static class SectionDrawing
{
    private const double PictureInText = 4.4;
    private const double GapInText = 1.2;
    private const double LeastCellInText = 12;

    private sealed record Step(Phrase Words, Action<Sketch, Box> Put);

    private static readonly IReadOnlyList<Step> Steps =
    [
        new(v => v.Say("Start in the middle: lay the material there.", "Empiece por el centro: deje ahí el material."), Middle),
        new(v => v.Say("Spread it to the lap and to the edges.", "Extiéndalo hasta el solape y hasta los bordes."), Spread),
        new(v => v.Say("Then edges and nosing.", "Luego los cantos y el frente."), Edges),
        new(v => v.Say("Level all of it with the loaded roller.", "Nivele todo con el rodillo cargado."), Level),
        new(v => v.Say(
            "One dry pass, each stroke over half of the last: one way over the whole top, top down on uprights. Then touch nothing again.",
            "Una pasada en seco, cada trazo sobre media anterior: en un solo sentido en toda la cubierta, de arriba abajo en verticales. Después no toque nada."), DryPass),
    ];

    public static Drawing Draw(Voice voice, Sheet sheet)
    {
        var sketch = new Sketch(sheet.TextSize);
        var text = sheet.TextSize;
        var columns = Math.Clamp((int)(sheet.Width / (LeastCellInText * text)), 1, Steps.Count);
        var width = (sheet.Width - ((columns - 1) * GapInText * text)) / columns;
        var top = 0.0;
        foreach (var row in Steps.Select((step, i) => (step, i)).Chunk(columns))
        {
            var foot = top;
            foreach (var ((step, i), column) in row.Select((cell, column) => (cell, column)))
            {
                var left = column * (width + (GapInText * text));
                var picture = new Box(left, top, left + Math.Min(width, 2.4 * PictureInText * text), top + (PictureInText * text));
                var own = Own(picture);
                sketch.Area(Wash.SecondPerson, (picture with { Right = own.Left }).Corners);
                sketch.Area(Wash.FirstPerson, own.Corners);
                step.Put(sketch, own);
                sketch.Ring(Ink.Section, picture.Corners);
                sketch.Line(Ink.LapGood, At(own, 0, 0), At(own, 0, 1));
                sketch.Line(Ink.OpenEdge, new Spot(picture.Left, picture.Bottom), new Spot(picture.Right, picture.Bottom));
                var y = picture.Bottom + (1.3 * text);
                foreach (var line in TextWidth.Wrap($"{i + 1}. {step.Words(voice)}", width / (Pens.Of(Lettering.Note).Scale * text)))
                {
                    sketch.TextFrom(Lettering.Note, line, new Spot(left, y));
                    y += 1.25 * text;
                }

                foot = Math.Max(foot, y);
            }

            top = foot + (0.4 * text);
        }

        return new Legend(sketch, sheet).Finish(
            voice.Say("How each section is rolled", "Cómo se aplica cada sección"),
            string.Join(" ", Steps.Select((s, i) => $"{i + 1}. {s.Words(voice)}")));
    }

    /// <summary>The section itself: right of its lap with the neighbour.</summary>
    private static Box Own(Box picture) => picture with { Left = picture.Left + (0.22 * picture.Width) };

    private static Spot At(Box own, double across, double down) => new(own.Left + (across * own.Width), own.Top + (down * own.Height));

    private static void Middle(Sketch sketch, Box own)
    {
        const int corners = 20;
        sketch.Area(Wash.ThirdPerson, [.. Enumerable.Range(0, corners).Select(i => Math.SinCos(i * 2 * Math.PI / corners)).Select(a => At(own, 0.5 + (0.22 * a.Cos), 0.5 + (0.26 * a.Sin)))]);
    }

    private static void Spread(Sketch sketch, Box own)
    {
        sketch.Area(Wash.ThirdPerson, Box.Over([At(own, 0, 0.08), At(own, 0.92, 0.92)]).Corners);
        // Over the lap a little way, into the neighbour that is still wet.
        sketch.Arrow(Ink.DryPass, At(own, 0.4, 0.5), At(own, -0.12, 0.5));
        sketch.Arrow(Ink.DryPass, At(own, 0.6, 0.5), At(own, 0.9, 0.5));
        sketch.Arrow(Ink.DryPass, At(own, 0.5, 0.38), At(own, 0.5, 0.1));
        sketch.Arrow(Ink.DryPass, At(own, 0.5, 0.62), At(own, 0.5, 0.9));
    }

    private static void Edges(Sketch sketch, Box own)
    {
        Film(sketch, own);
        sketch.Arrow(Ink.DryPass, At(own, 0.05, 0.9), At(own, 0.95, 0.9));
    }

    private static void Level(Sketch sketch, Box own)
    {
        Film(sketch, own);
        sketch.Line(Ink.DryPass, [.. Enumerable.Range(0, 9).Select(i => At(own, 0.06 + (0.88 * i / 8), i % 2 == 0 ? 0.85 : 0.15))]);
    }

    private static void DryPass(Sketch sketch, Box own)
    {
        Film(sketch, own);
        const int strokes = 4;
        const double strokeShare = 2.0 / (strokes + 1);
        for (var i = 0; i < strokes; i++)
        {
            var (from, to) = (i * strokeShare / 2, (i + 2) * strokeShare / 2);
            sketch.Ring(Ink.Hatch, Box.Over([At(own, 0.03, from), At(own, 0.97, to)]).Corners);
            sketch.Arrow(Ink.DryPass, At(own, 0.08, (from + to) / 2), At(own, 0.92, (from + to) / 2));
        }
    }

    private static void Film(Sketch sketch, Box own) => sketch.Area(Wash.ThirdPerson, own.Corners);
}
