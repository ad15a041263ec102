using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Conditions.Vapour;

/// <summary>Where a vapour of a job comes from.</summary>
public enum VapourFrom { Wipe, Coat }

/// <summary>What one wipe or coat gives off into the room of the job.</summary>
/// <param name="LiquidMl">Solvent that evaporates.</param>
/// <param name="Reasons">Limits it passes, and what always holds beside it.</param>
public sealed record CoatVapour(VapourFrom From, Solvent Solvent, double LiquidMl, RoomVapour Room, Basis Basis, IReadOnlyList<Reason> Reasons)
{
    public double PeakPpm => Room.PeakShare * 1e6;

    /// <summary>Share of the lower flammable limit; null: it does not burn at room temperature.</summary>
    public double? ShareOfFlammable => Room.PeakShare / Solvent.LowerFlammable;

    /// <summary>
    /// Seconds until the strictest limit of a working day is met again, from the start of a wipe or from the last of a coat: all of
    /// it at that moment is the worst case, as what went on earlier has evaporated earlier. Null: a closed room never clears.
    /// </summary>
    public double? ClearAfterS => Solvent.Limits.Where(l => l.Time is LimitTime.WorkingDay).MinBy(l => l.Ppm) is { } strictest ? Room.ClearAfterS(strictest.Ppm / 1e6) : 0;

    /// <summary>The wipe before a coat and the coat itself, as far as sheet and room are known.</summary>
    /// <param name="material">What goes on; null: only the wipe is known.</param>
    /// <param name="openTimeS">All solvent of the coat is taken to leave within its open time: the worst case.</param>
    public static IReadOnlyList<CoatVapour> Of(Coat coat, Room room, CoatMaterial? material, double openTimeS)
    {
        if (room.VolumeM3 is not { } roomM3) return [];
        List<CoatVapour> found = [];
        if (coat.Wipe is { } wipe) found.Add(In(VapourFrom.Wipe, Solvents.Of(wipe.Solvent), wipe.AmountMl, wipe.OverS));
        if (material?.Voc is { ActualGPerL: > 0 } voc && coat.Product.Solvent is { } name && material.NeedMl > 0)
        {
            var solvent = Solvents.Of(name);
            found.Add(In(VapourFrom.Coat, solvent, voc.ActualGPerL * (material.NeedMl + material.ThinnerMl) / 1000 / solvent.GPerMl, openTimeS));
        }

        return found;

        CoatVapour In(VapourFrom from, Solvent solvent, double liquidMl, double overS)
        {
            var vapour = RoomVapour.Of(solvent, liquidMl, overS, roomM3, room.AirChangesPerHour, room.Air.Celsius);
            return new CoatVapour(from, solvent, liquidMl, vapour, BasisOf(solvent, liquidMl, vapour), VapourReasons.Of(solvent, vapour));
        }
    }

    private static Basis BasisOf(Solvent solvent, double liquidMl, RoomVapour vapour) => new(
        "V dC/dt = G − Q C; C = (G/Q)(1 − e^(−Q t/V))",
        [
            new(v => v.Say("solvent", "disolvente"), v => $"{solvent.Name(v)}, {v.Volume(liquidMl)}"),
            new(v => v.Say("evaporating over", "se evapora en"), _ => Voice.Span(vapour.EvaporatingS)),
            new(v => v.Say("room V", "sala V"), v => v.RoomVolume(vapour.RoomM3)),
            new(v => v.Say("fresh air Q", "aire fresco Q"), v => v.AirFlow(vapour.AirM3PerS)),
            new(v => v.Say("molar mass, density", "masa molar, densidad"), v => $"{v.Number(solvent.GPerMol)} g/mol, {v.Density(solvent.GPerMl)}"),
        ], Sources.AcgihVentilation);

    /// <summary>What would have to be entered for a vapour that sheet or wipe warn of; null: all is known, or nothing is given off.</summary>
    public static Reason? NotReckoned(Coat coat, Room room, CoatMaterial? material)
    {
        var coatGivesOff = material is not null && coat.Product.Hazards.Any(h => h is Hazard.SolventVapour or Hazard.FlammableVapour);
        List<Phrase> missing = [];
        if (room.VolumeM3 is null && (coatGivesOff || coat.Wipe is not null)) missing.Add(v => v.Say("the volume of the room and its air changes", "el volumen de la sala y sus renovaciones de aire"));
        if (coatGivesOff && material!.Voc is null) missing.Add(v => v.Say("the product's VOC", "el COV del producto"));
        if (coatGivesOff && coat.Product.Solvent is null) missing.Add(v => v.Say("what its solvent mostly is", "qué disolvente es en su mayor parte"));
        return missing.Count == 0 ? null : new Reason("VapourNotReckoned", Limit.Note,
            v => v.Say($"Its vapour in this room is not worked out; still to be entered: {string.Join(", ", missing.Select(m => m(v)))}.", $"Su vapor en esta sala no se calcula: falta anotar {string.Join(", ", missing.Select(m => m(v)))}."),
            v => v.Say("Enter what is missing; until then take it as more than the limits: fresh air from outside, no flame or spark, and the respirator that the safety data sheet and 29 CFR 1910.134 ask for.",
                "Anote lo que falta; hasta entonces cuente con que supera los límites: aire fresco del exterior, nada de llamas ni chispas, y el respirador que piden la hoja de datos de seguridad y 29 CFR 1910.134."));
    }

    /// <summary>In one line: how high it gets and when the air is down to the strictest limit of a working day again.</summary>
    public string Line(Voice v)
    {
        var peak = $"{v.Number(PeakPpm, 0)} ppm" + (ShareOfFlammable is { } share ? v.Say($", {v.Percent(share, 1)} of the lower flammable limit", $", {v.Percent(share, 1)} del límite inferior de inflamabilidad") : "");
        var clear = ClearAfterS is { } s
            ? s <= 0 ? v.Say("as a mean of the room not over the strictest limit of a working day", "como media de la sala, sin pasar el límite más estricto de la jornada") : v.Say($"down to the strictest limit of a working day {InMinutes(s)} after {Since(v)}", $"baja al límite más estricto de la jornada {InMinutes(s)} después de {Since(v)}")
            : v.Say("never clears, with the room closed", "no se despeja nunca, con la sala cerrada");
        return v.Say($"Vapour of the {Say(From, v)} ({Solvent.Name(v)}, {v.Volume(LiquidMl)}): mean of the room up to {peak}; {clear}.",
            $"Vapor de la {Say(From, v)} ({Solvent.Name(v)}, {v.Volume(LiquidMl)}): media de la sala hasta {peak}; {clear}.");
    }

    /// <summary>A coat takes as long as it takes: its vapour is counted from the last of it.</summary>
    private string Since(Voice v) => From is VapourFrom.Wipe ? v.Say("the wipe began", "empezar a limpiar") : v.Say("the last of it is on", "aplicar lo último");

    // Upwards: no second of it is known.
    private static string InMinutes(double seconds) => Voice.Span(Math.Ceiling(seconds / 60) * 60);

    public static string Say(VapourFrom from, Voice v) => from is VapourFrom.Wipe ? v.Say("solvent wipe", "limpieza con disolvente") : v.Say("coat", "capa");
}
