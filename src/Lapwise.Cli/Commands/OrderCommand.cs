using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Work.Order;
using Lapwise.Files;

namespace Lapwise.Cli.Commands;

/// <summary>The best order of a bare section graph: the worst lap age as small as it can be.</summary>
internal static class OrderCommand
{
    public static readonly Command Command = new("order", ["GRAPH"], [Phases.Work],
        v => v.Say("the best order of a bare graph of sections and laps", "el mejor orden de un grafo simple de secciones y solapes"),
        v => v.Say(
            """
            GRAPH is JSON or YAML: { "crew": 1, "sections": [ { "id": "a", "seconds": 90 } ], "laps": [ ["a", "b"] ], "before": [ ["a", "b"] ] }
            seconds is a number, or a list with one for each person. A section may have notBeforeS and startedAtS; a lap may be { "a", "b", "limitS" }. Lap age is the later end minus the earlier start; the worst one is made as small as possible.
            """,
            """
            GRAPH es JSON o YAML: { "crew": 1, "sections": [ { "id": "a", "seconds": 90 } ], "laps": [ ["a", "b"] ], "before": [ ["a", "b"] ] }
            seconds es un número, o una lista con uno por persona. Una sección puede llevar notBeforeS y startedAtS; un solape puede ser { "a", "b", "limitS" }. La edad de un solape es el último final menos el primer inicio; la peor se hace lo más pequeña posible.
            """),
        Run);

    private static Outcome Run(Request request, Terminal terminal)
    {
        var voice = request.Voice;
        var (json, unreadable) = DocumentText.JsonOf(request.Files[0], terminal.In);
        if (json is null) return Faults.Print(unreadable, voice, terminal);
        var (problem, faults) = OrderQuestion.Read(json);
        if (problem is null) return Faults.Print(faults, voice, terminal);

        var found = terminal.Show(v => v.Say("Looking for the best order…", "Buscando el mejor orden…"), voice, () => OrderSearch.Solve(problem));
        var answer = Answering.Order(problem, found);
        if (request.Json) terminal.Json(answer, AnswerJson.Default.OrderAnswer);
        else Print(answer, found.KeepsLimits, terminal, voice);
        return found.KeepsLimits ? Outcome.Done : Outcome.DoesNotWork;
    }

    private static void Print(OrderAnswer answer, bool keepsLimits, Terminal terminal, Voice v)
    {
        var table = Screen.Table(new Column.Text(v.Say("Section", "Sección")), new Column.Number(v.Say("Person", "Persona")), new Column.Number(v.Say("Start", "Inicio")), new Column.Number(v.Say("End", "Fin")));
        foreach (var s in answer.Sections) table.Row(s.Id, $"{s.Person + 1}", Voice.Clock(s.StartS), Voice.Clock(s.EndS));
        terminal.Tables().Write(table);

        terminal.Line(v.Say($"Worst lap age {Voice.Span(answer.WorstLapAgeS)}.", $"Peor edad de solape: {Voice.Span(answer.WorstLapAgeS)}."));
        terminal.Line(answer.Proven
            ? v.Say("Proven: no order of these sections at these times has a smaller one.", "Demostrado: ningún orden de estas secciones con estos tiempos tiene una menor.")
            : v.Say($"Not proven best: no order is below {Voice.Span(answer.BoundS)}.", $"No está demostrado que sea el mejor: ningún orden baja de {Voice.Span(answer.BoundS)}."));
        if (!keepsLimits)
        {
            terminal.Line(v.Say("✗ No order is known that keeps every limit of the laps.", "✗ No se conoce un orden que respete todos los límites de los solapes."));
            terminal.Line(v.Say("  → Make sections smaller, raise the limit, or add a person.", "  → Haga secciones más pequeñas, suba el límite o añada una persona."), 4);
        }
    }
}
