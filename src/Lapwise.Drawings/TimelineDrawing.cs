using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Drawings;

/// <summary>
/// The steps of a job as bars against its days, with the temperature of the top beneath. A dashed line is a wait, a line
/// between two stops the window in which the next step may begin. Crew is solid, a trade hatched, the customer empty.
/// </summary>
public static class TimelineDrawing
{
    public static Drawing Draw(JobTimeline timeline, Voice voice, Sheet sheet)
    {
        var sketch = new Sketch(sheet.TextSize);
        var chart = new Chart(timeline, sketch, sheet, voice);
        chart.Days();
        for (var row = 0; row < timeline.Steps.Count; row++) chart.Step(row);
        chart.Temperature();

        var legend = new Legend(sketch, sheet);
        legend.Row(
        [
            .. timeline.Steps.Select(s => s.By).Distinct().Order().Select(by => new Legend.Sample(SiteClock.Say(by, voice), (s, from, to) => Bar(s, new Box(from.X, from.Y - (0.4 * s.TextSize), to.X, to.Y + (0.4 * s.TextSize)), by))),
            Legend.Stroke(Ink.Break, voice.Say("wait", "espera")),
            .. timeline.DaysNotWorked.Count > 0 ? [new Legend.Sample(voice.Say("nobody works", "no se trabaja"), (s, from, to) => s.Area(Wash.Panel, new Box(from.X, from.Y - (0.4 * s.TextSize), to.X, to.Y + (0.4 * s.TextSize)).Corners))] : Array.Empty<Legend.Sample>(),
            .. timeline.Waits.Any(w => w.Latest is not null) ? [new Legend.Sample(voice.Say("may begin", "puede empezar"), (s, from, to) => Window(s, from, to, closed: true))] : Array.Empty<Legend.Sample>(),
        ]);
        if (timeline.Steps.Any(s => s.IsInserted)) legend.Note(Lettering.Warning, voice.Say("+ put in because a recoat window is missed", "+ añadido porque se pierde una ventana de repintado"));
        foreach (var use in timeline.UseDates) legend.Note(Lettering.Note, $"{UseDate.Say(use.Use, voice)}: {SiteClock.Moment(timeline, use.From, voice)}");
        return legend.Finish(voice.Say("The days of the job", "Los días del trabajo"), Describe(timeline, voice));
    }

    private static void Bar(Sketch sketch, Box box, Doer by)
    {
        sketch.Area(by == Doer.Crew ? Wash.Stand : Wash.Hole, box.Corners);
        if (by == Doer.Trade)
            foreach (var (from, to) in Shapes.Hatch([box.Corners], 45, 0.25 * sketch.TextSize)) sketch.Line(Ink.Hatch, from, to);
        sketch.Ring(Ink.Cutout, box.Corners);
    }

    private static void Window(Sketch sketch, Spot from, Spot to, bool closed)
    {
        var stop = new Spot(0, 0.35 * sketch.TextSize);
        sketch.Line(Ink.LapGood, from, to);
        sketch.Line(Ink.LapGood, from - stop, from + stop);
        if (closed) sketch.Line(Ink.LapGood, to - stop, to + stop);
    }

    private static string Describe(JobTimeline t, Voice v) => string.Join(' ',
    [
        .. t.Steps.Select(s => $"{s.Name(v)}: {SiteClock.Span(t, s.Start, s.End, v)}."),
        .. t.UseDates.Select(u => $"{UseDate.Say(u.Use, v)}: {SiteClock.Moment(t, u.From, v)}."),
    ]);

    /// <summary>Rows for steps, days across.</summary>
    private sealed class Chart
    {
        private const double RowInText = 1.7;
        private const double TemperatureInText = 4.5;
        private readonly JobTimeline timeline;
        private readonly Sketch sketch;
        private readonly Voice voice;
        private readonly double left;
        private readonly double right;
        private readonly double text;
        private readonly double days;

        public Chart(JobTimeline timeline, Sketch sketch, Sheet sheet, Voice voice)
        {
            (this.timeline, this.sketch, this.voice, text, right) = (timeline, sketch, voice, sheet.TextSize, sheet.Width);
            var widest = timeline.Steps.Select(s => sketch.WidthOf(Lettering.Name, Label(s))).DefaultIfEmpty(0).Max();
            left = Math.Min(widest + text, 0.46 * sheet.Width);
            days = Math.Max(1, timeline.Steps.Select(s => timeline.DayOf(s.End)).DefaultIfEmpty(1).Max());
        }

        private double Foot => (timeline.Steps.Count + 1) * RowInText * text;

        private double X(DateTime at) => Math.Clamp(left + ((right - left) * (at - timeline.Day1.ToDateTime(TimeOnly.MinValue)).TotalDays / days), left, right);

        private double Y(int row) => (row + 1.5) * RowInText * text;

        private string Label(PlannedStep step) => (step.IsInserted ? "+ " : "") + step.Name(voice);

        public void Days()
        {
            foreach (var day in timeline.DaysNotWorked.Where(d => d <= days))
            {
                var (from, to) = (timeline.Day1.AddDays(day - 1).ToDateTime(TimeOnly.MinValue), timeline.Day1.AddDays(day).ToDateTime(TimeOnly.MinValue));
                sketch.Area(Wash.Panel, new Box(X(from), RowInText * text * 0.9, X(to), Foot).Corners);
            }

            for (var day = 0; day <= days; day++)
            {
                var at = timeline.Day1.AddDays(day).ToDateTime(TimeOnly.MinValue);
                sketch.Line(Ink.Dimension, new Spot(X(at), RowInText * text * 0.9), new Spot(X(at), Foot + (TemperatureInText * text)));
                if (day == (int)days) break;
                var middle = new Spot((X(at) + X(at.AddDays(1))) / 2, 0.7 * text);
                var room = (X(at.AddDays(1)) - X(at)) * 0.95;
                sketch.TryText(Lettering.Clock, DayWords(day), [new(middle)], box => box.Width <= room);
            }
        }

        /// <summary>From full to short.</summary>
        private IEnumerable<string> DayWords(int day)
        {
            var date = timeline.Day1.AddDays(day);
            if (timeline.IsDated)
            {
                yield return voice.WeekDay(date);
                yield return $"{date.Day}";
            }
            else
            {
                yield return voice.Say($"day {day + 1}", $"día {day + 1}");
                yield return $"{day + 1}";
            }
        }

        public void Step(int row)
        {
            var step = timeline.Steps[row];
            var y = Y(row);
            foreach (var wait in timeline.Waits.Where(w => w.Before == row)) Wait(wait, y);
            foreach (var (from, to) in step.Parts)
            {
                // A short step must still be seen.
                var (a, b) = (X(from), Math.Max(X(to), X(from) + (0.28 * text)));
                Bar(sketch, new Box(a, y - (0.45 * text), b, y + (0.45 * text)), step.By);
            }

            var words = Label(step);
            var room = left - (0.4 * text);
            while (words.Length > 4 && sketch.WidthOf(Lettering.Name, words) > room) words = words.TrimEnd('…')[..^1].TrimEnd() + "…";
            sketch.TextFrom(Lettering.Name, words, new Spot(0, y));
        }

        private void Wait(PlannedWait wait, double y)
        {
            sketch.Line(Ink.Break, new Spot(X(wait.From), y), new Spot(X(wait.Earliest), y));
            if (wait.Latest is { } latest) Window(sketch, new Spot(X(wait.Earliest), y), new Spot(X(latest), y), closed: X(latest) < right);
        }

        public void Temperature()
        {
            var hours = timeline.RoomByHour.Take((int)(days * 24) + 1).ToList();
            if (hours.Count < 2) return;
            var (least, most) = (hours.Min(), hours.Max());
            var (top, bottom) = (Foot + (1.1 * text), Foot + ((TemperatureInText - 0.6) * text));
            double At(double celsius) => most - least < 0.1 ? (top + bottom) / 2 : bottom - ((bottom - top) * (celsius - least) / (most - least));
            sketch.Line(Ink.LapNarrow, [.. hours.Select((c, h) => new Spot(X(timeline.Day1.ToDateTime(TimeOnly.MinValue).AddHours(h)), At(c)))]);
            sketch.TextFrom(Lettering.Name, voice.Say("top", "cubierta"), new Spot(0, (top + bottom) / 2));
            var labels = most - least < 0.1 ? new[] { (most, (top + bottom) / 2) } : [(most, top), (least, bottom)];
            foreach (var (celsius, y) in labels)
            {
                var words = voice.Temperature(celsius);
                sketch.TextFrom(Lettering.Clock, words, new Spot(left - (0.4 * text) - sketch.WidthOf(Lettering.Clock, words), y));
            }
        }
    }
}
