namespace Lapwise.Core.Conditions.Vapour;

/// <summary>
/// Vapour in a room whose air is mixed through at once: V dC/dt = G − Q C (ACGIH, Industrial Ventilation). Near the wet
/// surface, the can and the floor it is far higher: this is no clearance for fire or for breathing.
/// </summary>
/// <param name="RoomM3">Above 0.</param>
/// <param name="AirM3PerS">Fresh air; 0: closed.</param>
/// <param name="VapourM3PerS">Vapour given off while it evaporates.</param>
/// <param name="EvaporatingS">How long it evaporates.</param>
public sealed record RoomVapour(double RoomM3, double AirM3PerS, double VapourM3PerS, double EvaporatingS)
{
    /// <summary>A volume of liquid that evaporates evenly over a time.</summary>
    public static RoomVapour Of(Solvent solvent, double liquidMl, double evaporatingS, double roomM3, double airChangesPerHour, double airC) =>
        new(roomM3, airChangesPerHour * roomM3 / 3600, VapourM3(solvent, liquidMl, airC) / evaporatingS, evaporatingS);

    /// <summary>Vapour from a volume of liquid, m³.</summary>
    public static double VapourM3(Solvent solvent, double liquidMl, double airC) => liquidMl * solvent.GPerMl / solvent.GPerMol * MolarVolume.LAt(airC) / 1000;

    private double PerS => AirM3PerS / RoomM3;

    /// <summary>Share of the air by volume after a time.</summary>
    public double ShareAt(double seconds)
    {
        var filling = Math.Min(seconds, EvaporatingS);
        var risen = PerS * filling < 1e-9 ? VapourM3PerS * filling / RoomM3 : VapourM3PerS / AirM3PerS * -ExpM1(-PerS * filling);
        return risen * Math.Exp(-PerS * Math.Max(0, seconds - EvaporatingS));
    }

    public double PpmAt(double seconds) => ShareAt(seconds) * 1e6;

    /// <summary>Highest share, when the last of it has evaporated.</summary>
    public double PeakShare => ShareAt(EvaporatingS);

    /// <summary>What it would come to if it went on evaporating for ever: G/Q; without end in a closed room.</summary>
    public double SteadyShare => VapourM3PerS / AirM3PerS;

    /// <summary>Seconds from the start until it has fallen to a share; null: a closed room never clears.</summary>
    public double? ClearAfterS(double share)
    {
        if (PeakShare <= share) return 0;
        return AirM3PerS <= 0 ? null : EvaporatingS + (Math.Log(PeakShare / share) / PerS);
    }

    /// <summary>Mean share over a time from the start, for a limit averaged over it.</summary>
    public double MeanShare(double overS)
    {
        // V C(t) = given off − carried off, so the mean is what was carried off over Q t.
        var given = VapourM3PerS * Math.Min(overS, EvaporatingS);
        if (PerS * overS > 1e-6) return (given - (RoomM3 * ShareAt(overS))) / (AirM3PerS * overS);
        var rising = Math.Min(overS, EvaporatingS);
        return ((ShareAt(rising) * rising / 2) + (ShareAt(overS) * (overS - rising))) / overS;
    }

    /// <summary>e^x − 1 without loss of figures near 0.</summary>
    private static double ExpM1(double x) => Math.Abs(x) < 1e-5 ? x * (1 + (x / 2 * (1 + (x / 3)))) : Math.Exp(x) - 1;
}

/// <summary>Fresh air that keeps a vapour at or under a share while it evaporates evenly (ACGIH, Industrial Ventilation).</summary>
public static class DilutionAir
{
    /// <summary>Q′ = G / C, m³/s, for perfect mixing; in US units Q′ = 403 · SG · ER · 10⁶ / (MW · C).</summary>
    public static double IdealM3PerS(Solvent solvent, double liquidMlPerS, double share, double airC) => RoomVapour.VapourM3(solvent, liquidMlPerS, airC) / share;

    /// <summary>Q = Q′ · K.</summary>
    /// <param name="mixing">K, 1 for perfect mixing to 10 for a room with dead corners.</param>
    public static double M3PerS(Solvent solvent, double liquidMlPerS, double share, double mixing, double airC) => IdealM3PerS(solvent, liquidMlPerS, share, airC) * mixing;
}
