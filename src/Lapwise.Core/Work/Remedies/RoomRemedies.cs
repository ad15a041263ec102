using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Work.Remedies;

/// <summary>Remedies in temperature, found by halving on whole degrees of the job's own units.</summary>
internal static class RoomRemedies
{
    /// <summary>No hour of the same day is cooler by more. Common practice, no source.</summary>
    private const double MostCoolerK = 12;

    /// <summary>The warmest surface at which the plan keeps its target; the room cools with it, its moisture stays.</summary>
    public static async ValueTask<Remedy?> CoolerHourAsync(Trying trying)
    {
        var room = trying.Job.Room;
        if (trying.Coat.TestBoard is not null)
        {
            return Trying.Untold(RemedyKind.CoolerHour,
                v => v.Say("Work in a cooler hour.", "Trabaje en una hora más fresca."),
                v => v.Say("No number can be had: the open time comes from a test board of this room. Lap another board in the cooler hour.",
                    "No hay cifra posible: el tiempo abierto sale de una placa de prueba en esta sala. Haga otra placa en la hora más fresca."));
        }

        return await CoolerAsync(trying, room.Surface.Celsius, c => room with
        {
            Surface = new SurfaceTemperature(c),
            Air = new AirTemperature(AirWith(room, c)),
            RelativeHumidity = HumidityAt(room, AirWith(room, c)),
        }) is not ({ } celsius, { } tried) ? null : trying.Made(RemedyKind.CoolerHour, tried, v => v.Say(
            $"Work when the top is at {v.TemperatureAtMost(celsius)} instead of {v.Temperature(room.Surface.Celsius)}: the film stays open {Voice.Span(tried.Work.OpenTime.Seconds)}.",
            $"Trabaje cuando la cubierta esté a {v.TemperatureAtMost(celsius)} en vez de {v.Temperature(room.Surface.Celsius)}: la película queda abierta {Voice.Span(tried.Work.OpenTime.Seconds)}."));
    }

    /// <summary>Only where pot life is the limit. A can colder than the dew point would sweat.</summary>
    public static async ValueTask<Remedy?> CoolerMaterialAsync(Trying trying)
    {
        var room = trying.Job.Room;
        if (!trying.Now.OutlivesPot) return null;
        return await CoolerAsync(trying, room.Material.Celsius, c => room with { Material = new MaterialTemperature(c) }) is not ({ } celsius, { } tried)
            ? null
            : trying.Made(RemedyKind.CoolerMaterial, tried, v => v.Say(
                $"Keep the material at {v.TemperatureAtMost(celsius)} instead of {v.Temperature(room.Material.Celsius)}: a batch lives {Voice.Span(tried.Work.PotLife.Seconds)}.",
                $"Mantenga el material a {v.TemperatureAtMost(celsius)} en vez de {v.Temperature(room.Material.Celsius)}: una mezcla dura {Voice.Span(tried.Work.PotLife.Seconds)}."));
    }

    /// <summary>The warmest whole degree that keeps the target, else the coolest that is allowed where it helps.</summary>
    private static async ValueTask<(double Celsius, Attempt Tried)?> CoolerAsync(Trying trying, double nowC, Func<double, Room> room)
    {
        var degrees = new Degrees(trying.Job.Units);
        var warmest = degrees.Below(nowC);
        while (!Allowed(warmest) && IsSameDay(warmest - 1)) warmest--;
        var coolest = warmest;
        if (!Allowed(coolest)) return null;
        while (IsSameDay(coolest - 1) && Allowed(coolest - 1)) coolest--;

        var best = (Degree: coolest, Tried: await PlannedAsync(coolest));
        if (best.Tried is null || !best.Tried.IsBetterThan(trying.Now)) return null;
        for (var (low, high) = (coolest, warmest + 1); best.Tried.KeepsTarget && high - low > 1;)
        {
            var middle = (low + high) / 2;
            if (await PlannedAsync(middle) is { KeepsTarget: true } tried) (low, best) = (middle, (middle, tried));
            else high = middle;
        }

        return (degrees.Celsius(best.Degree), best.Tried);

        ValueTask<Attempt?> PlannedAsync(int degree) => trying.PlanAsync(trying.Job with { Room = room(degrees.Celsius(degree)) });
        bool IsSameDay(int degree) => nowC - degrees.Celsius(degree) <= MostCoolerK;
        bool Allowed(int degree) => MayCoat(trying, room(degrees.Celsius(degree)));
    }

    private static bool MayCoat(Trying trying, Room room)
    {
        if (room.RelativeHumidity > 1) return false;
        var conditions = Judging.Judge(trying.Job with { Room = room });
        return room.Material.Celsius >= conditions.DewPointC + trying.Product.Limits.DewMarginC
            && room.Material.Celsius >= trying.Product.Limits.AirLeastC
            && conditions.Coats[0].MayCoat;
    }

    private static double AirWith(Room room, double surfaceC) => room.Air.Celsius + surfaceC - room.Surface.Celsius;

    /// <summary>The same moisture in cooler air.</summary>
    private static double HumidityAt(Room room, double airC) => Dew.HumidityAt(airC, Dew.PointC(room.Air.Celsius, room.RelativeHumidity));

    /// <summary>Whole degrees as a thermometer of the job's units shows them.</summary>
    private readonly record struct Degrees(UnitSystem Units)
    {
        public double Celsius(int degree) => Units == UnitSystem.Us ? (degree - Factors.FahrenheitAtFreezing) / Factors.FahrenheitPerKelvin : degree;

        /// <summary>The first whole degree below a temperature.</summary>
        public int Below(double celsius) => (int)Math.Ceiling((Units == UnitSystem.Us ? (celsius * Factors.FahrenheitPerKelvin) + Factors.FahrenheitAtFreezing : celsius) - 1e-6) - 1;
    }
}
