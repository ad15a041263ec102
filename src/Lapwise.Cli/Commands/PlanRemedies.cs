using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work.Remedies;

namespace Lapwise.Cli.Commands;

/// <summary>What would make a coat's plan work, best first, and what eats its margin.</summary>
internal static class PlanRemedies
{
    public static IReadOnlyList<RemedyAnswer> Answer(WholeJob whole, int coat, IReadOnlyList<Product> products, Voice v) =>
        [.. Of(whole, coat, products).Select(r => Answering.Remedy(r, v))];

    public static void Print(WholeJob whole, int coat, IReadOnlyList<Product> products, Voice v, Terminal terminal)
    {
        var work = whole.Work.Coats[coat];
        if (AgeParts.OfWorst(work, whole.Job.Crew) is { } worst)
        {
            terminal.Line(v.Say($"What eats the margin: {worst.Name(v)}, {Span(worst.AgeMs)}", $"Qué se come el margen: {worst.Name(v)}, {Span(worst.AgeMs)}"));
            var parts = Screen.Table(new Column.Word(v.Say("Part", "Parte")), new Column.Number(v.Say("Time", "Tiempo")), new Column.Number(v.Say("Share", "Parte del total")));
            foreach (var (name, ms) in worst.Parts) parts.Row(name(v), Span(ms), v.Percent((double)ms / worst.AgeMs));
            terminal.Tables().Write(parts);
        }

        var remedies = terminal.Show(x => x.Say("Looking for remedies…", "Buscando remedios…"), v, () => Of(whole, coat, products));
        if (remedies.Count == 0)
        {
            terminal.Line((Remedying.IsWanted(work, whole.Conditions.Coats[coat]), work.Holds) switch
            {
                (true, _) => v.Say("Remedies: none that was tried helps.", "Remedios: ninguno de los probados ayuda."),
                (_, true) => v.Say("Remedies: none is needed; the margin asked for is kept.", "Remedios: no hacen falta; se mantiene el margen pedido."),
                _ => v.Say("Remedies: none in the work; what does not work lies in the room or the material, and is said above.", "Remedios: ninguno en el trabajo; lo que no funciona está en la sala o en el material, y se dice arriba."),
            });
            return;
        }

        terminal.Line(remedies.Any(r => r.Tried is null)
            ? v.Say("Remedies, best first; each was really planned, but for those that are open", "Remedios, el mejor primero; cada uno se planificó de verdad, salvo los inciertos")
            : v.Say("Remedies, best first; each was really planned", "Remedios, el mejor primero; cada uno se planificó de verdad"));
        var table = Screen.Table(new Column.Text(v.Say("What to do", "Qué hacer")), new Column.Text(v.Say("What changes", "Qué cambia")), new Column.Number(v.Say("Margin", "Margen")), new Column.Word(v.Say("Holds", "Aguanta")));
        foreach (var r in remedies)
            table.Row(r.Text(v), r.Change(v), r.LapMarginMs is { } ms ? Span(ms) : "–", Standing(r, v));
        terminal.Tables().Write(table);
    }

    private static IReadOnlyList<Remedy> Of(WholeJob whole, int coat, IReadOnlyList<Product> products) =>
        Remedy.Ranked(Remedying.For(whole.Job, whole.Measured, coat, products));

    private static string Standing(Remedy r, Voice v) => r switch
    {
        { KeepsTarget: true } => v.Say("✓ yes", "✓ sí"),
        { Holds: true } => v.Say("· narrow", "· justo"),
        { Tried: null } => v.Say("? open", "? incierto"),
        _ => v.Say("✗ no", "✗ no"),
    };

    private static string Span(long ms) => Voice.Span(ms / 1000.0);
}
