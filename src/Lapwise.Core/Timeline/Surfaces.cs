using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

/// <summary>How one kind of surface is prepared. Common practice, no source; the data sheet of the first coat comes first.</summary>
/// <param name="CleanSPerM2">Degreasing and rinsing.</param>
/// <param name="SandSPerM2">Sanding dull all over.</param>
/// <param name="Primer">Null: none beyond the first coat of the system.</param>
internal sealed record Surface(Phrase Name, Phrase Clean, Phrase Sand, Phrase? Primer, double CleanSPerM2, double SandSPerM2, double PrimeSPerM2, IReadOnlyList<Phrase> Cautions);

internal static class Surfaces
{
    private static readonly Phrase Degrease = v => v.Say("degrease twice, rinse, let dry", "desengrasar dos veces, aclarar, dejar secar");

    public static Surface Of(Substrate? substrate) => substrate switch
    {
        Substrate.Laminate => new(v => v.Say("laminate", "laminado"), Degrease,
            v => v.Say("150 grit, dull all over; glue down or cut out what is loose", "grano 150, mate por completo; pegar o recortar lo suelto"),
            null, 180, 480, 0, []),
        Substrate.Wood => new(v => v.Say("wood", "madera"), v => v.Say("clean, let dry to its usual moisture", "limpiar, dejar secar hasta su humedad habitual"),
            v => v.Say("120 then 150 grit with the grain", "grano 120 y luego 150 a favor de la veta"),
            v => v.Say("seal coat that keeps resin and tannin in", "sellador que retenga resina y taninos"), 120, 720, 240, [.. GroundCautions.For(substrate)]),
        Substrate.Tile => new(v => v.Say("tile", "azulejo"), Degrease,
            v => v.Say("80 grit diamond until no gloss is left; joints rubbed too", "diamante de grano 80 hasta que no quede brillo; también las juntas"),
            v => v.Say("bonding primer for glaze", "imprimación de adherencia para esmalte"), 240, 900, 300, [.. GroundCautions.For(substrate)]),
        Substrate.Stone => new(v => v.Say("stone", "piedra"), v => v.Say("draw out oil, rinse, let dry through", "extraer el aceite, aclarar, dejar secar a fondo"),
            v => v.Say("80 then 120 grit diamond", "diamante de grano 80 y luego 120"),
            v => v.Say("bonding primer for stone", "imprimación de adherencia para piedra"), 240, 900, 300, [.. GroundCautions.For(substrate)]),
        Substrate.OldCoating => new(v => v.Say("old coating", "recubrimiento viejo"), Degrease,
            v => v.Say("what is loose off; 150 grit, dull all over, edges feathered", "quitar lo suelto; grano 150, mate por completo, bordes rebajados"),
            null, 180, 600, 0, [.. GroundCautions.For(substrate)]),
        // The slowest of the usual, until it is known.
        null => new(v => v.Say("the surface", "la superficie"), Degrease,
            v => v.Say("dull all over; the grit goes by what it is", "mate por completo; el grano depende de qué sea"),
            null, 240, 900, 0, [.. GroundCautions.For((Substrate?)null)]),
        _ => throw new ArgumentOutOfRangeException(nameof(substrate), substrate, null),
    };

    public static bool IsInDoubt(Substrate? substrate) => substrate is null or Substrate.OldCoating;
}
