using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work;

/// <summary>What does not work in a plan, or only narrowly, with the next step.</summary>
internal static class WorkReasons
{
    public static IEnumerable<Reason> Of(CoatWork work, Job job, bool keepsBatches)
    {
        if (Closed(work).FirstOrDefault() is { } lap) yield return LapWouldClose(work, lap);
        if (Outlived(work) is { } section) yield return SectionOutlivesOpenTime(work, section);
        if (work.LapMarginMs >= 0 && work.LapMarginMs < work.TargetMarginMs) yield return MarginNarrow(work);
        if (!keepsBatches) yield return work.Batches.FirstOrDefault(b => b.ReadyMs >= b.UseByMs) is { } never ? NeverReady(work, never) : BatchOutlivesPot(work);
        if (work.Batches.Count > 1) yield return BatchesChange(work);
        if (work.Rollers == 1 && work.Batches.Any(work.StandsMixed)) yield return MixedAhead(work);
        if (WaitsWhileItStands(work)) yield return StandingIsWaitedOut(work);
        foreach (var older in OlderBatch(work)) yield return older;
        if (work.Coat.Product.WholeTopAtOnce && WholeFaceByOne(work, job) is { } whole) yield return whole;
        else if (job.Crew.Count > 1 && work.Rollers == 1) yield return work.LapMarginMs >= work.TargetMarginMs ? OneRolls(work, job) : MoreHandsDoNotHelp(work, job);
    }

    /// <summary>A face that is done at one time, or a pour, is given to one pair of hands although there are more; null where the crew is one.</summary>
    public static Reason? WholeFaceByOne(CoatWork work, Job job)
    {
        if (job.Crew.Count == 1 || work.Sections.Count == 0) return null;
        var who = string.Join(", ", work.Sections.Select(s => job.Crew[s.Person].Name).Distinct());
        var isPoured = work.Coat.Product.Method is ApplicationMethod.Poured;
        return new Reason("WholeFaceByOne", Limit.Note,
            v => isPoured
                ? v.Say(
                    $"Each pour is spread and levelled by one person ({who}), although {job.Crew.Count} work here: shared, it would be two pours with a lap between them.",
                    $"Cada vertido lo extiende y nivela una sola persona ({who}), aunque trabajan {job.Crew.Count}: repartido serían dos vertidos con un solape en medio.")
                : v.Say(
                    $"Each face is done at once, as this product asks, and so by one person ({who}), although {job.Crew.Count} work here: shared, it would be two sections with a lap between them.",
                    $"Cada cara se hace de una vez, como pide este producto, y por eso la hace una sola persona ({who}), aunque trabajan {job.Crew.Count}: repartida serían dos secciones con un solape en medio."),
            v => (isPoured, work.Coat.Product.BreakAllowed) switch
            {
                (true, _) => v.Say("The others mix, carry, do the bubble passes and watch the clock.", "Los demás preparan la mezcla, la acercan, dan las pasadas contra burbujas y vigilan el reloj."),
                (false, true) => v.Say("The others mix, load the roller and watch the clock. A planned joint makes two faces, one for each.", "Los demás preparan la mezcla, cargan el rodillo y vigilan el reloj. Una junta prevista da dos caras, una para cada uno."),
                _ => v.Say("The others mix, load the roller and watch the clock.", "Los demás preparan la mezcla, cargan el rodillo y vigilan el reloj."),
            });
    }

    /// <summary>Laps that are joined too late, the worst first.</summary>
    public static IEnumerable<Lap> Closed(CoatWork work) => work.Laps.Where(l => l.Kind != LapKind.Break && work.MarginMs(l) < 0).OrderBy(work.MarginMs);

    /// <summary>The section that most outlives its own film.</summary>
    public static Section? Outlived(CoatWork work) => work.Sections.Where(s => work.MarginMs(s) < 0).MinBy(work.MarginMs);

    /// <summary>Less than this is within what a timer tells.</summary>
    private const double WorthSaying = 0.05;

    /// <summary>Film from a batch that has stood stays open less; said where it takes a part of the open time worth a word.</summary>
    public static IEnumerable<Reason> OlderBatch(CoatWork work)
    {
        if (work.Sections.Count == 0 || work.Sections.MaxBy(s => s.UsedMs) is not { } last || last.UsedMs < work.OpenTimeMs * WorthSaying) yield break;
        var batch = work.Batches.First(b => b.Id == last.Batch);
        yield return new Reason("OlderBatchClosesSooner", Limit.Note,
            v => v.Say(
                $"Section {last.Id} is begun {Voice.Span((last.StartMs - batch.MixEndMs) / 1000.0)} after batch {batch.Id} is mixed: the mix has begun to react, so the film stays open {Voice.Span(last.UsedMs / 1000.0)} less than from a fresh batch. Every margin here counts that.",
                $"La sección {last.Id} empieza {Voice.Span((last.StartMs - batch.MixEndMs) / 1000.0)} después de preparar la mezcla {batch.Id}: ya ha empezado a reaccionar, y la película queda abierta {Voice.Span(last.UsedMs / 1000.0)} menos que con mezcla fresca. Todos los márgenes lo cuentan."),
            v => v.Say(
                $"Smaller batches, mixed more often, are fresher. {v.Percent(work.BatchAgeShare)} of a batch's age is counted; lap a test board from a batch that has stood to see how it is with yours.",
                $"Las mezclas más pequeñas y frecuentes son más frescas. Se cuenta el {v.Percent(work.BatchAgeShare)} de la edad de la mezcla; haga una placa de prueba con mezcla reposada para ver la suya."));
    }

    public static Reason LapWouldClose(CoatWork work, Lap lap)
    {
        var closed = Closed(work).Count();
        var openS = (work.OpenTimeMs - lap.UsedMs) / 1000.0;
        return new Reason("LapWouldClose", Limit.AtYourWord,
            v => v.Say(
                $"The lap between sections {lap.A} and {lap.B} would be {Voice.Span(lap.AgeMs / 1000.0)} old when it is joined; the film stays open {Voice.Span(openS)}. Laps that would show: {closed}.",
                $"El solape entre las secciones {lap.A} y {lap.B} tendría {Voice.Span(lap.AgeMs / 1000.0)} al unirse; la película queda abierta {Voice.Span(openS)}. Solapes que se verían: {closed}."),
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
            $"Section {section.Id} takes {Voice.Span((section.EndMs - section.StartMs) / 1000.0)}; its own film stays open {Voice.Span((work.OpenTimeMs - section.UsedMs) / 1000.0)}.",
            $"La sección {section.Id} tarda {Voice.Span((section.EndMs - section.StartMs) / 1000.0)}; su propia película queda abierta {Voice.Span((work.OpenTimeMs - section.UsedMs) / 1000.0)}."),
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
            $"No way of mixing uses every batch up within its pot life of {Voice.Span(work.PotLife.Seconds)} and within the largest batch. Not to be mixed as shown: {NotToBeMixed(work)}.",
            $"Ninguna forma de mezclar gasta cada mezcla dentro de su vida útil de {Voice.Span(work.PotLife.Seconds)} y de la mezcla más grande. No debe prepararse como se muestra: {NotToBeMixed(work)}."),
        v => work.Coat.Product.WholeTopAtOnce
            ? v.Say("The whole top is done from one batch: use a larger container within the product's limit, keep the material cooler, or choose a product with a longer pot life.", "Toda la cubierta se hace con una sola mezcla: use un recipiente mayor dentro del límite del producto, mantenga el material más fresco, o elija un producto de vida más larga.")
            : v.Say("Allow smaller sections, a larger container within the product's limit, or keep the material cooler.", "Permita secciones más pequeñas, un recipiente mayor dentro del límite del producto, o mantenga el material más fresco."));

    private static string NotToBeMixed(CoatWork work) => string.Join(", ", work.Batches.Where(b => b.IsNotToBeMixed).DefaultIfEmpty(work.Batches[^1]).Select(b => b.Id));

    /// <summary>Smaller batches are no help: the life is over before the first drop may be used.</summary>
    private static Reason NeverReady(CoatWork work, Batch batch) => new("BatchOutlivesPot", Limit.AtYourWord,
        v => work.Coat.Product.InductionS > 0
            ? v.Say(
                $"Mixing and standing take {Voice.Span((batch.ReadyMs - batch.MixStartMs) / 1000.0)}; the mix lives {Voice.Span(work.PotLife.Seconds)} from the first contact of its parts. Nothing of it can be rolled.",
                $"Mezclar y reposar lleva {Voice.Span((batch.ReadyMs - batch.MixStartMs) / 1000.0)}; la mezcla vive {Voice.Span(work.PotLife.Seconds)} desde que se juntan sus partes. No se puede aplicar nada de ella.")
            : v.Say(
                $"Mixing takes {Voice.Span((batch.ReadyMs - batch.MixStartMs) / 1000.0)}; the mix lives {Voice.Span(work.PotLife.Seconds)} from the first contact of its parts. Nothing of it can be rolled.",
                $"Mezclar lleva {Voice.Span((batch.ReadyMs - batch.MixStartMs) / 1000.0)}; la mezcla vive {Voice.Span(work.PotLife.Seconds)} desde que se juntan sus partes. No se puede aplicar nada de ella."),
        v => v.Say(
            "Keep the material cooler, hold the times entered against the product's sheet, or choose a product with a longer pot life.",
            "Mantenga el material más fresco, compare los tiempos anotados con la ficha técnica, o elija un producto de vida más larga."));

    /// <summary>Where each batch begins, and which laps on a face are joined out of two.</summary>
    private static Reason BatchesChange(CoatWork work)
    {
        var of = work.Sections.ToDictionary(s => s.Id, s => s.Batch, StringComparer.Ordinal);
        var begins = string.Join(", ", work.Batches.Skip(1).Select(b => $"{b.Id} ({work.Sections.First(s => s.Batch == b.Id).Id})"));
        var showing = work.Laps.Where(l => l is { Kind: LapKind.Flat, AtCorner: false } && of[l.A] != of[l.B]).Select(l => $"{l.A}–{l.B}").Distinct().ToList();
        var laps = string.Join(", ", showing);
        return showing.Count == 0
            ? new Reason("BatchesChange", Limit.Note,
                v => v.Say(
                    $"A new batch begins where it is not seen, at a joint, a corner, a fold or another top. Batch (first section): {begins}.",
                    $"Cada mezcla nueva empieza donde no se nota: en una junta, una esquina, un pliegue u otra cubierta. Mezcla (primera sección): {begins}."),
                v => v.Say("Have each batch ready when the section before it is done.", "Tenga cada mezcla lista cuando termine la sección anterior."))
            : new Reason("BatchesChange", Limit.Note,
                v => v.Say(
                    $"Laps on a face that are joined out of two batches: {laps}. Batch (first section): {begins}.",
                    $"Solapes en una cara que se unen con dos mezclas: {laps}. Mezcla (primera sección): {begins}."),
                v => v.Say(
                    "Box the colour before the first batch and stir every batch alike, so that no step in colour or gloss shows there; a planned joint or a larger batch within the product's limit moves the change.",
                    "Junte el color antes de la primera mezcla y remueva todas las mezclas igual, para que ahí no se note un cambio de color o de brillo; una junta prevista o una mezcla mayor dentro del límite del producto mueve el cambio."));
    }

    /// <summary>A later batch stands while whoever rolls it has nothing to roll.</summary>
    private static bool WaitsWhileItStands(CoatWork work) =>
        work.Coat.Product.InductionS > 0 && work.Batches.Skip(1).Any(b => !work.StandsMixed(b) && work.Sections.Any(s => s.Person == b.MixedBy));

    private static Reason MixedAhead(CoatWork work)
    {
        IReadOnlyList<string> ahead = [.. work.Batches.Where((b, i) => i == 0 || work.StandsMixed(b)).Select(b => b.Id)];
        return new Reason("MixedAhead", Limit.Note,
            v => v.Say(
                $"Batches {v.List(ahead)} are mixed one after the other before the first section: none of these mixings falls into a lap. Their film is that much older, and every margin here counts it.",
                $"Las mezclas {v.List(ahead)} se preparan una tras otra antes de la primera sección: ninguna de estas preparaciones cae dentro de un solape. Su película es más vieja por ello, y aquí todos los márgenes lo cuentan."),
            v => v.Say(
                "Keep each in its own cup, marked with its letter and its use-by time. Never pour one onto another: a larger mass heats itself and lives shorter.",
                "Tenga cada una en su propio vaso, marcado con su letra y su hora límite. Nunca vierta una sobre otra: una masa mayor se calienta sola y vive menos."));
    }

    private static Reason StandingIsWaitedOut(CoatWork work) => new("StandingIsWaitedOut", Limit.Note,
        v => v.Say(
            $"Each batch stands {Voice.Span(work.Coat.Product.InductionS)} before it is used, and whoever mixes it also rolls: every lap across a change of batch waits that long. Mixing the next batch while the one before is still being rolled was not tried.",
            $"Cada mezcla reposa {Voice.Span(work.Coat.Product.InductionS)} antes de usarse, y quien la prepara también aplica: todo solape en un cambio de mezcla espera ese tiempo. No se probó a preparar la siguiente mientras aún se aplica la anterior."),
        v => v.Say(
            "A second person who mixes takes the wait out of the plan; so does one batch for the whole coat, or a change of batch at a planned joint.",
            "Una segunda persona que mezcle quita esa espera del plan; también una sola mezcla para toda la capa, o un cambio de mezcla en una junta prevista."));

    private static string RollerOf(CoatWork work, Job job) => job.Crew[work.Sections[0].Person].Name;

    /// <summary>Who mixes for one who rolls alone.</summary>
    private static string MixerOf(CoatWork work, Job job)
    {
        var roller = work.Sections[0].Person;
        return job.Crew[work.Batches.Select(b => b.MixedBy).FirstOrDefault(person => person != roller, roller == 0 ? 1 : 0)].Name;
    }

    private static Reason MoreHandsDoNotHelp(CoatWork work, Job job) => new("MoreHandsDoNotHelp", Limit.Note,
        v => v.Say(
            $"{RollerOf(work, job)} rolls alone: no plan was found in which more of the crew roll and the margin is larger.",
            $"{RollerOf(work, job)} aplica a solas: no se halló un plan en el que apliquen más personas y el margen sea mayor."),
        v => v.Say($"{MixerOf(work, job)} mixes each batch just before it is wanted. See what would work.", $"{MixerOf(work, job)} prepara cada mezcla justo antes de usarla. Vea qué funcionaría."));

    private static Reason OneRolls(CoatWork work, Job job) => new("OneRolls", Limit.Note,
        v => v.Say(
            $"{RollerOf(work, job)} rolls alone and keeps the margin; {MixerOf(work, job)} mixes each batch just before it is wanted.",
            $"{RollerOf(work, job)} aplica a solas y mantiene el margen; {MixerOf(work, job)} prepara cada mezcla justo antes de usarla."),
        v => v.Say("One hand to a visible face looks best. Of people equally quick the first in the crew rolls: put the steadiest first.", "Una sola mano por cara visible queda mejor. Entre personas igual de rápidas aplica la primera del equipo: ponga primero a quien aplica con más constancia."));
}
