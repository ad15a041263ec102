using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Pouring;

/// <summary>What does not work in a poured coat, or only narrowly, with the next step.</summary>
internal static class PourReasons
{
    /// <param name="usableMl">What the largest batch gives to the top.</param>
    /// <param name="mostMl">What the largest pour takes.</param>
    public static IEnumerable<Reason> Of(CoatWork work, Job job, bool keepsBatches, double usableMl, double mostMl)
    {
        if (WorkReasons.Closed(work).FirstOrDefault() is { } lap) yield return PoursJoinTooLate(work, lap);
        if (WorkReasons.Outlived(work) is { } section) yield return WorkReasons.SectionOutlivesOpenTime(work, section);
        foreach (var older in WorkReasons.OlderBatch(work)) yield return older;
        if (work.LapMarginMs >= 0 && work.LapMarginMs < work.TargetMarginMs) yield return WorkReasons.MarginNarrow(work);
        if (mostMl > usableMl) yield return PourOverBatch(work, usableMl, mostMl);
        else if (!keepsBatches) yield return PourOutlivesPot(work);
        if (Late(work, StepKind.Level) is { } level) yield return LevelledTooLate(level);
        if (Late(work, StepKind.BubblePass) is { } pass) yield return BubblePassLate(pass);
        if (Late(work, StepKind.ScrapeDrips) is { } scrape) yield return DripWindowMissed(scrape);
        if (WorkReasons.WholeFaceByOne(work, job) is { } one) yield return one;
        if (work.Steps.Any(s => s.Kind is StepKind.BubblePass)) yield return HowBubblesAreBroughtOut(work);
    }

    private static TimedStep? Late(CoatWork work, StepKind kind) => work.Steps.Where(s => s.Kind == kind && !s.IsInTime).MaxBy(s => s.EndMs - s.ToMs);

    private static Reason PoursJoinTooLate(CoatWork work, Lap lap) => new("PoursJoinTooLate", Limit.AtYourWord,
        v => v.Say(
            $"Pours {lap.A} and {lap.B} meet, and their film would be {Voice.Span(lap.AgeMs / 1000.0)} old when both are levelled; it stays open {Voice.Span((work.OpenTimeMs - lap.UsedMs) / 1000.0)}.",
            $"Los vertidos {lap.A} y {lap.B} se tocan, y su película tendría {Voice.Span(lap.AgeMs / 1000.0)} al nivelar los dos; queda abierta {Voice.Span((work.OpenTimeMs - lap.UsedMs) / 1000.0)}."),
        v => work.Coat.Product.BreakAllowed
            ? v.Say("Mix larger batches within the product's limit, have a second person mix, work in a cooler hour, or plan a break there.", "Haga mezclas más grandes dentro del límite del producto, que otra persona mezcle, trabaje en una hora más fresca, o prevea ahí una junta.")
            : v.Say("Mix larger batches within the product's limit, have a second person mix, or work in a cooler hour.", "Haga mezclas más grandes dentro del límite del producto, que otra persona mezcle, o trabaje en una hora más fresca."));

    private static Reason PourOverBatch(CoatWork work, double usableMl, double mostMl) => new("PourOverBatch", Limit.AtYourWord,
        v => v.Say($"One pour takes {v.Volume(mostMl)}; the largest batch gives {v.Volume(Math.Max(0, usableMl))}.", $"Un vertido toma {v.Volume(mostMl)}; la mezcla más grande da {v.Volume(Math.Max(0, usableMl))}."),
        v => work.Coat.Product.WholeTopAtOnce
            ? v.Say("This product is poured over the whole top at once: use a larger container within the product's limit, or a product that may be joined.", "Este producto se vierte en toda la cubierta de una vez: use un recipiente mayor dentro del límite del producto, o un producto que admita uniones.")
            : v.Say("Use a larger container within the product's limit.", "Use un recipiente mayor dentro del límite del producto."));

    private static Reason PourOutlivesPot(CoatWork work) => new("PourOutlivesPot", Limit.AtYourWord,
        v => v.Say($"A pour is not out before the use-by of its batch, {Voice.Span(work.PotLife.Seconds)} after A touches B.", $"Un vertido no termina antes del límite de su mezcla, {Voice.Span(work.PotLife.Seconds)} después de que A toque B."),
        v => v.Say("Mix smaller batches, keep the material cooler, or pour and spread with more hands.", "Haga mezclas más pequeñas, mantenga el material más fresco, o vierta y extienda con más manos."));

    private static Reason LevelledTooLate(TimedStep level) => new("LevelledTooLate", Limit.AtYourWord,
        v => v.Say($"Pour {level.Sections[0]} is levelled {Voice.Span((level.EndMs - level.FromMs) / 1000.0)} after it lies; the product flows for {Voice.Span((level.ToMs!.Value - level.FromMs) / 1000.0)}.",
            $"El vertido {level.Sections[0]} se nivela {Voice.Span((level.EndMs - level.FromMs) / 1000.0)} después de extenderlo; el producto fluye durante {Voice.Span((level.ToMs!.Value - level.FromMs) / 1000.0)}."),
        v => v.Say("Mix smaller batches, so that each pour is smaller, or work in a cooler hour.", "Haga mezclas más pequeñas, para que cada vertido sea menor, o trabaje en una hora más fresca."));

    private static Reason BubblePassLate(TimedStep pass) => new("BubblePassLate", Limit.AtYourWord,
        v => v.Say($"A bubble pass over pour {pass.Sections[0]} is due at {Voice.Clock(pass.FromMs / 1000.0)} and would begin at {Voice.Clock(pass.StartMs / 1000.0)}: all hands are busy.",
            $"Una pasada contra burbujas en el vertido {pass.Sections[0]} toca a las {Voice.Clock(pass.FromMs / 1000.0)} y empezaría a las {Voice.Clock(pass.StartMs / 1000.0)}: no hay manos libres."),
        v => v.Say("Take a helper for mixing and passes, or coat the tops on different days.", "Lleve a alguien para mezclar y dar las pasadas, o recubra las cubiertas en días distintos."));

    private static Reason DripWindowMissed(TimedStep scrape) => new("DripWindowMissed", Limit.AtYourWord,
        v => v.Say($"{scrape.Top}: drips would be scraped off until {Voice.Clock(scrape.EndMs / 1000.0)}; those of the first pour are too hard from {Voice.Clock(scrape.ToMs!.Value / 1000.0)} on.",
            $"{scrape.Top}: las gotas se rasparían hasta las {Voice.Clock(scrape.EndMs / 1000.0)}; las del primer vertido están demasiado duras desde las {Voice.Clock(scrape.ToMs!.Value / 1000.0)}."),
        v => v.Say("Tape the underside before the pour, take a helper, or coat the tops on different days.", "Ponga cinta por debajo antes de verter, lleve a alguien, o recubra las cubiertas en días distintos."));

    private static Reason HowBubblesAreBroughtOut(CoatWork work)
    {
        var burns = work.Coat.Product.Hazards.Any(h => h is Hazard.FlammableVapour or Hazard.SolventVapour);
        return new Reason("HowBubblesAreBroughtOut", Limit.Note,
            v => burns
                ? v.Say("This product gives off vapour that can catch fire: never a flame or a hot-air gun over the film.", "Este producto desprende vapor que puede prenderse: nunca una llama ni pistola de aire caliente sobre la película.")
                : v.Say("A flame or hot air near a fresh film can burn the film, the masking and you.", "Una llama o aire caliente cerca de una película fresca puede quemar la película, la protección y a usted."),
            v => burns
                ? v.Say("Bring bubbles out with a spiked roller; the safety data sheet and the fire code come first.", "Saque las burbujas con un rodillo de púas; mandan la hoja de datos de seguridad y las normas contra incendios.")
                : v.Say("A spiked roller needs no heat. Where the data sheet names heat: keep it moving, solvent, thinner and rags out of the room, extinguisher at hand; the safety data sheet and the fire code come first.", "Un rodillo de púas no necesita calor. Si la ficha indica calor: manténgalo en movimiento, sin disolvente, diluyente ni trapos en la sala y con el extintor a mano; mandan la hoja de datos de seguridad y las normas contra incendios."));
    }
}
