using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Measure;

namespace Lapwise.Cli.Commands;

/// <summary>What there is to coat, by top.</summary>
internal static class TakeOffCommand
{
    public static readonly Command Command = JobCommand.Of("takeoff", [Phases.Measure],
        v => v.Say("areas to coat, by top", "superficies por recubrir, por cubierta"),
        v => v.Say("Areas are for one coat. Misclosure is what the tape left open; it is spread over the sides (compass rule).",
            "Las superficies son para una capa. El error de cierre es lo que la cinta dejó abierto; se reparte entre los lados (regla de la brújula)."),
        (whole, voice, request, terminal) =>
        {
            if (request.Json) terminal.Json(Answering.TakeOff(whole.Measured), AnswerJson.Default.TakeOffAnswer);
            else Print(whole.Measured, voice, terminal);
            return Outcome.Done;
        });

    private static void Print(MeasuredJob measured, Voice v, Terminal terminal)
    {
        var table = Screen.Table(
            new Column.Text(v.Say("Top", "Cubierta")), new Column.Number(v.Say("Flat", "Plano")), new Column.Number(v.Say("Edges", "Cantos")), new Column.Number(v.Say("Splash", "Salpic.")),
            new Column.Number(v.Say("Waterfall", "Cascada")), new Column.Number(v.Say("Rims", "Huecos")), new Column.Number(v.Say("Coated", "Total")));
        foreach (var t in measured.Tops.Select(t => t.TakeOff)) Row(t.Name, t);
        if (measured.Tops.Count > 1) Row(v.Say("All", "Todo"), measured.Total);
        terminal.Tables().Write(table);

        foreach (var top in measured.Tops.Where(t => !t.Closure.Closes || t.Closure.MisclosureM > 0))
        {
            var closure = top.Closure;
            var open = v.Say($"{top.Top.Name}: the tape left {v.Length(closure.MisclosureM)} open over {v.Run(closure.PerimeterM)}", $"{top.Top.Name}: la cinta dejó {v.Length(closure.MisclosureM)} abiertos en {v.Run(closure.PerimeterM)}");
            terminal.Line(closure.Closes
                ? v.Say($"{open}; its step explains that.", $"{open}; su graduación lo explica.")
                : v.Say($"{open}. Measure again: {string.Join(", ", closure.SuspectSides)}.", $"{open}. Vuelva a medir: {string.Join(", ", closure.SuspectSides)}."), 2);
        }

        foreach (var top in measured.Tops)
            foreach (var d in top.Closure.Diagonals)
                terminal.Line(v.Say($"{top.Top.Name}: diagonal {d.From}-{d.To} measured {v.Length(d.MeasuredM)}, computed {v.Length(d.ComputedM)}.",
                    $"{top.Top.Name}: diagonal {d.From}-{d.To} medida {v.Length(d.MeasuredM)}, calculada {v.Length(d.ComputedM)}."), 2);

        void Row(string name, TakeOff t) =>
            table.Row(name, v.Area(t.FlatM2), v.Area(t.EdgeM2), v.Area(t.SplashM2), v.Area(t.WaterfallM2), v.Area(t.RimM2), v.Area(t.CoatedM2));
    }
}
