using System.Text.Json;
using System.Text.Json.Serialization;
using Lapwise.Core;
using Lapwise.Core.Bases;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Cli.Commands;

/// <summary>How each coat dries, and when it may be touched, recoated and used.</summary>
internal static class DryingCommand
{
    public static readonly Command Command = new("drying", ["JOB", "READINGS"], [Phases.Conditions],
        v => v.Say("how each coat dries, and when it may be touched, recoated and used", "cómo seca cada capa, y cuándo se puede tocar, repintar y usar"),
        v => v.Say(
            "A water-borne film dries at a constant rate, which humidity holds back, until polymer fills it, then at a falling rate, which humidity hardly touches; both are shown. The sheet's waits run through the temperatures of READINGS, through the job's daily swing, or at the room as read. Stages by the names of ASTM D1640.",
            "Una película al agua seca a velocidad constante, que la humedad frena, hasta que el polímero la llena, y luego a velocidad decreciente, que la humedad apenas afecta; se muestran las dos. Las esperas de la ficha corren por las temperaturas de READINGS, por la oscilación diaria del trabajo o con la sala leída. Etapas con los nombres de ASTM D1640."),
        Run) { LastRepeats = true };

    private static Outcome Run(Request request, Terminal terminal)
    {
        if (JobInput.Read(request, terminal) is not { } input) return Outcome.BadInput;
        var v = input.Voice;
        var read = JobReading.Read(input.Document, input.Products);
        if (read.Job is not { } job || read.Faults.Count > 0) return Faults.Print(input.WithLines(read.Faults), v, terminal);
        IReadOnlyList<TemperatureAt> course = [new(0, job.Room.Surface.Celsius)];
        var holdsLast = true;
        if (request.Files.Count > 1 || DailySwing.Of(job) is not null)
        {
            var (room, faults) = RoomCourse.Of(job, request, v, terminal);
            if (room is null) return Faults.Print(faults, v, terminal);
            if (!request.Json) foreach (var note in room.Notes) terminal.Reason(note, v);
            // The swing starts at the hour the working day does.
            var record = room.Record ?? room.Swing!.From(DateTime.UnixEpoch.AddMinutes(job.Timeline.WorkFromMin), 24 * 45);
            (course, holdsLast) = (HourStrip.CourseAfter(record, record.Readings[0].At), false);
        }

        var coats = job.System.Select(coat => CoatDrying.Of(coat, job.Room, course, holdsLast)).ToList();
        if (request.Json) terminal.Json(new DryingAnswer([.. coats.Select(CoatAnswer)]), DryingJson.Default.DryingAnswer);
        else
        {
            foreach (var coat in coats) Print(coat, v, terminal);
            terminal.Cautions(job, v);
            if (request.Explain) terminal.Bases(coats.SelectMany(JobBases.Drying), v);
        }

        return Outcome.Done;
    }

    private static void Print(CoatDrying drying, Voice v, Terminal terminal)
    {
        terminal.Line();
        terminal.Line(drying.Coat.Title(v));
        if (drying is { Water: { } water, WaterLine: { } line })
        {
            terminal.Line(line(v), 2);
            terminal.Line(CoatDrying.NotATimeToRecoat(v), 2);
            var left = Screen.Table(new Column.Number(v.Say("After", "Tras")), new Column.Number(v.Say("Water left", "Agua que queda")), new Column.Word(v.Say("Stage", "Etapa")));
            foreach (var (seconds, share) in drying.Curve)
                left.Row(Voice.Span(seconds), v.Percent(share), seconds < water.ConstantRateS ? v.Say("constant rate", "velocidad constante") : v.Say("falling rate", "velocidad decreciente"));
            terminal.Tables().Write(left);
        }

        if (drying.Waits.Count == 0)
        {
            terminal.Line(v.Say("The data sheet as entered gives no waits.", "La ficha técnica anotada no da esperas."), 2);
            return;
        }

        var table = Screen.Table(new Column.Word(v.Say("Until", "Hasta")), new Column.Word(v.Say("Sheet", "Ficha")), new Column.Number(v.Say("Here", "Aquí")));
        foreach (var wait in drying.Waits)
        {
            table.Row(Waits.Say(wait.For, v), v.Say($"{Voice.Span(wait.SheetS)} at {v.Temperature(wait.SheetCelsius)}", $"{Voice.Span(wait.SheetS)} a {v.Temperature(wait.SheetCelsius)}"),
                wait.Seconds is { } s ? Voice.Span(s) : v.Say("readings end", "sin lecturas"));
        }

        terminal.Tables().Write(table);
        foreach (var (wait, stage) in drying.Waits.Select(w => (w, CoatDrying.StageOf(w.For))))
            if (stage is not null) terminal.Line((Waits.Say(wait.For, v) is var name && name == stage.Name(v) ? $"· {name} ({stage.Standard}): {stage.Test(v)}." : $"· {name}: {stage.Name(v)} ({stage.Standard}): {stage.Test(v)}."), 2);
    }

    private static CoatDryingAnswer CoatAnswer(CoatDrying d) => new(
        d.Coat.Product.Id,
        d.Water is { } water && double.IsFinite(d.DriedS) ? new WaterAnswer(water.ConstantRateS, d.AtHalfHumidity!.ConstantRateS, d.DriedS, d.ShareHeldByHumidity, [.. d.Curve.Select(p => new[] { p.Seconds, p.Share })]) : null,
        [.. d.Waits.Select(w => new StagedWaitAnswer(JsonNamingPolicy.CamelCase.ConvertName(w.For.ToString()), CoatDrying.StageOf(w.For)?.Id, w.SheetS, w.SheetCelsius, w.Seconds))]);
}

/// <summary>What the drying command answers as JSON.</summary>
internal sealed record DryingAnswer(IReadOnlyList<CoatDryingAnswer> Coats);

/// <param name="Water">Null: no water leaves it, the sheet does not say, or the air gives water back.</param>
internal sealed record CoatDryingAnswer(string Product, WaterAnswer? Water, IReadOnlyList<StagedWaitAnswer> Waits);

/// <param name="LeftAfter">Seconds and share of the water left.</param>
internal sealed record WaterAnswer(double ConstantRateS, double ConstantRateAtHalfHumidityS, double DriedS, double ShareHeldByHumidity, IReadOnlyList<double[]> LeftAfter);

/// <param name="Stage">As the standards name it; null: they name none.</param>
/// <param name="Seconds">Null: the readings end before.</param>
internal sealed record StagedWaitAnswer(string For, string? Stage, double SheetS, double SheetC, double? Seconds);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(DryingAnswer))]
internal sealed partial class DryingJson : JsonSerializerContext;
