using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Timeline;
using Lapwise.Drawings;

namespace Lapwise.Documents.Parts;

/// <summary>The days of the job as the customer is told them: who comes when, what waits, and when what may be used.</summary>
internal static class DaysPart
{
    /// <param name="ownPage">Handed out for itself.</param>
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice, Paper paper, bool ownPage = false)
    {
        var days = whole.Timeline;
        if (days.Steps.Count == 0) yield break;
        yield return new Block.Heading(1, voice.Say("The days of the work", "Los días de la obra"), ownPage);
        if (!days.Holds) yield return NotToPromise(days, voice);
        if (days.IsSettled) yield return new Block.Paragraph(voice.Say("Settled days.", "Días acordados."));
        yield return new Block.Facts([.. days.UseDates.Select(u => new Fact(Say.From(u.Use, voice) + (u.Origin == Origin.Guess ? voice.Say(" (guess)", " (suposición)") : ""), SiteClock.Moment(days, u.From, voice)))]);
        yield return new Block.Figures([new Figure(voice.Say("Day by day; the line below is the temperature of the top", "Día a día; la línea de abajo es la temperatura de la cubierta"), TimelineDrawing.Draw(days, voice, new Sheet(paper.InnerWidthPt - 4, 420, 8)))]);
        yield return new Block.Table(
            [new(voice.Say("day", "día"), 1.2), new(voice.Say("hours", "horas"), 1.6), new(voice.Say("what is done", "qué se hace"), 3.6), new(voice.Say("by", "quién"), 1.4)],
            [.. days.Steps.SelectMany(s => s.Parts.Select(p => Row(days, s, p.From, p.To, voice)))]);
        yield return new Block.Items(
        [
            new(ItemMark.Caution, voice.Say("While a coat is wet and until the vapour has cleared: nobody, no child and no animal in the room.", "Mientras una capa esté húmeda y hasta que se vaya el vapor: nadie, ni niños ni animales, en la sala.")),
            new(ItemMark.Point, voice.Say("Keep the room at the temperature it was read at: a colder room hardens later.", "Mantenga la sala a la temperatura leída: con más frío endurece más tarde.")),
            .. days.Reasons.Where(r => r.Limit != Limit.Note).Select(r => Say.Reason(r, voice)),
        ]);
    }

    public static Block.Verdict NotToPromise(JobTimeline days, Voice voice) => new(Tone.DoesNotWork, days.OutOfDate is null
        ? voice.Say("These days do not work yet: do not promise them.", "Estos días aún no funcionan: no los prometa.")
        : voice.Say("Do not hand these days out: others were settled before the job was changed. Settle again, then print again.", "No entregue estos días: se acordaron otros antes de cambiar el trabajo. Acuérdelos de nuevo y vuelva a imprimir."));

    private static Row Row(JobTimeline days, PlannedStep step, DateTime from, DateTime to, Voice voice) => new(
    [
        SiteClock.Day(days, from, voice), $"{voice.Hour(from)} – {voice.Hour(to)}",
        (step.IsInserted ? "+ " : "") + step.Name(voice), SiteClock.Say(step.By, voice),
    ], Strong: step.Kind == SiteStep.Coat);
}
