namespace Lapwise.Core.Conditions.Drying;

/// <summary>
/// Water leaving a film in two stages. Constant rate: J = k (M/RT) (p_sat(T_s) − RH p_sat(T_a)) until the polymer fills 74 %
/// of the volume (Kiil, Prog. Org. Coat. 57 (2006) 236). Falling rate: dw/dt = −(J₅₀/w_s) w, with J₅₀ the flux at 50 %
/// humidity whatever the room's, for there humidity hardly counts (Huisman et al., Phys. Rev. Lett. 131 (2023)).
/// </summary>
/// <param name="WaterGPerM2">Water at the start.</param>
/// <param name="SwitchGPerM2">Water left at the switch; never more than at the start.</param>
/// <param name="FluxGPerM2S">Flux of the constant-rate stage; 0: the air gives water back and nothing dries.</param>
/// <param name="LateFluxGPerM2S">J₅₀.</param>
public sealed record WaterDrying(double WaterGPerM2, double SwitchGPerM2, double FluxGPerM2S, double LateFluxGPerM2S)
{
    /// <summary>Transfer in a still room, m/s. From memory: 0.002 to 0.005.</summary>
    public const double StillAirMPerS = 0.003;

    private const double WaterGasConstant = 461.5;

    /// <param name="solids">Polymer share of the wet film's volume, 0 to 1; the rest is water.</param>
    public static WaterDrying Of(double wetFilmUm, double solids, double surfaceC, double airC, double humidity, double transferMPerS = StillAirMPerS)
    {
        // 1 µm over 1 m² is 1 mL, which is 1 g of water.
        var water = wetFilmUm * (1 - solids);
        var atSwitch = Math.Min(water, wetFilmUm * solids * (1 - FilmClosing.SwitchShare) / FilmClosing.SwitchShare);
        double Flux(double rh) => Math.Max(0, transferMPerS * FilmClosing.Pull(surfaceC, airC, rh) * 100 * 1000 / (WaterGasConstant * (airC + 273.15)));
        return new WaterDrying(water, atSwitch, Flux(humidity), Flux(0.5));
    }

    public double ConstantRateS => WaterGPerM2 <= SwitchGPerM2 ? 0 : (WaterGPerM2 - SwitchGPerM2) / FluxGPerM2S;

    /// <summary>Water left after a time, g/m².</summary>
    public double LeftAt(double seconds) => seconds <= ConstantRateS
        ? WaterGPerM2 - (FluxGPerM2S * seconds)
        : SwitchGPerM2 * Math.Exp(-LateFluxGPerM2S * (seconds - ConstantRateS) / SwitchGPerM2);

    /// <summary>Seconds until this share of the first water is left.</summary>
    /// <param name="share">Above 0 to 1.</param>
    public double SecondsUntil(double share)
    {
        var left = share * WaterGPerM2;
        return left >= SwitchGPerM2 ? (WaterGPerM2 - left) / FluxGPerM2S : ConstantRateS + (Math.Log(SwitchGPerM2 / left) * SwitchGPerM2 / LateFluxGPerM2S);
    }
}
