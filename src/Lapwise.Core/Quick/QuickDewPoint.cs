using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Quick;

/// <summary>Dew point, and whether a surface keeps above it.</summary>
internal static class QuickDewPoint
{
    private static readonly QuickField Air = Asks.Temperature("air", v => v.Say("air temperature", "temperatura del aire")).Must;
    private static readonly QuickField Humidity = Asks.Humidity("humidity", v => v.Say("relative humidity", "humedad relativa"));
    private static readonly QuickField Dewpoint = Asks.Temperature("dewPoint", v => v.Say("dew point, in place of humidity", "punto de rocío, en lugar de la humedad"));
    private static readonly QuickField Surface = Asks.Temperature("surface", v => v.Say("surface temperature", "temperatura de la superficie"));

    private const double MarginK = 3;

    public static readonly QuickSum Sum = new("dew-point", Phases.Conditions, v => v.Say("Dew point", "Punto de rocío"),
        v => v.Say("Where does the air wet a surface, and is the top warm enough?", "¿Dónde moja el aire una superficie, y está la cubierta bastante caliente?"),
        [Air, Humidity, Dewpoint, Surface], Work);

    private static QuickResult Work(QuickValues values)
    {
        var air = values.Of(Air);
        if (values.Has(Humidity) == values.Has(Dewpoint)) QuickFilm.OneOfTwo(values, Humidity, Dewpoint);
        if (values.If(Dewpoint) > air)
        {
            values.Refuse(Dewpoint, "DewPointOverAir",
                v => v.Say($"A dew point of {v.Temperature(values.Of(Dewpoint))} is above the air at {v.Temperature(air)}: air cannot hold that.", $"Un punto de rocío de {v.Temperature(values.Of(Dewpoint))} está por encima del aire a {v.Temperature(air)}: el aire no puede contener tanto."),
                v => v.Say("Check which of the two is which.", "Revise cuál es cuál."));
        }

        if (values.Faults.Count > 0) return new QuickResult([]);
        var humidity = values.If(Humidity) ?? Math.Min(1, Dew.HumidityAt(air, values.Of(Dewpoint)));
        var dew = Dew.PointC(air, humidity);
        var basis = new Basis("γ = ln RH + 17.625 t / (243.04 + t); t_d = 243.04 γ / (17.625 − γ)",
            [
                new(v => v.Say("air temperature t", "temperatura del aire t"), v => v.Temperature(air)),
                new(v => v.Say("relative humidity RH", "humedad relativa RH"), v => v.Percent(humidity, 1)),
            ], Sources.AlduchovEskridge);
        var practice = basis with { Formula = "t_s ≥ t_d + 3 K", Source = Sources.Iso8502Part4 };
        List<QuickRow> rows =
        [
            new("dewPointC", v => v.Say("dew point", "punto de rocío"), dew, v => v.Temperature(dew), basis),
            new("humidity", v => v.Say("relative humidity", "humedad relativa"), humidity, v => v.Percent(humidity, 1), basis),
            new("leastSurfaceC", v => v.Say("coldest surface to coat", "superficie más fría para aplicar"), dew + MarginK, v => v.TemperatureAtLeast(dew + MarginK), practice),
        ];
        if (values.If(Surface) is not { } surface) return new QuickResult(rows);
        rows.Add(new("marginK", v => v.Say("surface above dew point", "superficie sobre el punto de rocío"), surface - dew, v => v.TemperatureDifference(surface - dew), practice));
        return new QuickResult(rows) { Reasons = surface - dew < MarginK ? [TooNear(surface, dew)] : [] };
    }

    private static Reason TooNear(double surface, double dew) => new("SurfaceNearDewPoint", Limit.Never,
        v => v.Say($"The surface is only {v.TemperatureDifference(surface - dew)} above the dew point; {v.TemperatureDifference(MarginK)} are needed.", $"La superficie está solo {v.TemperatureDifference(surface - dew)} sobre el punto de rocío; hacen falta {v.TemperatureDifference(MarginK)}."),
        v => v.Say($"Warm the top to {v.TemperatureAtLeast(dew + MarginK)} or dry the air; then measure again.", $"Caliente la cubierta a {v.TemperatureAtLeast(dew + MarginK)} o seque el aire; después vuelva a medir."));
}
