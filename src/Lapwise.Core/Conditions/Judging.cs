using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions;

/// <summary>May I coat in this room today, and how long does the film stay open?</summary>
public static class Judging
{
    public static JobConditions Judge(Job job)
    {
        var room = job.Room;
        // A room that was not read stands at NaN, and so does its dew point; the fault is already said.
        var dewPointC = double.IsNaN(room.RelativeHumidity) ? double.NaN : Dew.PointC(room.Air.Celsius, room.RelativeHumidity);
        var basis = new Basis(
            "γ = ln RH + 17.625 t / (243.04 + t); t_d = 243.04 γ / (17.625 − γ)",
            [
                new(v => v.Say("air temperature t", "temperatura del aire t"), v => v.Temperature(room.Air.Celsius)),
                new(v => v.Say("relative humidity RH", "humedad relativa RH"), v => v.Percent(room.RelativeHumidity)),
            ],
            Sources.AlduchovEskridge);
        return new JobConditions(dewPointC, basis, [.. job.System.Select(coat => JudgeCoat(coat, room, dewPointC))]);
    }

    private static CoatConditions JudgeCoat(Coat coat, Room room, double dewPointC)
    {
        var (openTime, openBasis, openReasons) = Clocks.OpenTimeOf(coat, room);
        var (potLife, potBasis, potReasons) = Clocks.PotLifeOf(coat, room);
        return new CoatConditions(
            coat, room.Surface.Celsius - dewPointC, DewMarginBasis(coat.Product.Limits, room, dewPointC), openTime, openBasis, potLife, potBasis,
            [.. RoomLimits.Of(coat.Product, room, dewPointC).Concat(openReasons).Concat(potReasons).OrderBy(r => r.Limit)]);
    }

    private static Basis DewMarginBasis(ProductLimits limits, Room room, double dewPointC) => new(
        "m = t_s − t_d",
        [
            new(v => v.Say("surface temperature t_s", "temperatura de la superficie t_s"), v => v.Temperature(room.Surface.Celsius)),
            new(v => v.Say("dew point t_d", "punto de rocío t_d"), v => v.Temperature(dewPointC)),
            new(v => v.Say("least margin", "margen mínimo"), v => v.TemperatureDifference(limits.DewMarginC)),
        ],
        // The two rules of the trade by their figure; any other margin is the data sheet's own.
        Math.Round(limits.DewMarginC, 2) switch { 3 => Sources.Iso8502Part4, 2.78 => Sources.MilHdbk1110, _ => Sources.AsEntered });
}
