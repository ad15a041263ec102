using Lapwise.Core.Explain;

namespace Lapwise.Core.Conditions.Vapour;

/// <summary>Vapour in the room over time, against the limits by name.</summary>
public static class VapourCurve
{
    private const int Points = 120;

    public static Curve Of(Solvent solvent, RoomVapour room)
    {
        var end = Math.Min(8 * 3600, room.EvaporatingS + (room.AirM3PerS > 0 ? 4 * room.RoomM3 / room.AirM3PerS : room.EvaporatingS));
        // The corner where the last of it has evaporated is a point of its own.
        var times = Enumerable.Range(0, Points + 1).Select(i => i * end / Points).Append(Math.Min(end, room.EvaporatingS)).Order().Distinct().ToList();
        CurveLine Line(Phrase name, double scale, Func<Voice, double, string> show) => new(name, [.. times.Select(t => (t, room.ShareAt(t) * scale))], show) { FromZero = true };
        return new Curve(
            v => v.Say($"Vapour of {solvent.Name(v)} in the room", $"Vapor de {solvent.Name(v)} en la sala"),
            v => v.Say("since it was poured", "desde que se vertió"), (_, x) => Voice.Clock(x),
            Line(v => v.Say("mean of the room", "media de la sala"), 1e6, Ppm))
        {
            Beside = solvent.LowerFlammable is { } lower
                ? [Line(v => v.Say("share of the lower flammable limit", "parte del límite inferior de inflamabilidad"), 1 / lower, (v, y) => v.Percent(y, 1))]
                : [],
            Marks = room.EvaporatingS < end ? [new CurveMark(room.EvaporatingS, v => v.Say("the last of it has evaporated", "se evaporó lo último"))] : [],
            Limits =
            [
                .. solvent.Limits.Select(l => new CurveLimit(l.Ppm, v => $"{l.Name} {Ppm(v, l.Ppm)}")),
                .. solvent.LowerFlammable is { } lel ? [new CurveLimit(lel * 1e6, v => v.Say($"lower flammable limit {Ppm(v, lel * 1e6)}", $"límite inferior de inflamabilidad {Ppm(v, lel * 1e6)}"))] : Array.Empty<CurveLimit>(),
            ],
        };
    }

    private static string Ppm(Voice v, double ppm) => v.Number(ppm, ppm < 1 ? 3 : ppm < 10 ? 1 : 0) + " ppm";
}
