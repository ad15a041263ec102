using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Bases;

/// <summary>What the times of one coat's order of work rest on. Times from the first step of the coat.</summary>
public static class WorkBases
{
    public static Basis LapMargin(CoatWork work) => new("m = t_open − max (age + used)",
        [
            new(v => v.Say("open time t_open", "tiempo abierto t_open"), _ => Span(work.OpenTimeMs)),
            new(v => v.Say("worst of all lap and section ages, with what the age of the batch had used", "la peor edad de solape o sección, con lo que la edad de la mezcla ya había gastado"), _ => Span(work.WorstCountedMs)),
        ], Sources.ExactSearch);

    public static Basis WorstLap(CoatWork work) =>
        work.Laps.Where(l => l.Kind != LapKind.Break).MaxBy(l => l.AgeMs) is { } worst ? Lap(work, worst) : new Basis("—", [], Sources.ExactSearch);

    /// <summary>Of any one lap: whoever rolls, its later end less its earlier start.</summary>
    public static Basis Lap(CoatWork work, Lap lap)
    {
        var sections = work.Sections.ToDictionary(s => s.Id, StringComparer.Ordinal);
        return new("age = max(end_a, end_b) − min(start_a, start_b)",
            [.. new[] { lap.A, lap.B }.Select(id => sections[id]).Select(s => new BasisInput(
                v => v.Say($"section {s.Id}", $"sección {s.Id}"), v => v.Say($"start {Clock(s.StartMs)}, end {Clock(s.EndMs)}", $"inicio {Clock(s.StartMs)}, fin {Clock(s.EndMs)}")))],
            Sources.Trade);
    }

    public static Basis WorstSection(CoatWork work, IReadOnlyList<Person> crew) =>
        work.Sections.MaxBy(s => s.EndMs - s.StartMs) is { } worst ? Section(worst, crew[worst.Person].Pace, work.Coat.Product.Method) : new Basis("—", [], Sources.Trade);

    /// <summary>Of any one section, from its first wet material to the end of its own dry pass.</summary>
    public static Basis Section(Section section, Pace pace, ApplicationMethod method) => new(
        "t = walk + reload + A / wet-out + l / edges" + (method is ApplicationMethod.Rolled or ApplicationMethod.Poured ? " + A / dry pass" : ""),
        [
            new(v => v.Say($"section {section.Id}, area A", $"sección {section.Id}, área A"), v => v.Area(section.FaceM2)),
            new(v => v.Say("edges l", "cantos l"), v => v.Run(section.EdgeM)),
            new(v => v.Say("walk", "caminar"), _ => Voice.Span(pace.WalkS)),
            new(v => v.Say("reload", "recargar"), _ => Voice.Span(pace.ReloadS)),
            new(v => v.Say("wet-out", "mojado"), v => v.AreaRate(pace.WetOutM2PerS)),
            new(v => v.Say("along edges", "por los cantos"), v => v.LengthRate(pace.EdgeMPerS)),
            .. method is ApplicationMethod.Rolled or ApplicationMethod.Poured ? [new BasisInput(v => v.Say("dry pass", "pasada en seco"), v => v.AreaRate(pace.DryPassM2PerS))] : Array.Empty<BasisInput>(),
        ], Sources.AsEntered);

    public static Basis Target(CoatWork work, Aims aims) => new("m_target = share · t_open",
        [
            new(v => v.Say("share of the open time to keep in hand", "parte del tiempo abierto que se reserva"), v => v.Percent(aims.MarginShare)),
            new(v => v.Say("open time t_open", "tiempo abierto t_open"), _ => Span(work.OpenTimeMs)),
        ], Sources.AsEntered);

    /// <summary>The usual ways, timed with the same sections and the same pace.</summary>
    public static Basis UsualWays(CoatWork work) => new("max over laps of max(end) − min(start)",
        [
            new(v => v.Say("sections", "secciones"), v => v.Number(work.Sections.Count, 0)),
            new(v => v.Say("laps", "solapes"), v => v.Number(work.Laps.Count(l => l.Kind != LapKind.Break), 0)),
            new(v => v.Say("this plan, worst of all ages", "este plan, la peor edad"), _ => Span(Math.Max(work.WorstLapAgeMs, work.WorstSectionAgeMs))),
        ], Sources.Trade);

    public static Basis Bound(CoatWork work) => new("no order of these sections has max age < bound",
        [
            new(v => v.Say("bound", "cota"), _ => Span(work.Proof.BoundMs)),
            new(v => v.Say("sections", "secciones"), v => v.Number(work.Sections.Count, 0)),
        ], Sources.ExactSearch);

    public static Basis WholeTime(CoatWork work) => new("t = last end − first mix",
        [new(v => v.Say("last end", "último fin"), _ => Clock(work.Sections.Select(s => s.EndMs).DefaultIfEmpty(0).Max()))], Sources.AsEntered);

    public static Basis UseBy(CoatWork work, Batch batch) => new("use by = first contact of A and B + pot life",
        [
            new(v => v.Say($"batch {batch.Id} is begun", $"se empieza la mezcla {batch.Id}"), _ => Clock(batch.MixStartMs)),
            new(v => v.Say("pot life", "vida de la mezcla"), _ => Span(work.PotLifeMs)),
        ], Sources.AsEntered);

    public static Basis Risk(CoatRisk risk) => new("p = n / N; 95 %: (p + z²/2N ± z √(p(1 − p)/N + z²/4N²)) / (1 + z²/N)",
        [
            new(v => v.Say("trials N", "pruebas N"), v => v.Number(risk.Trials, 0)),
            new(v => v.Say("trials with a line n", "pruebas con línea n"), v => v.Number(risk.Line.Times, 0)),
            new(v => v.Say("each section varies by", "cada sección varía"), v => v.Percent(risk.Spreads.Section)),
            new(v => v.Say("mixing varies by", "la mezcla varía"), v => v.Percent(risk.Spreads.Mixing)),
            new(v => v.Say("what tools keep varies by", "lo que retienen los útiles varía"), v => v.Percent(risk.Spreads.Loss)),
        ], Sources.Wilson);

    private static string Span(long ms) => Voice.Span(ms / 1000.0);

    private static string Clock(long ms) => Voice.Clock(ms / 1000.0);
}
