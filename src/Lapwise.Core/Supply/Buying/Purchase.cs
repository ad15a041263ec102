using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Supply.Buying;

/// <summary>What one coat of one coming job takes, A and B without thinner.</summary>
/// <param name="On">The day it is coated; null: not set yet, so only what never expires on the shelf is counted for it.</param>
/// <param name="NetMl">What goes on the tops.</param>
/// <param name="LossMl">What tools, cups and edges are expected to keep; it varies.</param>
public sealed record ComingNeed(string Job, DateOnly? On, Shade Shade, double NetMl, double LossMl)
{
    /// <summary>A colour whose sample board is not signed: it is not bought yet.</summary>
    public bool AwaitsBoard { get; init; }

    public double NeedMl => NetMl + LossMl;
}

/// <summary>One order for all coming jobs.</summary>
/// <param name="HeldBack">Needs for which nothing is bought yet.</param>
public sealed record Purchase(double ChanceAsked, IReadOnlyList<ShadePurchase> Shades, IReadOnlyList<HeldBackNeed> HeldBack)
{
    public decimal Cost => Shades.Sum(s => s.Cost);
}

/// <param name="Reason">Why it waits, and for what.</param>
public sealed record HeldBackNeed(Product Product, ComingNeed Need, Reason Reason);

/// <summary>What to buy of one product in one colour.</summary>
/// <param name="NeedMl">What the jobs take if all goes as expected.</param>
/// <param name="FromShelfMl">What of that the shelf gives before it expires.</param>
/// <param name="BuyAtLeastMl">What must be bought so that the chance asked for is reached.</param>
/// <param name="Kits">The cheapest kits that hold it; empty: none are needed, or none are sold.</param>
/// <param name="Enough">The chance that shelf and kits together reach to the end of every job, counted in trials.</param>
/// <param name="CostJobByJob">The same bought for each job alone, without the shelf.</param>
public sealed record ShadePurchase(
    Product Product,
    Shade Shade,
    IReadOnlyList<ComingNeed> Needs,
    double NeedMl,
    double FromShelfMl,
    double BuyAtLeastMl,
    IReadOnlyList<KitCount> Kits,
    decimal Cost,
    Chance Enough,
    decimal CostJobByJob,
    IReadOnlyList<Reason> Reasons,
    Basis Basis)
{
    public double BoughtMl => Kits.Sum(k => k.Count * k.SizeMl);
}
