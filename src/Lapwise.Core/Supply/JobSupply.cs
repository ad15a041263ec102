using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Supply;

public sealed record JobSupply(IReadOnlyList<CoatSupply> Coats);

/// <summary>What to buy and what goes into each batch of one coat. Volumes of need count A and B without thinner.</summary>
public sealed record CoatSupply(Coat Coat, double NeedMl, double ThinnerMl, IReadOnlyList<BatchTicket> Tickets, IReadOnlyList<KitCount> Kits, decimal CostTotal, double LeftOverMl, IReadOnlyList<Reason> Reasons, Basis Basis)
{
    /// <summary>A and B in the kits to buy; null where no kits are listed.</summary>
    public double? BoughtMl => Kits.Count == 0 ? null : Kits.Sum(k => k.SizeMl * k.Count);
}

public sealed record KitCount(double SizeMl, int Count, decimal Price);

/// <summary>How much of each to measure for one batch, rounded to what can be read.</summary>
/// <param name="WantedMl">All parts together that the plan asks for.</param>
/// <param name="Parts">A, B and, of a three-part product, C: volume on the cup's marks, mass on the scale's steps.</param>
/// <param name="RatioError">(A : other as measured) / (A : other wanted) − 1 of the part furthest off, by volume on the cup's marks.</param>
/// <param name="RatioErrorByMass">The same on the scale's steps.</param>
public sealed record BatchTicket(
    string Batch,
    double WantedMl,
    IReadOnlyList<Measured> Parts,
    double ThinnerMl,
    double ThinnerG,
    double RatioError,
    double RatioErrorByMass)
{
    /// <summary>A ratio further off than this is off ratio. Common practice, no source; a data sheet may ask for less.</summary>
    public const double MostRatioError = 0.05;

    /// <summary>Thinner further off than this share of itself steps the sheen from batch to batch. Common practice, no source.</summary>
    public const double MostThinnerError = 0.2;

    /// <summary>Exact, before it is rounded to a mark.</summary>
    public double ThinnerWantedMl { get; init; }

    /// <summary>Of the thinner, g/mL.</summary>
    public double ThinnerDensityGPerMl { get; init; } = 1;

    public bool CupReadsThinner => Math.Abs(ThinnerMl - ThinnerWantedMl) <= MostThinnerError * ThinnerWantedMl;
    public bool ScaleReadsThinner => Math.Abs((ThinnerG / ThinnerDensityGPerMl) - ThinnerWantedMl) <= MostThinnerError * ThinnerWantedMl;

    public double AMl => Parts[0].Ml;
    public double AG => Parts[0].G;
    public double BMl => Parts[1].Ml;
    public double BG => Parts[1].G;

    public double VolumeMl => Parts.Sum(p => p.Ml);
    public bool CupReadsRatio => Math.Abs(RatioError) <= MostRatioError;
    public bool ScaleReadsRatio => Math.Abs(RatioErrorByMass) <= MostRatioError;
}
