using Lapwise.Core.Explain;

namespace Lapwise.Verifier.Rules;

/// <summary>What was looked at, as it is told to a person.</summary>
internal static class Names
{
    public static readonly Phrase Clocks = v => v.Say("product, open time and pot life", "producto, tiempo abierto y vida de la mezcla");
    public static readonly Phrase Partition = v => v.Say("sections cover each face once", "las secciones cubren cada cara una vez");
    public static readonly Phrase Crew = v => v.Say("nobody in two places, no two people in one", "nadie en dos sitios, ni dos personas en uno");
    public static readonly Phrase SectionTimes = v => v.Say("section times at the stated pace", "tiempos de sección al ritmo indicado");
    public static readonly Phrase Reach = v => v.Say("reach, and no leaning over wet film", "alcance, sin inclinarse sobre película húmeda");
    public static readonly Phrase Laps = v => v.Say("every lap, its length and kind", "cada solape, su longitud y clase");
    public static readonly Phrase Ages = v => v.Say("lap ages, section ages and margins", "edades de solape y sección, y márgenes");
    public static readonly Phrase Batches = v => v.Say("batches: mixed in time, used in time, enough", "mezclas: a tiempo, usadas a tiempo, suficientes");
    public static readonly Phrase Tickets = v => v.Say("tickets: volumes, masses, ratio, thinner", "boletas: volúmenes, masas, proporción, diluyente");
    public static readonly Phrase Steps = v => v.Say("steps of a pour: each there, in its window, long enough", "pasos del vertido: todos, en su plazo, con tiempo suficiente");
    public static readonly Phrase Claims = v => v.Say("what the plan claims of itself", "lo que el plan afirma de sí mismo");
}
