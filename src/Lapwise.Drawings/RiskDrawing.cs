using Lapwise.Core.Explain;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Drawings;

/// <summary>
/// Draws how often a plan ends with which worst margin: a bar for each span of margin, a heavy line at zero. Bars short of
/// zero are hatched, so that grey paper tells them as well as colour.
/// </summary>
public static class RiskDrawing
{
    private const int MostTicks = 6;

    public static Drawing Draw(CoatRisk risk, Voice voice, Sheet sheet)
    {
        var sketch = new Sketch(sheet.TextSize);
        var chart = new Chart(risk.WorstMargins, sheet);
        for (var i = 0; i < risk.WorstMargins.Counts.Count; i++) Bar(sketch, chart.Bar(i), risk.WorstMargins.FromMs + (i * risk.WorstMargins.BinMs) < 0);
        sketch.Line(Ink.Dimension, chart.At(chart.FromMs, 0), chart.At(chart.ToMs, 0));
        sketch.Line(Ink.LapLost, chart.At(0, 0), chart.At(0, 1.08));
        foreach (var ms in chart.Ticks()) Tick(sketch, chart, ms);

        var legend = new Legend(sketch, sheet);
        legend.Row(
            Swatch(voice.Say($"a line shows: {voice.Percent(risk.Line.Share)}", $"se ve una línea: {voice.Percent(risk.Line.Share)}"), isLine: true),
            Swatch(voice.Say($"it holds: {voice.Percent(1 - risk.Line.Share)}", $"aguanta: {voice.Percent(1 - risk.Line.Share)}"), isLine: false),
            Legend.Stroke(Ink.LapLost, voice.Say("no margin left", "sin margen")));
        foreach (var note in Notes(risk, voice)) legend.Note(Lettering.Note, note);
        return legend.Finish(voice.Say("How often which margin is left", "Con qué frecuencia queda cada margen"), Describe(risk, voice));
    }

    private static void Bar(Sketch sketch, IReadOnlyList<Spot> ring, bool isLine)
    {
        if (Box.Over(ring).Height <= 0) return;
        sketch.Area(isLine ? Wash.Behind : Wash.SecondPerson, ring);
        if (isLine)
            foreach (var (from, to) in Shapes.Hatch([ring], 45, 0.35 * sketch.TextSize)) sketch.Line(Ink.Hatch, from, to);
        sketch.Ring(isLine ? Ink.Suspect : Ink.Section, ring);
    }

    private static void Tick(Sketch sketch, Chart chart, long ms)
    {
        var foot = chart.At(ms, 0);
        sketch.Line(Ink.Dimension, foot, foot + new Spot(0, 0.3 * sketch.TextSize));
        // A label at the edge moves in rather than leave the sheet; one that finds no room is left to its tick.
        var words = ms == 0 ? "0" : LapMargin.Clock(ms);
        var half = sketch.WidthOf(Lettering.Clock, words) / 2;
        var at = new Spot(Math.Clamp(foot.X, half, chart.Width - half), foot.Y + (0.9 * sketch.TextSize));
        sketch.TryText(Lettering.Clock, [words], [new(at)]);
    }

    private static Legend.Sample Swatch(string words, bool isLine) => new(words, (sketch, from, to) =>
        Bar(sketch, new Box(from.X, from.Y - (0.4 * sketch.TextSize), to.X, to.Y + (0.4 * sketch.TextSize)).Corners, isLine));

    private static IEnumerable<string> Notes(CoatRisk risk, Voice v)
    {
        var (bins, (least, most)) = (risk.WorstMargins, risk.Line.Within95);
        yield return v.Say(
            $"Worst margin of the day, minutes and seconds: half of the days {LapMargin.Clock(bins.MedianMs)} or better, nineteen in twenty {LapMargin.Clock(bins.TwentiethMs)} or better.",
            $"Peor margen del día, en minutos y segundos: la mitad de los días {LapMargin.Clock(bins.MedianMs)} o mejor, diecinueve de cada veinte {LapMargin.Clock(bins.TwentiethMs)} o mejor.");
        yield return v.Say(
            $"{risk.Trials} trials of the plan with pace, mixing, open time and losses drawn by chance; the true chance of a line lies between {v.Percent(least, 1)} and {v.Percent(most, 1)}, 95 times in 100.",
            $"{risk.Trials} pruebas del plan con ritmo, mezcla, tiempo abierto y pérdidas al azar; la probabilidad real de una línea está entre {v.Percent(least, 1)} y {v.Percent(most, 1)}, 95 de cada 100 veces.");
    }

    private static string Describe(CoatRisk risk, Voice v)
    {
        var bins = risk.WorstMargins;
        var bars = bins.Counts.Select((count, i) => (FromMs: bins.FromMs + (i * bins.BinMs), Count: count)).Where(b => b.Count > 0).Select(b => v.Say(
            $"{LapMargin.Clock(b.FromMs)} to {LapMargin.Clock(b.FromMs + bins.BinMs)}: {b.Count}.",
            $"De {LapMargin.Clock(b.FromMs)} a {LapMargin.Clock(b.FromMs + bins.BinMs)}: {b.Count}."));
        return string.Join(' ', Notes(risk, v).Prepend(v.Say($"A line shows in {risk.Line.Times} of {risk.Trials} trials.", $"Se ve una línea en {risk.Line.Times} de {risk.Trials} pruebas.")).Concat(bars));
    }

    /// <summary>Where margins and counts lie on the sheet; zero is always on it.</summary>
    private sealed record Chart(MarginHistogram Bins, Sheet Sheet)
    {
        public long FromMs { get; } = Math.Min(0, Bins.FromMs);
        public long ToMs { get; } = Math.Max(0, Bins.FromMs + (Bins.BinMs * Bins.Counts.Count));
        public double Width => Sheet.Width;
        private double Height { get; } = Math.Min(Sheet.MostHeight, 0.45 * Sheet.Width);
        private int Most { get; } = Bins.Counts.Max();

        /// <param name="share">0: foot of the bars; 1: top of the highest.</param>
        public Spot At(long ms, double share) => new(Width * (ms - FromMs) / (ToMs - FromMs), Height * (1.08 - share));

        public IReadOnlyList<Spot> Bar(int bin)
        {
            var fromMs = Bins.FromMs + (bin * Bins.BinMs);
            var (foot, head) = (At(fromMs, 0), At(fromMs + Bins.BinMs, (double)Bins.Counts[bin] / Most));
            return new Box(foot.X, head.Y, head.X, foot.Y).Corners;
        }

        /// <summary>Zero first, so that it always finds room.</summary>
        public IEnumerable<long> Ticks()
        {
            var step = Bins.BinMs * Math.Max(1, (long)Math.Ceiling((double)(ToMs - FromMs) / Bins.BinMs / MostTicks));
            yield return 0;
            for (var ms = step; ms <= ToMs; ms += step) yield return ms;
            for (var ms = -step; ms >= FromMs; ms -= step) yield return ms;
        }
    }
}
