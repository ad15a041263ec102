using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Drawings;

/// <summary>What is marked in a drawing of many jobs' days.</summary>
/// <param name="Lost">Days on which no coat goes on at any site.</param>
/// <param name="Stays">Visits that stay, by <see cref="VisitDocument.Id"/>.</param>
/// <param name="Moved">Visits that stand elsewhere than before.</param>
public sealed record CrewDaysMarks(IReadOnlySet<DateOnly> Lost, IReadOnlySet<string> Stays, IReadOnlySet<string> Moved);

/// <summary>
/// Some days of a shop: under each crew its jobs, a row each, their visits as bars and the drying between them as a dashed
/// line. A coat is solid, other work empty, another trade hatched; what stays has a double outline, what moved a triangle.
/// </summary>
public static class CrewDaysDrawing
{
    // A day is drawn from 6 to 20 h: visits are hours, and a night says nothing here.
    private const double FromHour = 6;
    private const double ToHour = 20;
    private const double RowInText = 1.75;

    /// <param name="first">The first day drawn.</param>
    /// <param name="days">How many.</param>
    public static Drawing Draw(IReadOnlyList<VisitDocument> visits, DateOnly first, int days, CrewDaysMarks marks, Voice voice, Sheet sheet)
    {
        var sketch = new Sketch(sheet.TextSize);
        var chart = new Chart(first, days, sketch, sheet, voice);
        var jobs = visits.GroupBy(v => v.Job).Select(g => new Row(CrewOf(g), g.First().Name, [.. g.OrderBy(v => v.From, StringComparer.Ordinal)]))
            .Where(r => chart.Shows(r)).OrderBy(r => r.Crew is null).ThenBy(r => r.Crew, StringComparer.OrdinalIgnoreCase).ThenBy(r => r.Visits[0].From, StringComparer.Ordinal).ToList();
        var rows = jobs.Count + jobs.Select(r => r.Crew).Distinct().Count();
        chart.Days(rows, marks);
        var row = 0;
        foreach (var crew in jobs.GroupBy(r => r.Crew))
        {
            chart.Crew(row++, crew.Key ?? voice.Say("no crew", "sin equipo"));
            foreach (var job in crew) chart.Job(row++, job, marks);
        }

        var shown = jobs.SelectMany(r => r.Visits).Where(v => chart.Shows(v)).ToList();
        var legend = new Legend(sketch, sheet);
        Legend.Sample Sample(string words, Action<Sketch, Box> put) => new(words, (s, from, to) => put(s, new Box(from.X, from.Y - (0.4 * s.TextSize), to.X, to.Y + (0.4 * s.TextSize))));
        legend.Row(
        [
            Sample(voice.Say("coat or primer", "capa o imprimación"), (s, box) => Bar(s, box, Kind.Coat)),
            Sample(voice.Say("other work", "otro trabajo"), (s, box) => Bar(s, box, Kind.Work)),
            .. shown.Exists(v => v.By != Doer.Crew) ? [Sample(voice.Say("others come", "vienen otros"), (s, box) => Bar(s, box, Kind.Others))] : Array.Empty<Legend.Sample>(),
            Legend.Stroke(Ink.Break, voice.Say("nobody there", "sin nadie")),
            .. shown.Exists(v => marks.Stays.Contains(v.Id)) ? [Sample(voice.Say("stays", "se queda"), (s, box) => { Bar(s, box, Kind.Work); Kept(s, box); })] : Array.Empty<Legend.Sample>(),
            .. shown.Exists(v => marks.Moved.Contains(v.Id)) ? [Sample(voice.Say("moved", "se movió"), (s, box) => Moved(s, box))] : Array.Empty<Legend.Sample>(),
            .. marks.Lost.Any(d => chart.Shows(d)) ? [Sample(voice.Say("no coat: day lost", "sin capas: día perdido"), LostDay)] : Array.Empty<Legend.Sample>(),
        ]);
        return legend.Finish(voice.Say("Days by crew", "Días por equipo"), string.Join(' ', shown.Select(v => Describe(v, voice))));
    }

    private sealed record Row(string? Crew, string Name, IReadOnlyList<VisitDocument> Visits);

    private enum Kind { Coat, Work, Others }

    private static string? CrewOf(IEnumerable<VisitDocument> visits) => visits.Select(v => v.Crew).FirstOrDefault(c => c is not null);

    private static string Describe(VisitDocument v, Voice voice) =>
        $"{voice.WeekDay(DateOnly.FromDateTime(v.Begins))}, {voice.Hour(v.Begins)}: {v.Crew ?? SiteClock.Say(v.By, voice)}, {v.Name}, {v.Steps(voice)[0]}.";

    private static void Bar(Sketch sketch, Box box, Kind kind)
    {
        sketch.Area(kind == Kind.Coat ? Wash.Stand : Wash.Hole, box.Corners);
        if (kind == Kind.Others)
            foreach (var (from, to) in Shapes.Hatch([box.Corners], 45, 0.25 * sketch.TextSize)) sketch.Line(Ink.Hatch, from, to);
        sketch.Ring(Ink.Cutout, box.Corners);
    }

    private static void Kept(Sketch sketch, Box box) => sketch.Ring(Ink.LapGood, box.Grown(0.16 * sketch.TextSize).Corners);

    private static void Moved(Sketch sketch, Box box)
    {
        var (middle, top, half) = ((box.Left + box.Right) / 2, box.Top - (0.05 * sketch.TextSize), 0.28 * sketch.TextSize);
        sketch.Line(Ink.LapNarrow, new Spot(middle - half, top - half), new Spot(middle, top), new Spot(middle + half, top - half), new Spot(middle - half, top - half));
    }

    private static void LostDay(Sketch sketch, Box box)
    {
        sketch.Area(Wash.Shut, box.Corners);
        foreach (var (from, to) in Shapes.Hatch([box.Corners], 135, 0.6 * sketch.TextSize)) sketch.Line(Ink.Hatch, from, to);
    }

    private sealed class Chart(DateOnly first, int days, Sketch sketch, Sheet sheet, Voice voice)
    {
        private readonly double text = sheet.TextSize;
        private readonly double left = 0.34 * sheet.Width;

        private double DayWidth => (sheet.Width - left) / days;

        private double Y(int row) => (row + 2.6) * RowInText * text;

        private double X(DateTime at)
        {
            var day = DateOnly.FromDateTime(at).DayNumber - first.DayNumber;
            var share = Math.Clamp((at.TimeOfDay.TotalHours - FromHour) / (ToHour - FromHour), 0, 1);
            return Math.Clamp(left + ((day + share) * DayWidth), left, sheet.Width);
        }

        public bool Shows(DateOnly day) => day >= first && day < first.AddDays(days);

        public bool Shows(VisitDocument visit) => Shows(DateOnly.FromDateTime(visit.Begins));

        /// <summary>A job that is only drying is shown too.</summary>
        public bool Shows(Row row) => DateOnly.FromDateTime(row.Visits[0].Begins) < first.AddDays(days) && DateOnly.FromDateTime(row.Visits[^1].Begins) >= first;

        public void Days(int rows, CrewDaysMarks marks)
        {
            var (top, foot) = (1.7 * RowInText * text, Y(rows) - (0.4 * RowInText * text));
            for (var day = 0; day <= days; day++)
            {
                var (date, x) = (first.AddDays(day), left + (day * DayWidth));
                if (day < days && marks.Lost.Contains(date)) LostDay(sketch, new Box(x, top, x + DayWidth, foot));
                else if (day < days && date.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday) sketch.Area(Wash.Panel, new Box(x, top, x + DayWidth, foot).Corners);
                sketch.Line(Ink.Dimension, new Spot(x, date.DayOfWeek == DayOfWeek.Monday ? 0.9 * text : top), new Spot(x, foot));
                if (day == days) break;
                sketch.TryText(Lettering.Clock, [$"{date.Day}"], [new(new Spot(x + (DayWidth / 2), 2.3 * text))]);
                if (date.DayOfWeek == DayOfWeek.Monday) sketch.TextFrom(Lettering.Clock, voice.WeekDay(date), new Spot(x + (0.2 * text), 1.0 * text));
            }
        }

        public void Crew(int row, string name) => sketch.TextFrom(Lettering.Letter, Cut(Lettering.Letter, name), new Spot(0, Y(row)));

        public void Job(int row, Row job, CrewDaysMarks marks)
        {
            var y = Y(row);
            var (from, to) = (X(job.Visits[0].Begins), X(job.Visits[^1].Ends));
            if (to > from) sketch.Line(Ink.Break, new Spot(from, y), new Spot(to, y));
            foreach (var visit in job.Visits.Where(v => Shows(v)))
            {
                // A short visit must still be seen.
                var a = X(visit.Begins);
                var box = new Box(a, y - (0.42 * text), Math.Max(X(visit.Ends), a + (0.32 * text)), y + (0.42 * text));
                Bar(sketch, box, visit.By != Doer.Crew ? Kind.Others : visit.IsCoat ? Kind.Coat : Kind.Work);
                if (marks.Stays.Contains(visit.Id)) Kept(sketch, box);
                if (marks.Moved.Contains(visit.Id)) Moved(sketch, box);
            }

            sketch.TextFrom(Lettering.Name, Cut(Lettering.Name, job.Name), new Spot(0, y));
        }

        private string Cut(Lettering style, string words)
        {
            var room = left - (0.5 * text);
            while (words.Length > 4 && sketch.WidthOf(style, words) > room) words = words.TrimEnd('…')[..^1].TrimEnd() + "…";
            return words;
        }
    }
}
