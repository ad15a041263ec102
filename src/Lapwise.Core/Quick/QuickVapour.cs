using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>Vapour of a wipe or coat in a room: against exposure limits by name and the lower flammable limit.</summary>
internal static class QuickVapour
{
    private static readonly QuickField Of = Asks.OneOf("of", v => v.Say("solvent", "disolvente"), [.. Solvents.All.Select(s => new QuickWord(s.Id, s.Name))]);
    private static readonly QuickField Amount = Asks.Volume("amount", v => v.Say("liquid that evaporates", "líquido que se evapora")).Must with { Example = v => v.Units is UnitSystem.Us ? "2floz" : "60mL" };
    private static readonly QuickField Over = Asks.Time("over", v => v.Say("evaporating over", "se evapora en")).Must with { Example = _ => "10min" };
    private static readonly QuickField Length = Asks.Length("length", v => v.Say("room length", "largo de la sala"));
    private static readonly QuickField Width = Asks.Length("width", v => v.Say("room width", "ancho de la sala"));
    private static readonly QuickField Height = Asks.Length("height", v => v.Say("room height", "alto de la sala"));
    private static readonly QuickField Volume = new("volume", v => v.Say("room volume, in place of its sides", "volumen de la sala, en lugar de sus medidas"), v => v.Units is UnitSystem.Us ? "1440ft3" : "40m3")
    {
        Read = (f, p, e) => f.RoomVolume(p, e) / 1e6,
        Show = (v, x) => v.RoomVolume(x),
    };
    private static readonly QuickField Changes = Asks.Number("changes", v => v.Say("fresh air changes an hour", "renovaciones de aire por hora"), "4", 0, 200) with { Else = "0" };
    private static readonly QuickField Mixing = Asks.Number("mixing", v => v.Say("K, how badly the air mixes, 1 to 10", "K, lo mal que se mezcla el aire, de 1 a 10"), "3", 1, 10) with { Finer = true, Else = "3" };
    private static readonly QuickField Air = Asks.Temperature("air", v => v.Say("air temperature", "temperatura del aire")) with { Finer = true, Else = "70 °F" };
    private static readonly QuickField Lel = Asks.Share("lel", v => v.Say("lower flammable limit of the safety data sheet", "límite inferior de inflamabilidad de la hoja de datos")) with { Finer = true, Example = _ => "2.5%" };
    private static readonly QuickField Uel = Asks.Share("uel", v => v.Say("upper flammable limit of the safety data sheet", "límite superior de inflamabilidad de la hoja de datos")) with { Finer = true, Example = _ => "12.8%" };

    public static readonly QuickSum Sum = new("vapour", Phases.Conditions, v => v.Say("Vapour", "Vapor"),
        v => v.Say("How much vapour is in the room, and how much fresh air does it take?", "¿Cuánto vapor hay en la sala, y cuánto aire fresco hace falta?"),
        [Of, Amount, Over, Length, Width, Height, Volume, Changes, Mixing, Air, Lel, Uel], Work);

    private static QuickResult Work(QuickValues values)
    {
        var listed = Solvents.All.Single(s => s.Id == values.Word(Of));
        var solvent = listed with { LowerFlammable = values.If(Lel) ?? listed.LowerFlammable, UpperFlammable = values.If(Uel) ?? listed.UpperFlammable };
        if (solvent.LowerFlammable >= solvent.UpperFlammable)
        {
            values.Refuse(Lel, "LowerOverUpper",
                v => v.Say($"The lower flammable limit, {v.Percent(solvent.LowerFlammable!.Value, 1)}, is not below the upper, {v.Percent(solvent.UpperFlammable!.Value, 1)}.", $"El límite inferior, {v.Percent(solvent.LowerFlammable!.Value, 1)}, no está por debajo del superior, {v.Percent(solvent.UpperFlammable!.Value, 1)}."),
                v => v.Say("Check both in the safety data sheet.", "Revise ambos en la hoja de datos de seguridad."));
        }

        if (new[] { Length, Width, Height }.All(values.Has) == values.Has(Volume)) RoomNeeded(values);
        foreach (var side in new[] { Length, Width, Height }.Where(f => values.If(f) is <= 0))
            values.Refuse(side, "NotPositive", v => v.Say("A room has three sides.", "Una sala tiene tres medidas."), v => v.Say("Enter the inside measure.", "Escriba la medida interior."));
        if (values.Faults.Count > 0) return new QuickResult([]);

        var (amount, over, air) = (values.Of(Amount), values.Of(Over), values.Of(Air));
        var roomM3 = values.If(Volume) ?? values.Of(Length) * values.Of(Width) * values.Of(Height);
        var room = RoomVapour.Of(solvent, amount, over, roomM3, values.Of(Changes), air);
        var balance = new Basis("V dC/dt = G − Q C; C = (G/Q)(1 − e^(−Q t/V))",
            [
                new(v => v.Say("liquid", "líquido"), v => v.Volume(amount)),
                new(v => v.Say("evaporating over", "se evapora en"), _ => Voice.Span(over)),
                new(v => v.Say("room V", "sala V"), v => v.RoomVolume(roomM3)),
                new(v => v.Say("fresh air Q", "aire fresco Q"), v => v.AirFlow(room.AirM3PerS)),
                new(v => v.Say("molar mass, density", "masa molar, densidad"), v => $"{v.Number(solvent.GPerMol)} g/mol, {v.Density(solvent.GPerMl)}"),
            ], Sources.AcgihVentilation);
        List<QuickRow> rows = [new("peakPpm", v => v.Say("highest mean of the room", "máximo medio de la sala"), room.PeakShare * 1e6, v => v.Number(room.PeakShare * 1e6, 0) + " ppm", balance)];
        if (solvent.LowerFlammable is { } lower)
            rows.Add(new("shareOfLel", v => v.Say("share of the lower flammable limit", "parte del límite inferior de inflamabilidad"), room.PeakShare / lower, v => v.Percent(room.PeakShare / lower, 1), balance with { Source = solvent.Source }));
        foreach (var limit in solvent.Limits)
        {
            var reached = VapourReasons.Reached(limit, room);
            rows.Add(new($"{limit.Name.Replace(" ", "", StringComparison.Ordinal)}Ppm", v => $"{limit.Name}, {v.Number(limit.Ppm, 3)} ppm ({Solvents.Say(limit.Time, v)})", reached,
                v => v.Number(reached, reached < 1 ? 3 : 0) + " ppm", balance with { Source = limit.Source }));
        }

        if (solvent.Limits.Where(l => l.Time is LimitTime.WorkingDay).MinBy(l => l.Ppm) is { } strictest)
        {
            var needed = DilutionAir.M3PerS(solvent, amount / over, strictest.Ppm / 1e6, values.Of(Mixing), air);
            rows.Add(new("dilutionAirM3PerS", v => v.Say($"fresh air that holds it at {v.Number(strictest.Ppm, 3)} ppm while it evaporates", $"aire fresco que lo mantiene en {v.Number(strictest.Ppm, 3)} ppm mientras se evapora"),
                needed, v => v.AirFlow(needed), new Basis("Q = 403 · SG · ER · 10⁶ · K / (MW · C)", [.. balance.Inputs, new(v => "K", v => v.Number(values.Of(Mixing)))], Sources.AcgihVentilation)));
            var clear = room.ClearAfterS(strictest.Ppm / 1e6);
            rows.Add(new("clearAfterS", v => v.Say($"down to {v.Number(strictest.Ppm, 3)} ppm after", $"baja a {v.Number(strictest.Ppm, 3)} ppm tras"), clear ?? double.PositiveInfinity,
                v => clear is { } s ? Voice.Span(s) : v.Say("never, with the room closed", "nunca, con la sala cerrada"), balance));
        }

        return new QuickResult(rows)
        {
            Reasons = VapourReasons.Of(solvent, room),
            Hazards = solvent.Id == "hdi" ? [Explain.Hazard.Isocyanate] : [Explain.Hazard.FlammableVapour, Explain.Hazard.SolventVapour],
            Curve = VapourCurve.Of(solvent, room),
        };
    }

    private static void RoomNeeded(QuickValues values) => values.Refuse(Volume, "RoomHalf",
        v => v.Say("The room is needed once: by its length, width and height, or by its volume.", "La sala hace falta una vez: por su largo, ancho y alto, o por su volumen."),
        v => v.Say("Give its three sides, or its volume.", "Dé sus tres medidas, o su volumen."));
}
