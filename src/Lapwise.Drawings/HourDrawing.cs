using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;

namespace Lapwise.Drawings;

/// <summary>
/// Draws a room hour by hour: a strip of hours by their verdict, each with its sign and pattern, the best hours bracketed, and
/// under it the top against the dew point. Where readings are missing the lines break.
/// </summary>
public static class HourDrawing
{
    public static Drawing Draw(RoomDay day, Voice voice, Sheet sheet)
    {
        var sketch = new Sketch(sheet.TextSize);
        var chart = new Chart(day, voice, sheet, sketch);
        if (day.Strip.Best is { } best) Bracket(sketch, chart, best, voice);
        foreach (var hour in day.Strip.Hours) Cell(sketch, Box.Over([chart.Strip(hour.From, 0), chart.Strip(hour.From.AddHours(1), 1)]), hour.Verdict);
        Clock(sketch, chart, day.Strip, voice);
        Lines(sketch, chart, day, voice);

        var legend = new Legend(sketch, sheet);
        legend.Row([.. day.Strip.Hours.Select(h => h.Verdict).Distinct().Order().Select(v => new Legend.Sample(HourStrip.Say(v, voice), (s, from, to) =>
            Cell(s, Box.Round((from + to) * 0.5, 1.4 * s.TextSize, 1.2 * s.TextSize), v)))]);
        legend.Row(Legend.Stroke(Ink.Curve, voice.Say("surface of the top", "superficie de la cubierta")), Legend.Stroke(Ink.SecondCurve, voice.Say("dew point", "punto de rocío")));
        return legend.Finish(voice.Say("The room hour by hour", "La sala hora a hora"), Describe(day, voice));
    }

    public static string Sign(Verdict verdict) => verdict switch { Verdict.Go => "✓", Verdict.Wait => "…", Verdict.NoGo => "✗", _ => "?" };

    private static void Cell(Sketch sketch, Box box, Verdict verdict)
    {
        sketch.Area(verdict is Verdict.Go ? Wash.SecondPerson : Wash.Behind, box.Corners);
        double[] hatches = verdict switch { Verdict.Wait => [45], Verdict.NoGo => [45, 135], _ => [] };
        foreach (var degrees in hatches)
            foreach (var (from, to) in Shapes.Hatch([box.Corners], degrees, 0.45 * sketch.TextSize)) sketch.Line(Ink.Hatch, from, to);
        sketch.Ring(verdict is Verdict.NoGo ? Ink.Suspect : Ink.Section, box.Corners);
        var style = verdict is Verdict.NoGo ? Lettering.Warning : Lettering.Letter;
        var centre = new Spot((box.Left + box.Right) / 2, (box.Top + box.Bottom) / 2);
        if (hatches.Length > 0) sketch.Area(Wash.Behind, Box.Round(centre, sketch.WidthOf(style, Sign(verdict)) + sketch.Unit, sketch.TextSize).Corners);
        sketch.Text(style, Sign(verdict), [new(centre)]);
    }

    private static void Bracket(Sketch sketch, Chart chart, GoodHours best, Voice voice)
    {
        var (from, to) = (chart.Strip(best.From, 0) - new Spot(0, 0.4 * sketch.TextSize), chart.Strip(best.To, 0) - new Spot(0, 0.4 * sketch.TextSize));
        var up = new Spot(0, 0.5 * sketch.TextSize);
        sketch.Line(Ink.Moment, from, from - up, to - up, to);
        var words = voice.Say("best ", "mejor ") + best.Hours(voice);
        var half = sketch.WidthOf(Lettering.Letter, words) / 2;
        var x = Math.Max(half, Math.Min((from.X + to.X) / 2, chart.Width - half));
        sketch.Text(Lettering.Letter, words, [new(new Spot(x, from.Y - (1.3 * sketch.TextSize)))]);
    }

    private static void Clock(Sketch sketch, Chart chart, HourStrip strip, Voice voice)
    {
        foreach (var from in strip.Hours.Select(h => h.From).Append(strip.Hours[^1].From.AddHours(1)).Where(h => h.Hour % 3 == 0))
        {
            var foot = chart.Strip(from, 1);
            sketch.Line(Ink.Dimension, foot, foot + new Spot(0, 0.3 * sketch.TextSize));
            var words = voice.BareHour(from);
            var half = sketch.WidthOf(Lettering.Clock, words) / 2;
            sketch.TryText(Lettering.Clock, [words], [new(new Spot(Math.Clamp(foot.X, half, chart.Width - half), foot.Y + (0.9 * sketch.TextSize)))]);
        }
    }

    private static void Lines(Sketch sketch, Chart chart, RoomDay day, Voice voice)
    {
        foreach (var y in chart.Y.Ticks) sketch.Line(Ink.Hatch, chart.At(chart.From, y), chart.At(chart.To, y));
        foreach (var run in chart.Runs(day.Record))
        {
            sketch.Line(Ink.Curve, [.. run.Select(r => chart.At(r.At, r.SurfaceC ?? r.AirC))]);
            sketch.Line(Ink.SecondCurve, [.. run.Select(r => chart.At(r.At, Dew.PointC(r.AirC, r.Humidity)))]);
        }

        // After the curves: a line through a number makes another number of it.
        foreach (var y in chart.Y.Ticks)
        {
            var words = voice.Temperature(y);
            sketch.Text(Lettering.Clock, words, [new(chart.At(chart.From, y) + new Spot(sketch.WidthOf(Lettering.Clock, words) / 2, -0.7 * sketch.TextSize))], behind: true);
        }
    }

    private static string Describe(RoomDay day, Voice v)
    {
        var hours = string.Join(' ', day.Strip.Hours.Select(h => $"{v.BareHour(h.From)}: {HourStrip.Say(h.Verdict, v)}."));
        return (day.Strip.Best is { } best
            ? v.Say($"Best hours: {best.Hours(v)}. ", $"Mejores horas: {best.Hours(v)}. ")
            : v.Say("No hour is go. ", "Ninguna hora es buena. ")) + hours;
    }

    /// <summary>Where hours and temperatures lie on the sheet.</summary>
    private sealed class Chart
    {
        private const int MostPoints = 400;
        private readonly double cell;
        private readonly double foot;
        private readonly double height;
        private readonly IReadOnlyList<RoomReading> shown;

        public Chart(RoomDay day, Voice voice, Sheet sheet, Sketch sketch)
        {
            (From, To) = (day.Strip.Hours[0].From, day.Strip.Hours[^1].From.AddHours(1));
            shown = [.. day.Record.Readings.Where(r => r.At >= From && r.At <= To)];
            var line = CurveLine.Celsius(_ => "", []);
            Y = Axis.Over(shown.Min(r => Dew.PointC(r.AirC, r.Humidity)), shown.Max(r => r.SurfaceC ?? r.AirC), line, voice, 4);
            (Width, cell, foot, height) = (sheet.Width, 2.2 * sketch.TextSize, 5.4 * sketch.TextSize, 0.28 * sheet.Width);
        }

        public DateTime From { get; }
        public DateTime To { get; }
        public double Width { get; }
        public Axis Y { get; }

        public Spot Strip(DateTime at, double share) => new(Across(at), cell * share);

        public Spot At(DateTime at, double celsius) => new(Across(at), foot + (height * (1 - Y.Share(celsius))));

        private double Across(DateTime at) => Width * ((at - From) / (To - From));

        /// <summary>The readings in sight without those across a gap, thinned to what can be seen.</summary>
        public IEnumerable<IReadOnlyList<RoomReading>> Runs(RoomRecord record)
        {
            var breaks = record.Gaps().Select(g => g.To).ToHashSet();
            var every = Math.Max(1, shown.Count / MostPoints);
            List<RoomReading> run = [];
            foreach (var (reading, i) in shown.Select((r, i) => (r, i)))
            {
                if (breaks.Contains(reading.At) && run.Count > 0)
                {
                    yield return run;
                    run = [];
                }

                if (i % every == 0 || i == shown.Count - 1) run.Add(reading);
            }

            if (run.Count > 0) yield return run;
        }
    }
}
