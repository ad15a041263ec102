using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Supply.Buying;

/// <summary>What one coat of one coming job takes, A and B without thinner.</summary>
/// <param name="On">The day it is coated; null: not set yet, so only what never expires on the shelf is counted for it.</param>
/// <param name="NetMl">What goes on the tops.</param>
/// <param name="LossMl">What tools, cups and edges are expected to keep; it varies.</param>
public sealed record ComingNeed(string Job, DateOnly? On, Shade Shade, double NetMl, double LossMl)
{
    /// <summary>The sample board that does not cover its colour, which is not bought yet; null: it may be.</summary>
    public SampleBoard? AwaitsBoard { get; init; }

    /// <summary>Thinner that goes into it, on top of A and B.</summary>
    public double ThinnerMl { get; init; }

    /// <summary>Solvent wipe before it; null: none.</summary>
    public Wipe? Wipe { get; init; }

    public double NeedMl => NetMl + LossMl;
}

/// <summary>One order for all coming jobs.</summary>
/// <param name="BesideKits">What else the coats take that is a liquid.</param>
/// <param name="HeldBack">Needs for which nothing is bought yet.</param>
public sealed record Purchase(double ChanceAsked, IReadOnlyList<ShadePurchase> Shades, IReadOnlyList<LiquidBesideKits> BesideKits, IReadOnlyList<HeldBackNeed> HeldBack)
{
    /// <summary>Of all kits; null where there are none, or where they are priced in different currencies and do not add up.</summary>
    public MoneyAmount? Cost
    {
        get
        {
            IReadOnlyList<MoneyAmount> costs = [.. Shades.Where(s => s.Kits.Count > 0).Select(s => s.Cost)];
            return costs.DistinctBy(c => c.Currency).Count() == 1 ? costs.Aggregate((sum, cost) => sum + cost) : null;
        }
    }
}

/// <summary>What a liquid that is not in the kits is for.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<LiquidUse>))]
public enum LiquidUse { Thinning, Wiping }

/// <summary>Thinner or wiping solvent of all coats that may be bought. It is sold in no kits known here, and what is left of it is not counted on the shelf.</summary>
/// <param name="Coats">How many coats take it.</param>
public sealed record LiquidBesideKits(LiquidUse Use, Phrase Name, int Coats, double NeedMl)
{
    /// <summary>Whether it may burn: everything but water does.</summary>
    public bool MayBurn { get; init; } = true;
}

/// <summary>What waits of one product in one colour for the same board.</summary>
/// <param name="Reason">Why it waits, and for what.</param>
public sealed record HeldBackNeed(Product Product, IReadOnlyList<ComingNeed> Needs, Reason Reason);

/// <summary>What to buy of one product in one colour.</summary>
/// <param name="NeedMl">What the jobs take if all goes as expected.</param>
/// <param name="FromShelfMl">What of that the shelf gives before it expires.</param>
/// <param name="BuyAtLeastMl">What must be bought so that the chance asked for is reached.</param>
/// <param name="Kits">The cheapest kits that hold it; empty: none are needed, or none are sold.</param>
/// <param name="Enough">The chance that shelf and kits together reach to the end of every job, counted in trials.</param>
/// <param name="Cost">In the currency of the kits, the shop's own where they name none.</param>
/// <param name="CostJobByJob">The same bought for each job alone, without the shelf.</param>
public sealed record ShadePurchase(
    Product Product,
    Shade Shade,
    IReadOnlyList<ComingNeed> Needs,
    double NeedMl,
    double FromShelfMl,
    double BuyAtLeastMl,
    IReadOnlyList<KitCount> Kits,
    MoneyAmount Cost,
    Chance Enough,
    MoneyAmount CostJobByJob,
    IReadOnlyList<Reason> Reasons,
    Basis Basis)
{
    public double BoughtMl => Kits.Sum(k => k.Count * k.SizeMl);
}
