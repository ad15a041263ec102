using Lapwise.Core.Jobs;

namespace Lapwise.Core.Materials;

/// <summary>A mix exactly as wanted, before it is rounded to marks that can be read.</summary>
public sealed record Mix(double AMl, double BMl, double ThinnerMl, double AG, double BG, double ThinnerG);

/// <summary>Turns a volume of A and B into its parts, by volume and, through the densities, by mass.</summary>
public static class Mixing
{
    /// <param name="volumeMl">A and B together, without thinner.</param>
    public static Mix Of(Coat coat, double volumeMl)
    {
        var product = coat.Product;
        var aMl = volumeMl * product.Mix.ShareA;
        var bMl = volumeMl - aMl;
        var thinnerMl = volumeMl * coat.ThinnerFraction;
        return new Mix(
            aMl, bMl, thinnerMl,
            aMl * product.DensityAGPerMl, bMl * product.DensityBGPerMl, thinnerMl * (product.Thinner?.DensityGPerMl ?? 0));
    }
}
