using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>One point to see to before anything is mixed.</summary>
/// <param name="Why">One line on what goes wrong without it.</param>
public sealed record PreparationPoint(string Id, Phrase Text, Phrase Why);

/// <summary>What is seen to before the first batch. Common practice, no source, except where a data sheet asks for it.</summary>
public static class Preparation
{
    public static IReadOnlyList<PreparationPoint> All { get; } =
    [
        new("sanded", v => v.Say("Sanded dull all over, corners too", "Lijado mate por completo, también las esquinas"),
            v => v.Say("The coat holds on a dull surface; shiny spots let go.", "La capa agarra en lo mate; lo brillante se suelta.")),
        new("dusted", v => v.Say("Dust taken off, floor too", "Sin polvo, tampoco en el suelo"),
            v => v.Say("Dust on the floor is in the film within a minute. No dry sweeping.", "El polvo del suelo acaba en la película en un minuto. No barra en seco.")),
        new("wiped", v => v.Say("Wiped, and dry again", "Limpiado, y seco otra vez"),
            v => v.Say("Grease and damp pull holes. Wipe with what the data sheet names; its vapour out of the room first.", "La grasa y la humedad abren cráteres. Limpie con lo que indica la ficha; antes de seguir, fuera su vapor.")),
        new("masked", v => v.Say("Masked, tape ends folded to pull", "Enmascarado, con la punta de la cinta doblada"),
            v => v.Say("There is no time to look for an end of tape later.", "Después no hay tiempo de buscar la punta de la cinta.")),
        new("rollers", v => v.Say("Rollers de-linted, and marked wet or dry", "Rodillos sin pelusa y marcados: húmedo o seco"),
            v => v.Say("Lint shows in a clear coat; a wet roller in the dry pass leaves a line.", "La pelusa se ve en el transparente; un rodillo mojado en la pasada en seco deja una línea.")),
        new("stirred", v => v.Say("Part A stirred to the bottom of the can", "Parte A removida hasta el fondo del bote"),
            v => v.Say("What lies at the bottom belongs in the film.", "Lo que está en el fondo va en la película.")),
        new("protected", v => v.Say("Gloves and respirator on, as the safety data sheet says", "Guantes y respirador puestos, según la hoja de datos de seguridad"),
            v => v.Say("The kind the safety data sheet names, fitted; a dust mask does not stop vapour.", "Los que indica la hoja de datos de seguridad, ajustados; una mascarilla de polvo no detiene el vapor.")),
        new("ignition", v => v.Say("Nothing that burns, glows or sparks in the room; air moving out", "Nada que arda, esté al rojo o eche chispas en la sala; el aire saliendo"),
            v => v.Say("Pilot lights, heaters, switches, phones on charge: off or out before a can is opened.", "Pilotos, calentadores, interruptores, teléfonos cargando: apagados o fuera antes de abrir un bote.")),
    ];
}
