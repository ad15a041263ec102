using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work;

/// <summary>What does not work in a plan, or only narrowly, with the next step.</summary>
internal static class WorkReasons
{
    public static IEnumerable<Reason> Of(CoatWork work, Job job, bool keepsBatches)
    {
        if (work.Laps.Where(l => l.Kind != LapKind.Break && l.AgeMs > work.OpenTimeMs).MaxBy(l => l.AgeMs) is { } lap) yield return LapWouldClose(work, lap);
        if (work.Sections.Where(s => s.EndMs - s.StartMs > work.OpenTimeMs).MaxBy(s => s.EndMs - s.StartMs) is { } section) yield return SectionOutlivesOpenTime(work, section);
        if (work.LapMarginMs >= 0 && work.LapMarginMs < work.TargetMarginMs) yield return MarginNarrow(work);
        if (!keepsBatches) yield return BatchOutlivesPot(work);
        if (job.Crew.Count > 1 && work.Sections.All(s => s.Person == 0)) yield return OneRolls(job);
    }

    public static Reason LapWouldClose(CoatWork work, Lap lap)
    {
        var closed = work.Laps.Count(l => l.Kind != LapKind.Break && l.AgeMs > work.OpenTimeMs);
        return new Reason("LapWouldClose", Limit.AtYourWord,
            v => v.Say(
                $"The lap between sections {lap.A} and {lap.B} would be {Voice.Span(lap.AgeMs / 1000.0)} old when it is joined; the film stays open {Voice.Span(work.OpenTime.Seconds)}. Laps that would show: {closed}.",
                $"El solape entre las secciones {lap.A} y {lap.B} tendría {Voice.Span(lap.AgeMs / 1000.0)} al unirse; la película queda abierta {Voice.Span(work.OpenTime.Seconds)}. Solapes que se verían: {closed}."),
            v => work.Coat.Product.BreakAllowed
                ? v.Say(
                    "Work in a cooler hour, with a second person, at a planned break, or measure the open time on a test board.",
                    "Trabaje en una hora más fresca, con otra persona, con una junta prevista, o mida el tiempo abierto en un tablero de prueba.")
                : v.Say(
                    "Work in a cooler hour or with a second person, or measure the open time on a test board; this product allows no break.",
                    "Trabaje en una hora más fresca o con otra persona, o mida el tiempo abierto en un tablero de prueba; este producto no admite juntas."));
    }

    public static Reason SectionOutlivesOpenTime(CoatWork work, Section section) => new("SectionOutlivesOpenTime", Limit.AtYourWord,
        v => v.Say(
            $"Section {section.Id} takes {Voice.Span((section.EndMs - section.StartMs) / 1000.0)}; its own film stays open {Voice.Span(work.OpenTime.Seconds)}.",
            $"La sección {section.Id} tarda {Voice.Span((section.EndMs - section.StartMs) / 1000.0)}; su propia película queda abierta {Voice.Span(work.OpenTime.Seconds)}."),
        v => (work.Coat.Product.WholeTopAtOnce, work.Coat.Product.BreakAllowed) switch
        {
            (false, _) => v.Say("Allow smaller sections, or plan a break across it.", "Permita secciones más pequeñas, o prevea una junta que la cruce."),
            (true, true) => v.Say("This product is done over the whole top at once: plan a break at a seam, or work in a cooler hour.", "Este producto se aplica en toda la cubierta de una vez: prevea un corte en una junta, o trabaje en una hora más fresca."),
            _ => v.Say("This product is done over the whole top at once and allows no break: work in a cooler hour, or choose a slower product.", "Este producto se aplica en toda la cubierta de una vez y no admite juntas: trabaje en una hora más fresca, o elija un producto más lento."),
        });

    public static Reason MarginNarrow(CoatWork work) => new("MarginNarrow", Limit.Note,
        v => v.Say(
            $"The lap margin is {Voice.Span(work.LapMarginMs / 1000.0)}; you asked to keep {Voice.Span(work.TargetMarginMs / 1000.0)} in hand.",
            $"El margen de solape es {Voice.Span(work.LapMarginMs / 1000.0)}; usted pidió reservar {Voice.Span(work.TargetMarginMs / 1000.0)}."),
        v => v.Say("Have everything ready before the first batch is mixed, and keep to the order.", "Tenga todo listo antes de la primera mezcla y siga el orden."));

    private static Reason BatchOutlivesPot(CoatWork work) => new("BatchOutlivesPot", Limit.AtYourWord,
        v => v.Say(
            $"No way of mixing uses every batch up within its pot life of {Voice.Span(work.PotLife.Seconds)} and within the largest batch.",
            $"Ninguna forma de mezclar gasta cada mezcla dentro de su vida útil de {Voice.Span(work.PotLife.Seconds)} y de la mezcla más grande."),
        v => work.Coat.Product.WholeTopAtOnce
            ? v.Say("The whole top is done from one batch: use a larger container within the product's limit, keep the material cooler, or choose a product with a longer pot life.", "Toda la cubierta se hace con una sola mezcla: use un recipiente mayor dentro del límite del producto, mantenga el material más fresco, o elija un producto de vida más larga.")
            : v.Say("Allow smaller sections, a larger container within the product's limit, or keep the material cooler.", "Permita secciones más pequeñas, un recipiente mayor dentro del límite del producto, o mantenga el material más fresco."));

    private static Reason OneRolls(Job job) => new("OneRolls", Limit.Note,
        v => v.Say(
            $"{job.Crew[0].Name} rolls alone and keeps the margin; {job.Crew[1].Name} mixes each batch just before it is wanted.",
            $"{job.Crew[0].Name} aplica a solas y mantiene el margen; {job.Crew[1].Name} prepara cada mezcla justo antes de usarla."),
        v => v.Say("One hand to a visible face looks best. Put the steadiest roller first in the crew.", "Una sola mano por cara visible queda mejor. Ponga primero en el equipo a quien aplica con más constancia."));
}
