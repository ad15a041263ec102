using Lapwise.Core.Explain;

namespace Lapwise.Core.Work;

/// <summary>What is proven of a plan, said exactly, the same on the page and on paper.</summary>
public static class ProofWords
{
    /// <summary>What the usual ways are spared that this plan is not, so that nobody takes the smaller number for the better plan.</summary>
    public static string OfUsualWays(Voice voice) => voice.Say(
        "The usual ways are timed for each top by itself, always from a fresh batch. The mixing and the age of the batches, which this plan counts, would make them older, never younger.",
        "Las formas habituales se cuentan por cada cubierta suelta, siempre con mezcla recién hecha. El tiempo de mezclar y la edad de las mezclas, que este plan sí cuenta, las harían más viejas, nunca más jóvenes.");

    public static string Of(CoatWork work, Voice voice)
    {
        var worst = Voice.Span(work.WorstCountedMs / 1000.0);
        var bound = Voice.Span(work.Proof.BoundMs / 1000.0);
        if (work.Steps.Count > 0)
        {
            return work.Proof.State is ProofState.Proven
                ? voice.Say($"The simplest order of pours found; no order of these pours has a worst age under {bound}, and this one has it.",
                    $"El orden de vertidos más sencillo que se encontró; ningún orden de estos vertidos baja de {bound}, y este llega a ella.")
                : voice.Say($"The simplest order of pours found, its worst age {worst}; that there is none younger is not proven, only that none is under {bound}.",
                    $"El orden de vertidos más sencillo que se encontró, con una peor edad de {worst}; no se ha demostrado que no haya otro mejor, solo que ninguno baja de {bound}.");
        }

        var (forEn, forEs) = (work.Sections.Any(s => s.Person != work.Sections[0].Person), work.Batches.Count > 1) switch
        {
            (true, true) => ("this crew with at most one batch mixed ahead", "este equipo con una mezcla adelantada como mucho"),
            (true, false) => ("this crew", "este equipo"),
            _ => ("one who rolls", "una persona que aplica"),
        };
        return work.Proof switch
        {
            { State: ProofState.Proven, Ways: { } ways } => voice.Say(
                $"Best order and sections, of the {ways} workable ways of cutting {work.Proof.Top} that were tried, for these times and this open time, for {forEn}: the worst age is {worst}. No more than that is proven.",
                $"El mejor orden y las mejores secciones, de las {ways} formas viables de dividir {work.Proof.Top} que se probaron, para estos tiempos y este tiempo abierto, con {forEs}: la peor edad es de {worst}. No se ha demostrado nada más."),
            { State: ProofState.Proven } => voice.Say(
                $"Best order for these sections, these times and this open time, for {forEn}: the worst age is {worst}. No more than that is proven.",
                $"El mejor orden para estas secciones, estos tiempos y este tiempo abierto, con {forEs}: la peor edad es de {worst}. No se ha demostrado nada más."),
            _ when work.LapMarginMs >= work.TargetMarginMs => voice.Say(
                $"The simplest order found that keeps {Voice.Span(work.TargetMarginMs / 1000.0)} in hand. Its worst age is {worst}; no order of these sections for {forEn} at these times has one under {bound}.",
                $"El orden más sencillo hallado que reserva {Voice.Span(work.TargetMarginMs / 1000.0)}. Su peor edad es de {worst}; ningún orden de estas secciones con {forEs} y estos tiempos baja de {bound}."),
            _ => voice.Say(
                $"Not proven to be the best: the worst age of this order is {worst}, and no order of these sections for {forEn} at these times has one under {bound}.",
                $"No se ha demostrado que sea el mejor: la peor edad de este orden es de {worst}, y ningún orden de estas secciones con {forEs} y estos tiempos baja de {bound}."),
        };
    }
}
