namespace Lapwise.Core.Materials;

/// <summary>One liquid that goes into a coating as applied.</summary>
/// <param name="VocGPerL">Volatile organic compounds in a litre of it, water and exempt solvent counted as volume.</param>
/// <param name="WaterShare">Water, share of its volume.</param>
/// <param name="ExemptShare">Exempt solvent such as acetone, share of its volume.</param>
public sealed record VocPart(double VolumeMl, double VocGPerL, double WaterShare = 0, double ExemptShare = 0)
{
    /// <summary>From a data sheet's shares by mass.</summary>
    /// <param name="densityGPerMl">Of this liquid.</param>
    public static VocPart ByMass(double volumeMl, double densityGPerMl, double solids, double water, double exempt = 0, double waterDensity = 0.997, double exemptDensity = 0.79) =>
        new(volumeMl, (1 - solids - water - exempt) * densityGPerMl * 1000, water * densityGPerMl / waterDensity, exempt * densityGPerMl / exemptDensity);
}

/// <summary>
/// VOC of a coating as applied: A, B and thinner together, for the mix is the coating (40 CFR 59). Volumes are taken to add up.
/// </summary>
/// <param name="ActualGPerL">In a litre as applied.</param>
/// <param name="LessWaterGPerL">Less water and exempt solvent, the figure most limits are set in: (Ws − Ww − Wec) / (Vm − Vw − Vec).</param>
public sealed record Voc(double ActualGPerL, double LessWaterGPerL)
{
    public static Voc AsApplied(IReadOnlyList<VocPart> parts)
    {
        var volume = parts.Sum(p => p.VolumeMl);
        var grams = parts.Sum(p => p.VolumeMl * p.VocGPerL / 1000);
        var counted = parts.Sum(p => p.VolumeMl * (1 - p.WaterShare - p.ExemptShare));
        return new Voc(grams / volume * 1000, grams / counted * 1000);
    }

    /// <summary>VOC in a volume of solids: C / (1 − C / D), with D the density of the solvent (30 TAC 115.423).</summary>
    public static double PerSolidsGPerL(double vocGPerL, double solventGPerL) => vocGPerL / (1 - (vocGPerL / solventGPerL));

    /// <summary>The most thinner, mL, that keeps parts without water or exempt solvent at or under a limit; null: they are over it already, or no amount passes it.</summary>
    public static double? MostThinnerMl(IReadOnlyList<VocPart> parts, double thinnerGPerL, double limitGPerL)
    {
        var (volume, grams) = (parts.Sum(p => p.VolumeMl), parts.Sum(p => p.VolumeMl * p.VocGPerL));
        if (grams > limitGPerL * volume || thinnerGPerL <= limitGPerL) return null;
        return ((limitGPerL * volume) - grams) / (thinnerGPerL - limitGPerL);
    }
}
