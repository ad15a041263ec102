using Lapwise.Core;
using Lapwise.Core.Bases;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Drawings;
using Lapwise.Files;

namespace Lapwise.Cli.Commands;

/// <summary>A room's readings hour by hour against each coat of a job.</summary>
internal static class HoursCommand
{
    public static readonly Command Command = new("hours", ["JOB", "READINGS"], [Phases.Conditions],
        v => v.Say("the room hour by hour: a logger's CSV, a typed forecast, or the job's daily swing", "la sala hora a hora: CSV de registrador, pronóstico o la oscilación diaria del trabajo"),
        v => v.Say(
            "READINGS is a logger's CSV with headings and units, or lines such as: 2026-11-25 14:30 72 °F 45 %. Left out: the room swings once a day as the job's timeline.daySwing says, about the room as read. Each hour is judged by its worst reading: go, wait or no go. Hours without a reading stay unknown.\nThe last day of the readings is shown. With --out FILE.svg the strip as a picture, one a coat. Ends with 1 where no hour is go.",
            "READINGS es el CSV de un registrador con títulos y unidades, o líneas como: 2026-11-25 14:30 22 °C 45 %. Si falta, la sala oscila una vez al día según timeline.daySwing del trabajo, alrededor de la sala leída. Cada hora se juzga por su peor lectura: adelante, espere o no. Las horas sin lectura quedan sin conocer.\nSe muestra el último día de las lecturas. Con --out ARCHIVO.svg, la franja como dibujo, uno por capa. Termina con 1 si ninguna hora es buena."),
        Run) { LastRepeats = true };

    private static Outcome Run(Request request, Terminal terminal)
    {
        if (JobInput.Read(request, terminal) is not { } input) return Outcome.BadInput;
        var v = input.Voice;
        var read = JobReading.Read(input.Document, input.Products);
        if (read.Job is not { } job || read.Faults.Count > 0) return Faults.Print(input.WithLines(read.Faults), v, terminal);
        var (room, faults) = RoomCourse.Of(job, request, v, terminal);
        if (room is null) return Faults.Print(faults, v, terminal);

        var days = job.System.Select(coat => (Coat: coat, Day: room.DayOf(coat.Product))).ToList();
        foreach (var (i, (_, day)) in days.Index())
            if (request.OutFile is { } path && OutFile.Write(OfCoat(path, i, days.Count), HourDrawing.Draw(day, v, Sheet.Wide), v, terminal) is { } unwritten) return unwritten;
        if (request.Json) terminal.Json(HoursAnswer.Of(days, room, v), HoursJson.Default.HoursAnswer);
        else
        {
            foreach (var note in room.Notes) terminal.Reason(note, v);
            foreach (var (coat, day) in days) Print(coat, day.Strip, day.Record, v, terminal);
            terminal.Cautions(job, v);
            if (request.Explain) terminal.Bases(days.SelectMany(d => Numbers(d.Coat, d.Day)), v);
        }

        return days.All(d => d.Day.Strip.Best is not null) ? Outcome.Done : Outcome.DoesNotWork;
    }

    /// <summary>The hours and the waits after the best of them, each with what it rests on.</summary>
    private static IEnumerable<BasedNumber> Numbers(Coat coat, RoomDay day) =>
    [
        .. day.Strip.Best is { } best ? [new BasedNumber(Phases.Conditions, coat.Product.Name, v => v.Say("best hours", "mejores horas"), v => $"{v.Hour(best.From)}–{v.Hour(best.To)}", day.Basis(coat.Product))] : Array.Empty<BasedNumber>(),
        .. day.Strip.Best is { } from ? HourStrip.WaitsAfter(coat.Product, day.Record, from.From).Select(w => new BasedNumber(Phases.Conditions, coat.Product.Name, v => Waits.Say(w.For, v), v => w.Seconds is { } s ? Voice.Span(s) : v.Say("not known", "no se sabe"), w.Basis)) : [],
    ];

    /// <summary>One file a coat: <c>hours.svg</c>, <c>hours-2.svg</c>.</summary>
    private static string OfCoat(string path, int coat, int coats) =>
        coat == 0 || coats == 1 ? path : Path.Combine(Path.GetDirectoryName(path) ?? "", $"{Path.GetFileNameWithoutExtension(path)}-{coat + 1}{Path.GetExtension(path)}");

    private static void Print(Coat coat, HourStrip strip, RoomRecord record, Voice v, Terminal terminal)
    {
        terminal.Line();
        terminal.Line(coat.Title(v) + On(strip.Hours[0].From, v));
        var table = Screen.Table(new Column.Number(v.Say("Hour", "Hora")), new Column.Word(v.Say("Coat?", "¿Aplicar?")), new Column.Number(v.Say("Air", "Aire")),
            new Column.Number(v.Say("Humidity", "Humedad")), new Column.Number(v.Say("Dew margin", "Margen de rocío")), new Column.Text(v.Say("Because", "Porque")));
        var said = "";
        foreach (var hour in strip.Hours)
        {
            var because = hour.Verdict is Verdict.Go or Verdict.Unknown || hour.Reasons.Count == 0 ? null : hour.Reasons[0];
            table.Row(
                v.Hour(hour.From), Sign(hour.Verdict) + HourStrip.Say(hour.Verdict, v), hour.WarmestC is { } c ? v.Temperature(c) : "", hour.MostHumidity is { } h ? v.Percent(h) : "",
                hour.LeastDewMarginC is { } m ? v.TemperatureDifference(m) : "", because is null ? "" : because.Code == said ? v.Say("as above", "como arriba") : because.Text(v));
            said = because?.Code ?? "";
        }

        terminal.Tables().Write(table);
        foreach (var gap in strip.Gaps) terminal.Line(v.Say($"No readings from {v.Hour(gap.From)} to {v.Hour(gap.To)}.", $"Sin lecturas de {v.Hour(gap.From)} a {v.Hour(gap.To)}."), 2);
        if (strip.Best is not { } best)
        {
            terminal.Line(v.Say("✗ No hour of this day is go.", "✗ Ninguna hora de este día es buena."), 2);
            return;
        }

        if (best.IsAllDay) terminal.Line(v.Say($"✓ Every hour is go, at least {v.TemperatureDifference(best.LeastDewMarginC)} above the dew point.", $"✓ Todas las horas son buenas, al menos {v.TemperatureDifference(best.LeastDewMarginC)} sobre el punto de rocío."), 2);
        else terminal.Line(v.Say($"✓ Best hours: {v.Hour(best.From)} to {v.Hour(best.To)}, at least {v.TemperatureDifference(best.LeastDewMarginC)} above the dew point.", $"✓ Mejores horas: de {v.Hour(best.From)} a {v.Hour(best.To)}, al menos {v.TemperatureDifference(best.LeastDewMarginC)} sobre el punto de rocío."), 2);
        foreach (var wait in HourStrip.WaitsAfter(coat.Product, record, best.From))
        {
            terminal.Line(wait.Seconds is { } s
                ? v.Say($"· Coated at {v.Hour(best.From)}: {Waits.Say(wait.For, v)} after {Voice.Span(s)}, at {v.Hour(best.From.AddSeconds(s))}.", $"· Aplicando a las {v.Hour(best.From)}: {Waits.Say(wait.For, v)} tras {Voice.Span(s)}, a las {v.Hour(best.From.AddSeconds(s))}.")
                : v.Say($"· {Waits.Say(wait.For, v)}: the readings end before.", $"· {Waits.Say(wait.For, v)}: las lecturas acaban antes."), 4);
        }
    }

    /// <summary>Readings without a date stand in the first year there is.</summary>
    private static string On(DateTime at, Voice v) => at.Year == DateTime.UnixEpoch.Year ? "" : $", {v.Date(DateOnly.FromDateTime(at))}";

    private static string Sign(Verdict verdict) => verdict switch { Verdict.Go => "✓ ", Verdict.Wait => "… ", Verdict.NoGo => "✗ ", _ => "? " };
}
