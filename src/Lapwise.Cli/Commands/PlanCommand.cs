using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Measure;
using Lapwise.Core.Supply;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Pouring;
using Lapwise.Drawings;

namespace Lapwise.Cli.Commands;

/// <summary>The order of work of every coat, with its batches.</summary>
internal static class PlanCommand
{
    public static readonly Command Command = JobCommand.WithProducts("plan", [Phases.Work, Phases.Supply],
        v => v.Say("sections in order, laps with their age, batches on the clock", "secciones en orden, solapes con su edad, mezclas con hora"),
        v => v.Say("Lap age is the later end of two sections minus the earlier start. The margin is the open time minus the worst of all lap and section ages. --out x.svg draws each coat on each top. Ends with 1 where the plan does not work.",
            "La edad de un solape es el último final de dos secciones menos el primer inicio. El margen es el tiempo abierto menos la peor edad de solape o sección. --out x.svg dibuja cada capa en cada cubierta. Termina con 1 donde el plan no funciona."),
        (whole, input, request, terminal) =>
        {
            if (request.OutFile is { } path && Draw(whole, path, input.Voice, terminal) is { } unwritten) return unwritten;
            if (request.Json) terminal.Json(Answer(whole, input, request), AnswerJson.Default.PlanAnswer);
            else for (var coat = 0; coat < whole.Work.Coats.Count; coat++) Print(whole, coat, input, request, terminal);
            if (!request.Json) terminal.Cautions(whole.Job, input.Voice);
            return Enumerable.Range(0, whole.Work.Coats.Count).All(whole.Holds) ? Outcome.Done : Outcome.DoesNotWork;
        });

    /// <summary>A picture for each coat and top: the file named, or, of several, that name with coat and top in it.</summary>
    /// <returns>Null where all were written.</returns>
    private static Outcome? Draw(WholeJob whole, string path, Voice v, Terminal terminal)
    {
        var drawn = whole.Work.Coats.SelectMany((work, coat) => whole.Measured.Under(work.Coat).Tops.Select((top, place) => (work, top, Name: $"-{coat + 1}-{place + 1}"))).ToList();
        foreach (var (work, top, name) in drawn)
        {
            var file = drawn.Count == 1 ? path : Path.Combine(Path.GetDirectoryName(path) ?? "", Path.GetFileNameWithoutExtension(path) + name + Path.GetExtension(path));
            if (OutFile.Write(file, PlanDrawing.Draw(top, work, whole.Job.Crew, v, Sheet.Wide), v, terminal) is { } unwritten) return unwritten;
        }

        return null;
    }

    private static PlanAnswer Answer(WholeJob whole, JobInput input, Request request) => new([.. Answering.Plan(whole, input.Voice).Coats.Select((answer, coat) => answer with
    {
        Risk = request.Risk ? PlanRisk.Answer(whole, coat) : null,
        Remedies = request.Remedies ? PlanRemedies.Answer(whole, coat, input.AllProducts, input.Voice) : null,
    })]);

    private static void Print(WholeJob whole, int coat, JobInput input, Request request, Terminal terminal)
    {
        Print(whole, coat, input.Voice, terminal);
        if (request.Risk) PlanRisk.Print(whole, coat, input.Voice, terminal);
        if (request.Remedies) PlanRemedies.Print(whole, coat, input.AllProducts, input.Voice, terminal);
    }

    private static void Print(WholeJob whole, int coat, Voice v, Terminal terminal)
    {
        var work = whole.Work.Coats[coat];
        if (coat > 0) terminal.Line();
        terminal.Line(v.Say($"Coat {coat + 1}: {work.Coat.Title(v)}", $"Capa {coat + 1}: {work.Coat.Title(v)}"));
        terminal.Line(whole.Holds(coat)
            ? v.Say($"✓ Holds with a margin of {Seconds(work.LapMarginMs)}", $"✓ Aguanta con un margen de {Seconds(work.LapMarginMs)}")
            : v.Say($"✗ Does not work as it stands; margin {Seconds(work.LapMarginMs)}", $"✗ Así no funciona; margen {Seconds(work.LapMarginMs)}"));
        terminal.Line(v.Say(
            $"Open time {Seconds(work.OpenTimeMs)} ({Screen.Of(work.OpenTime.Origin, v)}); oldest lap {Seconds(work.WorstLapAgeMs)}, longest section {Seconds(work.WorstSectionAgeMs)}.",
            $"Tiempo abierto {Seconds(work.OpenTimeMs)} ({Screen.Of(work.OpenTime.Origin, v)}); solape más viejo {Seconds(work.WorstLapAgeMs)}, sección más larga {Seconds(work.WorstSectionAgeMs)}."), 2);
        terminal.Line(ProofWords.Of(work, v), 2);
        foreach (var usual in work.Baselines)
            terminal.Line(v.Say($"The usual way: {usual.Text(v)}: oldest lap {Seconds(usual.WorstAgeMs)}", $"Forma usual: {usual.Text(v)}: solape más viejo {Seconds(usual.WorstAgeMs)}") + Against(usual.WorstAgeMs, work, v), 2);
        foreach (var reason in whole.ReasonsOf(coat)) terminal.Reason(reason, v);

        Sections(whole, work, v, terminal);
        Steps(whole, work, v, terminal);
        Laps(work, v, terminal);
        Batches(whole, coat, v, terminal);
    }

    private static string Against(long ageMs, CoatWork work, Voice v) => ageMs <= work.OpenTimeMs
        ? v.Say(", within the open time.", ", dentro del tiempo abierto.")
        : v.Say($", {Seconds(ageMs - work.OpenTimeMs)} too late.", $", {Seconds(ageMs - work.OpenTimeMs)} tarde.");

    private static void Sections(WholeJob whole, CoatWork work, Voice v, Terminal terminal)
    {
        var crewed = whole.Job.Crew.Count > 1;
        List<Column> columns = [new Column.Number("#"), new Column.Text(v.Say("Face", "Cara")), new Column.Number(v.Say("Area", "Área")), new Column.Word(v.Say("Stand", "Lado")), new Column.Word(v.Say("Batch", "Mezcla")), new Column.Number(v.Say("Start", "Inicio")), new Column.Number(work.Steps.Count > 0 ? v.Say("Level", "Nivelar") : v.Say("Dry pass", "En seco")), new Column.Number(v.Say("Done", "Fin"))];
        if (crewed) columns.Insert(3, new Column.Text(v.Say("Person", "Persona")));
        var table = Screen.Table([.. columns]);
        foreach (var s in work.Sections)
        {
            List<string> cells = [s.Id, FaceWords.OnTop(s.Face, v), v.Area(s.FaceM2), s.StandSide?.ToString() ?? "", s.Batch, Clock(s.StartMs), Clock(s.WetEndMs), Clock(s.EndMs)];
            if (crewed) cells.Insert(3, whole.Job.Crew[s.Person].Name);
            table.Row(cells);
        }

        terminal.Tables().Write(table);
    }

    private static void Steps(WholeJob whole, CoatWork work, Voice v, Terminal terminal)
    {
        if (work.Steps.Count == 0) return;
        var table = Screen.Table(new Column.Number(v.Say("Start", "Inicio")), new Column.Number(v.Say("Done", "Fin")), new Column.Text(v.Say("What", "Qué")), new Column.Text(v.Say("Top", "Cubierta")), new Column.Text(v.Say("Person", "Persona")), new Column.Word(v.Say("Due", "Plazo")));
        foreach (var step in work.Steps)
            table.Row(Clock(step.StartMs), Clock(step.EndMs), StepWords.What(step, v), step.Top, whole.Job.Crew[step.Person].Name, (step.IsInTime ? "" : "✗ ") + StepWords.When(step, v));
        terminal.Tables().Write(table);
    }

    private static void Laps(CoatWork work, Voice v, Terminal terminal)
    {
        if (work.Laps.Count == 0) return;
        var table = Screen.Table(new Column.Word(v.Say("Lap", "Solape")), new Column.Word(v.Say("Kind", "Clase")), new Column.Number(v.Say("Length", "Longitud")), new Column.Number(v.Say("Age", "Edad")), new Column.Number(v.Say("Margin", "Margen")));
        foreach (var lap in work.Laps.OrderByDescending(l => l.Kind != LapKind.Break).ThenBy(work.MarginMs))
        {
            var margin = lap.Kind == LapKind.Break ? v.Say("no limit", "sin límite") : Seconds(work.MarginMs(lap));
            table.Row($"{lap.A}–{lap.B}", Kind(lap.Kind, v), v.Run(lap.LengthM), Seconds(lap.AgeMs), margin);
        }

        terminal.Tables().Write(table);
    }

    private static string Kind(LapKind kind, Voice v) => kind switch
    {
        LapKind.Flat => v.Say("flat", "plano"),
        LapKind.Fold => v.Say("fold", "pliegue"),
        _ => v.Say("joint", "junta"),
    };

    private static void Batches(WholeJob whole, int coat, Voice v, Terminal terminal)
    {
        var tickets = whole.Supply.Coats[coat].Tickets.ToDictionary(t => t.Batch, StringComparer.Ordinal);
        var table = Screen.Table(
        [
            new Column.Word(v.Say("Batch", "Mezcla")), new Column.Number(v.Say("Mix", "Mezclar")), new Column.Number(v.Say("Use by", "Límite")),
            .. whole.Work.Coats[coat].Coat.Product.Recipe.Parts.Select(part => new Column.Number(part.Name)),
            new Column.Number(v.Say("Thinner", "Diluyente")), new Column.Number(v.Say("Ratio off", "Desvío")),
        ]);
        foreach (var batch in whole.Work.Coats[coat].Batches)
        {
            if (!tickets.TryGetValue(batch.Id, out var t)) continue;
            table.Row(
            [
                batch.Id, Clock(batch.MixStartMs), Clock(batch.UseByMs),
                .. t.Parts.Select(part => Measured(part.Ml, part.G, v)), t.ThinnerMl > 0 ? Measured(t.ThinnerMl, t.ThinnerG, v) : "–", v.Percent(t.RatioError, 1),
            ]);
        }

        terminal.Tables().Write(table);
    }

    private static string Measured(double ml, double grams, Voice v) => $"{v.Volume(ml)}\n{v.Mass(grams)}";

    private static string Clock(long ms) => Voice.Clock(ms / 1000.0);

    private static string Seconds(long ms) => Voice.Span(ms / 1000.0);
}
