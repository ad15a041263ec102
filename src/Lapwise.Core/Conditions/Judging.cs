using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions;

/// <summary>May I coat in this room today, and how long does the film stay open?</summary>
public static class Judging
{
    public static JobConditions Judge(Job job)
    {
        var room = job.Room;
        var dewPointC = Dew.PointC(room.Air.Celsius, room.RelativeHumidity);
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
            coat, room.Surface.Celsius - dewPointC, openTime, openBasis, potLife, potBasis,
            [.. RoomLimits.Of(coat.Product, room, dewPointC).Concat(openReasons).Concat(potReasons).OrderBy(r => r.Limit)]);
    }
}
