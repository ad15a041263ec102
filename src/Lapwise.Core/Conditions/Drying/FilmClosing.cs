using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Drying;

/// <summary>
/// How much sooner or later than on the data sheet a film closes, for humidity, air and thickness. Progress is a share e of
/// evaporation and 1 − e of reaction, both 1 at the sheet's conditions and at the surface's temperature:
/// t = t_sheet / (e · E + 1 − e).
/// E follows the vapour-pressure difference in the constant-rate stage only: a film whose polymer already fills 74 % of its
/// volume (Kiil 2006) is past it, and humidity no longer counts (Huisman et al. 2023).
/// </summary>
/// <param name="Evaporation">E, times the sheet's; 0 where the air gives water back.</param>
/// <param name="ConstantRate">True where the film starts in the stage that humidity holds back.</param>
/// <param name="Factor">Times the sheet's open time at this temperature.</param>
public sealed record FilmClosing(double Evaporation, bool ConstantRate, double Factor, IReadOnlyList<BasisInput> Inputs)
{
    /// <summary>Polymer share of the film's volume at which the constant-rate stage ends.</summary>
    public const double SwitchShare = 0.74;

    // Over a flat film transfer goes with the root of the air's speed: 0.1 m/s of a still room, 0.5 m/s under a fan
    // (laminar boundary layer; the speeds are common practice, no source). The sheet's laboratory counts as still.
    internal static readonly double MovingAir = Math.Sqrt(0.5 / 0.1);

    // However wet the air and thick the film, no more than this is claimed.
    private const double LongestFactor = 3;

    /// <summary>Null where the data sheet gives no shares: then no effect is claimed.</summary>
    public static FilmClosing? Of(Coat coat, Room room) => coat.Product.Drying is { } drying
        ? Of(drying, coat, room.Surface.Celsius, room.Air.Celsius, room.RelativeHumidity, room.AirMovement)
        : null;

    private static FilmClosing Of(Jobs.Drying drying, Coat coat, double surfaceC, double airC, double humidity, AirMovement movement)
    {
        var product = coat.Product;
        var solids = product.VolumeSolids / (1 + coat.ThinnerFraction);
        var constantRate = solids < SwitchShare;
        var pull = constantRate && drying.Carrier is Carrier.Water ? Math.Max(0, Pull(surfaceC, airC, humidity) / Pull(surfaceC, surfaceC, drying.SheetHumidity)) : 1;
        var air = movement is AirMovement.Moving ? MovingAir : 1;
        var sheetFilm = (product.LeastWetFilm.Micrometres + product.MostWetFilm.Micrometres) / 2;
        var thickness = ToLose(sheetFilm, product.VolumeSolids) / ToLose(coat.WetFilm.Micrometres, solids);
        var evaporation = pull * air * thickness;
        var factor = Math.Min(LongestFactor, 1 / Math.Max(1e-9, (drying.EvaporationShare * evaporation) + 1 - drying.EvaporationShare));
        return new FilmClosing(evaporation, constantRate, factor,
        [
            new(v => v.Say("share of evaporation e", "parte de evaporación e"), v => v.Percent(drying.EvaporationShare)),
            new(v => v.Say("vapour-pressure difference, against the sheet's", "diferencia de presión de vapor, frente a la ficha"),
                v => constantRate || drying.Carrier is Carrier.Solvent ? "× " + v.Number(pull) : v.Say("does not count: the film starts past the constant-rate stage", "no cuenta: la película empieza pasada la etapa de velocidad constante")),
            new(v => v.Say("air movement", "movimiento del aire"), v => "× " + v.Number(air)),
            new(v => v.Say("film thickness and thinner", "espesor y diluyente"), v => "× " + v.Number(thickness)),
        ]);
    }

    /// <summary>Vapour-pressure difference that carries water off, hPa: p_sat(surface) − RH · p_sat(air).</summary>
    public static double Pull(double surfaceC, double airC, double humidity) => Dew.SaturationHPa(surfaceC) - (humidity * Dew.SaturationHPa(airC));

    /// <summary>What must leave until the switch, µm of film; past it, all that is left to leave.</summary>
    private static double ToLose(double wetFilmUm, double solids) =>
        wetFilmUm * (solids < SwitchShare ? 1 - (solids / SwitchShare) : Math.Max(1 - solids, 0.01));
}
