using Lapwise.Core.Explain;

namespace Lapwise.Core.Work;

/// <summary>What is proven of a plan, said exactly, the same on the page and on paper.</summary>
public static class ProofWords
{
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

        return (work.Proof.State, work.Proof.Of) switch
        {
            (ProofState.Proven, "order") => voice.Say(
                $"Best order for these sections, these times and this open time: the worst age is {worst}. No more than that is proven.",
                $"El mejor orden para estas secciones, estos tiempos y este tiempo abierto: la peor edad es de {worst}. No se ha demostrado nada más."),
            (ProofState.Proven, _) => voice.Say(
                $"Best order and best sections for these times and this open time: the worst age is {worst}. No more than that is proven.",
                $"El mejor orden y las mejores secciones para estos tiempos y este tiempo abierto: la peor edad es de {worst}. No se ha demostrado nada más."),
            _ => voice.Say(
                $"Not proven to be the best: the worst age of this order is {worst}, and no order of these sections at these times has one under {bound}.",
                $"No se ha demostrado que sea el mejor: la peor edad de este orden es de {worst}, y ningún orden de estas secciones con estos tiempos baja de {bound}."),
        };
    }
}
