using System.Text;
using System.Text.Json.Serialization;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;
using Lapwise.Documents;
using Lapwise.Files;

namespace Lapwise.Cli.Commands;

/// <summary>What was done on site, from the marks of a run.</summary>
internal static class RecordCommand
{
    public static readonly Command Command = new("record", ["RUN"], [Phases.OnSite],
        v => v.Say("what was done on site, from the marks of a run", "lo que se hizo en obra, según las marcas de una aplicación"),
        v => v.Say(
            "RUN is the file that the run's page exports. Every mark stands in the record; what was undone, dated back or filled in by the program is said so. Marks of several devices may be put into one file, in any order and more than once. --out writes it on paper too, as a PDF or as a page (x.html).\nEnds with 1 where a lap was joined too late.",
            "RUN es el archivo que exporta la página de la aplicación. Todas las marcas quedan en el registro; lo deshecho, lo puesto con hora anterior y lo que completó el programa se indica. Se pueden juntar en un archivo las marcas de varios equipos, en cualquier orden y repetidas. --out lo escribe además en papel, en PDF o como página (x.html).\nTermina con 1 si algún solape se unió tarde."),
        Run);

    private static Outcome Run(Request request, Terminal terminal)
    {
        var v = request.Voice;
        var (json, unreadable) = DocumentText.JsonOf(request.Files[0], terminal.In);
        if (json is null) return Faults.Print(unreadable, v, terminal);
        var (document, faults) = RunFile.Read(json);
        if (document is null) return Faults.Print(faults, v, terminal);
        if (Folding.Fold(document.Marks) is not { } run)
        {
            return Faults.Print([new Fault("marks", "PlanMissing",
                x => x.Say("The mark that issued the plan is missing.", "Falta la marca que emitió el plan."),
                x => x.Say("Add the marks of the device that began the run.", "Añada las marcas del equipo que empezó la aplicación."))], v, terminal);
        }

        var laps = JoinedLaps.Of(run);
        if (request.OutFile is { } path)
        {
            var isPage = path.EndsWith(".html", StringComparison.OrdinalIgnoreCase);
            var paper = isPage ? Encoding.UTF8.GetBytes(RecordSheet.Html(run, v, TimeZoneInfo.Local)) : RecordSheet.Pdf(run, v, TimeZoneInfo.Local);
            if (OutFile.Write(path, paper, v, terminal) is { } unwritten) return unwritten;
            if (!request.Json) terminal.Line(v.Say($"Record: {path}", $"Registro: {path}"));
        }

        if (request.Json) terminal.Json(Answer(run, laps, v), RecordJson.Default.RecordAnswer);
        else Print(run, laps, v, terminal);
        return laps.Any(l => l.IsLost) ? Outcome.DoesNotWork : Outcome.Done;
    }

    private static void Print(Run run, IReadOnlyList<JoinedLap> laps, Voice v, Terminal terminal)
    {
        terminal.Line($"{run.Plan.Job}: {run.Plan.Coating()}");
        var table = Screen.Table(new Column.Number(v.Say("Clock", "Reloj")), new Column.Text(v.Say("Mark", "Marca")), new Column.Text(""));
        foreach (var logged in run.Log) table.Row(ClockOf(logged, run), MarkWords.Of(logged, run, v), MarkWords.How(logged, v));
        terminal.Tables().Write(table);

        if (laps.Count > 0)
        {
            var joined = Screen.Table(new Column.Word(v.Say("Lap", "Solape")), new Column.Number(v.Say("Age", "Edad")), new Column.Number(v.Say("Margin", "Margen")), new Column.Text(""));
            foreach (var lap in laps)
                joined.Row(MarkWords.Of(lap.Lap), Voice.Span(lap.AgeMs / 1000.0), Voice.Span(lap.MarginMs / 1000.0),
                    (lap.IsLost ? v.Say("✗ joined too late", "✗ unido tarde") : v.Say("✓ in time", "✓ a tiempo")) + (lap.IsAssumed ? v.Say(", times assumed", ", horas supuestas") : ""));
            terminal.Tables().Write(joined);
        }

        foreach (var note in run.Notes) terminal.Line("· " + note(v), 2);
        terminal.Line(run.IsDone ? v.Say("Every section is done or left.", "Cada sección está hecha o se dejó.") : v.Say("The run is not at its end.", "La aplicación no ha terminado."));
    }

    private static string ClockOf(LoggedMark logged, Run run) => Voice.Clock(Math.Max(0, logged.AtMs - run.Log[0].AtMs) / 1000.0);

    private static RecordAnswer Answer(Run run, IReadOnlyList<JoinedLap> laps, Voice v) => new(
        run.Plan.Job, run.Plan.Product, run.Plan.Fingerprint, run.IsDone,
        [.. run.Log.Select(l => new RecordedMark(l.AtMs, l.Document.Kind, MarkWords.Of(l, run, v), l.Counts, l.Mark.Stamp.Assumed))],
        [.. laps.Select(l => new RecordedLap(l.Lap.A, l.Lap.B, l.AgeMs, l.MarginMs, l.IsAssumed))],
        [.. run.Notes.Select(n => n(v))]);
}

internal sealed record RecordAnswer(string Job, string Product, string Fingerprint, bool Done, IReadOnlyList<RecordedMark> Marks, IReadOnlyList<RecordedLap> Laps, IReadOnlyList<string> Notes);

internal sealed record RecordedMark(long AtMs, string Kind, string Text, bool Counts, bool Assumed);

internal sealed record RecordedLap(string A, string B, long AgeMs, long MarginMs, bool Assumed);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(RecordAnswer))]
internal sealed partial class RecordJson : JsonSerializerContext;
