namespace Lapwise.Core.Conditions;

/// <summary>
/// Dew point and its inversions by the Magnus form of Alduchov &amp; Eskridge (1996) over liquid water,
/// es = 6.1094 hPa · exp(17.625 t / (t + 243.04)), t in °C, good to 0.4 % from −40 to 50 °C.
/// Below 0 °C it is not the ice curve of psychrometric tables.
/// </summary>
public static class Dew
{
    private const double A = 17.625;
    private const double BCelsius = 243.04;

    /// <summary>No room is drier; a humidity of 0 has no dew point.</summary>
    private const double DriestHumidity = 0.01;

    /// <summary>Saturation vapour pressure over water, hPa.</summary>
    public static double SaturationHPa(double celsius) => 6.1094 * Math.Exp(A * celsius / (celsius + BCelsius));

    /// <summary>The temperature at which air of this humidity starts to wet a surface, °C.</summary>
    /// <param name="humidity">Relative humidity, 0 to 1; under 1 % is taken as 1 %.</param>
    public static double PointC(double airC, double humidity)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(humidity);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(humidity, 1);
        return SaturatedAtC(SaturationHPa(airC) * Math.Max(humidity, DriestHumidity));
    }

    /// <summary>Relative humidity of air at <paramref name="airC"/> whose dew point is <paramref name="dewPointC"/>.</summary>
    public static double HumidityAt(double airC, double dewPointC) => SaturationHPa(dewPointC) / SaturationHPa(airC);

    /// <summary>The air temperature at which the same moisture makes no more than this humidity, °C.</summary>
    public static double AirForHumidityC(double dewPointC, double humidity) => SaturatedAtC(SaturationHPa(dewPointC) / humidity);

    private static double SaturatedAtC(double hPa)
    {
        var g = Math.Log(hPa / 6.1094);
        return BCelsius * g / (A - g);
    }
}
