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
/// <param name="WantedMl">A and B the plan asks for.</param>
/// <param name="RatioError">(A:B as measured) / (A:B wanted) − 1, by volume on the cup's marks.</param>
/// <param name="RatioErrorByMass">The same on the scale's steps.</param>
public sealed record BatchTicket(
    string Batch,
    double WantedMl,
    double AMl,
    double BMl,
    double ThinnerMl,
    double AG,
    double BG,
    double ThinnerG,
    double RatioError,
    double RatioErrorByMass)
{
    /// <summary>An A to B ratio further off than this is off ratio. Common practice, no source; a data sheet may ask for less.</summary>
    public const double MostRatioError = 0.05;

    public double VolumeMl => AMl + BMl;
    public bool CupReadsRatio => Math.Abs(RatioError) <= MostRatioError;
    public bool ScaleReadsRatio => Math.Abs(RatioErrorByMass) <= MostRatioError;
}
