using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;
using Lapwise.Core.Timeline;
using Lapwise.Documents;
using Lapwise.Drawings;

namespace Lapwise.Cli.Commands;

/// <summary>The days of one job.</summary>
internal static class TimelineCommand
{
    public static readonly Command Command = JobCommand.Of("timeline", [Phases.Timeline],
        v => v.Say("the days of the job, with recoat windows and dates of use", "los días del trabajo, con ventanas de repintado y fechas de uso"),
        v => v.Say("Every step as early as hours, waits and windows let it. A latest recoat that cannot be met puts sanding in. --out x.svg draws it, --out x.ics writes it as iCalendar. Times are the clock on the wall at the site. Ends with 1 where a window or a promise cannot be kept.",
            "Cada paso tan temprano como dejan horario, esperas y ventanas. Un repintado máximo que no cabe añade un lijado. --out x.svg lo dibuja, --out x.ics lo escribe como iCalendar. Las horas son las del reloj del lugar. Termina con 1 si no se puede cumplir una ventana o una promesa."),
        Answer);

    private static Outcome Answer(WholeJob whole, Voice v, Request request, Terminal terminal)
    {
        if (request.OutFile is { } path && Write(whole, request, path, v, terminal) is { } unwritten) return unwritten;
        if (request.Json) terminal.Json(TimelineJson.Of(whole, v), TimelineJson.Default.TimelineAnswer);
        else Print(whole, v, terminal);
        return whole.Timeline.Holds ? Outcome.Done : Outcome.DoesNotWork;
    }

    private static void Print(WholeJob whole, Voice v, Terminal terminal)
    {
        var timeline = whole.Timeline;
        if (!timeline.IsDated) terminal.Line(v.Say("No first day is set: days are counted, day 1 being a Monday.", "Sin primer día fijado: los días se cuentan; el día 1 es lunes."));
        var table = Screen.Table(new Column.Word(v.Say("Day", "Día")), new Column.Word(v.Say("Hours", "Horas")), new Column.Text(v.Say("Step", "Paso")), new Column.Text(v.Say("Who", "Quién")));
        var day = "";
        foreach (var (step, part) in timeline.Steps.SelectMany(s => s.Parts.Select(p => (s, p))))
        {
            var now = SiteClock.Day(timeline, part.From, v);
            table.Row(now == day ? "" : now, $"{v.Hour(part.From)}–{v.Hour(part.To)}", (step.IsInserted ? "+ " : "") + step.Name(v), SiteClock.Say(step.By, v));
            day = now;
        }

        terminal.Tables().Write(table);
        terminal.Line();
        terminal.Line(v.Say("Waits, with nobody there", "Esperas, sin nadie"));
        foreach (var wait in timeline.Waits)
        {
            terminal.Line($"· {wait.Name(v)}: " + v.Say($"from {SiteClock.Moment(timeline, wait.Earliest, v)}", $"desde {SiteClock.Moment(timeline, wait.Earliest, v)}")
                + (wait.Latest is { } latest ? v.Say($", no later than {SiteClock.Moment(timeline, latest, v)}", $", no después de {SiteClock.Moment(timeline, latest, v)}") : ""), indent: 2);
        }

        terminal.Line();
        terminal.Line(v.Say("For the customer", "Para el cliente"));
        foreach (var use in timeline.UseDates)
            terminal.Line($"· {UseDate.Say(use.Use, v)}: {SiteClock.Moment(timeline, use.From, v)} ({(use.Origin == Origin.Guess ? v.Say("a cautious guess", "suposición prudente") : v.Say("data sheet, in this room", "ficha técnica, en esta sala"))})", indent: 2);
        foreach (var reason in timeline.Reasons) terminal.Reason(reason, v);
        foreach (var caution in timeline.Steps.Where(s => s.Coat is null).SelectMany(s => s.Cautions).Select(c => c(v)).Distinct().Except(JobCautions.Of(whole.Job).Select(c => c(v)), StringComparer.Ordinal)) terminal.Line("! " + caution, indent: 2);
        terminal.Line(v.Say("Times of steps are common practice, no source, where none are entered.", "Los tiempos de los pasos son práctica común, sin fuente, donde no se anotan."));
        terminal.Cautions(whole.Job, v);
    }

    /// <returns>Null where it was written.</returns>
    private static Outcome? Write(WholeJob whole, Request request, string path, Voice v, Terminal terminal) =>
        path.EndsWith(".ics", StringComparison.OrdinalIgnoreCase)
            ? CalendarOut.Write(path, [new CalendarJob(CalendarOut.IdOf(request.Files[0]), CalendarOut.SequenceNow, whole)], v, terminal)
            : OutFile.Write(path, TimelineDrawing.Draw(whole.Timeline, v, Sheet.Wide), v, terminal);
}
