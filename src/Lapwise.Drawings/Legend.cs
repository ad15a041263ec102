using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Drawings;

/// <summary>The lines under a drawing: samples with their words, then notes.</summary>
internal sealed class Legend
{
    private readonly Sketch sketch;
    private readonly Sheet sheet;
    private double y;

    public Legend(Sketch sketch, Sheet sheet)
    {
        this.sketch = sketch;
        this.sheet = sheet;
        y = sketch.Marks.Count == 0 ? sketch.TextSize : sketch.Bounds().Bottom + (1.1 * sketch.TextSize);
    }

    /// <summary>One sample: drawn from the left end of its place, 2.4 text sizes wide.</summary>
    public readonly record struct Sample(string Words, Action<Sketch, Spot, Spot> Put);

    public static IEnumerable<Sample> Edges(MeasuredTop top, Voice voice) =>
        top.Outline.Segments.Select(s => top.Top.Edges.TryGetValue(s.Side, out var edge) ? edge : new Edge.Wall())
            .DistinctBy(Words.InkOf).OrderBy(Words.InkOf)
            .Select(edge => Stroke(Words.InkOf(edge), Words.Kind(edge, voice)));

    public static Sample Stroke(Ink ink, string words) => new(words, (sketch, from, to) => sketch.Line(ink, from, to));

    public void Row(params IReadOnlyList<Sample> samples)
    {
        if (samples.Count == 0) return;
        var (width, space) = (2.4 * sketch.TextSize, 0.6 * sketch.TextSize);
        var x = 0.0;
        foreach (var sample in samples)
        {
            var room = width + space + sketch.WidthOf(Lettering.Legend, sample.Words) + (2 * space);
            if (x > 0 && x + room > sheet.Width) (x, y) = (0, y + (1.5 * sketch.TextSize));
            sample.Put(sketch, new Spot(x + sketch.Unit, y), new Spot(x + width, y));
            sketch.TextFrom(Lettering.Legend, sample.Words, new Spot(x + width + space, y));
            x += room;
        }
        y += 1.6 * sketch.TextSize;
    }

    public void Note(Lettering style, string text)
    {
        var type = Pens.Of(style);
        foreach (var line in TextWidth.Wrap(text, sheet.Width / (type.Scale * sketch.TextSize), type.Bold))
        {
            sketch.TextFrom(style, line, new Spot(0, y));
            y += 1.3 * sketch.TextSize;
        }
    }

    public Drawing Finish(string title, string description)
    {
        var box = sketch.Bounds();
        // Thick lines reach a little past their points.
        var margin = 2 * sketch.Unit;
        sketch.Move(new Spot(margin - Math.Min(0, box.Left), margin - Math.Min(0, box.Top)));
        var width = Math.Max(sheet.Width, box.Right - Math.Min(0, box.Left)) + (2 * margin);
        return new Drawing(width, box.Bottom - Math.Min(0, box.Top) + (2 * margin), sketch.Unit, title, description, sketch.Marks) { Grips = sketch.Grips, Plan = sketch.Plan };
    }
}
