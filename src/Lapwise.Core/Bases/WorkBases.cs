using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Remedies;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Bases;

/// <summary>What the times of one coat's order of work rest on. Times from the first step of the coat.</summary>
public static class WorkBases
{
    public static Basis LapMargin(CoatWork work) => new("m = t_o − max a",
        [
            new(v => v.Say("open time t_o", "tiempo abierto t_o"), _ => Span(work.OpenTimeMs)),
            new(v => v.Say("worst of all lap and section ages, with what the age of the batch had used", "la peor edad de solape o sección, con lo que la edad de la mezcla ya había gastado"), _ => Span(work.WorstCountedMs)),
        ], Sources.ExactSearch);

    public static Basis WorstLap(CoatWork work) =>
        work.Laps.Where(l => l.Kind != LapKind.Break).MaxBy(l => l.AgeMs) is { } worst ? Lap(work, worst) : new Basis("—", [], Sources.ExactSearch);

    /// <summary>Of any one lap: whoever rolls, its later end less its earlier start.</summary>
    public static Basis Lap(CoatWork work, Lap lap)
    {
        var sections = work.Sections.ToDictionary(s => s.Id, StringComparer.Ordinal);
        return new("a = max(e₁, e₂) − min(s₁, s₂)",
            [.. new[] { lap.A, lap.B }.Select(id => sections[id]).Select(s => new BasisInput(
                v => v.Say($"section {s.Id}", $"sección {s.Id}"), v => v.Say($"start {Clock(s.StartMs)}, end {Clock(s.EndMs)}", $"inicio {Clock(s.StartMs)}, fin {Clock(s.EndMs)}")))],
            Sources.Trade);
    }

    public static Basis WorstSection(CoatWork work, IReadOnlyList<Person> crew) =>
        work.Sections.MaxBy(s => s.EndMs - s.StartMs) is { } worst ? Section(worst, crew[worst.Person].Pace, work.Coat.Product.Method) : new Basis("—", [], Sources.Trade);

    /// <summary>Of any one section, from its first wet material to the end of its own dry pass.</summary>
    public static Basis Section(Section section, Pace pace, ApplicationMethod method) => new(
        "a = t_w + t_r + A / r_w + l / r_e" + (method is ApplicationMethod.Rolled or ApplicationMethod.Poured ? " + A / r_d" : ""),
        [
            new(v => v.Say($"section {section.Id}, area A", $"sección {section.Id}, área A"), v => v.Area(section.FaceM2)),
            new(v => v.Say("edges l", "cantos l"), v => v.Run(section.EdgeM)),
            new(v => v.Say("walk t_w", "caminar t_w"), _ => Voice.Span(pace.WalkS)),
            new(v => v.Say("reload t_r", "recargar t_r"), _ => Voice.Span(pace.ReloadS)),
            new(v => v.Say("wet-out r_w", "mojado r_w"), v => v.AreaRate(pace.WetOutM2PerS)),
            new(v => v.Say("along edges r_e", "por los cantos r_e"), v => v.LengthRate(pace.EdgeMPerS)),
            .. method is ApplicationMethod.Rolled or ApplicationMethod.Poured ? [new BasisInput(v => v.Say("dry pass r_d", "pasada en seco r_d"), v => v.AreaRate(pace.DryPassM2PerS))] : Array.Empty<BasisInput>(),
        ], Sources.AsEntered);

    /// <summary>When each section is begun: after the one before it by the same hands, and when its batch is ready.</summary>
    public static Basis Starts(CoatWork work, IReadOnlyList<Person> crew) => new("s_i = max(e_{i−1}; t_b); e_i = s_i + a_i",
        [
            new(v => v.Say("section ages a_i", "edades de sección a_i"), _ => string.Join("; ", work.Sections.Select(s => $"{s.Id}: {Span(s.EndMs - s.StartMs)}"))),
            new(v => v.Say("batches ready t_b", "mezclas listas t_b"), _ => string.Join("; ", work.Batches.Select(b => $"{b.Id}: {Clock(b.ReadyMs)}"))),
            .. crew.Select(p => new BasisInput(v => v.Say($"{p.Name}: walk and reload, mix", $"{p.Name}: caminar y recargar, mezclar"), _ => $"{Voice.Span(p.Pace.WalkS + p.Pace.ReloadS)}, {Voice.Span(p.Pace.MixS)}")),
        ], Sources.AsEntered);

    /// <summary>The ages of all laps, each from the times of its two sections.</summary>
    public static Basis Laps(CoatWork work) => new("a = max(e₁, e₂) − min(s₁, s₂)",
        [.. work.Laps.Where(l => l.Kind != LapKind.Break).Select(l => new BasisInput(v => v.Say($"lap {l.A}–{l.B}", $"solape {l.A}–{l.B}"), _ => Span(l.AgeMs)))], Sources.Trade);

    /// <summary>What is left at a moment: of a film, and of a batch.</summary>
    public static Basis Moment(CoatWork work) => new("r = t_o − (t − s); r = t_p − (t − t_0)",
        [
            new(v => v.Say("open time t_o", "tiempo abierto t_o"), _ => Span(work.OpenTimeMs)),
            new(v => v.Say("pot life t_p", "vida de la mezcla t_p"), _ => Span(work.PotLifeMs)),
            new(v => v.Say("share of a batch's age that counts in the film", "parte de la edad de la mezcla que cuenta en la película"), v => v.Percent(work.BatchAgeShare)),
            new(v => v.Say("starts s and t_0", "inicios s y t_0"), v => v.Say("as the plan has them", "como los fija el plan")),
        ], Sources.AsEntered);

    /// <summary>What trying a remedy gave; null: no number is claimed for it.</summary>
    public static Basis? Remedy(Remedy remedy) => remedy.Tried is not { Work: var tried } ? null : new Basis("m = t_o − max a",
        [
            new(v => v.Say("planned anew with", "planificado de nuevo con"), remedy.Text),
            new(v => v.Say("open time t_o", "tiempo abierto t_o"), _ => Span(tried.OpenTimeMs)),
            new(v => v.Say("worst of all lap and section ages, with what the age of the batch had used", "la peor edad de solape o sección, con lo que la edad de la mezcla ya había gastado"), _ => Span(tried.WorstCountedMs)),
        ], Sources.ExactSearch);

    public static Basis AgeParts(AgeParts worst) => new("a = Σ t_i",
        [.. worst.Parts.Select(p => new BasisInput(p.Name, _ => Span(p.Ms)))], Sources.AsEntered);

    public static Basis Target(CoatWork work, Aims aims) => new("m = s · t_o",
        [
            new(v => v.Say("share s of the open time to keep in hand", "parte s del tiempo abierto que se reserva"), v => v.Percent(aims.MarginShare)),
            new(v => v.Say("open time t_o", "tiempo abierto t_o"), _ => Span(work.OpenTimeMs)),
        ], Sources.AsEntered);

    /// <summary>The usual ways, timed with the same sections and the same pace.</summary>
    public static Basis UsualWays(CoatWork work) => new("a = max (max(e₁, e₂) − min(s₁, s₂))",
        [
            new(v => v.Say("sections", "secciones"), v => v.Number(work.Sections.Count, 0)),
            new(v => v.Say("laps", "solapes"), v => v.Number(work.Laps.Count(l => l.Kind != LapKind.Break), 0)),
            new(v => v.Say("this plan, worst of all ages", "este plan, la peor edad"), _ => Span(work.WorstCountedMs)),
        ], Sources.Trade);

    public static Basis Bound(CoatWork work) => new("max a ≥ T",
        [
            new(v => v.Say("bound T, under which no order of these sections stays", "cota T, por debajo de la cual no queda ningún orden de estas secciones"), _ => Span(work.Proof.BoundMs)),
            new(v => v.Say("sections", "secciones"), v => v.Number(work.Sections.Count, 0)),
            .. work.Proof.Ways is { } ways ? [new BasisInput(v => v.Say("ways of cutting it holds for", "formas de dividir para las que vale"), v => v.Number(ways, 0))] : Array.Empty<BasisInput>(),
        ], Sources.ExactSearch);

    public static Basis WholeTime(CoatWork work) => new("t = max e",
        [new(v => v.Say("last end e", "último fin e"), _ => Clock(work.Sections.Select(s => s.EndMs).DefaultIfEmpty(0).Max()))], Sources.AsEntered);

    public static Basis UseBy(CoatWork work, Batch batch) => new("t = t_0 + t_p",
        [
            new(v => v.Say($"batch {batch.Id} is begun t_0", $"se empieza la mezcla {batch.Id} t_0"), _ => Clock(batch.MixStartMs)),
            new(v => v.Say("pot life t_p", "vida de la mezcla t_p"), _ => Span(work.PotLifeMs)),
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
