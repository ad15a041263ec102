using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.OnSite;

/// <summary>Marks, places and points of the preparation in words.</summary>
public static class MarkWords
{
    /// <summary>One line of the log, without its time.</summary>
    public static string Of(LoggedMark logged, Run run, Voice v) => logged.Mark.What switch
    {
        What.Issued w => v.Say($"Plan issued: {w.Plan.Coating()}, {w.Plan.Sections.Count} sections (inputs {Fingerprint.Printed(w.Plan.Fingerprint)}, program {w.Plan.Core}).", $"Plan emitido: {w.Plan.Coating()}, {w.Plan.Sections.Count} secciones (datos {Fingerprint.Printed(w.Plan.Fingerprint)}, programa {w.Plan.Core})."),
        What.BatchMixed w => v.Say($"Batch {w.Batch}: A and B together, {Name(run, w.Person)}.", $"Mezcla {w.Batch}: A y B juntos, {Name(run, w.Person)}."),
        What.SectionWet { Batch: { } batch } w => v.Say($"Section {w.Section} begun from batch {batch}, {Name(run, w.Person)}.", $"Sección {w.Section} empezada con la mezcla {batch}, {Name(run, w.Person)}."),
        What.SectionWet w => v.Say($"Section {w.Section} begun, {Name(run, w.Person)}.", $"Sección {w.Section} empezada, {Name(run, w.Person)}."),
        What.SectionDry w => v.Say($"Section {w.Section}: dry pass done, {Name(run, w.Person)}.", $"Sección {w.Section}: pasada en seco hecha, {Name(run, w.Person)}."),
        What.StepDone w => (run.Plan.Steps.FirstOrDefault(s => s.Id == w.Step) is { } step ? Of(step, v) : w.Step) + v.Say(": done.", ": hecho."),
        What.Paused => v.Say("All hands stop.", "Todos paran."),
        What.Resumed => v.Say("Work goes on.", "Sigue el trabajo."),
        What.Reading w => v.Say($"Read: {Quantity(w.Quantity, v)} {Value(w, v)}.", $"Leído: {Quantity(w.Quantity, v)} {Value(w, v)}."),
        What.Replanned w => v.Say($"New order: {Sequence(w.Turns)}.", $"Nuevo orden: {Sequence(w.Turns)}."),
        What.StoppedBefore w => v.Say($"Left for another day: {string.Join(", ", w.Left)}.", $"Se dejan para otro día: {string.Join(", ", w.Left)}."),
        What.Undone w => run.Log.FirstOrDefault(l => l.Mark.Stamp.Id == w.Mark) is { Mark.What: not What.Undone } of
            ? v.Say($"Undone: {Of(of, run, v)}", $"Deshecho: {Of(of, run, v)}") : v.Say("Undoing taken back.", "Se deshace lo deshecho."),
        What.Noted w => v.Say($"“{w.Text}”", $"«{w.Text}»"),
        What.Checked w => v.Say("Seen to: ", "Comprobado: ") + (Preparation.All.FirstOrDefault(p => p.Id == w.Point)?.Text(v) ?? w.Point),
        What.TakenUp w => v.Say($"At the finisher's word, against “{Against(w, run, v)}”: {w.Why}", $"Bajo la palabra del aplicador, contra «{Against(w, run, v)}»: {w.Why}"),
        What.Led w => v.Say($"Device {RunClock.NameOf(w.Device)} leads.", $"Dirige el dispositivo {RunClock.NameOf(w.Device)}."),
        What.Paired w => v.Say($"Clock held against the server: {Voice.Span(w.OffsetMs / 1000.0)} apart, known to {Voice.Span(w.RoundTripMs / 2000.0)}.", $"Reloj comparado con el servidor: {Voice.Span(w.OffsetMs / 1000.0)} de diferencia, con precisión de {Voice.Span(w.RoundTripMs / 2000.0)}."),
        _ => v.Say($"Not known to this program: {logged.Document.Kind}.", $"Desconocido para este programa: {logged.Document.Kind}."),
    };

    /// <summary>How a mark came about, where it was not simply tapped: undone, assumed, dated back.</summary>
    public static string How(LoggedMark logged, Voice v)
    {
        string?[] how =
        [
            logged.Counts ? null : v.Say("undone", "deshecha"),
            logged.Mark.Stamp.Assumed ? v.Say("assumed", "supuesta") : null,
            logged.Mark.Stamp.BackMs > 0 && !logged.Mark.Stamp.Assumed ? v.Say($"dated back {Voice.Span(logged.Mark.Stamp.BackMs / 1000.0)}", $"{Voice.Span(logged.Mark.Stamp.BackMs / 1000.0)} antes") : null,
        ];
        return string.Join(", ", how.Where(h => h is not null));
    }

    /// <summary>A lap by its two sections, the lower number first.</summary>
    public static string Of(IssuedLap lap) => (lap.A.Length, lap.A).CompareTo((lap.B.Length, lap.B)) <= 0 ? $"{lap.A}–{lap.B}" : $"{lap.B}–{lap.A}";

    public static string Of(IssuedStep step, Voice v) => Of(step.Kind, v) + (step.Top.Length > 0 ? $", {step.Top}" : "");

    public static string Of(BesideKind kind, Voice v) => kind switch
    {
        BesideKind.TapeOff => v.Say("Tape off", "Quitar la cinta"),
        BesideKind.DripsScraped => v.Say("Scrape the drips", "Raspar las gotas"),
        BesideKind.EdgesLookedUnder => v.Say("Look under the edges", "Mirar bajo los cantos"),
        BesideKind.BubblesBroughtOut => v.Say("Bring out the bubbles", "Sacar las burbujas"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };

    /// <summary>Where a section lies.</summary>
    public static string Place(IssuedSection s, Voice v) => FaceWords.OnTop(s.Top, s.Face, s.Side, v);

    public static string Name(Run run, int person) => person >= 0 && person < run.Plan.Crew.Count ? run.Plan.Crew[person] : $"{person + 1}";

    private static string Against(What.TakenUp taken, Run run, Voice v) => run.Plan.Against.FirstOrDefault(a => a.Code == taken.Code)?.Say(v) ?? taken.Code;

    private static string Sequence(IReadOnlyList<IssuedTurn> turns) => string.Join(" → ", turns.Select(t => t.Section));

    private static string Quantity(string quantity, Voice v) => quantity switch
    {
        "air" => v.Say("air", "aire"),
        "surface" => v.Say("top", "cubierta"),
        "material" => v.Say("material", "material"),
        "humidity" => v.Say("humidity", "humedad"),
        "wetFilm" => v.Say("wet film", "película húmeda"),
        _ => quantity,
    };

    private static string Value(What.Reading r, Voice v) => r.Quantity switch
    {
        "air" or "surface" or "material" => v.Temperature(r.Value),
        "humidity" => v.Percent(r.Value),
        "wetFilm" => v.Film(r.Value),
        _ => v.Number(r.Value),
    };
}
