using Lapwise.Core;
using Lapwise.Core.Explain;

namespace Lapwise.Documents.Parts;

/// <summary>The job's name and, before anything else, whether its plan works.</summary>
internal static class HeadPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice)
    {
        yield return new Block.Title(whole.Job.Name, Summary(whole, voice));
        yield return Verdict(whole, voice);
        if (whole.Faults.Count > 0) yield return new Block.Items([.. whole.Faults.Select(f => new Item(ItemMark.Stop, f.Say(voice)))]);
        yield return new Block.Facts(
        [
            new(voice.Say("coated area, one coat", "superficie recubierta, una capa"), voice.Area(whole.Measured.Total.CoatedM2)),
            new(voice.Say("crew", "equipo"), string.Join(", ", whole.Job.Crew.Select(p => p.Name))),
            new(voice.Say("day and hour of the start", "día y hora de inicio"), "____________________"),
        ]);
    }

    private static string Summary(WholeJob whole, Voice voice) => voice.Say("Job sheet", "Hoja de trabajo") + ". "
        + string.Join("; ", whole.Work.Coats.Select((c, i) => $"{i + 1}. {c.Coat.Title(voice)}")) + ".";

    private static Block.Verdict Verdict(WholeJob whole, Voice voice)
    {
        if (whole.Faults.Count > 0) return LeftOut(voice);
        if (Failing(whole, voice) is { } failing)
            return new(Tone.DoesNotWork, voice.Say(
                $"This plan does not work: {failing}. The reasons and what would cure them stand with the coat.",
                $"Este plan no funciona: {failing}. Los motivos y su remedio están en cada capa."));
        return new(Tone.Works, voice.Say(
            "This plan works: the room allows every coat, and every lap is joined within the open time.",
            "Este plan funciona: la sala admite todas las capas y cada solape se une dentro del tiempo abierto."));
    }

    /// <summary>The coats whose plan does not work, by number; null: all work.</summary>
    public static string? Failing(WholeJob whole, Voice voice)
    {
        var failing = Enumerable.Range(0, whole.Work.Coats.Count).Where(i => !CoatPart.Works(whole, i)).Select(i => voice.Say($"coat {i + 1}", $"capa {i + 1}")).ToList();
        return failing.Count == 0 ? null : string.Join(", ", failing);
    }

    /// <summary>First on a paper that leaves the reasons to the job sheet; nothing where the plan works.</summary>
    public static IEnumerable<Block> Warning(WholeJob whole, Voice voice)
    {
        if (whole.Faults.Count > 0) yield return LeftOut(voice);
        else if (Failing(whole, voice) is { } failing)
            yield return new Block.Verdict(Tone.DoesNotWork, voice.Say(
                $"This plan does not work: {failing}. The reasons and what would cure them stand on the job sheet.",
                $"Este plan no funciona: {failing}. Los motivos y su remedio están en la hoja de trabajo."));
    }

    private static Block.Verdict LeftOut(Voice voice) => new(Tone.DoesNotWork, voice.Say(
        "Not a plan to work from: some of what was entered could not be used and is left out.",
        "No es un plan para trabajar: parte de lo anotado no se pudo usar y falta aquí."));
}
