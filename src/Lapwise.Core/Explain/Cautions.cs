namespace Lapwise.Core.Explain;

/// <summary>
/// The usual caution for each hazard a data sheet names. It stands beside the numbers it belongs to and always gives way
/// to the safety data sheet, local codes and licensed practice; it never says that something will not hurt.
/// </summary>
public static class Cautions
{
    /// <summary>Said once wherever any caution is shown.</summary>
    public static Phrase Deferral { get; } = v => v.Say(
        "These are the usual cautions, not all of them. The safety data sheet of each product, local codes and licensed practice come first.",
        "Estas son las precauciones habituales, no todas. Mandan la hoja de datos de seguridad de cada producto, las normas locales y el ejercicio con licencia.");

    /// <summary>The cautions of a job's products, each once, in the order of <see cref="Hazard"/>.</summary>
    public static IReadOnlyList<Phrase> For(IEnumerable<Hazard> hazards) => [.. hazards.Distinct().Order().Select(For)];

    public static Phrase For(Hazard hazard) => hazard switch
    {
        Hazard.Isocyanate => v => v.Say(
            "Isocyanate: it harms the lungs without a smell to warn you, and once a body is sensitised a trace can bring an attack. Nobody with asthma or an earlier reaction works with it. Ventilate, keep others out, cover skin and eyes. Respirator as the safety data sheet says, within a programme of medical evaluation, fit test and cartridge changes (29 CFR 1910.134); a cartridge gives no warning when it is spent.",
            "Isocianato: daña los pulmones sin olor que avise, y en quien ya está sensibilizado basta una traza para un ataque. Que no trabaje con él nadie con asma o con una reacción anterior. Ventile, no deje entrar a otros, cubra piel y ojos. Respirador según la hoja de datos de seguridad, dentro de un programa con evaluación médica, prueba de ajuste y cambio de cartuchos (29 CFR 1910.134); un cartucho agotado no avisa."),
        Hazard.FlammableVapour => v => v.Say(
            "Its vapour catches fire, creeps along the floor and can flash from a distance. Pilot lights, heaters, switches, phones on charge, motors and cigarettes out of the room before the can is opened; ventilate to the outside. A fan in the vapour must be rated for it. Lay solvent rags out flat outdoors or keep them under water in a closed metal can: in a heap they can heat up and burn. Extinguisher at hand; see the safety data sheet and the fire code.",
            "Su vapor se prende, corre por el suelo y puede inflamarse a distancia. Antes de abrir el bote, fuera de la sala pilotos, calentadores, interruptores, teléfonos cargando, motores y cigarrillos; ventile hacia el exterior. Un ventilador dentro del vapor debe estar homologado para ello. Extienda los trapos con disolvente al aire libre o guárdelos con agua en un bote metálico cerrado: amontonados pueden calentarse y arder. Extintor a mano; vea la hoja de datos de seguridad y las normas contra incendios."),
        Hazard.HotMix => v => v.Say(
            "A large mixed mass heats by itself, smokes and can burn you or set fire to its cup. Mix no more than the ticket says, use it at once, pour it out thin; what is left over is spread thin outdoors on something that cannot burn, never closed in a can or thrown in a bin while warm. Soaked rags and roller covers heat too: lay them out flat.",
            "Una masa grande ya mezclada se calienta sola, echa humo y puede quemarle o prender su vaso. No mezcle más de lo que dice la boleta, úselo enseguida, viértalo en capa fina; lo que sobre se extiende fino al aire libre sobre algo que no arda, nunca cerrado en un bote ni en la basura mientras esté caliente. También se calientan los trapos y las fundas de rodillo empapados: extiéndalos."),
        Hazard.EpoxyAmine => v => v.Say(
            "Epoxy and amine hardener burn skin and eyes and can make a body allergic for good. Gloves of the kind the safety data sheet names, changed when wetted; eye protection; wash with soap and water, never with solvent; ventilate.",
            "La resina epoxi y su endurecedor de amina queman la piel y los ojos y pueden dejar una alergia para siempre. Guantes del tipo que indica la hoja de datos de seguridad, cambiados en cuanto se mojen; protección ocular; lávese con agua y jabón, nunca con disolvente; ventile."),
        Hazard.SolventVapour => v => v.Say(
            "Solvent vapour dulls the head before you notice and gathers low down. Move fresh air through the room, leave it when dizzy or sick, keep others and pets out until it has cleared. A respirator is chosen from the safety data sheet and used under 29 CFR 1910.134; a dust mask does not stop vapour.",
            "El vapor de disolvente aturde antes de que se note y se acumula abajo. Haga pasar aire fresco por la sala, salga si siente mareo o náuseas, y que no entren otros ni animales hasta que se despeje. El respirador se elige por la hoja de datos de seguridad y se usa según 29 CFR 1910.134; una mascarilla de polvo no detiene el vapor."),
        Hazard.SkinSensitiser => v => v.Say(
            "It can make skin allergic, often after years without trouble. No bare skin, no wiping with solvent; gloves as the safety data sheet names, changed when wetted.",
            "Puede volver alérgica la piel, a menudo tras años sin molestias. Nada de piel desnuda, nada de limpiarse con disolvente; guantes como indica la hoja de datos de seguridad, cambiados en cuanto se mojen."),
        Hazard.SandingDust => v => v.Say(
            "Sanding dust of half-cured coating can sensitise; dust of stone, concrete and many engineered tops carries silica, which scars the lungs for good. Sand only what has cured, wet or with extraction and a fine-dust filter, with the respirator the task needs (29 CFR 1910.134; local silica rules). Do not sweep dry. Fine dust can also catch fire.",
            "El polvo de lijar una capa a medio curar puede sensibilizar; el de piedra, hormigón y muchas cubiertas de aglomerado lleva sílice, que cicatriza los pulmones para siempre. Lije solo lo ya curado, en húmedo o con aspiración y filtro de polvo fino, con el respirador que pida la tarea (29 CFR 1910.134; normas locales sobre sílice). No barra en seco. El polvo fino también puede prenderse."),
        _ => throw new ArgumentOutOfRangeException(nameof(hazard), hazard, null),
    };
}
