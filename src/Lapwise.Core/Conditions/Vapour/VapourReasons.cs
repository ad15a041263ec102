using Lapwise.Core.Explain;

namespace Lapwise.Core.Conditions.Vapour;

/// <summary>What a vapour in a room comes to against the limits by name, and what always holds beside it.</summary>
public static class VapourReasons
{
    /// <summary>The share of the lower flammable limit that fire codes commonly work to; NIOSH sets acetone's IDLH at a tenth.</summary>
    private const double Tenth = 0.1;

    /// <summary>Said beside every vapour that burns, once for each coat.</summary>
    public const string NotAClearance = "NotAFireClearance";

    public static IReadOnlyList<Reason> Of(Solvent solvent, RoomVapour room)
    {
        List<Reason> reasons = [];
        if (solvent.LowerFlammable is { } lower)
        {
            if (room.PeakShare >= Tenth * lower) reasons.Add(NearFlammable(solvent, room, lower));
            reasons.Add(NearWetWork(solvent));
        }

        reasons.AddRange(solvent.Limits.Where(l => Reached(l, room) > l.Ppm).Select(l => Over(solvent, l, Reached(l, room), room)));
        return [.. reasons.OrderBy(r => r.Limit)];
    }

    /// <summary>The mean over the limit's own time; a ceiling and a danger to life count at their peak.</summary>
    public static double Reached(ExposureLimit limit, RoomVapour room) => 1e6 * limit.Time switch
    {
        LimitTime.WorkingDay => room.MeanShare(8 * 3600),
        LimitTime.QuarterHour => WorstMean(room, 15 * 60),
        LimitTime.TenMinuteCeiling or LimitTime.DangerToLife => room.PeakShare,
        _ => throw new ArgumentOutOfRangeException(nameof(limit), limit, null),
    };

    /// <summary>The worst window of a length, slid in steps of a twentieth of it.</summary>
    private static double WorstMean(RoomVapour room, double lengthS)
    {
        var last = room.EvaporatingS;
        double Mean(double from) => ((room.MeanShare(from + lengthS) * (from + lengthS)) - (from > 0 ? room.MeanShare(from) * from : 0)) / lengthS;
        var worst = Mean(0);
        for (var from = lengthS / 20; from <= last; from += Math.Max(lengthS / 20, last / 500)) worst = Math.Max(worst, Mean(from));
        return worst;
    }

    /// <param name="coats">Numbers of the coats that go on other tops.</param>
    public static Reason OnTopOf(IReadOnlyList<string> coats) => new("VapourOfOtherTops", Limit.Note,
        v => v.Say($"The vapour of what goes on other tops the same day (coat {v.List(coats)}) comes on top of this; each sum is of its coat alone.",
            $"El vapor de lo que se aplica el mismo día en otras cubiertas (capa {v.List(coats)}) se suma a este; cada cálculo es de su capa sola."),
        v => v.Say("Air the room between them, or count them together: what both come to must stay within the limits.", "Ventile entre una y otra, o cuéntelas juntas: la suma tiene que quedar dentro de los límites."));

    private static Reason NearFlammable(Solvent solvent, RoomVapour room, double lower) => new("VapourNearFlammable", Limit.Never,
        v => v.Say($"Mixed through the whole room the vapour reaches {v.Percent(room.PeakShare / lower)} of the lower flammable limit ({v.Percent(lower, 1)} of {solvent.Name(v)} in air); a tenth is the usual alarm.",
            $"Repartido por toda la sala, el vapor llega al {v.Percent(room.PeakShare / lower)} del límite inferior de inflamabilidad ({v.Percent(lower, 1)} de {solvent.Name(v)} en el aire); la alarma habitual es la décima parte."),
        v => v.Say("Use less at a time, over longer, with more fresh air; no flame, spark or switch in the room or downhill of it.", "Use menos cada vez, más despacio, con más aire fresco; nada de llamas, chispas ni interruptores en la sala ni más abajo."));

    private static Reason NearWetWork(Solvent solvent) => new(NotAClearance, Limit.Note,
        v => v.Say($"The air just over a rag, can or wet top is far richer than the room's mean and can flash: this sum is no clearance for fire. {char.ToUpperInvariant(solvent.Name(v)[0])}{solvent.Name(v)[1..]} vapour is heavier than air and runs along the floor to pilot lights, refrigerators and switches.",
            $"El aire justo sobre el trapo, el bote o la cubierta húmeda es mucho más rico que la media de la sala y puede inflamarse: este cálculo no autoriza nada frente al fuego. El vapor de {solvent.Name(v)} pesa más que el aire y corre por el suelo hasta pilotos, frigoríficos e interruptores."),
        v => v.Say("Put out pilot lights and unplug what switches by itself before the can is opened. No flame, torch or heat gun after a solvent wipe until it has dried and the room has been aired.",
            "Apague pilotos y desenchufe lo que se enciende solo antes de abrir el bote. Tras limpiar con disolvente, nada de llama, soplete ni pistola de calor hasta que seque y la sala esté ventilada."));

    private static Reason Over(Solvent solvent, ExposureLimit limit, double ppm, RoomVapour room) => new("OverExposureLimit", Limit.AtYourWord,
        v => v.Say($"{solvent.Name(v)}: {v.Number(ppm, ppm < 1 ? 3 : 0)} ppm ({Solvents.Say(limit.Time, v)}) is over {limit.Name}, {v.Number(limit.Ppm, 3)} ppm.",
            $"{solvent.Name(v)}: {v.Number(ppm, ppm < 1 ? 3 : 0)} ppm ({Solvents.Say(limit.Time, v)}) supera {limit.Name}, {v.Number(limit.Ppm, 3)} ppm."),
        v => room.AirM3PerS > 0
            ? v.Say("More fresh air, less at a time, or the respirator that the safety data sheet and 29 CFR 1910.134 ask for.", "Más aire fresco, menos cada vez, o el respirador que piden la hoja de datos de seguridad y 29 CFR 1910.134.")
            : v.Say("A closed room never clears: open it to the outside, and use the respirator that the safety data sheet and 29 CFR 1910.134 ask for.", "Una sala cerrada nunca se despeja: ábrala al exterior y use el respirador que piden la hoja de datos de seguridad y 29 CFR 1910.134."));
}
