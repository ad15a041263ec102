using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Cli.Commands;

/// <summary>The chance that a coat's plan goes wrong, as a table and as bars.</summary>
internal static class PlanRisk
{
    private const int MostLaps = 8;
    private const int BarColumns = 40;

    public static CoatRisk Of(WholeJob whole, int coat) => Risking.Of(whole.Work.Coats[coat], whole.Job, Risking.UsualTrials, Risking.UsualSeed);

    public static RiskAnswer Answer(WholeJob whole, int coat) => Answering.Risk(Of(whole, coat), whole.Supply.Coats[coat].BoughtMl);

    public static void Print(WholeJob whole, int coat, Voice v, Terminal terminal)
    {
        var risk = Of(whole, coat);
        terminal.Line(v.Say(
            $"Risk: this plan tried {risk.Trials} times, with pace, mixing, open time and losses drawn by chance",
            $"Riesgo: este plan probado {risk.Trials} veces, con ritmo, mezcla, tiempo abierto y pérdidas al azar"));
        var table = Screen.Table(new Column.Word(v.Say("What goes wrong", "Qué sale mal")), new Column.Number(v.Say("Chance", "Probabilidad")), new Column.Number(v.Say("95 of 100 times within", "95 de cada 100 veces entre")));
        Row(table, v.Say("a line anywhere", "una línea en algún sitio"), risk.Line, v);
        foreach (var lap in risk.Laps.Where(l => l.Line.Times > 0).OrderByDescending(l => l.Line.Times).Take(MostLaps))
            Row(table, v.Say($"  lap {lap.Lap.A}–{lap.Lap.B}", $"  solape {lap.Lap.A}–{lap.Lap.B}"), lap.Line, v);
        Row(table, v.Say("a batch past its pot life", "una mezcla pasada de su vida"), risk.BatchOutlivesPot, v);
        if (risk.StepLate is { } late) Row(table, v.Say("a step of the pour out of its time", "un paso del vertido fuera de su hora"), late, v);
        if (whole.Supply.Coats[coat].BoughtMl is { } ml) Row(table, v.Say("short of the kits to buy", "no alcanzan los juegos previstos"), risk.RunsShort(ml), v);
        terminal.Tables().Write(table);
        Bars(risk, v, terminal);
    }

    private static void Row(Spectre.Console.Table table, string what, Chance chance, Voice v)
    {
        var (least, most) = chance.Within95;
        table.Row(what, v.Percent(chance.Share, 1), $"{v.Percent(least, 1)} – {v.Percent(most, 1)}");
    }

    private static void Bars(CoatRisk risk, Voice v, Terminal terminal)
    {
        var bins = risk.WorstMargins;
        terminal.Line(v.Say(
            $"Worst margin: half of the days {Span(bins.MedianMs)} or more, nineteen in twenty {Span(bins.TwentiethMs)} or more.",
            $"Peor margen: la mitad de los días {Span(bins.MedianMs)} o más, diecinueve de cada veinte {Span(bins.TwentiethMs)} o más."), 2);
        var most = bins.Counts.Max();
        for (var i = 0; i < bins.Counts.Count; i++)
        {
            var from = bins.FromMs + (i * bins.BinMs);
            if (from == 0 && i > 0) terminal.Line(v.Say("  ────────── below: it holds; above: a line shows", "  ────────── abajo: aguanta; arriba: se ve una línea"));
            var bar = new string(from < 0 ? '▒' : '█', (int)Math.Ceiling((double)bins.Counts[i] * BarColumns / most));
            terminal.Out.WriteLine($"  {Span(from),12} {bar} {v.Percent((double)bins.Counts[i] / risk.Trials, 1)}");
        }
    }

    private static string Span(long ms) => Voice.Span(ms / 1000.0);
}
