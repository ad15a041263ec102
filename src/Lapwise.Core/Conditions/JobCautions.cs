using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions;

/// <summary>The cautions of a whole job, each once: its products, their labels, its wipes and what its tops are made of.</summary>
public static class JobCautions
{
    private static readonly Phrase Wipe = v => v.Say(
        "Solvent wipe: pilot lights, refrigerators, switches and anything that sparks off or unplugged before the can is opened, and no flame, torch or heat gun after it until top and rags are dry and the room is aired. Rags go flat outdoors or under water in a closed metal can.",
        "Limpieza con disolvente: pilotos, frigoríficos, interruptores y todo lo que dé chispa, apagado o desenchufado antes de abrir el bote; después, nada de llama, soplete ni pistola de calor hasta que cubierta y trapos estén secos y la sala ventilada. Los trapos, extendidos al aire libre o con agua en un bote metálico cerrado.");

    private static readonly Phrase Leftovers = v => v.Say(
        "Leftover mix, rags, roller covers and sanding dust that still react heat by themselves and can start a fire hours later: spread mix thin outdoors, lay the rest out flat or keep it under water in a closed metal can, never in a heap or a bin indoors.",
        "Los restos de mezcla, trapos, fundas de rodillo y polvo de lijado que aún reaccionan se calientan solos y pueden arder horas después: extienda la mezcla fina al aire libre, y lo demás extendido o con agua en un bote metálico cerrado, nunca amontonado ni en la basura dentro de casa.");

    public static IReadOnlyList<Phrase> Of(Job job)
    {
        var hazards = job.System.SelectMany(c => c.Product.Hazards).ToList();
        return
        [
            .. job.System.Select(c => c.Product).DistinctBy(p => p.Id).Select(p => Ghs.LabelOf(p)).OfType<Phrase>(),
            .. Cautions.For(hazards),
            .. job.System.Any(c => c.Wipe is not null) ? [Wipe] : Array.Empty<Phrase>(),
            .. job.System.Count > 0 ? [Leftovers] : Array.Empty<Phrase>(),
            .. job.Tops.Select(t => t.Substrate).Distinct().SelectMany(GroundCautions.For).Distinct(),
        ];
    }
}
