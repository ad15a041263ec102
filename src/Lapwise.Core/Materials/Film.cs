using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Materials;

/// <summary>
/// Film and spread. One micrometre of wet film over one square metre is one millilitre of mixed material, whatever
/// the coating, so every figure here is geometry and the solids the data sheet gives.
/// </summary>
public static class Film
{
    /// <summary>What a wet film leaves after cure: DFT = WFT · VS / (1 + thinner fraction).</summary>
    /// <param name="volumeSolids">Share of A and B that stays, above 0 to 1.</param>
    /// <param name="thinnerFraction">Volume of thinner over volume of A and B.</param>
    public static DryFilm Dry(WetFilm wet, double volumeSolids, double thinnerFraction = 0) =>
        new(wet.Micrometres * ThinnedSolids(volumeSolids, thinnerFraction));

    /// <summary>The wet film that leaves a wanted dry film: WFT = DFT · (1 + thinner fraction) / VS.</summary>
    public static WetFilm Wet(DryFilm dry, double volumeSolids, double thinnerFraction = 0) =>
        new(dry.Micrometres / ThinnedSolids(volumeSolids, thinnerFraction));

    /// <summary>Share of solids once thinned: VS / (1 + thinner fraction).</summary>
    public static double ThinnedSolids(double volumeSolids, double thinnerFraction) => volumeSolids / (1 + thinnerFraction);

    /// <summary>A and B, without thinner, that one square metre of wet film takes, in mL.</summary>
    public static double SpreadMlPerM2(WetFilm wet, double thinnerFraction = 0) => wet.Micrometres / (1 + thinnerFraction);

    /// <summary>
    /// Material that fills a rough surface before any film stands over it, mL/m²: half the height from peak to valley, as in
    /// a profile of triangles (geometry).
    /// </summary>
    public static double RoughnessMlPerM2(double peakToValleyUm) => peakToValleyUm / 2;

    /// <summary>
    /// A coat poured and levelled: A and B for a depth over an area, with what runs off its open edges, mL.
    /// </summary>
    public static double PouredMl(double depthUm, double areaM2, double openEdgeM) => depthUm * (areaM2 + (openEdgeM * Defaults.Tools.RunOff.Value));

    /// <summary>Spreading rate that a job really had, m²/L.</summary>
    public static double PracticalM2PerL(double areaM2, double usedMl) => areaM2 / usedMl * 1000;

    /// <summary>Spreading rate that a loss leaves of the theoretical one, m²/L.</summary>
    public static double AfterLossM2PerL(double theoreticalM2PerL, double lossShare) => theoreticalM2PerL * (1 - lossShare);

    /// <summary>Share lost: 1 − practical / theoretical. Negative: the film was thinner than wanted.</summary>
    public static double LossShare(double practicalM2PerL, double theoreticalM2PerL) => 1 - (practicalM2PerL / theoreticalM2PerL);

    /// <summary>Theoretical spreading rate of unthinned material at a dry film: 1000 · VS / DFT, in m²/L.</summary>
    public static double SpreadingRateM2PerL(DryFilm dry, double volumeSolids) => 1000 * volumeSolids / dry.Micrometres;
}
