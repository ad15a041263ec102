using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions;

/// <summary>The room against the limits of one product: what is broken, and what is near enough to watch.</summary>
internal static class RoomLimits
{
    // Two good formulas for the dew point differ by 0.01 °C; a surface on the very limit must not pass by the choice of one.
    private const double DewGuardK = 0.05;

    // Within these of a limit the room is watched: what thermometers and a day's drift make of it. Common practice, no source.
    private const double NearDewK = 2;
    private const double NearAirK = 1;
    private const double NearHumidity = 0.05;

    public static IEnumerable<Reason> Of(Product product, Room room, double dewPointC)
    {
        if (Dewy(product.Limits, room, dewPointC) is { } dewy) yield return dewy;
        if (Air(product, room.Air.Celsius) is { } air) yield return air;
        if (Surface(product, room.Surface.Celsius) is { } surface) yield return surface;
        if (Humid(product, room, dewPointC) is { } humid) yield return humid;
    }

    private static Reason? Dewy(ProductLimits limits, Room room, double dewPointC)
    {
        var (surface, least) = (room.Surface.Celsius, dewPointC + limits.DewMarginC + DewGuardK);
        if (surface < least)
        {
            var dryTo = Dew.HumidityAt(room.Air.Celsius, surface - limits.DewMarginC - DewGuardK);
            return new Reason("SurfaceNearDewPoint", Limit.Never,
                v => v.Say(
                    $"The top is at {v.Temperature(surface)} and the dew point at {v.Temperature(dewPointC)}: {v.TemperatureDifference(surface - dewPointC)} between them where {v.TemperatureDifference(limits.DewMarginC)} are needed. Moisture would get under or into the film.",
                    $"La cubierta está a {v.Temperature(surface)} y el punto de rocío a {v.Temperature(dewPointC)}: los separan {v.TemperatureDifference(surface - dewPointC)} y hacen falta {v.TemperatureDifference(limits.DewMarginC)}. La humedad quedaría bajo la película o dentro de ella."),
                v => v.Say(
                    $"Warm the top to {v.TemperatureAtLeast(least)} or more, or dry the air to {v.PercentAtMost(dryTo)}; then measure the top again.",
                    $"Caliente la cubierta a {v.TemperatureAtLeast(least)} o más, o seque el aire hasta {v.PercentAtMost(dryTo)}; después vuelva a medir la cubierta."));
        }

        return surface >= least + NearDewK ? null : new Reason("DewMarginNarrow", Limit.Note,
            v => v.Say(
                $"The top is only {v.TemperatureDifference(surface - dewPointC)} above the dew point; {v.TemperatureDifference(limits.DewMarginC)} are needed.",
                $"La cubierta está solo {v.TemperatureDifference(surface - dewPointC)} por encima del punto de rocío; hacen falta {v.TemperatureDifference(limits.DewMarginC)}."),
            v => v.Say("Measure at the top itself before each coat and about every 4 h; it should be rising.", "Mida en la propia cubierta antes de cada capa y cada 4 h más o menos; debe ir subiendo."));
    }

    private static Reason? Air(Product product, double air)
    {
        var (least, most) = (product.Limits.AirLeastC, product.Limits.AirMostC);
        if (air < least)
        {
            return new Reason("AirTooCold", Limit.AtYourWord,
                v => v.Say($"The air is at {v.Temperature(air)}; the data sheet asks for at least {v.Temperature(least)}.", $"El aire está a {v.Temperature(air)}; la ficha técnica pide al menos {v.Temperature(least)}."),
                v => v.Say($"Warm the room to {v.TemperatureAtLeast(least)} or more, {HeaterCaution(v, product)}", $"Caliente la sala a {v.TemperatureAtLeast(least)} o más, {HeaterCaution(v, product)}"));
        }

        if (air > most)
        {
            return new Reason("AirTooWarm", Limit.AtYourWord,
                v => v.Say($"The air is at {v.Temperature(air)}; the data sheet allows at most {v.Temperature(most)}.", $"El aire está a {v.Temperature(air)}; la ficha técnica admite como máximo {v.Temperature(most)}."),
                v => v.Say($"Cool the room to {v.TemperatureAtMost(most)} or less, or work in the cool of the day.", $"Enfríe la sala a {v.TemperatureAtMost(most)} o menos, o trabaje en las horas frescas."));
        }

        if (air >= least + NearAirK && air <= most - NearAirK) return null;
        return new Reason("AirNearLimit", Limit.Note,
            v => v.Say($"The air, at {v.Temperature(air)}, is close to the limits of the data sheet ({v.Temperature(least)} to {v.Temperature(most)}).",
                $"El aire, a {v.Temperature(air)}, está cerca de los límites de la ficha técnica (de {v.Temperature(least)} a {v.Temperature(most)})."),
            v => v.Say("Watch the thermometer while you work and while the film cures.", "Vigile el termómetro mientras trabaja y mientras cura la película."));
    }

    /// <summary>The top itself may be in the sun or over a cold cellar while the air is fine.</summary>
    private static Reason? Surface(Product product, double surface)
    {
        var (least, most) = (product.Limits.SurfaceLeastC, product.Limits.SurfaceMostC);
        if (surface < least)
        {
            return new Reason("SurfaceTooCold", Limit.AtYourWord,
                v => v.Say($"The top is at {v.Temperature(surface)}; the data sheet asks for at least {v.Temperature(least)}.", $"La cubierta está a {v.Temperature(surface)}; la ficha técnica pide al menos {v.Temperature(least)}."),
                v => v.Say($"Warm the room until the top itself is at {v.TemperatureAtLeast(least)} or more; measure at the top.", $"Caliente la sala hasta que la propia cubierta esté a {v.TemperatureAtLeast(least)} o más; mida en la cubierta."));
        }

        return surface <= most ? null : new Reason("SurfaceTooWarm", Limit.AtYourWord,
            v => v.Say($"The top is at {v.Temperature(surface)}; the data sheet allows at most {v.Temperature(most)}.", $"La cubierta está a {v.Temperature(surface)}; la ficha técnica admite como máximo {v.Temperature(most)}."),
            v => v.Say($"Shade it and let it cool to {v.TemperatureAtMost(most)} or less; measure at the top.", $"Póngala a la sombra y deje que baje a {v.TemperatureAtMost(most)} o menos; mida en la cubierta."));
    }

    private static Reason? Humid(Product product, Room room, double dewPointC)
    {
        var (humidity, most) = (room.RelativeHumidity, product.Limits.HumidityMost);
        if (humidity > most)
        {
            var warmTo = Dew.AirForHumidityC(dewPointC, most);
            var warmingHelps = warmTo <= product.Limits.AirMostC;
            return new Reason("AirTooHumid", Limit.AtYourWord,
                v => v.Say($"The air is at {v.Percent(humidity, 1)} humidity; the data sheet allows at most {v.Percent(most, 1)}.", $"La humedad del aire es de {v.Percent(humidity, 1)}; la ficha técnica admite como máximo {v.Percent(most, 1)}."),
                v => warmingHelps
                    ? v.Say($"Dry the air to {v.PercentAtMost(most)}, or warm it to {v.TemperatureAtLeast(warmTo)}, {HeaterCaution(v, product)}",
                        $"Seque el aire hasta {v.PercentAtMost(most)}, o caliéntelo a {v.TemperatureAtLeast(warmTo)}, {HeaterCaution(v, product)}")
                    : v.Say($"Dry the air to {v.PercentAtMost(most)} with a dehumidifier.", $"Seque el aire hasta {v.PercentAtMost(most)} con un deshumidificador."));
        }

        return humidity <= most - NearHumidity ? null : new Reason("HumidityNearLimit", Limit.Note,
            v => v.Say($"Humidity is {v.Percent(humidity, 1)}, close to the data sheet's {v.Percent(most, 1)}.", $"La humedad es de {v.Percent(humidity, 1)}, cerca del {v.Percent(most, 1)} de la ficha técnica."),
            v => v.Say("Measure again before each coat.", "Mida otra vez antes de cada capa."));
    }

    private static string HeaterCaution(Voice v, Product product) => product.Hazards.Contains(Hazard.FlammableVapour)
        ? v.Say("with nothing that burns or glows: its vapour can catch fire, and burning gas adds moisture.", "sin nada que arda ni esté al rojo: el vapor puede prenderse, y el gas al quemarse añade humedad.")
        : v.Say("without a heater that burns gas in the room: it adds moisture.", "sin un calentador que queme gas en la sala: añade humedad.");
}
