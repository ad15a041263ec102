using Lapwise.Core.Explain;

namespace Lapwise.Drawings;

/// <summary>
/// Draws how a number runs over time: the line, the levels it is held against by name, and the moments to act. What is too
/// late is hatched; a second line is dashed on its own scale at the right. Levels far over the line are named in a note, so
/// that the line is never pressed flat.
/// </summary>
public static class CurveDrawing
{
    /// <summary>A level is drawn where it is no higher than this many times the line's top.</summary>
    private const double InSight = 2;

    public static Drawing Draw(Curve curve, Voice voice, Sheet sheet)
    {
        var sketch = new Sketch(sheet.TextSize);
        var chart = new Chart(curve, voice, sheet, sketch);
        foreach (var mark in curve.Marks.Where(m => m.IsDeadline)) TooLate(sketch, chart, mark.X);
        Frame(sketch, chart, curve, voice);
        foreach (var level in chart.Levels) sketch.Line(Ink.Level, chart.At(0, level.Y), chart.At(chart.X.To, level.Y));
        sketch.Line(Ink.Curve, [.. curve.Line.Points.Select(p => chart.At(p.X, p.Y))]);
        if (curve.Second is { } second) sketch.Line(Ink.SecondCurve, [.. second.Points.Select(p => chart.AtSecond(p.X, p.Y))]);
        foreach (var mark in curve.Marks) Moment(sketch, chart, mark, voice);
        var unnamed = chart.Levels.Where(level => !Named(sketch, chart, level, voice)).ToList();

        var legend = new Legend(sketch, sheet);
        legend.Row(
        [
            Legend.Stroke(Ink.Curve, curve.Line.Name(voice)),
            .. curve.Second is { } other ? [Legend.Stroke(Ink.SecondCurve, $"{other.Name(voice)} ({voice.Say("right", "derecha")})")] : Array.Empty<Legend.Sample>(),
            .. chart.Levels.Count > 0 ? [Legend.Stroke(Ink.Level, voice.Say("limit", "límite"))] : Array.Empty<Legend.Sample>(),
            .. curve.Marks.Any(m => m.IsDeadline) ? [new Legend.Sample(voice.Say("too late", "demasiado tarde"), Swatch)] : Array.Empty<Legend.Sample>(),
        ]);
        legend.Note(Lettering.Note, voice.Say($"To the right: {curve.X(voice)}.", $"Hacia la derecha: {curve.X(voice)}."));
        if (unnamed.Count > 0) legend.Note(Lettering.Note, voice.Say("Drawn too close to be named there: ", "Dibujados demasiado juntos para nombrarlos ahí: ") + string.Join(", ", unnamed.Select(l => l.Words(voice))) + ".");
        if (Above(curve, chart, voice) is { } above) legend.Note(Lettering.Note, above);
        return legend.Finish(curve.Title(voice), Describe(curve, chart, voice));
    }

    private static void Frame(Sketch sketch, Chart chart, Curve curve, Voice voice)
    {
        sketch.Line(Ink.Dimension, chart.At(0, chart.Y.To), chart.At(0, chart.Y.From), chart.At(chart.X.To, chart.Y.From));
        foreach (var y in chart.Y.Ticks)
        {
            var at = chart.At(0, y);
            sketch.Line(Ink.Dimension, at, at - new Spot(0.3 * sketch.TextSize, 0));
            var words = curve.Line.Show(voice, y);
            sketch.Text(Lettering.Clock, words, [new(at - new Spot((0.5 * sketch.TextSize) + (sketch.WidthOf(Lettering.Clock, words) / 2), 0))]);
        }

        if (curve.Second is { } second) RightScale(sketch, chart, second, voice);
        foreach (var x in chart.X.Ticks)
        {
            var at = chart.At(x, chart.Y.From);
            sketch.Line(Ink.Dimension, at, at + new Spot(0, 0.3 * sketch.TextSize));
            sketch.TryText(Lettering.Clock, [curve.ShowX(voice, x)], [new(at + new Spot(0, 0.9 * sketch.TextSize))]);
        }
    }

    private static void RightScale(Sketch sketch, Chart chart, CurveLine second, Voice voice)
    {
        sketch.Line(Ink.Dimension, chart.AtSecond(chart.X.To, chart.Right!.From), chart.AtSecond(chart.X.To, chart.Right.To));
        foreach (var y in chart.Right.Ticks)
        {
            var at = chart.AtSecond(chart.X.To, y);
            sketch.Line(Ink.Dimension, at, at + new Spot(0.3 * sketch.TextSize, 0));
            sketch.TextFrom(Lettering.Clock, second.Show(voice, y), at + new Spot(0.5 * sketch.TextSize, 0));
        }
    }

    private static void TooLate(Sketch sketch, Chart chart, double fromX)
    {
        if (fromX >= chart.X.To) return;
        var box = Box.Over([chart.At(fromX, chart.Y.To), chart.At(chart.X.To, chart.Y.From)]);
        foreach (var (from, to) in Shapes.Hatch([box.Corners], 45, 0.6 * sketch.TextSize)) sketch.Line(Ink.Hatch, from, to);
    }

    private static void Swatch(Sketch sketch, Spot from, Spot to)
    {
        var box = new Box(from.X, from.Y - (0.4 * sketch.TextSize), to.X, to.Y + (0.4 * sketch.TextSize));
        foreach (var (a, b) in Shapes.Hatch([box.Corners], 45, 0.35 * sketch.TextSize)) sketch.Line(Ink.Hatch, a, b);
        sketch.Ring(Ink.Section, box.Corners);
    }

    /// <summary>A line down through the chart, its words over the chart's head so that nothing crosses them.</summary>
    private static void Moment(Sketch sketch, Chart chart, CurveMark mark, Voice voice)
    {
        var head = chart.At(Math.Min(mark.X, chart.X.To), chart.Y.To) - new Spot(0, 0.5 * sketch.TextSize);
        sketch.Line(Ink.Moment, head, chart.At(Math.Min(mark.X, chart.X.To), chart.Y.From));
        var words = mark.Words(voice);
        var half = sketch.WidthOf(Lettering.Letter, words) / 2;
        var x = Math.Max(half, Math.Min(head.X, chart.Width - half));
        sketch.Text(Lettering.Letter, words, Enumerable.Range(0, 4).Select(row => new Place(new Spot(x, head.Y - ((0.8 + (1.2 * row)) * sketch.TextSize)))));
    }

    /// <summary>A level's name on it, where there is room; false: there is none.</summary>
    private static bool Named(Sketch sketch, Chart chart, CurveLimit level, Voice voice)
    {
        var words = level.Words(voice);
        var (half, lift) = (sketch.WidthOf(Lettering.Clock, words) / 2, 0.75 * sketch.TextSize);
        var left = chart.At(0, level.Y).X + half + sketch.TextSize;
        var right = chart.At(chart.X.To, level.Y).X - half - (0.3 * sketch.TextSize);
        var y = chart.At(0, level.Y).Y;
        var (foot, others) = (chart.At(0, chart.Y.From).Y, chart.Levels.Select(l => chart.At(0, l.Y).Y).Where(other => Math.Abs(other - y) > 0.01).ToList());
        return sketch.TryText(
            Lettering.Clock, [words], [.. new[] { right, (left + right) / 2, left }.SelectMany(x => new[] { y - lift, y + lift }.Select(at => new Place(new Spot(x, at))))],
            box => box.Bottom < foot && !others.Any(other => box.Top < other && other < box.Bottom), behind: true) is not null;
    }

    private static string? Above(Curve curve, Chart chart, Voice voice)
    {
        var above = curve.Limits.Except(chart.Levels).ToList();
        return above.Count == 0 ? null : voice.Say("Higher than this picture: ", "Más alto que este dibujo: ") + string.Join(", ", above.Select(l => l.Words(voice))) + ".";
    }

    private static string Describe(Curve curve, Chart chart, Voice voice)
    {
        var peak = curve.Line.Points.MaxBy(p => p.Y);
        IEnumerable<string?> said =
        [
            voice.Say($"{curve.Line.Name(voice)}, {curve.X(voice)}: from {curve.Line.Show(voice, curve.Line.Points[0].Y)} at {curve.ShowX(voice, curve.Line.Points[0].X)}, at most {curve.Line.Show(voice, peak.Y)} at {curve.ShowX(voice, peak.X)}, {curve.Line.Show(voice, curve.Line.Points[^1].Y)} at {curve.ShowX(voice, curve.Line.Points[^1].X)}.",
                $"{curve.Line.Name(voice)}, {curve.X(voice)}: de {curve.Line.Show(voice, curve.Line.Points[0].Y)} a {curve.ShowX(voice, curve.Line.Points[0].X)}, como mucho {curve.Line.Show(voice, peak.Y)} a {curve.ShowX(voice, peak.X)}, {curve.Line.Show(voice, curve.Line.Points[^1].Y)} a {curve.ShowX(voice, curve.Line.Points[^1].X)}."),
            .. curve.Marks.Select(m => $"{m.Words(voice)}: {curve.Line.Show(voice, curve.Line.At(m.X))}."),
            chart.Levels.Count > 0 ? voice.Say("Limits: ", "Límites: ") + string.Join(", ", chart.Levels.Select(l => l.Words(voice))) + "." : null,
            Above(curve, chart, voice),
        ];
        return string.Join(' ', said.OfType<string>());
    }

    /// <summary>Where times and values lie on the sheet.</summary>
    private sealed class Chart
    {
        private readonly double left;
        private readonly double right;
        private readonly double height;

        public Chart(Curve curve, Voice voice, Sheet sheet, Sketch sketch)
        {
            var ticks = sheet.Width < 500 ? 5 : 7;
            var top = curve.Line.Points.Max(p => p.Y);
            Levels = [.. curve.Limits.Where(l => l.Y <= top * InSight || l.Y == curve.Limits.Min(m => m.Y) && l.Y <= top * 4).OrderBy(l => l.Y)];
            Y = Axis.Over(curve.Line.Points.Min(p => p.Y), Levels.Select(l => l.Y).Append(top).Max(), curve.Line, voice, 6);
            X = Axis.Clock(curve.Line.Points[^1].X, ticks);
            Right = curve.Second is { } second ? Axis.Over(second.Points.Min(p => p.Y), second.Points.Max(p => p.Y), second, voice, 6) : null;
            (Width, height) = (sheet.Width, Math.Min(sheet.MostHeight, 0.5 * sheet.Width));
            left = Y.Ticks.Max(y => sketch.WidthOf(Lettering.Clock, curve.Line.Show(voice, y))) + (0.6 * sketch.TextSize);
            right = Right is null ? sheet.TextSize : Right.Ticks.Max(y => sketch.WidthOf(Lettering.Clock, curve.Second!.Show(voice, y))) + (0.7 * sketch.TextSize);
        }

        public double Width { get; }
        public Axis X { get; }
        public Axis Y { get; }
        public Axis? Right { get; }
        public IReadOnlyList<CurveLimit> Levels { get; }

        public Spot At(double x, double y) => new(left + ((Width - left - right) * X.Share(x)), height * (1 - Y.Share(y)));

        public Spot AtSecond(double x, double y) => new(left + ((Width - left - right) * X.Share(x)), height * (1 - Right!.Share(y)));
    }
}
