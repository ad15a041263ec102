using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work.Pouring;

namespace Lapwise.Core.Work.Moments;

/// <summary>A moment of a plan in sentences: what its picture shows, for those who read or listen.</summary>
public static class MomentWords
{
    /// <summary>Who does what; a sentence for each of the crew.</summary>
    public static IReadOnlyList<string> People(Moment moment, IReadOnlyList<Person> crew, Voice v) =>
        [.. moment.People.Select(p => $"{crew[p.Person].Name}: {Of(p.Doing, v)}")];

    /// <summary>What is mixed, in use or gone off; nothing of a batch not mixed yet or used up.</summary>
    public static IReadOnlyList<string> Batches(Moment moment, Voice v) => [.. moment.Batches.Select(b => Of(b, v)).OfType<string>()];

    /// <summary>The film: sections by how they stand, and the lap that runs out next.</summary>
    public static IReadOnlyList<string> Film(Moment moment, Voice v)
    {
        var said = new List<string>();
        foreach (var state in Enum.GetValues<SectionState>())
        {
            var ids = moment.Sections.Where(s => s.State == state).Select(s => state == SectionState.Open ? $"{s.Section.Id} ({Span(s.OpenLeftMs)})" : s.Section.Id).ToList();
            if (ids.Count > 0) said.Add($"{Name(state, v)}: {string.Join(", ", ids)}.");
        }
        if (moment.Laps.Where(l => l.State == LapState.Waiting).MinBy(l => l.LeftMs) is { } next)
            said.Add(v.Say($"Next lap to run out: {next.Lap.A}–{next.Lap.B}, in {Span(next.LeftMs)}.", $"El próximo solape en cerrarse: {next.Lap.A}–{next.Lap.B}, en {Span(next.LeftMs)}."));
        var lost = moment.Laps.Where(l => l.State == LapState.Lost).Select(l => $"{l.Lap.A}–{l.Lap.B}").ToList();
        if (lost.Count > 0) said.Add(v.Say($"Lost, a line shows: {string.Join(", ", lost)}.", $"Perdido, se ve una línea: {string.Join(", ", lost)}."));
        return said;
    }

    public static string Name(SectionState state, Voice v) => state switch
    {
        SectionState.Untouched => v.Say("Not begun", "Sin empezar"),
        SectionState.Wetting => v.Say("Being wetted", "Mojándose"),
        SectionState.Finishing => v.Say("Being finished", "Terminándose"),
        SectionState.Open => v.Say("Wet and open, still to be joined", "Húmeda y abierta, falta unirla"),
        SectionState.Joined => v.Say("Done and joined", "Hecha y unida"),
        SectionState.Closed => v.Say("✗ Closed too early", "✗ Cerrada antes de tiempo"),
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    private static string Of(Doing doing, Voice v) => doing switch
    {
        Doing.Rolls { IsFinishing: false } r => v.Say($"wets section {r.Section.Id}{From(r.Section, v)}, until {Clock(r.UntilMs)}.", $"moja la sección {r.Section.Id}{From(r.Section, v)}, hasta {Clock(r.UntilMs)}."),
        Doing.Rolls r => v.Say($"dry pass over section {r.Section.Id}{From(r.Section, v)}, until {Clock(r.UntilMs)}.", $"pasada en seco en la sección {r.Section.Id}{From(r.Section, v)}, hasta {Clock(r.UntilMs)}."),
        Doing.Mixes m => v.Say($"mixes batch {m.Batch.Id} until {Clock(m.Batch.MixEndMs)}.", $"prepara la mezcla {m.Batch.Id} hasta {Clock(m.Batch.MixEndMs)}."),
        Doing.Steps s => $"{s.Step.Top}, {StepWords.What(s.Step, v)}, {v.Say("until", "hasta")} {Clock(s.Step.EndMs)}.",
        Doing.Waits w => v.Say($"nothing until {Clock(w.UntilMs)}.", $"nada hasta {Clock(w.UntilMs)}."),
        Doing.Through => v.Say("nothing more in this coat.", "nada más en esta capa."),
        _ => throw new ArgumentOutOfRangeException(nameof(doing)),
    };

    private static string? Of(BatchMoment b, Voice v) => b.State switch
    {
        BatchState.NotMixed or BatchState.UsedUp => null,
        BatchState.BeingMixed => v.Say($"Batch {b.Batch.Id}: being mixed, {Span(b.AgeMs)} old.", $"Mezcla {b.Batch.Id}: preparándose, lleva {Span(b.AgeMs)}."),
        BatchState.Ready => v.Say($"Batch {b.Batch.Id}: ready, {Span(b.AgeMs)} old, {Span(b.LeftMs)} left.", $"Mezcla {b.Batch.Id}: lista, lleva {Span(b.AgeMs)}, quedan {Span(b.LeftMs)}."),
        BatchState.InUse => v.Say($"Batch {b.Batch.Id}: in use, {Span(b.AgeMs)} old, {Span(b.LeftMs)} left.", $"Mezcla {b.Batch.Id}: en uso, lleva {Span(b.AgeMs)}, quedan {Span(b.LeftMs)}."),
        BatchState.Outlived => v.Say($"✗ Batch {b.Batch.Id}: past its pot life by {Span(-b.LeftMs)}. Do not use it.", $"✗ Mezcla {b.Batch.Id}: pasada de su vida útil por {Span(-b.LeftMs)}. No la use."),
        _ => throw new ArgumentOutOfRangeException(nameof(b)),
    };

    private static string From(Section section, Voice v) => section.StandSide is { } side ? v.Say($" from side {side}", $" desde el lado {side}") : "";

    private static string Clock(long ms) => Voice.Clock(ms / 1000.0);

    private static string Span(long ms) => Voice.Span(ms / 1000.0);
}
